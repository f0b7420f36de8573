using System.Text;
using BallSim.Releases;
using BallSim.Shots;
using static System.FormattableString;
using static BallSim.Plots.Pages.Document;
using static BallSim.Units;

namespace BallSim.Plots.Pages;

/// <summary>
/// A comparison as one page to open, print and hand on: the question in words, the table to sort, paths and motion of every row, the drilled balls, and what the model assumes. The page carries all it needs and fetches
/// nothing.
/// </summary>
public sealed record ComparisonPage
{
    // More paths than this on one lane cannot be told apart.
    private const int MostPaths = 12;

    /// <summary>What is compared, as a title.</summary>
    public required string Title { get; init; }

    /// <summary>Who bowls, in a few words: name, hand, axis point.</summary>
    public string Bowler { get; init; } = "";

    /// <summary>The rows, at least one, in the order of the candidates.</summary>
    public required IReadOnlyList<ComparisonRow> Rows { get; init; }

    /// <summary>The scatter that the rows were computed with.</summary>
    public Scatter Scatter { get; init; } = new();

    /// <summary>The options that the rows were computed with.</summary>
    public SimulatorOptions Options { get; init; } = SimulatorOptions.Default;

    /// <summary>The drilled balls of the rows.</summary>
    public IReadOnlyList<NamedSheet> Sheets { get; init; } = [];

    /// <summary>Writes the page, by way of a temporary file that is renamed.</summary>
    /// <param name="path">The file; its folder must exist.</param>
    /// <exception cref="ArgumentException">There are no rows.</exception>
    /// <exception cref="IOException">The file cannot be written.</exception>
    public void SaveHtml(string path) => WholeFile.Replace(path, ToHtml());

    /// <summary>The page as text.</summary>
    /// <exception cref="ArgumentException">There are no rows.</exception>
    public string ToHtml()
    {
        if (Rows.Count == 0)
        {
            throw new ArgumentException("a page needs at least one row", nameof(Rows));
        }
        var ranked = Comparison.Ranked(Rows);
        var body = new StringBuilder(Document.Header(Title, Bowler,
            [("asked", "What is compared"), ("table", "The table"), ("lanes", "Paths"), ("motion", "Motion"), .. Sheets.Count > 0 ? [("balls", "Balls")] : Array.Empty<(string, string)>(), ("assumed", "What is assumed")]));
        body.Append(Invariant($"""
            <section id="asked"><h2>What is compared</h2>
            {Question.Of(Rows)}
            <p class="note">{Encoded(Short(ranked))}</p>
            </section>
            <section id="table"><h2>The table</h2>
            {RowTable.Of(ranked, Scatter)}
            {Drawing.Of(Rows.EntryAngles(), "angles").Html(caption: false)}
            </section>

            """));
        Paths(body, ranked);
        if (Sheets.Count > 0)
        {
            body.Append("<section id=\"balls\"><h2>The drilled balls</h2>\n").Append(SheetTables.Of(Sheets)).Append("</section>\n");
        }
        body.Append("<section id=\"assumed\"><h2>What is assumed</h2>\n").Append(Assumptions.Of(Rows, Options)).Append("</section>\n</main>\n");
        body.Append("<footer><div class=\"column\"><p>Computed by BallSim. A simulation tells differences between choices better than it tells numbers: check the first throw on the lane before you drill the second ball.</p></div></footer>");
        return Document.Of(Encoded(Title), body.ToString());
    }

    private static string Short(IReadOnlyList<ComparisonRow> ranked)
    {
        if (ranked[0].ReAimed.Shot is not { } shot)
        {
            return "No row reaches the pocket from the bowler's board; the table says why.";
        }
        var (low, high) = (Comparison.LowestGoodAngle / Degree, Comparison.HighestGoodAngle / Degree);
        var (name, inside, alike) = (RowNames.Of(ranked)[0], ranked.Count(r => r.DistanceFromBand == 0), ranked.Count(r => r.IsWithinScatter));
        var best = Invariant($"{name}: {shot.Entry.Angle / Degree:F1}°{(ranked[0].Spread is { } s ? Invariant($" ± {s.Angle / Degree:F1}°") : "")}");
        var where = inside > 0 ? Invariant($"{inside} of {ranked.Count} rows enter at {low:F0}° to {high:F0}°; first stands {best}.") : Invariant($"No row enters at {low:F0}° to {high:F0}°; nearest is {best}.");
        var others = alike == ranked.Count - 1 ? alike == 1 ? "The other row differs" : $"All {alike} others differ" : alike == 1 ? "One of the others differs" : $"{alike} of the others differ";
        return where + (alike > 0 ? $" {others} from it by less than the bowler's own scatter: a single throw would not tell them apart." : "");
    }

    // A lane of its own for each oil: the paths of one lie over its film. Best rows first, where there are too many.
    private static void Paths(StringBuilder body, IReadOnlyList<ComparisonRow> ranked)
    {
        var lanes = ranked.GroupBy(r => r.Candidate.LaneName).OrderBy(g => g.Key, StringComparer.Ordinal).Select(g => (Name: g.Key, All: g.Count(), Rows: g.Where(r => r.ReAimed.IsFound).Take(MostPaths).ToArray())).ToArray();
        var motion = new StringBuilder();
        body.Append("<section id=\"lanes\"><h2>Paths</h2>\n<p>Every path starts from the bowler's own board and is re-aimed at the pocket.</p>\n");
        for (var i = 0; i < lanes.Length; i++)
        {
            var (lane, all, rows) = lanes[i];
            var on = lane.Length > 0 ? $" on {lane}" : "";
            if (rows.Length < all)
            {
                body.Append(Invariant($"<p>{rows.Length} of {all} rows{Encoded(on)} are drawn: {(rows.Length == MostPaths ? "the best ones" : "those that reach the pocket")}.</p>\n"));
            }
            if (rows.Length == 0)
            {
                continue;
            }
            var names = RowNames.Of(rows);
            Shot[] shots = [.. rows.Select(r => r.ReAimed.Shot!)];
            body.Append(Drawing.Of(shots.LaneView(names, $"Paths{on}"), Invariant($"lane-{i + 1}")).Html(caption: false)).Append('\n');
            motion.Append(Drawing.Of(shots.MotionCurves(names, $"Motion{on}"), Invariant($"motion-{i + 1}")).Html(caption: false)).Append('\n');
        }
        body.Append("</section>\n<section id=\"motion\"><h2>Motion along the lane</h2>\n").Append(motion);
        if (ranked[0].ReAimed.Shot is { } best)
        {
            body.Append(Drawing.Of(best.BallView($"Track on the ball, {RowNames.Of(ranked)[0]}"), "track").Html(caption: false)).Append('\n');
        }
        body.Append("</section>\n");
    }
}
