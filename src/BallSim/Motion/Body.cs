using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>What the equations need to know of a ball, its air and its weight: constants of one shot.</summary>
internal struct Body<T>
    where T : struct, IReal<T>
{
    public T Mass, InverseMass, Radius;

    /// <summary>Principal moments of inertia about Bcm and their inverses. The equations' body frame is that of the principal axes, in which the tensor turns with half the work.</summary>
    public Vec3<T> Moments, InverseMoments;

    /// <summary>Takes vectors of the principal axes to the ball frame.</summary>
    public Quat<T> Axes;

    /// <summary>Bo to Bcm, along the principal axes.</summary>
    public Vec3<T> d_P;

    /// <summary>Gravity in the lane frame with the push -g ∇h of a lane tilted as a whole added, m/s²; a slope that varies is added at each place.</summary>
    public Vec3<T> g;

    /// <summary>D = -Drag |v| v + Lift ω × v: ½ ρ C_d π R² in kg/m, and the Magnus factor in kg.</summary>
    public T Drag, Lift;

    /// <summary>c_rr, a number; 0 is off.</summary>
    public T RollingResistance;

    /// <summary>φ_s, a number; k_abs, 1/s; r_c, m.</summary>
    public T PickUp, Absorption, ContactRadius;

    /// <summary>Contact radius of the pivoting friction, m; 0 is off.</summary>
    public T PivotRadius;

    /// <summary>What acts beside weight, friction and drag. It stands last: the numbers before it can be moved to a lane as they are.</summary>
    public Effects Effects;

    /// <summary>Whether there is a Magnus force.</summary>
    public readonly bool HasLift => (Effects & Effects.Lift) != 0;

    /// <summary>Whether moments that grow with the normal force act (rolling resistance, pivoting friction).</summary>
    public readonly bool HasSmallMoments => (Effects & Effects.SmallMoments) != 0;

    /// <summary>Whether oil stays on the cover.</summary>
    public readonly bool HasCoverOil => (Effects & Effects.CoverOil) != 0;

    /// <summary>Whether the track moves onto fresh cover (else it never does).</summary>
    public readonly bool HasFreshCover => (Effects & Effects.FreshCover) != 0;

    /// <summary>Whether all of the oil on the cover comes back to the contact.</summary>
    public readonly bool IsNeverFresh => HasCoverOil && !HasFreshCover;

    /// <summary>Whether the dips of the fresh fraction and the oil on the cover are left out of the stages of a step and made whole at its end.</summary>
    public readonly bool HasDips => (Effects & Effects.Dips) != 0;

    /// <summary>Whether they are foreseen by the stages and summed from the law itself besides.</summary>
    public readonly bool HasFineDips => (Effects & Effects.FineDips) != 0;

    /// <summary>The body as the equations see it at a tolerance.</summary>
    public readonly Body<T> At(double tolerance)
    {
        var body = this;
        body.Effects |= Control<T>.Mends(tolerance, body);
        return body;
    }

    /// <summary>How many numbers there are.</summary>
    public const int Numbers = 26;
}
