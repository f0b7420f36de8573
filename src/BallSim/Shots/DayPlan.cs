using BallSim.Lanes;

namespace BallSim.Shots;

/// <summary>Who plays on which lane, how much, and in what order: the bowlers take the frames in turn, in the order of the list.</summary>
/// <remarks>
/// What the pins do is outside. So a frame has one ball, and in every <see cref="SecondBallEvery"/>-th frame a second one, thrown on the same line; fill balls of the tenth frame
/// count as such second balls. With the default a game has 15 shots (assumed; 11 to 21 are possible). A real second ball often crosses the lane elsewhere: the wear beside the line is then understated.
/// </remarks>
public sealed record DayPlan
{
    /// <summary>Frames of a game.</summary>
    public const int Frames = 10;

    /// <summary>The lane as it is before the first shot; it must have pins and an oil map.</summary>
    public required Lane Lane { get; init => field = value ?? throw new ArgumentNullException(nameof(Lane)); }

    /// <summary>The bowlers in the order in which they throw, 1 to 100.</summary>
    public required IReadOnlyList<DayBowler> Bowlers
    {
        get;
        init
        {
            ArgumentNullException.ThrowIfNull(value);
            Check.Range(value.Count, 1, 100, Quantity.Number, "Bowlers.Count");
            field = value;
        }
    }

    /// <summary>Games that each bowler plays, 1 to 1000; 3.</summary>
    public int Games { get; init => field = (int)Check.Range(value, 1, 1000, Quantity.Number, nameof(Games)); } = 3;

    /// <summary>Every how many frames a frame has a second ball, 0 (never) to 10; 2, assumed.</summary>
    public int SecondBallEvery { get; init => field = (int)Check.Range(value, 0, Frames, Quantity.Number, nameof(SecondBallEvery)); } = 2;

    /// <summary>Shots after which the day ends although games are left, 1 to a million; null: the games are played out.</summary>
    public int? MostShots { get; init => field = value is { } v ? (int)Check.Range(v, 1, 1_000_000, Quantity.Number, nameof(MostShots)) : null; }

    /// <summary>True if every bowler looks for a line to the pocket before the first shot (throws that leave no trace); else they begin on the line given.</summary>
    public bool AimsFirst { get; init; } = true;

    /// <summary>When a bowler moves, or null: never.</summary>
    public MoveRule? Moves { get; init; } = new();

    /// <summary>Seed of the scatter: the same seed gives the same day, bit for bit on one machine.</summary>
    public int Seed { get; init; } = 1;

    /// <summary>Cells of the lane's books across one board, 1 to 8; see <see cref="OilCells.Of"/>.</summary>
    public int CellsPerBoard { get; init => field = (int)Check.Range(value, 1, 8, Quantity.Number, nameof(CellsPerBoard)); } = 1;

    /// <summary>Rows of the lane's books, 10 to 1000; see <see cref="OilCells.Of"/>.</summary>
    public int Rows { get; init => field = (int)Check.Range(value, 10, 1000, Quantity.Number, nameof(Rows)); } = 120;

    /// <summary>How many shots the day has.</summary>
    public int Shots
    {
        get
        {
            var game = Frames + (SecondBallEvery == 0 ? 0 : Frames / SecondBallEvery);
            return (int)Math.Min((long)Games * game * Bowlers.Count, MostShots ?? int.MaxValue);
        }
    }

    /// <summary>Games, bowlers, shots and the lane.</summary>
    public override string ToString() => $"{Games} game{(Games == 1 ? "" : "s")} of {Bowlers.Count} bowler{(Bowlers.Count == 1 ? "" : "s")}, {Shots} shots from seed {Seed}; {Lane}";
}
