using BallSim.Lanes;
using BallSim.Releases;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;
using static System.FormattableString;
using static BallSim.Units;

namespace BallSim.Shots;

/// <summary>
/// A day on one lane: bowlers throw in turn, every shot changes the oil for the next, entries drift, and who misses the pocket moves. One shot after the other, so the result depends on the plan and the
/// seed alone.
/// </summary>
/// <remarks>Every shot draws its six scattered numbers from one stream, whatever happens to it: two days that differ in the move rule alone have the same hands.</remarks>
public sealed record LaneDay
{
    private LaneDay(DayPlan plan, OilCells before, OilCells after) => (Plan, Before, After) = (plan, before, after);

    /// <summary>What was played.</summary>
    public DayPlan Plan { get; }

    /// <summary>The oil before the first shot.</summary>
    public OilCells Before { get; }

    /// <summary>The oil after the last one.</summary>
    public OilCells After { get; }

    /// <summary>A row for every shot, in order.</summary>
    public IReadOnlyList<DayShot> Shots { get; private init; } = [];

    /// <summary>Who moved, when, and to which line; the lines looked for before the first shot first.</summary>
    public IReadOnlyList<DayMove> Moves { get; private init; } = [];

    /// <summary>Each bowler's day in short, in the order of the plan.</summary>
    public IReadOnlyList<BowlerDay> Bowlers { get; private init; } = [];

    /// <summary>Loss of the lane and what was withheld, less the gain of all covers, m³: zero but for the tolerance of the paths.</summary>
    public double Imbalance => Before.Volume - After.Volume + Shots.Sum(s => s.Withheld - s.CoverGain);

    /// <summary>Plays a day.</summary>
    /// <param name="plan">Who, where, how much.</param>
    /// <param name="options">How each throw is computed; <see cref="SimulatorOptions.Default"/> if null.</param>
    /// <param name="progress">Told the number of shots done after each.</param>
    /// <param name="cancellation">Stops between two throws.</param>
    /// <exception cref="ArgumentException">A bowler's release does not fit the ball or the lane, or the lane has no pins or no oil map; looked at before the first throw.</exception>
    /// <exception cref="OperationCanceledException">The day was stopped.</exception>
    public static LaneDay Play(DayPlan plan, SimulatorOptions? options = null, IProgress<int>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(plan);
        Check.That(plan.Lane.HasPins, "the lane has no pins to play at; use Lane.Regulation", nameof(plan));
        Check.That(plan.Lane.GivenFriction is null, "the lane's friction is given, so it has no oil to wear; give it an oil map instead", nameof(plan));
        foreach (var bowler in plan.Bowlers)
        {
            bowler.Release.StartOn(plan.Lane, bowler.Ball);
        }
        return new Course(plan, options ?? SimulatorOptions.Default, cancellation).Played(progress);
    }

    /// <summary>The day in short.</summary>
    public override string ToString() => Invariant($"{Shots.Count} shots took {(Before.Volume - After.Volume) / Millilitre:F2} of {Before.Volume / Millilitre:F2} mL; {Moves.Count(m => m.After > 0)} moves");

    /// <summary>One who plays, with what changes in the course of the day.</summary>
    private sealed class Player(int number, DayBowler bowler)
    {
        public int Number => number;
        public DayBowler Bowler => bowler;
        public Release Line { get; set; } = bowler.Release;
        public Release FirstLine { get; set; } = bowler.Release;
        public Queue<double> Offsets { get; } = new();
        public int LostInARow { get; set; }
    }

    private sealed class Course(DayPlan plan, SimulatorOptions options, CancellationToken cancellation)
    {
        private readonly Xoshiro256StarStar random = new(plan.Seed, threadSafe: false);
        private readonly OilCells before = OilCells.Of(plan.Lane.Oil, plan.CellsPerBoard, plan.Rows);
        private readonly Player[] players = [.. plan.Bowlers.Select((b, i) => new Player(i, b))];
        private readonly List<DayShot> shots = new(plan.Shots);
        private readonly List<DayMove> moves = [];
        private OilCells cells = null!;
        private Lane lane = null!;

        public LaneDay Played(IProgress<int>? progress)
        {
            Oil(before);
            foreach (var player in players.Where(_ => plan.AimsFirst))
            {
                Aimed(player, double.NaN);
                player.FirstLine = player.Line;
            }
            foreach (var (game, frame, second, player) in Turns().Take(plan.Shots))
            {
                cancellation.ThrowIfCancellationRequested();
                shots.Add(Thrown(game, frame, second, player));
                if (plan.Moves is { } rule && MeanThatMoves(player, rule) is { } mean)
                {
                    Aimed(player, mean);
                }
                progress?.Report(shots.Count);
            }
            return new(plan, before, cells) { Shots = shots, Moves = moves, Bowlers = [.. players.Select(InShort)] };
        }

