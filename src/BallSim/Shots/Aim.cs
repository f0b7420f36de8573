using BallSim.Balls;
using BallSim.Lanes;
using BallSim.Releases;
using static System.FormattableString;
using static BallSim.Units;

namespace BallSim.Shots;

/// <summary>
/// Finds the launch angle with which a ball enters at the pocket, as a bowler would move the target and leave the feet where they are.
/// </summary>
/// <remarks>
/// The offset from the pocket is a function of the launch angle that is known only where the ball reaches the pins, and it need not be
/// monotone: on an oiled lane a ball sent farther out may come back harder. So the angles are searched in rings around the given one, half
/// a degree at a time, until two neighbours lie on opposite sides of the pocket; between them Brent's method (R. P. Brent, Algorithms for
/// Minimization without Derivatives, 1973, ch. 4; from memory) closes in. Where one neighbour is lost in the gutter, the edge of what
/// reaches the pins is narrowed down first. Two solutions within half a degree of each other and on the same side of both neighbours are
/// overlooked.
/// </remarks>
public static class Aim
{
    /// <summary>The ring's width.</summary>
    private const double Step = 0.5 * Degree;

    /// <summary>How often the edge of the gutter is halved: half a degree becomes 0.002.</summary>
    private const int EdgeHalvings = 8;

    private const int MostIterations = 60;

    /// <summary>Turns the launch angle until the ball enters at the pocket; everything else of the release stays.</summary>
    /// <param name="ball">The ball.</param>
    /// <param name="lane">The lane; it must have pins.</param>
    /// <param name="release">The release to start from. Of several solutions the one nearest its launch angle is taken.</param>
    /// <param name="lowest">Least launch angle tried, rad, -20 degrees to <paramref name="highest"/>; -1 degree.</param>
    /// <param name="highest">Greatest launch angle tried, rad, at most 20 degrees; 8 degrees.</param>
    /// <param name="tolerance">How near the pocket is near enough, m, 1e-6 to 0.01; 0.1 mm. Never finer than twenty times the tolerance of the path, below which the entry is not smooth in the aim.</param>
    /// <param name="options">How each throw is computed.</param>
    /// <param name="cancellation">Stops the search between two throws.</param>
    /// <exception cref="ArgumentException">The release does not fit ball or lane, or the bounds are not in order.</exception>
    /// <exception cref="OperationCanceledException">The search was stopped.</exception>
    public static AimedShot AtPocket(Ball ball, Lane lane, Release release, double lowest = -1 * Degree, double highest = 8 * Degree, double tolerance = 1e-4,
        SimulatorOptions? options = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(ball);
        ArgumentNullException.ThrowIfNull(lane);
        ArgumentNullException.ThrowIfNull(release);
        Check.Range(lowest, -20 * Degree, 20 * Degree, Quantity.Angle);
        Check.Range(highest, lowest, 20 * Degree, Quantity.Angle);
        Check.Range(tolerance, 1e-6, 0.01, Quantity.Length);
        Check.That(lane.HasPins, "the lane has no pins to aim at; use Lane.Regulation", nameof(lane));
        var near = Math.Max(tolerance, 20 * (options ?? SimulatorOptions.Default).Tolerance);
        var search = new Search(angle => Simulator.Throw(ball, lane, release with { LaunchAngle = angle }, options), near, cancellation);
        var found = search.Nearest(Math.Clamp(release.LaunchAngle, lowest, highest), lowest, highest);
        return found is { } best
            ? new(release with { LaunchAngle = best.Angle }, best.Shot, "", search.Throws)
            : new(release, null, search.Failure(lane, release, lowest, highest), search.Throws);
    }

    /// <summary>One throw of the search: NaN stands for an offset that does not exist because the ball never reached the pins.</summary>
    private readonly record struct Try(double Angle, double Offset, Shot Shot)
    {
        public bool Reaches => double.IsFinite(Offset);

        public bool IsOpposite(Try other) => Reaches && other.Reaches && Math.Sign(Offset) != Math.Sign(other.Offset);
    }

    private sealed class Search(Func<double, Shot> thrown, double tolerance, CancellationToken cancellation)
    {
        private Try? closest;
        private Shot? lost;

        public int Throws { get; private set; }

