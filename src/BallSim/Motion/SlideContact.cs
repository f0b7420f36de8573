using System.Runtime.CompilerServices;
using BallSim.Friction;
using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>Everything that is known at an instant of sliding: kinematics from the state, then forces and accelerations by (M1) to (M6).</summary>
internal struct SlideContact<T>
    where T : struct, IReal<T>
{
    public Mat3<T> R_LB;
    public Sym3<T> InverseI_L;

    /// <summary>Angular velocity; Bo to Bcm; ω × r_d: all in the lane frame.</summary>
    public Vec3<T> ω, r_d, ωr_d;

    /// <summary>Velocity of Bo; slip of the contact point (M5) and its size.</summary>
    public T vx, vy, sx, sy, s;

    public Vec3<T> f, D, α, a_G, τ;
    public T N;

    /// <summary>Power of the friction force on the slip and of the small moments on the turn, W.</summary>
    public T FrictionPower;

    // Not inlined: with everything in one method the compiler runs out of its budget for inlining, and calls for each sum and product.
    [MethodImpl(MethodImplOptions.NoInlining)]
    public SlideContact(in Body<T> body, Quat<T> start, in State<T> y)
    {
        R_LB = Kinematics<T>.R_LB(start, y.Turn);
        InverseI_L = R_LB.Turned(body.InverseI_B);
        ω = InverseI_L * y.Momentum;
        r_d = R_LB * body.d_B;
        ωr_d = ω.Cross(r_d);
        vx = y.VelocityX - ωr_d.X;
        vy = y.VelocityY - ωr_d.Y;
        sx = T.Fma(-body.Radius, ω.Y, vx);
        sy = T.Fma(body.Radius, ω.X, vy);
        T tiny = 1e-60;
        s = T.Sqrt(T.Fma(sx, sx, T.Fma(sy, sy, tiny)));
        D = Kinematics<T>.Air(body, vx, vy, ω);
    }

    /// <summary>Forces for sliding along the unit vector (ex, ey) with friction coefficient μ; the slip itself may be zero.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public void Push(in Body<T> body, Vec3<T> momentum, T ex, T ey, T μ)
    {
        T one = 1.0;
        // Pivoting friction takes its share of the grip: |s|/√(s² + (8 r_c ω_z/3π)²), 1 when off.
        var w = body.PivotRadius * ω.Z * (8 / (3 * Math.PI));
        var μs = μ * s / T.Sqrt(T.Fma(s, s, w * w));
        var e = new Vec3<T>(-μs * ex, -μs * ey, one);

        var ρ = new Vec3<T>(-r_d.X, -r_d.Y, -(body.Radius + r_d.Z));
        var small = Kinematics<T>.SmallMoments(body, ω, μ, s);
        var a0 = InverseI_L * -(ω.Cross(momentum) + r_d.Cross(D));
        var b = InverseI_L * (ρ.Cross(e) + small);
        var ωωr_d = ω.Cross(ωr_d);

        // (M6): N from a_c · n = 0; only the n components of x × r_d are needed.
        var lift = body.Mass * (T.Fma(a0.X, r_d.Y, -(a0.Y * r_d.X)) + ωωr_d.Z - body.g.Z) - D.Z;
        N = lift / T.Fma(-body.Mass, T.Fma(b.X, r_d.Y, -(b.Y * r_d.X)), one);

        f = N * e;
        α = Vec3<T>.AddScaled(a0, N, b);
        var moments = N * small;
        τ = Vec3<T>.AddScaled(moments, -one, r_d.Cross(D));
        FrictionPower = T.Fma(f.X, sx, T.Fma(f.Y, sy, moments.Dot(ω)));
        a_G = body.g + body.InverseMass * (f + D);
    }

    /// <summary>Fresh fraction of the cover for the force last pushed with: its moment without the air's.</summary>
    public readonly T FreshCover(in Body<T> body, Vec3<T> momentum)
    {
        if (!body.HasFreshCover)
        {
            return 0.0;
        }
        var ρ = new Vec3<T>(-r_d.X, -r_d.Y, -(body.Radius + r_d.Z));
        return FreshCover<T>.Fraction(ω, InverseI_L * -ω.Cross(momentum), InverseI_L * ρ.Cross(f), body.Radius, body.ContactRadius);
    }

    /// <summary>Moment of all forces about Bcm.</summary>
    public readonly Vec3<T> Moment(in Body<T> body)
    {
        var ρ = new Vec3<T>(-r_d.X, -r_d.Y, -(body.Radius + r_d.Z));
        return ρ.Cross(f) + τ;
    }

    /// <summary>Horizontal acceleration of the slip: ds/dt = a_c + α × (-R n).</summary>
    public readonly (T X, T Y) SlipRate(in Body<T> body)
    {
        var a_c = a_G - (α.Cross(r_d) + ω.Cross(ωr_d));
        return (T.Fma(-body.Radius, α.Y, a_c.X), T.Fma(body.Radius, α.X, a_c.Y));
    }
}
