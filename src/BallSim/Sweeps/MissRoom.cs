using System.Globalization;
using BallSim.Balls;
using BallSim.Ensembles;
using BallSim.Lanes;
using BallSim.Releases;
using static BallSim.Units;

namespace BallSim.Sweeps;

/// <summary>
/// How far a bowler may miss and still hit the pocket: the board at the foul line with the launch angle kept, the launch angle with the board kept, and the two together. All else of the release stays.
/// </summary>
/// <param name="BoardsDown">Boards towards board 1 by which the release may err; NaN where the line itself misses.</param>
/// <param name="BoardsUp">Boards towards board 39 by which the release may err; NaN where the line itself misses.</param>
/// <param name="AngleDown">Launch angle, rad, by which the release may err away from the bowler's gutter; NaN where the line itself misses.</param>
/// <param name="AngleUp">Launch angle, rad, by which the release may err towards the bowler's gutter; NaN where the line itself misses.</param>
/// <param name="Together">Area of all pairs of board and angle that hit, boards times rad, within the search; of one connected piece or more, so it may be more than 0 where the line itself misses.</param>
public readonly record struct MissRoom(double BoardsDown, double BoardsUp, double AngleDown, double AngleUp, double Together)
{
    /// <summary>Farthest error looked at, boards.</summary>
    public const double FarthestBoards = 6;

    /// <summary>Farthest error looked at, rad: 2 degrees.</summary>
    public const double FarthestAngle = 2 * Degree;

    // Even steps that find a gap of a twentieth of a board; halved ten times at the edge.
    private const int Steps = 120;
    private const int Halvings = 10;
    private const int Grid = 61;

    /// <summary>The room about a line; steps of 0.05 boards and 1/60 degree look for the first miss, which is then narrowed down a thousandfold.</summary>
    /// <param name="ball">The ball.</param>
    /// <param name="lane">The lane.</param>
    /// <param name="release">The release in the middle.</param>
    /// <param name="window">The pocket; null for the default.</param>
    /// <param name="options">How the throws are computed.</param>
    /// <param name="cancellation">Stops between two chunks.</param>
    public static MissRoom Of(Ball ball, Lane lane, Release release, PocketWindow? window = null, EnsembleOptions? options = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(ball);
        ArgumentNullException.ThrowIfNull(lane);
        ArgumentNullException.ThrowIfNull(release);
        release.StartOn(lane, ball);
        bool[] Hits(IReadOnlyList<(double Board, double Angle)> errors) => Hit(ball, lane, release, errors, window ?? new(), options ?? new(), cancellation);
        return Of(Hits);
    }

    /// <summary>The same of anything that tells hits from misses.</summary>
    internal static MissRoom Of(Func<IReadOnlyList<(double Board, double Angle)>, bool[]> hits)
    {
        // Four directions side by side, so that the ensemble is busy.
        (double Board, double Angle)[] ways = [(-FarthestBoards, 0), (FarthestBoards, 0), (0, -FarthestAngle), (0, FarthestAngle)];
        var probes = hits([.. ways.SelectMany(w => Enumerable.Range(0, Steps + 1).Select(k => Along(w, k / (double)Steps)))]);
        var room = new double[ways.Length];
        var (inside, outside) = (new double[ways.Length], new double[ways.Length]);
        for (var w = 0; w < ways.Length; w++)
        {
            var first = Enumerable.Range(0, Steps + 1).FirstOrDefault(k => !probes[w * (Steps + 1) + k], -1);
            (inside[w], outside[w]) = first switch { < 0 => (1, 1), 0 => (double.NaN, double.NaN), _ => ((first - 1.0) / Steps, first / (double)Steps) };
        }
        for (var halving = 0; halving < Halvings; halving++)
        {
            var middle = inside.Zip(outside, (a, b) => (a + b) / 2).ToArray();
            var found = hits([.. ways.Select((w, i) => Along(w, double.IsNaN(middle[i]) ? 0 : middle[i]))]);
            for (var w = 0; w < ways.Length; w++)
            {
                (inside[w], outside[w]) = found[w] ? (middle[w], outside[w]) : (inside[w], middle[w]);
            }
        }
        for (var w = 0; w < ways.Length; w++)
        {
            room[w] = (inside[w] + outside[w]) / 2 * (w < 2 ? FarthestBoards : FarthestAngle);
        }
        // Midpoints of cells, so that the sum is the area.
        static double Cell(int k) => (2 * k + 1.0) / Grid - 1;
        var grid = hits([.. from i in Enumerable.Range(0, Grid) from j in Enumerable.Range(0, Grid) select (Cell(i) * FarthestBoards, Cell(j) * FarthestAngle)]);
        return new(room[0], room[1], room[2], room[3], grid.Count(h => h) * (2 * FarthestBoards / Grid) * (2 * FarthestAngle / Grid));
    }

    /// <summary>Boards and degrees either way.</summary>
    public override string ToString() => double.IsNaN(BoardsDown)
        ? "the line itself misses"
        : string.Create(CultureInfo.InvariantCulture, $"board -{BoardsDown:F2} to +{BoardsUp:F2}, launch angle -{AngleDown / Degree:F2}° to +{AngleUp / Degree:F2}°, together {Together / Degree:F2} boards times degrees");

    private static (double, double) Along((double Board, double Angle) way, double part) => (part * way.Board, part * way.Angle);

    private static bool[] Hit(Ball ball, Lane lane, Release release, IReadOnlyList<(double Board, double Angle)> errors, PocketWindow window, EnsembleOptions options, CancellationToken cancellation)
    {
        var throws = new Throw[errors.Count];
        var failures = new string?[errors.Count];
        for (var i = 0; i < throws.Length; i++)
        {
            var (board, angle) = errors[i];
            (throws[i], failures[i]) = Sweep.Built(_ => new(ball, lane, release with { Board = release.Board + board, LaunchAngle = release.LaunchAngle + angle }), []);
        }
        return [.. Sweep.Thrown(throws, failures, options, cancellation).Select(o => o is { } thrown && window.Holds(thrown))];
    }
}
