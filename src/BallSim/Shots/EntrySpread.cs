using BallSim.Balls;
using BallSim.Lanes;
using BallSim.Releases;

namespace BallSim.Shots;

/// <summary>
/// How much one bowler's scatter moves the entry: a standard deviation, from finite differences of the shot itself. Each number of the
/// release is moved by one standard deviation to either side; the mean square of the two differences counts for it (for a straight response
/// that is the slope times the deviation, and where the response turns round it does not vanish), and the numbers add in quadrature. Taken
/// as independent; the roll phase is not scattered.
/// </summary>
/// <remarks>
/// A ball with a differential or an offset wobbles as it rolls, by a few tenths of a degree; the entry angle is the direction at the touch,
/// so much of its spread is that wobble.
/// </remarks>
/// <param name="Angle">Standard deviation of the entry angle, rad.</param>
/// <param name="Offset">Standard deviation of the offset from the pocket, m.</param>
public readonly record struct EntrySpread(double Angle, double Offset)
{
    private static readonly Func<Release, Scatter, double, Release>[] Moves =
    [
        (r, s, k) => r with { Speed = r.Speed + k * s.Speed },
        (r, s, k) => r with { LaunchAngle = r.LaunchAngle + k * s.LaunchAngle },
        (r, s, k) => r with { Board = r.Board + k * s.Board },
        (r, s, k) => r with { SpinRate = Math.Max(0, r.SpinRate + k * s.SpinRate) },
        (r, s, k) => r with { AxisRotation = r.AxisRotation + k * s.AxisRotation },
        (r, s, k) => r with { AxisTilt = r.AxisTilt + k * s.AxisTilt },
    ];

    /// <summary>The spread about a shot; null if it, or one of the scattered throws, does not reach the pins or is no possible release.</summary>
    /// <param name="ball">The ball.</param>
    /// <param name="lane">The lane.</param>
    /// <param name="release">The release in the middle.</param>
    /// <param name="scatter">The bowler's scatter.</param>
    /// <param name="options">How each throw is computed.</param>
    /// <param name="cancellation">Stops between two throws.</param>
    /// <exception cref="ArgumentException">The release does not fit ball or lane.</exception>
    public static EntrySpread? Of(Ball ball, Lane lane, Release release, Scatter scatter, SimulatorOptions? options = null,
        CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(scatter);
        if (Entered((r, _, _) => r, 0) is not { } middle)
        {
            return null;
        }
        double angle = 0, offset = 0;
        foreach (var move in Moves)
        {
            foreach (var side in (ReadOnlySpan<double>)[-1, 1])
            {
                if (Entered(move, side) is not { } entry)
                {
                    return null;
                }
                angle += Square(entry.Angle - middle.Angle) / 2;
                offset += Square(entry.Offset - middle.Offset) / 2;
            }
        }
        return new(Math.Sqrt(angle), Math.Sqrt(offset));

        Entry? Entered(Func<Release, Scatter, double, Release> move, double side)
        {
            cancellation.ThrowIfCancellationRequested();
            try
            {
                var shot = Simulator.Throw(ball, lane, move(release, scatter, side), options);
                return shot.ReachedPins ? shot.Entry : null;
            }
            catch (ArgumentOutOfRangeException) when (side != 0)
            {
                // A scattered release that is none: off the lane, or slower than a release can be.
                return null;
            }
        }
    }

    private static double Square(double value) => value * value;

    /// <summary>Both standard deviations.</summary>
    public override string ToString() => FormattableString.Invariant($"± {Angle / Units.Degree:F2}°, ± {Offset / Units.Inch:F2} in");
}
