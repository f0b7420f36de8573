using BallSim.Drilling;
using BallSim.Releases;
using BallSim.Shots;

namespace BallSim.Files;

/// <summary>
/// What a comparison needs, as a file that people edit: a bowler, and lists of balls, layouts, finishes, releases and lanes, of which every
/// combination is a
/// <see cref="Candidate"/>. In the file quantities carry their unit as text ("18 mph", "3 3/8 in"); here everything is SI.
/// </summary>
public sealed record Scenario
{
    /// <summary>Most combinations that <see cref="Candidates"/> makes.</summary>
    public const int MostCandidates = 500;

    /// <summary>What the scenario is about; may be empty.</summary>
    public string Title { get; init; } = "";

    /// <summary>The bowler.</summary>
    public required Bowler Bowler { get; init; }

    /// <summary>Undrilled balls, by specification or drawing, at least one.</summary>
    public required IReadOnlyList<BallSheet> Balls { get; init; }

    /// <summary>Layouts, at least one.</summary>
    public required IReadOnlyList<Named<Layout>> Layouts { get; init; }

    /// <summary>Finishes; with none, every ball keeps a roughness of 0.5 µm (assumed).</summary>
    public IReadOnlyList<FinishSheet> Finishes { get; init; } = [];

    /// <summary>Releases, at least one.</summary>
    public required IReadOnlyList<Named<Release>> Releases { get; init; }

    /// <summary>Lanes, at least one.</summary>
    public required IReadOnlyList<LaneSheet> Lanes { get; init; }

    /// <summary>How each throw is computed, the numbers of the friction law among it.</summary>
    public SimulatorOptions Options { get; init; } = SimulatorOptions.Default;

    /// <summary>How many combinations there are.</summary>
    public long Combinations => (long)Balls.Count * Layouts.Count * Math.Max(1, Finishes.Count) * Releases.Count * Lanes.Count;

    internal string TooMany => $"{Balls.Count} balls x {Layouts.Count} layouts x {Math.Max(1, Finishes.Count)} finishes x "
        + $"{Releases.Count} releases x {Lanes.Count} lanes make {Combinations} combinations; at most {MostCandidates} are compared at once: shorten a list or split the scenario";

    /// <summary>Every combination, in the order of the lists: the lane changes fastest, the ball slowest.</summary>
    /// <exception cref="ArgumentException">
    /// There are more than <see cref="MostCandidates"/>, or a layout is impossible on a ball.
    /// </exception>
    public IReadOnlyList<Candidate> Candidates()
    {
        if (Combinations > MostCandidates)
        {
            throw new ArgumentException(TooMany);
        }
        return
        [
            .. from ball in Balls
               from layout in Layouts
               let sheet = ball.Drilled(layout.Value, Bowler)
               from finish in Finishes.Count == 0 ? [null] : Finishes.Cast<FinishSheet?>()
               let finished = finish is null ? sheet.Ball : sheet.Ball with { Finish = finish.Built() }
               from release in Releases
               from lane in Lanes
               select new Candidate(finished, lane.Lane, release.Value)
               {
                   BallName = ball.Name,
                   LayoutName = layout.Name,
                   FinishName = finish?.Name ?? "",
                   ReleaseName = release.Name,
                   LaneName = lane.Name,
                   Holes = sheet.Holes,
               },
        ];
    }

    /// <summary>A scenario from its file; the files it names are read with it.</summary>
    /// <param name="path">The file, JSON, at most 4 MB.</param>
    /// <exception cref="BadFileException">
    /// The file cannot be read, or something in it is wrong; the message says where and what would be right.
    /// </exception>
    public static Scenario Read(string path) => Json.ScenarioReader.Read(path);

    /// <summary>Writes the scenario, by way of a temporary file that is renamed. The files it names (oil, balls) are not written.</summary>
    /// <param name="path">The file.</param>
    /// <exception cref="BadFileException">The file cannot be written.</exception>
    public void Write(string path) => Json.JsonFile.Write(path, writer => Json.ScenarioWriter.Whole(writer, this));
}
