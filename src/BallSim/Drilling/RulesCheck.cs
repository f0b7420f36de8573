using System.Text;
using BallSim.Balls;

namespace BallSim.Drilling;

/// <summary>
/// A ball held against the rules, limit by limit. It is advice, not an approval: only a federation approves a ball, rules differ by
/// federation and change, and most limits here were read in texts that quote them.
/// </summary>
public sealed record RulesCheck
{
    private RulesCheck(Ball ball, IReadOnlyList<RuleLine> lines) => (Ball, Lines) = (ball, lines);

    /// <summary>What a reader must know about any such check.</summary>
    public const string Advice = "Advice, not an approval: rules differ by federation and change; ask yours.";

    /// <summary>The ball that was checked.</summary>
    public Ball Ball { get; }

    /// <summary>A line for each limit.</summary>
    public IReadOnlyList<RuleLine> Lines { get; }

    /// <summary>The lines that fail.</summary>
    public IEnumerable<RuleLine> Failures => Lines.Where(l => l.Verdict == RuleVerdict.Fail);

    /// <summary>The lines for which a measurement is missing.</summary>
    public IEnumerable<RuleLine> Unknown => Lines.Where(l => l.Verdict == RuleVerdict.NotKnown);

    /// <summary>Checks a ball.</summary>
    /// <param name="ball">The ball, drilled or not.</param>
    /// <param name="measurements">What was measured on it, and the day whose rules apply; nothing by default.</param>
    /// <param name="rules">The limits; <see cref="BallRules.Default"/> if null.</param>
    public static RulesCheck Of(Ball ball, BallMeasurements? measurements = null, BallRules? rules = null)
    {
        ArgumentNullException.ThrowIfNull(ball);
        var m = measurements ?? new();
        var r = rules ?? BallRules.Default;
        List<RuleLine> lines = [];
        void Line(RuleLimit limit, double? value, string note, string? what = null) =>
            lines.Add(new(what ?? limit.What, value, limit, Verdict(limit, value), note));

        var drilled = ball.Marks.IsDrilled;
        Size(lines, ball, m, r);
        Line(r.Roundness, m.Roundness, Measured(m.Roundness));
        Line(r.Weight, ball.Mass, "");
        Hardness(lines, m, r);
        Line(r.Roughness, m.Roughness ?? ball.Finish.Roughness, m.Roughness is null ? $"of the finish, {ball.Finish.Name}" : "measured");
        Line(r.LaboratoryFriction, m.LaboratoryFriction, Measured(m.LaboratoryFriction));
        var made = drilled ? "as drilled; the limit is for the undrilled ball" : "";
        Line(r.Rg, ball.LowRg, made, "lowest " + r.Rg.What);
        Line(r.Rg, ball.HighRg, made, "highest " + r.Rg.What);
        Line(r.Differential, ball.Differential, made);
        Line(r.IntermediateDifferential, ball.IntermediateDifferential, made);
        AxisMarks(ball, m, r, Line);
        Line(r.ComponentDensity, m.ComponentDensity, Measured(m.ComponentDensity));
        Balance(ball, m, r, Line);
        var holes = m.GrippingHoles ?? new[] { ball.Marks.Thumb, ball.Marks.MiddleFinger, ball.Marks.RingFinger }.Count(h => h is not null);
        Line(r.GrippingHoles, holes, m.GrippingHoles is null ? "counted on the ball" : "given");
        BalanceHoles(lines, drilled, m, r);
        Line(r.VentsPerHole, m.VentsPerHole ?? (drilled ? null : 0), drilled ? Measured(m.VentsPerHole) : "not drilled");
        Line(r.VentWidth, m.VentWidth ?? (drilled ? null : 0), drilled ? Measured(m.VentWidth) : "not drilled");
        return new(ball, lines);
    }

    /// <summary>The check as a table of plain text, a line for each limit, and the caution.</summary>
    public override string ToString()
    {
        string[][] rows =
        [
            ["what", "measured", "limit", "verdict", "source", "note"],
            .. Lines.Select(l => new[] { l.What, l.MeasuredText, l.Limit.Text, l.VerdictText, l.SourceText, l.Note }),
        ];
        var widths = Enumerable.Range(0, rows[0].Length).Select(i => rows.Max(row => row[i].Length)).ToArray();
        var text = new StringBuilder();
        foreach (var row in rows)
        {
            text.AppendLine(string.Join("  ", row.Select((cell, i) => cell.PadRight(widths[i]))).TrimEnd());
        }
        return text.AppendLine(Advice).ToString();
    }

    private static RuleVerdict Verdict(RuleLimit limit, double? value) =>
        !limit.IsSet ? RuleVerdict.NotApplicable
        : value is not { } v ? RuleVerdict.NotKnown
        : limit.Keeps(v) ? RuleVerdict.Pass : RuleVerdict.Fail;