        public Try? Nearest(double start, double lowest, double highest)
        {
            Try below = At(start), above = below;
            if (Math.Abs(below.Offset) <= tolerance)
            {
                return below;
            }
            while (below.Angle > lowest || above.Angle < highest)
            {
                Try? left = null, right = null;
                if (above.Angle < highest)
                {
                    var next = At(Math.Min(above.Angle + Step, highest));
                    (right, above) = (Between(above, next), next);
                }
                if (below.Angle > lowest)
                {
                    var next = At(Math.Max(below.Angle - Step, lowest));
                    (left, below) = (Between(below, next), next);
                }
                if (left is { } l && right is { } r)
                {
                    return start - l.Angle < r.Angle - start ? l : r;
                }
                if ((left ?? right) is { } one)
                {
                    return one;
                }
            }
            return null;
        }

        /// <summary>Why nothing was found, in the words of someone who watched.</summary>
        public string Failure(Lane lane, Release release, double lowest, double highest)
        {
            var span = Invariant($"from board {release.Board:0.#}, launched at {lowest / Degree:0.#} to {highest / Degree:0.#} deg, ");
            if (closest is not { } best)
            {
                return span + $"no ball reaches the pins (the last one {lost!.StopSentence})";
            }
            var boards = Math.Abs(best.Offset) / lane.BoardWidth;
            var side = best.Offset > 0 ? "right" : "left";
            return span + Invariant($"no ball reaches the pocket: the nearest enters {boards:F1} boards to its {side}, at {best.Angle / Degree:F1} deg");
        }

        private Try At(double angle)
        {
            cancellation.ThrowIfCancellationRequested();
            Throws++;
            var shot = thrown(angle);
            if (!shot.ReachedPins)
            {
                lost = shot;
                return new(angle, double.NaN, shot);
            }
            var result = new Try(angle, shot.Entry.Offset, shot);
            if (closest is not { } best || Math.Abs(result.Offset) < Math.Abs(best.Offset))
            {
                closest = result;
            }
            return result;
        }

        private Try? Between(Try a, Try b)
        {
            if (a.Reaches != b.Reaches)
            {
                var (seen, unseen) = a.Reaches ? (a, b) : (b, a);
                for (int i = 0; i < EdgeHalvings && !seen.IsOpposite(a.Reaches ? a : b); i++)
                {
                    var middle = At((seen.Angle + unseen.Angle) / 2);
                    (seen, unseen) = middle.Reaches ? (middle, unseen) : (seen, middle);
                }
                (a, b) = (a.Reaches ? a : b, seen);
            }
            return a.IsOpposite(b) ? Brent(a, b) : null;
        }

        // b is the best so far, a the one before it, c the far end of the bracket. Null when the offset jumps over the pocket instead of
        // crossing it.
        private Try? Brent(Try a, Try b)
        {
            var c = a;
            double step = b.Angle - a.Angle, before = step;
            for (int i = 0; i < MostIterations; i++)
            {
                if (Math.Sign(b.Offset) == Math.Sign(c.Offset))
                {
                    (c, step, before) = (a, b.Angle - a.Angle, b.Angle - a.Angle);
                }
                if (Math.Abs(c.Offset) < Math.Abs(b.Offset))
                {
                    (a, b, c) = (b, c, b);
                }
                var half = (c.Angle - b.Angle) / 2;
                if (Math.Abs(b.Offset) <= tolerance)
                {
                    return b;
                }
                if (Math.Abs(half) < 1e-12)
                {
                    return null;
                }
                var (p, q) = Interpolated(a, b, c, half);
                bool isTrusted = Math.Abs(before) > 1e-12 && Math.Abs(a.Offset) > Math.Abs(b.Offset)
                    && 2 * p < Math.Min(3 * half * q - Math.Abs(1e-12 * q), Math.Abs(before * q));
                if (isTrusted)
                {
                    (before, step) = (step, p / q);
                }
                else
                {
                    (before, step) = (half, half);
                }
                a = b;
                var next = At(b.Angle + step);
                // A ball lost between two that reach the pins: halve towards the end that is on the other side.
                b = next.Reaches ? next : At((b.Angle + c.Angle) / 2);
                if (!b.Reaches)
                {
                    return null;
                }
            }
            return null;
        }

        // Inverse quadratic through three points, or the secant through two, as the step p/q with p not below zero.
        private static (double P, double Q) Interpolated(Try a, Try b, Try c, double half)
        {
            double p, q, s = b.Offset / a.Offset;
            if (a.Angle == c.Angle)
            {
                (p, q) = (2 * half * s, 1 - s);
            }
            else
            {
                double u = a.Offset / c.Offset, r = b.Offset / c.Offset;
                p = s * (2 * half * u * (u - r) - (b.Angle - a.Angle) * (r - 1));
                q = (u - 1) * (r - 1) * (s - 1);
            }
            return p > 0 ? (p, -q) : (-p, q);
        }
    }
}
