using BallSim.Balls;
using BallSim.Spatial;

namespace BallSim.Shots;

/// <summary>
/// A free body that spins, in closed form: what <see cref="SpinTest"/> integrates without dissipation. The spin axis goes round a closed
/// curve in the ball, the polhode, about the axis of greatest or of least inertia; only on the separatrix between the two families does it
/// end, at the middle axis.
/// </summary>
/// <remarks>
/// <para>With the axes a, b, c right-handed, b that of the middle moment and c the one the spin circles, E the energy, L the
/// momentum,</para>
/// <code>
/// ω_a = A cn τ,  ω_b = B sn τ,  ω_c = C dn τ,  τ = τ₀ + n t
/// n² = (I_c - I_b)(L² - 2E I_a)/(I_a I_b I_c),  m = (I_b - I_a)(2E I_c - L²)/((I_c - I_b)(L² - 2E I_a))
/// </code>
/// <para>(L. D. Landau and E. M. Lifshitz, Mechanics, s. 37; NIST DLMF ch. 22). Axis a never meets L, so that its azimuth about L gives the
/// orientation:</para>
/// <code>
/// dψ/dt = |L| (2E - I_a ω_a²)/(L² - I_a² ω_a²)      an elliptic integral of the third kind
/// </code>
/// </remarks>
public sealed record TorqueFreeSpin
{
    private readonly double rate, m1, τ0, quarter;
    private readonly Vector3D ea, eb, ec;
    private readonly double A, B, C, Ia;

    // ψ = |L| t/I_a + (gain/rate) [Π(τ) - Π(τ₀)], Π the integral of 1/(1 + bend sn²).
    private readonly double gain, bend, startThird;
    private readonly Vector3D alongL, towardsA;

    private TorqueFreeSpin(InertiaTensor inertia, Vector3D angularVelocity, Rotation orientation)
    {
        Inertia = inertia;
        StartOrientation = orientation;
        var axes = inertia.Principal;
        var (I1, I2, I3) = (axes.LeastMoment, axes.MiddleMoment, axes.GreatestMoment);
        var (w1, w2, w3) = (angularVelocity.Dot(axes.Least), angularVelocity.Dot(axes.Middle), angularVelocity.Dot(axes.Greatest));

        // I₃ (I₃ - I₂) ω₃² - I₁ (I₂ - I₁) ω₁² = L² - 2E I₂ tells the families apart. It cancels near the separatrix: taken with twice the
        // digits.
        static Exact Term(Exact moment, Exact difference, Exact w) => moment * difference * (w * w);
        var (upper, lower) = (Term(I3, (Exact)I3 - I2, w3), Term(I1, (Exact)I2 - I1, w1));
        var side = (double)(upper - lower);
        // Within the rounding of the given numbers it is the separatrix itself: otherwise chance would decide when the spin turns over.
        // The half-ulp of every number, carried to the difference:
        var rounding = Math.ScaleB(1, -53) * (I3 * w3 * w3 * (2 * I3 + 2 * I2) + I1 * w1 * w1 * (2 * I1 + 2 * I2) + 2 * (double)(upper + lower));
        var onSeparatrix = (double)upper > 0 && (double)lower > 0 && Math.Abs(side) <= rounding;
        var circlesGreatest = side >= 0;
        CirclesGreatestAxis = !onSeparatrix && side > 0;
        CirclesLeastAxis = !onSeparatrix && side < 0;

        (ea, ec) = circlesGreatest ? (axes.Least, axes.Greatest) : (axes.Greatest, axes.Least);
        eb = ec.Cross(ea);
        var (a, b, c) = circlesGreatest ? (I1, I2, I3) : (I3, I2, I1);
        Ia = a;
        var (wa, wb, wc) = circlesGreatest ? (w1, angularVelocity.Dot(eb), w3) : (w3, angularVelocity.Dot(eb), w1);
        // Everything from the start's components, so that nothing cancels: 2E I_c - L² and L² - 2E I_a as sums of one sign.
        var toC = a * (c - a) * wa * wa + b * (c - b) * wb * wb;
        var toA = b * (b - a) * wb * wb + c * (c - a) * wc * wc;
        rate = Math.Sqrt(Math.Max((c - b) * toA / (a * b * c), 0));
        IsSteady = rate == 0 || (wa == 0 && wb == 0) || (wa == 0 && wc == 0);
        var momentum = inertia.Apply(angularVelocity);
        Momentum = orientation.Apply(momentum);
        alongL = Momentum.Unit;
        Energy = 0.5 * angularVelocity.Dot(momentum);
        if (IsSteady)
        {
            (A, B, C) = (wa, wb, wc);
            Period = null;
            return;
        }
        m1 = onSeparatrix ? 0 : Math.Min(Math.Abs((c - a) * side / ((c - b) * toA)), 1);
        quarter = JacobiElliptic.QuarterPeriod(m1);
        Period = onSeparatrix ? null : 4 * quarter / rate;
        A = Math.Sqrt(toC / (a * (c - a)));
        B = Math.Sqrt(toC / (b * (c - b)));
        C = Math.CopySign(Math.Sqrt(toA / (c * (c - a))), wc);
        if (onSeparatrix)
        {
            // There cn has one sign for ever.
            A = Math.CopySign(A, wa);
        }
        // The sense of the motion: I_b dω_b/dt = (I_c - I_a) ω_c ω_a.
        B = Math.CopySign(B, (c - a) * C * A);
        var (sin, cos) = (wb / B, wa / A);
        τ0 = onSeparatrix
            ? Math.Asinh(sin / cos)
            : cos >= 0 ? JacobiElliptic.First(sin, cos, m1) : Math.CopySign(2 * quarter, sin) - JacobiElliptic.First(sin, -cos, m1);

        // At cn = 1 there is no ω_b and ω_c = C: L² - I_a² A² = I_c² C² and 2E - I_a A² = I_c C².
        bend = a * a * A * A / (c * c * C * C);
        gain = momentum.Length * (1 / c - 1 / a);
        var ofA = orientation.Apply(ea);
        towardsA = alongL.Cross(ofA).Cross(alongL).Unit;
        startThird = Third(τ0);
    }