    private static string Measured(double? value) => value is null ? "to be measured" : "measured";

    private static void Size(List<RuleLine> lines, Ball ball, BallMeasurements m, BallRules r)
    {
        var around = m.Circumference ?? 2 * Math.PI * ball.Radius;
        var light = ball.Mass < r.SizedFrom * (1 - 1e-12);
        foreach (var (limit, value) in new[] { (r.Circumference, around), (r.Diameter, around / Math.PI) })
        {
            lines.Add(new(limit.What, value, limit, light ? RuleVerdict.NotApplicable : Verdict(limit, value), light
                ? $"limited from {Check.Text(r.SizedFrom / Units.Pound)} lb on"
                : m.Circumference is null ? "" : "measured"));
        }
    }

    private static void Hardness(List<RuleLine> lines, BallMeasurements m, BallRules r)
    {
        void Line(RuleLimit limit, bool concerned) => lines.Add(new(limit.What, m.Hardness, limit,
            concerned ? Verdict(limit, m.Hardness) : RuleVerdict.NotApplicable, Measured(m.Hardness)));
        if (m.ApprovedAfter2020 is { } after)
        {
            Line(r.Hardness, !after);
            Line(r.HardnessOfNewBalls, after);
            return;
        }
        Line(r.Hardness, true);
        // Not knowing when the ball was approved, only a value that keeps the newer limit or breaks the older one settles the newer line.
        var verdict = Verdict(r.HardnessOfNewBalls, m.Hardness);
        var open = verdict == RuleVerdict.Fail && Verdict(r.Hardness, m.Hardness) == RuleVerdict.Pass;
        lines.Add(new(r.HardnessOfNewBalls.What, m.Hardness, r.HardnessOfNewBalls, open ? RuleVerdict.NotKnown : verdict,
            open ? "fails if the ball was approved after 2020" : Measured(m.Hardness)));
    }

    private static void AxisMarks(Ball ball, BallMeasurements m, BallRules r, Action<RuleLimit, double?, string, string?> line)
    {
        var axes = ball.Inertia.Principal;
        // The rule is about the ball as made; holes turn its axes.
        var known = !ball.Marks.IsDrilled;
        double Arc(Vector3D mark, Vector3D axis) => ball.Radius * Math.Atan2(mark.Cross(axis).Length, Math.Abs(mark.Dot(axis)));
        string Note(double? measured) => measured is not null ? "measured" : known ? "" : "axes of the undrilled ball to be measured";
        line(r.PinToLowAxis, m.PinToLowAxis ?? (known ? Arc(ball.Marks.Pin, axes.Least) : null), Note(m.PinToLowAxis), null);
        if (ball.Marks.MassBias is { } mark)
        {
            line(r.MarkToHighAxis, m.MarkToHighAxis ?? (known ? Arc(mark, axes.Greatest) : null), Note(m.MarkToHighAxis), null);
        }
        else
        {
            line(r.MarkToHighAxis with { AtLeast = null, AtMost = null }, null, "no mass-bias mark", null);
        }
    }

    private static void Balance(Ball ball, BallMeasurements m, BallRules r, Action<RuleLimit, double?, string, string?> line)
    {
        var rule = r.StaticBalance.FirstOrDefault(s => s.AppliesTo(ball.Mass, m.Day));
        (string, double?, bool)[] given = [("top", m.TopWeight, true), ("side", m.SideWeight, false), ("finger/thumb", m.FingerWeight, false)];
        foreach (var (what, value, top) in given)
        {
            var name = $"static balance, {what}";
            var limit = rule?.Limit(name, top ? rule.TopBottom : rule.Sides)
                ?? new RuleLimit(name, null, null, "oz", Units.Ounce, 2, "no rule for this weight and day", "", "off");
            // A limit on the size of the imbalance: to either side.
            var note = value switch { null => "to be weighed", < 0 => "given, to the other side", _ => "given" };
            line(limit, value is { } v ? Math.Abs(v) : null, note, null);
        }
    }

    private static void BalanceHoles(List<RuleLine> lines, bool drilled, BallMeasurements m, BallRules r)
    {
        var holes = m.BalanceHoles ?? (drilled ? null : 0);
        var before = m.Day < BallRules.BalanceReform;
        lines.Add(new(r.BalanceHoles.What, holes, r.BalanceHoles, before ? RuleVerdict.NotKnown : Verdict(r.BalanceHoles, holes),
            before ? "no limit on file for the time before 2020-08-01"
            : m.BalanceHoles is not null ? "given" : drilled ? "to be counted" : "not drilled"));
    }
}
