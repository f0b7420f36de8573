using System.Runtime.CompilerServices;
using BallSim.Friction;
using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>Everything that is known at an instant of rolling: kinematics from the momentum about the contact point, then the contact force by (M7).</summary>
internal struct RollContact<T>
    where T : struct, IReal<T>
{
    public Mat3<T> R_LB;

    /// <summary>Inertia about Bcm, and the inverse of the inertia about the contact point, both in the lane frame.</summary>
    public Sym3<T> I_L, InverseJ_L;

    /// <summary>Angular velocity; Bo to Bcm; contact to Bcm (-ρ); ω × r_d; velocity of Bcm.</summary>
    public Vec3<T> ω, r_d, σ, ωr_d, v_G;

    public T vx, vy;
    public Vec3<T> D, f, α;
    public T N;

    // Not inlined, as in SlideContact.
    [MethodImpl(MethodImplOptions.NoInlining)]
    public RollContact(in Body<T> body, Quat<T> start, in State<T> y)
    {
        R_LB = Kinematics<T>.R_LB(start, y.Turn);
        r_d = R_LB * body.d_B;
        σ = new(r_d.X, r_d.Y, r_d.Z + body.Radius);
        I_L = R_LB.Turned(body.I_B);
        InverseJ_L = I_L.AtArm(body.Mass, σ).Inverse();
        ω = InverseJ_L * y.Momentum;
        vx = body.Radius * ω.Y;
        vy = -body.Radius * ω.X;
        ωr_d = ω.Cross(r_d);
        v_G = new(vx + ωr_d.X, vy + ωr_d.Y, ωr_d.Z);
        D = Kinematics<T>.Air(body, vx, vy, ω);
    }

    /// <summary>
    /// (M7): (I + m(σ² - σσᵀ)) α = -ω × (I ω) - m σ × (ω × (ω × r_d) - g) + R n × D + N small, f = m (α × σ + ω × (ω × r_d) - g) - D; the small moments grow with N,
    /// which is linear in α.
    /// </summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public void Hold(in Body<T> body, Vec3<T> small)
    {
        T one = 1.0;
        var c = ω.Cross(ωr_d) - body.g;
        var rhs = -(ω.Cross(I_L * ω) + body.Mass * σ.Cross(c));
        rhs = new(T.Fma(-body.Radius, D.Y, rhs.X), T.Fma(body.Radius, D.X, rhs.Y), rhs.Z);
        var α0 = InverseJ_L * rhs;
        var α1 = InverseJ_L * small;
        // N = n · f with α = α0 + N α1.
        var lift = body.Mass * (T.Fma(α0.X, σ.Y, -(α0.Y * σ.X)) + c.Z) - D.Z;
        N = lift / T.Fma(-body.Mass, T.Fma(α1.X, σ.Y, -(α1.Y * σ.X)), one);
        α = Vec3<T>.AddScaled(α0, N, α1);
        f = body.Mass * (α.Cross(σ) + c) - D;
    }

    /// <summary>Fresh fraction of the cover for the force that holds.</summary>
    public readonly T FreshCover(in Body<T> body)
    {
        if (!body.HasFreshCover)
        {
            return 0.0;
        }
        var InverseI_L = R_LB.Turned(body.InverseI_B);
        return FreshCover<T>.Fraction(ω, InverseI_L * -ω.Cross(I_L * ω), InverseI_L * f.Cross(σ), body.Radius, body.ContactRadius);
    }

    /// <summary>The same motion in the variables of sliding: velocity of Bcm and momentum about it.</summary>
    public readonly State<T> Sliding(in State<T> y) => y with { VelocityX = v_G.X, VelocityY = v_G.Y, Momentum = I_L * ω };

    /// <summary>The tangential force that rolling asks of the contact.</summary>
    public readonly T Demand => T.Sqrt(T.Fma(f.X, f.X, f.Y * f.Y));
}
