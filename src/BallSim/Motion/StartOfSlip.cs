using System.Runtime.CompilerServices;
using BallSim.Friction;
using BallSim.Integration;
using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>
/// From rolling to sliding, for every driver. s = 0 is a fixed point of the sliding equations, so the ball rolls on a short time past the limit of grip, and half (after a jump, all) of the acceleration that sliding adds in that
/// time is given to it, along the direction to which the contact's own response is parallel.
/// </summary>
internal static class StartOfSlip<T, TSurface>
    where T : struct, IReal<T>
    where TSurface : struct, ISurface<T>
{
    /// <summary>How long it rolls on, s.</summary>
    public static T Seconds(in Control<T> control, bool jump) => jump ? 1e-3 * control.SlipStart : control.SlipStart;

    /// <summary>Rolls on for so long from a state and an orientation; the grip is that at the start and becomes that at the end.</summary>
    public static void RollPast(ref Roll<T, TSurface> roll, ref Step<State<T>> step, in State<T> y, in Quat<T> q, T time, ref Grip<T> grip)
    {
        roll.Start = q;
        roll.ByDistance = false;
        roll.Surface.Roam();
        step.Start = y;
        roll.Rates(y, out step.K1);
        var held = grip;
        roll.Take(ref step, time, out _);
        roll.Arrive(ref step, time, held, out grip);
    }

    /// <summary>Gives a ball that has rolled on for so long the slip that it would have by then: from a state of rolling to one of sliding.</summary>
    public static void Push(ref Roll<T, TSurface> roll, ref Slide<T, TSurface> slide, ref State<T> y, in Quat<T> q, T time, bool jump)
    {
        roll.Start = slide.Start = q;
        roll.Contact(y, out var pressed, out _);
        T share = jump ? 1.0 : 0.5;
        var a_held = pressed.α.Cross(new(pressed.r_d.X, pressed.r_d.Y, pressed.arm)) + pressed.ω.Cross(new(pressed.ωrx, pressed.ωry, pressed.ωrz));

        // The sliding state at rest slip: same velocities, other variables.
        y.Momentum = pressed.I_L * pressed.ω;
        (y.VelocityX, y.VelocityY) = (pressed.vx + pressed.ωrx, pressed.vy + pressed.ωry);
        slide.Surface.Roam();
        Unsafe.SkipInit(out SlideContact<T> c);
        c.At(slide.Body, q, y);
        // At zero slip pivoting would take the whole grip: push as at a slip where it takes none.
        c.s = 1.0;
        (c.ex, c.ey) = (-pressed.fx / pressed.Demand, -pressed.fy / pressed.Demand);
        PushAlongSlip(ref slide, y, ref c);
        var kick = share * time;
        var Δω = kick * (c.α - pressed.α);
        y.Momentum = y.Momentum + pressed.I_L * Δω;
        y.VelocityX = T.Fma(kick, c.ax - a_held.X, y.VelocityX);
        y.VelocityY = T.Fma(kick, c.ay - a_held.Y, y.VelocityY);
        (slide.Seen.VelocityX, slide.Seen.VelocityY) = (c.vx, c.vy);
    }

    // Pushes along the unit vector to which the slip acceleration that friction against it leaves is parallel, from that of the contact: Newton on the angle, the derivative known but for small terms.
    private static void PushAlongSlip(ref Slide<T, TSurface> slide, in State<T> y, ref SlideContact<T> c)
    {
        const int MostTurns = 20;
        T zero = 0.0, one = 1.0, least = 1e-3 * T.Sliver, turns = one, compliance = Compliance(slide.Body);
        for (var i = 0; ; i++)
        {
            slide.Push(ref c, y, zero, out var cover);
            if (!T.Any(turns) || i == MostTurns)
            {
                return;
            }
            var (ax, ay) = c.SlipRate(slide.Body);
            var (ex, ey) = (c.ex, c.ey);
            var across = T.Fms(ex, ay, ey * ax);
            var along = T.Max(T.Fma(ex, ax, ey * ay), zero);
            var turn = across / (cover.Friction * c.N * compliance + along);
            var (tx, ty) = (ex - turn * ey, ey + turn * ex);
            var norm = T.Sqrt(T.Fma(tx, tx, ty * ty));
            // Who has come to rest stays as he is, whatever his neighbours do.
            (c.ex, c.ey) = (T.IfLess(zero, turns, tx / norm, ex), T.IfLess(zero, turns, ty / norm, ey));
            turns = T.IfLess(T.Abs(turn), least, zero, turns);
        }
    }

    // Slip acceleration per unit of tangential force, for a ball with all its inertia in the smallest moment.
    private static T Compliance(in Body<T> body) => body.InverseMass + body.Radius * body.Radius / T.Min(body.Moments.X, T.Min(body.Moments.Y, body.Moments.Z));
}