    /// <summary>A free ball from its spin at the start.</summary>
    /// <param name="ball">The ball.</param>
    /// <param name="angularVelocity">Angular velocity at the start in the ball frame, rad/s, not zero.</param>
    /// <param name="orientation">Ball frame to lane frame at the start; null: the two coincide.</param>
    public static TorqueFreeSpin Of(Ball ball, Vector3D angularVelocity, Rotation? orientation = null)
    {
        ArgumentNullException.ThrowIfNull(ball);
        return Of(ball.Inertia, angularVelocity, orientation);
    }

    /// <summary>A free body from its inertia and its spin at the start.</summary>
    /// <param name="inertia">Tensor about the centre of mass in the ball frame, kg m², positive definite.</param>
    /// <param name="angularVelocity">Angular velocity at the start in the ball frame, rad/s, not zero.</param>
    /// <param name="orientation">Ball frame to lane frame at the start; null: the two coincide.</param>
    public static TorqueFreeSpin Of(InertiaTensor inertia, Vector3D angularVelocity, Rotation? orientation = null)
    {
        Check.Finite(angularVelocity);
        Check.Range(angularVelocity.Length, 1e-6, 1e6, Quantity.SpinRate, nameof(angularVelocity));
        Check.That(inertia.IsFinite && inertia.Principal.LeastMoment > 0,
            "inertia is not positive definite; no body has such a tensor", nameof(inertia));
        var start = orientation ?? Rotation.Identity;
        Check.That(Math.Abs(start.Norm - 1) < 1e-6,
            $"orientation has the length {Check.Text(start.Norm)}; a rotation is a unit quaternion", nameof(orientation));
        return new(inertia, angularVelocity, start.Normalised);
    }

    /// <summary>The tensor, kg m², ball frame.</summary>
    public InertiaTensor Inertia { get; }

    /// <summary>Orientation at the start, ball frame to lane frame.</summary>
    public Rotation StartOrientation { get; }

    /// <summary>Angular momentum in the lane frame, kg m²/s, constant.</summary>
    public Vector3D Momentum { get; }

    /// <summary>Kinetic energy, J, constant.</summary>
    public double Energy { get; }

    /// <summary>True if the polhode goes round the axis of greatest inertia.</summary>
    public bool CirclesGreatestAxis { get; }

