using System.Runtime.CompilerServices;
using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>Shapes that both phases share: orientation, small forces that do not depend on the phase.</summary>
internal static class Kinematics<T>
    where T : struct, IReal<T>
{
    /// <summary>Orientation from the step's first orientation and the rotation vector since.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public static Mat3<T> R_LB(Quat<T> start, Vec3<T> turn) => (Quat<T>.Exp(turn) * start).Matrix();

    /// <summary>Air drag and lift on Bo moving with v: D = -k |v| v + l ω × v.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vec3<T> Air(in Body<T> body, T vx, T vy, Vec3<T> ω)
    {
        var k = -body.Drag * T.Sqrt(T.Fma(vx, vx, vy * vy));
        return new(
            T.Fma(k, vx, -(body.Lift * ω.Z * vy)),
            T.Fma(k, vy, body.Lift * ω.Z * vx),
            body.Lift * T.Fma(ω.X, vy, -(ω.Y * vx)));
    }

    /// <summary>
    /// The moments that grow with the normal force, divided by it: rolling resistance -c R ω_h/|ω_h|, and pivoting friction about the normal,
    /// -(3π/16) μ r_c · r_c ω_z/√((r_c ω_z)² + (15π s/16)²).
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vec3<T> SmallMoments(in Body<T> body, Vec3<T> ω, T μ, T slip)
    {
        // Both are dry friction: at rest their direction has no meaning. Below a milliradian a second they fade out instead of turning round at every step.
        T rest = 1e-3 * 1e-3, tiny = 1e-30;
        var c = -body.RollingResistance * body.Radius / T.Sqrt(T.Fma(ω.X, ω.X, T.Fma(ω.Y, ω.Y, rest)));
        var w = body.PivotRadius * ω.Z;
        var shear = slip * (15 * Math.PI / 16);
        var p = -(μ * body.PivotRadius * (3 * Math.PI / 16)) * w / T.Sqrt(T.Fma(w, w, T.Fma(shear, shear, T.Fma(body.PivotRadius * body.PivotRadius, rest, tiny))));
        return new(c * ω.X, c * ω.Y, p);
    }
}
