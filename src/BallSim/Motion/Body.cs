using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>What the equations need to know of a ball, its air and its weight: constants of one shot.</summary>
internal struct Body<T>
    where T : struct, IReal<T>
{
    public T Mass, InverseMass, Radius;

    /// <summary>Inertia about Bcm in the ball frame, and its inverse.</summary>
    public Sym3<T> I_B, InverseI_B;

    /// <summary>Bo to Bcm in the ball frame.</summary>
    public Vec3<T> d_B;

    /// <summary>Gravity in the lane frame with the slope's push -g ∇h added, m/s².</summary>
    public Vec3<T> g;

    /// <summary>D = -Drag |v| v + Lift ω × v: ½ ρ C_d π R² in kg/m, and the Magnus factor in kg.</summary>
    public T Drag, Lift;

    /// <summary>c_rr, a number; 0 is off.</summary>
    public T RollingResistance;

    /// <summary>Whether oil stays on the cover, and whether the track moves onto fresh cover (else it never does).</summary>
    public bool HasCoverOil, HasFreshCover;

    /// <summary>φ_s, a number; k_abs, 1/s; r_c, m.</summary>
    public T PickUp, Absorption, ContactRadius;

    /// <summary>Contact radius of the pivoting friction, m; 0 is off.</summary>
    public T PivotRadius;
}
