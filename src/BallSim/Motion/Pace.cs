using System.Runtime.CompilerServices;
using BallSim.Integration;
using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>
/// How long a step may be and what follows from its error, without branches: the driver of one shot and that of many side by side plan and judge their steps by the same operations, so that a lane repeats the shot to
/// the last bit. A flag is 1 or 0.
/// </summary>
internal static class Pace<T>
    where T : struct, IReal<T>
{
    /// <summary>A step turns the ball by at most this, rad, so that the rotation vector stays where its series hold, and what swings with the turn is followed.</summary>
    public const double MaxTurn = 3.8;

    /// <summary>The same while it rolls: the demand swings twice a turn, three stages tell how (see <see cref="Swing{T}"/>), and a step is shortened to where it passes the limit of grip.</summary>
    public const double MaxTurnWhileRolling = 2.5;

    // No contact slows the slip of a ball faster than this, m/s²: below this times the step, the end of sliding may be near.
    private const double StickingDeceleration = 40;

    /// <summary>A step in time that does not turn the ball too far.</summary>
    public static T CapTurn(T dt, Vec3<T> ω, double maxTurn = MaxTurn) => CapTurn(dt, ω, (T)maxTurn);

    /// <summary>The same for a bound of a shot's own.</summary>
    public static T CapTurn(T dt, Vec3<T> ω, T maxTurn) => T.Min(dt, maxTurn / (T.Sqrt(ω.Dot(ω)) + 1e-9));

    /// <summary>A step down-lane from one in time, ended on the next line that a step must not cross; two equal steps rather than a long one and a sliver.</summary>
    public static T ByDistance(T dt, T vy, T left, out T atEnd)
    {
        T one = 1.0, zero = 0.0;
        var almost = left - T.Sliver;
        var half = left * 0.5;
        var h = dt * vy;
        atEnd = T.IfLess(almost, h, one, zero);
        return T.IfLess(almost, h, left, T.IfLess(half, h, half, h));
    }

    /// <summary>
    /// The next line, from (x, y) with the slope dx/dy: the end of the map's row; where the head pin can first be touched, so that the last step is short; where it will be touched, as the ball goes now, or else the pins.
    /// </summary>
    public static T NextLine(T x, T y, T slope, T rowEnd, in Bounds<T> bounds)
    {
        T one = 1.0, zero = 0.0;
        var first = bounds.PinsAt - bounds.TouchDistance;
        var last = T.IfLess(y, first - T.Sliver, zero, one);
        return T.Min(rowEnd, T.Any(last) ? T.IfLess(zero, last, Touch(x, y, slope, bounds), first) : first);
    }

    // Where a ball that went straight on would touch the head pin; the pins, where it would not, or hardly.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private static T Touch(T x, T y, T slope, in Bounds<T> bounds)
    {
        const double Graze = 0.02;
        T one = 1.0, zero = 0.0;
        // x = b + slope u at u before the pins, x² + u² = r².
        var u = y - bounds.PinsAt;
        var b = T.Fnma(slope, u, x);
        var square = T.Fma(slope, slope, one);
        var reach = bounds.TouchDistance * bounds.TouchDistance;
        var under = T.Fms(reach, square, b * b);
        var touch = -(T.Fma(b, slope, T.Sqrt(T.Max(under, zero))) / square);
        return bounds.PinsAt + T.IfLess(reach * Graze, under, T.IfLess(u + T.Sliver, touch, touch, zero), zero);
    }

    /// <summary>
    /// Where a step that ended on a line enters the map: beyond the row's end if that was the line (the other lines lie inside a row), a hair further on, so that the rounding of y does not matter. No row is narrower than the hair.
    /// </summary>
    public static T EntersAt(T y, T rowEnd) => T.IfLess(rowEnd - y, T.Sliver + T.Sliver, rowEnd, y) + Hair;

    /// <summary>A place in the row that ends there, whatever the rounding of y.</summary>
    public static T Within(T y, T rowEnd)
    {
        T far = 1e30;
        return T.IfLess(rowEnd, far, rowEnd - Hair, y + Hair);
    }

    /// <summary>See <see cref="EntersAt"/>, m.</summary>
    public const double Hair = 2e-5;

    /// <summary>Whether the slip may come to its end within so many seconds.</summary>
    public static T MayStick(T slip, T seconds)
    {
        T one = 1.0, zero = 0.0;
        return T.IfLess(slip, seconds * StickingDeceleration, one, zero);
    }

    /// <summary>Whether a step of this error norm must be taken again, and the next step in time; a step that was cut short (by a row, a cap) says nothing against the longer one planned.
    /// The next step is coarse: where steps are as long as they are stable for, how long they become says little, and a last bit at the start would come back as micrometres.</summary>
    public static T Next(T norm, T before, T planned, T taken, out T rejected)
    {
        T one = 1.0, zero = 0.0;
        var factor = Factor(norm, before);
        rejected = T.IfLess(one, norm, one, zero);
        var grown = T.IfLess(one, factor, T.Max(planned, taken * factor), taken * factor);
        return Coarse(T.IfLess(one, norm, taken * T.Min(factor, 0.8), grown));
    }

    /// <summary>A time to seven binary digits, near enough to the closest. A step that has been coarse stays as it is, whatever the last bit of it.</summary>
    public static T Coarse(T dt) => T.Coarse(dt * (1 + 1.0 / 256));

    /// <summary>
    /// The next step as a multiple of the last, for a method whose estimate is of fifth order: 0.75 norm^(-1/6) before^(1/24), within [0.2, 4]. The error before it steadies the choice (proportional-integral control,
    /// K. Gustafsson, ACM Trans. Math. Softw. 17 (1991) 533). The powers are rough, by up to five per cent: they only choose a step.
    /// </summary>
    public static T Factor(T norm, T before)
    {
        // 1e12^(1/6) = 100.
        var now = 100.0 * T.InverseSixthRootGuess((norm + 1e-10) * 1e12);
        var last = 100.0 * T.InverseSixthRootGuess((before + 1e-4) * 1e12);
        return T.Max(0.2, T.Min(4.0, 0.75 * now / T.Sqrt(T.Sqrt(last))));
    }

    /// <summary>The pin may be grazed, or the edge passed, between the ends of a step that comes within this, m.</summary>
    public const double Graze = 0.05;

    /// <summary>Whether a step that has been taken may reach an end of the run: one is passed at its end, or the ball turns round close to the edge, or the pin is near.</summary>
    public static T MayEnd(in Step<State<T>> s, in Bounds<T> bounds) => MayEnd(s.End, s.K1.X, s.K7.X, bounds);

    /// <summary>The same of a step to an end, with the rates of x at its start and there.</summary>
    public static T MayEnd(in State<T> end, T first, T last, in Bounds<T> bounds) => MayEnd(end, first, last, bounds, Graze);

    /// <summary>The same of drifting on for so many seconds as was last seen: no farther than the way there does anything between its ends come.</summary>
    public static T MayEnd(in Seen<T> seen, T seconds, in State<T> y, in Bounds<T> bounds) =>
        MayEnd(seen.After(seconds, y), seen.VelocityX, seen.VelocityX, bounds, T.Min(Graze, seconds * (T.Abs(seen.VelocityX) + T.Abs(seen.VelocityY))));

    private static T MayEnd(in State<T> end, T first, T last, in Bounds<T> bounds, T graze)
    {
        T one = 1.0, zero = 0.0;
        var outside = T.Abs(end.X) - bounds.HalfWidth;
        var turns = T.IfLess(zero, first * last, zero, one);
        var gutter = T.IfLess(outside, zero, T.IfLess(-graze, outside, turns, zero), one);
        var away = end.Y - bounds.PinsAt;
        var reach = bounds.TouchDistance + graze;
        // Up to the line where it could first be touched, it is not.
        var beyond = T.IfLess(T.Sliver - bounds.TouchDistance, away, one, zero);
        var pin = T.IfLess(reach * reach, T.Fma(end.X, end.X, away * away), zero, beyond);
        var passed = T.IfLess(away, -T.Sliver, zero, one);
        var back = T.IfLess(bounds.BackAt, end.Y, zero, one);
        var late = T.IfLess(end.Time, bounds.MaxTime, zero, one);
        return T.Max(T.Max(gutter, pin), T.Max(passed, T.Max(back, late)));
    }

    /// <summary>
    /// Whether a step has come to no numbers, or none to go on with. Some steps are taken over a given length and not judged: to an event, or a moment past the limit of grip. For a ball like no other (a bead as heavy as a bowling ball)
    /// that may be too long for the numbers. The last slopes count too: they make no part of the end, but of the way there, and they are the first of the next step. Of one shot.
    /// </summary>
    public static bool IsLost(in Step<State<T>> step) => T.Any(Lost(step));

    /// <summary>The same as a flag.</summary>
    public static T Lost(in Step<State<T>> step)
    {
        ref readonly var e = ref step.End;
        ref readonly var k = ref step.K7;
        var sum = e.X + e.Y + (e.VelocityX + e.VelocityY) + (e.MomentumX + e.MomentumY + e.MomentumZ) + (k.VelocityX + k.VelocityY) + (k.MomentumX + k.MomentumY + k.MomentumZ);
        T most = 1e30, zero = 0.0, one = 1.0;
        return T.IfLess(T.Abs(sum), most, zero, one);
    }
}