        private IEnumerable<(int Game, int Frame, bool Second, Player Player)> Turns() =>
            from game in Enumerable.Range(1, plan.Games)
            from frame in Enumerable.Range(1, DayPlan.Frames)
            from player in players
            from second in plan.SecondBallEvery > 0 && frame % plan.SecondBallEvery == 0 ? [false, true] : new[] { false }
            select (game, frame, second, player);

        private void Oil(OilCells now) => (cells, lane) = (now, plan.Lane with { Oil = now.Oil });

        private DayShot Thrown(int game, int frame, bool second, Player player)
        {
            var row = new DayShot
            {
                Number = shots.Count + 1, Game = game, Frame = frame, IsSecondBall = second, Bowler = player.Number, Line = player.Line, Sentence = "", OilLeft = cells.Volume,
            };
            Shot shot;
            try
            {
                var release = Scattered(player.Line, player.Bowler.Scatter);
                row = row with { Thrown = release };
                shot = Simulator.Throw(player.Bowler.Ball, lane, release, options);
            }
            catch (ArgumentException e)
            {
                // The scatter led off the lane, or to a release that is none.
                player.LostInARow++;
                return row with { Thrown = null, Sentence = $"was not thrown: {e.Message}" };
            }
            var wear = LaneWear.Of(shot, cells);
            Oil(wear.After);
            Entry? entry = shot.ReachedPins ? shot.Entry : null;
            player.LostInARow = entry is null ? player.LostInARow + 1 : 0;
            if (entry is { } met)
            {
                player.Offsets.Enqueue(met.Offset);
            }
            return row with
            {
                StopReason = shot.StopReason,
                Sentence = shot.StopSentence,
                Entry = entry,
                TakenUp = wear.TakenUp,
                LaidDown = wear.LaidDown,
                CoverGain = wear.CoverGain,
                Withheld = wear.Withheld,
                OilLeft = cells.Volume,
            };
        }

        // Six numbers, drawn in this order before anything can fail.
        private Release Scattered(Release line, Scatter scatter)
        {
            var z = new double[6];
            Normal.Samples(random, z, 0, 1);
            return line with
            {
                Speed = line.Speed + z[0] * scatter.Speed,
                LaunchAngle = line.LaunchAngle + z[1] * scatter.LaunchAngle,
                Board = line.Board + z[2] * scatter.Board,
                SpinRate = Math.Max(0, line.SpinRate + z[3] * scatter.SpinRate),
                AxisRotation = line.AxisRotation + z[4] * scatter.AxisRotation,
                AxisTilt = line.AxisTilt + z[5] * scatter.AxisTilt,
            };
        }

        // The mean offset that makes the bowler move, or null.
        private static double? MeanThatMoves(Player player, MoveRule rule)
        {
            if (player.LostInARow >= rule.Entries)
            {
                return double.NaN;
            }
            while (player.Offsets.Count > rule.Entries)
            {
                player.Offsets.Dequeue();
            }
            var mean = player.Offsets.Count == rule.Entries ? player.Offsets.Average() : 0;
            return Math.Abs(mean) > rule.Window ? mean : null;
        }

        private void Aimed(Player player, double meanOffset)
        {
            var from = player.Line;
            var aimed = Aim.AtPocket(player.Bowler.Ball, lane, from, tolerance: 1e-3, options: options, cancellation: cancellation);
            player.Line = aimed.Release;
            // Also where no line is found: the bowler watches as many shots again before trying anew.
            player.Offsets.Clear();
            player.LostInARow = 0;
            moves.Add(new()
            {
                After = shots.Count,
                Bowler = player.Number,
                MeanOffset = meanOffset,
                From = from.LaunchAngle,
                To = aimed.Release.LaunchAngle,
                IsFound = aimed.IsFound,
                Reason = aimed.Reason,
            });
        }

        private BowlerDay InShort(Player player)
        {
            Entry? EntryOn(OilCells oil)
            {
                var shot = Simulator.Throw(player.Bowler.Ball, plan.Lane with { Oil = oil.Oil }, player.FirstLine, options);
                return shot.ReachedPins ? shot.Entry : null;
            }
            var own = shots.Where(s => s.Bowler == player.Number).ToArray();
            return new(player.Number, own.Length, moves.Count(m => m.Bowler == player.Number && m.After > 0), own.Sum(s => s.TakenUp - s.LaidDown), EntryOn(before), EntryOn(cells));
        }
    }
}
