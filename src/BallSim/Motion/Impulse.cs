using System.Runtime.CompilerServices;
using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>The end of slip.</summary>
internal static class Impulse<T>
    where T : struct, IReal<T>
{
    /// <summary>Takes what slip remains by an impulse at the contact, which leaves the momentum about the contact point alone: from a state of sliding to one of rolling. (vx, vy): velocity of Bo after it.</summary>
    public static void Stick(in Body<T> body, in Quat<T> q, ref State<T> y, out T vx, out T vy)
    {
        Unsafe.SkipInit(out SlideContact<T> c);
        c.At(body, q, y);
        var momentum = y.Momentum;
        T radius = body.Radius;
        var σ = new Vec3<T>(c.r_d.X, c.r_d.Y, c.r_d.Z + radius);
        var v_G = new Vec3<T>(y.VelocityX, y.VelocityY, c.ωr_d.Z);
        y.Momentum = momentum + body.Mass * σ.Cross(v_G);
        T zero = 0.0;
        (y.VelocityX, y.VelocityY) = (zero, zero);
        // What the impulse takes is work of friction: the difference of the kinetic energies.
        Unsafe.SkipInit(out RollContact<T> held);
        held.At(body, q, y);
        T half = 0.5;
        var lost = body.Mass * (held.v_G.Dot(held.v_G) - v_G.Dot(v_G)) + held.ω.Dot(held.I_L * held.ω) - c.ω.Dot(momentum);
        y.FrictionWork = T.Fma(half, lost, y.FrictionWork);
        (vx, vy) = (held.vx, held.vy);
    }
}
