using static BallSim.Units;

namespace BallSim.Balls;

/// <summary>Grinding the cover of a ball to a fresh surface, which makes the ball a little smaller and lighter.</summary>
/// <remarks>
/// What goes is a spherical shell about the centre of the ball, of the cover's density ρ, from the radius R down to R' (any textbook of
/// mechanics):
/// <code>
/// m_s = (4π/3) ρ (R³ - R'³)      I_s = (8π/15) ρ (R⁵ - R'⁵) about any axis through the centre
/// m' = m - m_s,  m' d' = m d,  I' = I + m (|d|² 1 - d dᵀ) - I_s 1 - m' (|d'|² 1 - d' d'ᵀ)
/// </code>
/// Neglected: the mouths of the holes, which are not there to be ground (about one per cent of the shell), and that a hole gets shallower
/// by the thickness of the shell.
/// </remarks>
public static class Resurfacing
{
    /// <summary>
    /// Most that one grind may take off the circumference, m: 0.3 in, an assumption; common practice speaks of the order of 0.1 in.
    /// </summary>
    public const double Most = 0.3 * Inch;

    /// <summary>The ball after a grind.</summary>
    /// <param name="ball">The ball, drilled or not; marks, cover material and finish stay.</param>
    /// <param name="offCircumference">What the grind takes off the circumference, m: 0 to <see cref="Most"/>.</param>
    /// <param name="coverDensity">Density of the cover, kg/m³: 800 to 2000; 1200 assumed (1100 to 1250 from memory).</param>
    /// <exception cref="ArgumentException">The amount or the density is out of its range, or no possible body is left.</exception>
    public static Ball Ground(this Ball ball, double offCircumference, double coverDensity = 1200)
    {
        ArgumentNullException.ThrowIfNull(ball);
        Check.Range(offCircumference, 0, Most, Quantity.Length);
        Check.Range(coverDensity, 800, 2000, Quantity.Of("kg/m³"));
        var (R, r) = (ball.Radius, ball.Radius - offCircumference / (2 * Math.PI));
        // R³ - r³ and R⁵ - r⁵ with the small factor R - r taken out, so that a light grind loses no digits.
        var thickness = offCircumference / (2 * Math.PI);
        var cubes = thickness * (R * R + R * r + r * r);
        var fifths = thickness * (R * R * (R * R + R * r + r * r) + r * r * r * (R + r));
        var shell = 4 * Math.PI / 3 * coverDensity * cubes;
        Check.That(r > 0 && shell < ball.Mass,
            $"offCircumference = {Check.Text(offCircumference)} m takes {Check.Text(shell)} kg " +
            $"off a ball of {Check.Text(ball.Mass)} kg and {Check.Text(R)} m radius; " +
            "nothing would be left", nameof(offCircumference));
        var mass = ball.Mass - shell;
        var offset = ball.Mass / mass * ball.CentreOfMass;
        var inertia = AtArm(AtArm(ball.Inertia, ball.Mass, ball.CentreOfMass, -8 * Math.PI / 15 * coverDensity * fifths), -mass, offset, 0);
        // At once: each of the new numbers alone need not be possible with the old ones.
        return new()
        {
            Mass = mass,
            Radius = r,
            Inertia = inertia,
            CentreOfMass = offset,
            Finish = ball.Finish,
            Cover = ball.Cover,
            Marks = ball.Marks,
        };
    }

    // The tensor plus m (|p|² 1 - p pᵀ) plus the same moment about every axis.
    private static InertiaTensor AtArm(InertiaTensor a, double m, Vector3D p, double all) => new(
        a.Xx + m * (p.Y * p.Y + p.Z * p.Z) + all, a.Yy + m * (p.X * p.X + p.Z * p.Z) + all, a.Zz + m * (p.X * p.X + p.Y * p.Y) + all,
        a.Xy - m * p.X * p.Y, a.Xz - m * p.X * p.Z, a.Yz - m * p.Y * p.Z);
}