    /// <summary>
    /// True if the polhode goes round the axis of least inertia. Neither: the separatrix, or a body to which all axes are alike.
    /// </summary>
    public bool CirclesLeastAxis { get; }

    /// <summary>True if the spin axis stays where it is: about a principal axis, or any axis of a body to which it is one.</summary>
    public bool IsSteady { get; }

    /// <summary>
    /// Time in which the spin axis goes once round in the ball, s; null where it stays, and on the separatrix, where it never comes round.
    /// </summary>
    public double? Period { get; }

    /// <summary>Angular velocity in the ball frame at a time, rad/s.</summary>
    /// <param name="time">s since the start, any sign.</param>
    public Vector3D AngularVelocityInBall(double time)
    {
        if (IsSteady)
        {
            return A * ea + B * eb + C * ec;
        }
        var (sn, cn, dn) = Functions(τ0 + rate * time);
        return A * cn * ea + B * sn * eb + C * dn * ec;
    }

    /// <summary>Orientation at a time, ball frame to lane frame.</summary>
    /// <param name="time">s since the start, any sign.</param>
    public Rotation Orientation(double time)
    {
        if (IsSteady)
        {
            var ω = AngularVelocityInBall(time);
            return StartOrientation * Rotation.About(ω, ω.Length * time);
        }
        var inBall = Inertia.Apply(AngularVelocityInBall(time)).Unit;
        var ψ = Momentum.Length * time / Ia + gain / rate * (Third(τ0 + rate * time) - startThird);
        var azimuth = Math.Cos(ψ) * towardsA + Math.Sin(ψ) * alongL.Cross(towardsA);
        return Rotation.Between(inBall, inBall.Cross(ea).Cross(inBall).Unit, alongL, azimuth);
    }

    /// <summary>
    /// The polhode: directions of the spin axis in the ball, unit vectors, at equal steps of time over one period, first and last the same
    /// point. Where the spin is steady all are the same; on the separatrix the curve runs over the time in which all but a millionth of it
    /// is passed.
    /// </summary>
    /// <param name="count">Number of points, 2 to 1 000 000.</param>
    public IReadOnlyList<Vector3D> Polhode(int count)
    {
        Check.Range(count, 2, 1_000_000, Quantity.Number);
        // sech 15 is 6e-7.
        var (from, span) = Period is { } p ? (0, p) : IsSteady ? (0, 0) : ((-15 - τ0) / rate, 30 / rate);
        return [.. Enumerable.Range(0, count).Select(i => AngularVelocityInBall(from + span * i / (count - 1.0)).Unit)];
    }

    // sn, cn, dn of any argument: whole half periods are taken off, each of which turns the signs of sn and cn.
    private (double Sn, double Cn, double Dn) Functions(double τ)
    {
        if (m1 == 0)
        {
            return JacobiElliptic.InQuarter(τ, 0);
        }
        var halves = Math.Round(τ / (2 * quarter));
        var (sn, cn, dn) = JacobiElliptic.InQuarter(Math.Clamp(τ - 2 * quarter * halves, -quarter, quarter), m1);
        var sign = Math.IEEERemainder(halves, 2) == 0 ? 1 : -1;
        return (sign * sn, sign * cn, dn);
    }

    private double Third(double τ)
    {
        if (m1 == 0)
        {
            // With sn = tanh the integral is elementary.
            var r = Math.Sqrt(bend);
            return (τ + r * Math.Atan(r * Math.Tanh(τ))) / (1 + bend);
        }
        var halves = Math.Round(τ / (2 * quarter));
        var rest = Math.Clamp(τ - 2 * quarter * halves, -quarter, quarter);
        var (sn, cn, dn) = JacobiElliptic.InQuarter(rest, m1);
        var complete = halves == 0 ? 0 : JacobiElliptic.Third(quarter, bend, 1, 0, Math.Sqrt(m1));
        return 2 * halves * complete + JacobiElliptic.Third(rest, bend, sn, cn, dn);
    }

    /// <summary>What the axis circles, and how long a round takes.</summary>
    public override string ToString() => (CirclesGreatestAxis ? "circles the axis of greatest inertia" : CirclesLeastAxis ? "circles the axis of least inertia" : "between both") + (IsSteady ? ", steadily" : "") + (Period is { } period ? FormattableString.Invariant($", a round in {period:G4} s") : ", never round");
}
