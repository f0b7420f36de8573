using System.Runtime.CompilerServices;
using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>Shapes that both phases share: orientation, small forces that do not depend on the phase.</summary>
internal static class Kinematics<T>
    where T : struct, IReal<T>
{
    /// <summary>Orientation from the step's first orientation and the rotation vector since.</summary>
    public static Mat3<T> R_LB(Quat<T> start, Vec3<T> turn) => start.Turned(turn).Matrix();

    /// <summary>
    /// A tensor of the ball with these principal moments, and a vector d, in the lane frame, turned since the start of the step by the state's rotation vector. With the first two columns e, f of the matrix the tensor is
    /// s_z 1 + (s_x - s_z) e eᵀ + (s_y - s_z) f fᵀ. All in one method: the compiler would not put one of this size into another.
    /// </summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public static void Turned(in Quat<T> start, in State<T> at, in Vec3<T> s, in Vec3<T> d, out Sym3<T> tensor, out Vec3<T> vector)
    {
        var q = start.Turned(at.TurnX, at.TurnY, at.TurnZ);
        T one = 1.0, qw = q.W, qx = q.X, qy = q.Y, qz = q.Z;
        T x2 = qx + qx, y2 = qy + qy, z2 = qz + qz;
        T wx = qw * x2, wy = qw * y2, wz = qw * z2;
        T ex = T.Fnma(qy, y2, T.Fnma(qz, z2, one)), ey = T.Fma(qx, y2, wz), ez = T.Fms(qx, z2, wy);
        T fx = T.Fms(qx, y2, wz), fy = T.Fnma(qx, x2, T.Fnma(qz, z2, one)), fz = T.Fma(qy, z2, wx);
        T gx = T.Fma(qx, z2, wy), gy = T.Fms(qy, z2, wx), gz = T.Fnma(qx, x2, T.Fnma(qy, y2, one));

        T dx = d.X, dy = d.Y, dz = d.Z;
        vector = new(T.Fma(ex, dx, T.Fma(fx, dy, gx * dz)), T.Fma(ey, dx, T.Fma(fy, dy, gy * dz)), T.Fma(ez, dx, T.Fma(fz, dy, gz * dz)));

        T least = s.Z, a = s.X - least, b = s.Y - least;
        T ax = a * ex, ay = a * ey, az = a * ez, bx = b * fx, by = b * fy, bz = b * fz;
        tensor = new(T.Fma(ax, ex, T.Fma(bx, fx, least)), T.Fma(ay, ey, T.Fma(by, fy, least)), T.Fma(az, ez, T.Fma(bz, fz, least)),
            T.Fma(ax, ey, bx * fy), T.Fma(ax, ez, bx * fz), T.Fma(ay, ez, by * fz));
    }

    /// <summary>The rate of the turn since the start of the step (see <see cref="Quat{T}.TurnRate"/>) and of the revolutions.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Turning(in State<T> y, T wx, T wy, T wz, out T turnX, out T turnY, out T turnZ, out T revolutions)
    {
        T x = y.TurnX, v = y.TurnY, z = y.TurnZ, half = -0.5;
        var c = Quat<T>.TurnSeries(T.Fma(x, x, T.Fma(v, v, z * z)));
        var cx = T.Fms(v, wz, z * wy);
        var cy = T.Fms(z, wx, x * wz);
        var cz = T.Fms(x, wy, v * wx);
        turnX = T.Fma(c, T.Fms(v, cz, z * cy), T.Fma(half, cx, wx));
        turnY = T.Fma(c, T.Fms(z, cx, x * cz), T.Fma(half, cy, wy));
        turnZ = T.Fma(c, T.Fms(x, cy, v * cx), T.Fma(half, cz, wz));
        revolutions = T.Sqrt(T.Fma(wx, wx, T.Fma(wy, wy, wz * wz))) * (1 / (2 * Math.PI));
    }

    /// <summary>Air drag and lift on Bo moving with v: D = -k |v| v + l ω × v.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Air(in Body<T> body, T vx, T vy, T ωx, T ωy, T ωz, out T x, out T y, out T z)
    {
        var k = -body.Drag * T.Sqrt(T.Fma(vx, vx, vy * vy));
        (x, y, z) = (k * vx, k * vy, 0.0);
        if (body.HasLift)
        {
            x = T.Fnma(body.Lift, ωz * vy, x);
            y = T.Fma(body.Lift, ωz * vx, y);
            z = body.Lift * T.Fms(ωx, vy, ωy * vx);
        }
    }

    /// <summary>
    /// Gravity along the lane with the push -g ∇h of a surface whose slope varies. It acts at Bcm, (rx, ry) from Bo, and the slope is read there: so the force has a potential, and the energy closes.
    /// </summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public static void OnSlope<TSurface>(in Body<T> body, ref TSurface surface, in State<T> y, T rx, T ry, out T gX, out T gY)
        where TSurface : struct, Friction.ISurface<T>
    {
        surface.Slopes(y.X + rx, y.Y + ry, out var across, out var along);
        gX = T.Fma(body.g.Z, across, body.g.X);
        gY = T.Fma(body.g.Z, along, body.g.Y);
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
