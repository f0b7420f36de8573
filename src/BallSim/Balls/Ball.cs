using System.Globalization;
using static BallSim.Units;

namespace BallSim.Balls;

/// <summary>
/// A bowling ball as a rigid body: a sphere whose mass need not be spread evenly nor balanced about its centre. The ball frame has its
/// origin in the
/// centre of the sphere, Bo, and the principal axes of the undrilled ball: x the axis of lowest radius of gyration (the pin), y that of
/// the highest (the
/// mass-bias mark), z = x × y. Drilling keeps this frame; the tensor becomes full.
/// </summary>
/// <remarks>
/// <para>Two ways in: <see cref="FromSpecification"/> with the numbers a driller has, or <c>new Ball { Mass, Radius, Inertia, CentreOfMass
/// }</c> for
/// any body that is physically possible. Both the initializer and <c>with</c> check; what is checked is</para>
/// <code>
/// I positive definite,  I₃ ≤ I₁ + I₂ (principal moments),  |d| &lt; R,  ½ tr I + m |d|² ≤ m R²
/// </code>
/// <para>The last says that no mass lies outside the sphere: ½ tr I = Σ mᵢ rᵢ² about the centre of mass. A <c>with</c> that changes
/// several of these takes them in
/// the order written, and every step must be a possible body.</para>
/// </remarks>
public sealed record Ball
{
    // Rounding of the six entries may break an equality that holds exactly for a disc or a shell.
    private const double Slack = 1e-9;

    /// <summary>Mass, kg; 0.001 to 100.</summary>
    public required double Mass
    {
        get;
        init
        {
            field = Check.Range(value, 1e-3, 100, Quantity.Mass, nameof(Mass));
            CheckBody(nameof(Mass));
        }
    }

    /// <summary>Radius of the sphere, m; 0.02 to 1. What is smaller has not been tried on the law of the film, whose contact it leaves far behind: throws of balls of 2 mm ended once in thousands with a number that is none.</summary>
    public required double Radius
    {
        get;
        init
        {
            field = Check.Range(value, 0.02, 1, Quantity.Length, nameof(Radius));
            CheckBody(nameof(Radius));
        }
    }

    /// <summary>Inertia tensor about the centre of mass Bcm, in the axes of the ball frame, kg m².</summary>
    public required InertiaTensor Inertia
    {
        get;
        init
        {
            field = Possible(value);
            CheckBody(nameof(Inertia));
        }
    }

    /// <summary>
    /// From the centre of the sphere Bo to the centre of mass Bcm, in the ball frame, m; shorter than the radius, zero by default.
    /// </summary>
    public Vector3D CentreOfMass
    {
        get;
        init
        {
            field = Check.Finite(value, nameof(CentreOfMass));
            CheckBody(nameof(CentreOfMass));
        }
    }

    /// <summary>How the cover was finished; by default a roughness of 0.5 µm (assumed).</summary>
    public Finish Finish { get; init => field = value ?? throw new ArgumentNullException(nameof(Finish)); } = Finish.Measured(0.5 * Micrometre);

    /// <summary>The cover material; plastic by default.</summary>
    public Cover Cover { get; init => field = value ?? throw new ArgumentNullException(nameof(Cover)); } = Cover.Plastic;

    /// <summary>The marks on the surface: the pin at x and nothing else by default.</summary>
    public BallMarks Marks { get; init => field = value ?? throw new ArgumentNullException(nameof(Marks)); } = new();

    /// <summary>Mass, centre of mass and inertia tensor in the ball frame.</summary>
    public MassProperties Properties => new(Mass, CentreOfMass, Inertia);

    /// <summary>What the ball was poured from, in the ball frame; null for a ball known by its numbers only. Drilling does not change it.</summary>
    internal Interior? Interior { get; init; }

    /// <summary>Lowest radius of gyration, m: √(I₁/m) of the least principal moment about the centre of mass.</summary>
    public double LowRg => Math.Sqrt(Inertia.Principal.LeastMoment / Mass);

    /// <summary>Radius of gyration about the principal axis between the lowest and the highest, m.</summary>
    public double IntermediateRg => Math.Sqrt(Inertia.Principal.MiddleMoment / Mass);

    /// <summary>Highest radius of gyration, m.</summary>
    public double HighRg => Math.Sqrt(Inertia.Principal.GreatestMoment / Mass);

    /// <summary>
    /// Total differential, m: highest less lowest radius of gyration (convention of the governing body's test procedure).
    /// </summary>
    public double Differential => HighRg - LowRg;

    /// <summary>
    /// Intermediate differential, m: highest less intermediate radius of gyration; zero for a ball symmetric about its pin.
    /// </summary>
    public double IntermediateDifferential => HighRg - IntermediateRg;

    /// <summary>
    /// The preferred axis: the axis of greatest inertia, a unit vector in the ball frame, its largest component positive. A ball spun
    /// freely on a
    /// low-friction support works its way to it; without dissipation nothing does.
    /// </summary>
    public Vector3D PreferredAxis => Inertia.Principal.Greatest;

    /// <summary>
    /// Radius of gyration about an axis through the centre of mass, m: √(I/m). The axis is a direction in the ball frame, of any length
    /// but zero.
    /// </summary>
    public double RgAbout(Vector3D axis) => Math.Sqrt(Inertia.About(Check.Direction(axis, nameof(axis))) / Mass);

    /// <summary>An undrilled ball from the numbers of its specification.</summary>
    /// <param name="weight">Mass, kg: 5 to 16.05 lb; the rules allow 16.00 lb.</param>
    /// <param name="lowRg">Lowest radius of gyration, m: 2.3 to 2.9 in (approved balls: 2.460 to 2.800 in).</param>
    /// <param name="differential">Total differential, highest less lowest radius of gyration, m: 0 to 0.10 in (approved balls: 0.060 in at
    /// most).</param>
    /// <param name="intermediateDifferential">Highest less intermediate radius of gyration, m: 0 (a symmetric ball, without a mass-bias
    /// mark) to the total.</param>
    /// <param name="diameter">Diameter, m: 8.3 to 8.7 in; 8.55 in assumed, between the limits 8.500 and 8.595 in.</param>
    /// <param name="centreOfMass">From the centre to the centre of mass in the ball frame, m. Give this, or the next two, or neither: a
    /// balanced ball.</param>
    /// <param name="pinToCg">Arc on the surface from the pin to the mark over the centre of gravity, m: 0 to 10 in, towards the mass-bias
    /// mark (y).</param>
    /// <param name="topWeight">Static imbalance towards that mark, as a mass in kg: 0 to 8 oz. The offset is e = s L/W.</param>
    /// <param name="balanceLever">
    /// Lever length L of the balance scale, m: 3.36 in assumed (3 oz on 16 lb make 1 mm); the true one is not published in what could be
    /// read.
    /// </param>
    /// <param name="finish">The finish; a roughness of 0.5 µm if none is given (assumed).</param>
    /// <param name="cover">The cover; reactive if none is given (assumed).</param>
    /// <exception cref="ArgumentException">A number out of its range, or numbers that no ball can have together; the message says which
    /// and why.</exception>
    public static Ball FromSpecification(
        double weight, double lowRg, double differential, double intermediateDifferential = 0, double diameter = 8.55 * Inch,
        Vector3D? centreOfMass = null, double? pinToCg = null, double topWeight = 0, double balanceLever = 3.36 * Inch,
        Finish? finish = null, Cover? cover = null)
    {
        Check.Range(weight, 5 * Pound, 16.05 * Pound, Quantity.Mass);
        Check.Range(lowRg, 2.3 * Inch, 2.9 * Inch, Quantity.Length);
        Check.Range(differential, 0, 0.10 * Inch, Quantity.Length);
        Check.Range(intermediateDifferential, 0, 0.10 * Inch, Quantity.Length);
        Check.Range(diameter, 8.3 * Inch, 8.7 * Inch, Quantity.Length);
        Check.That(intermediateDifferential <= differential,
            $"intermediateDifferential = {InInches(intermediateDifferential)} is larger than differential = {InInches(differential)}: " +
            "the intermediate radius of gyration would be the lowest", nameof(intermediateDifferential));
        var radius = diameter / 2;
        var highRg = lowRg + differential;
        double Moment(double rg) => weight * rg * rg;
        return new()
        {
            Mass = weight,
            Radius = radius,
            Inertia = new(Moment(lowRg), Moment(highRg), Moment(highRg - intermediateDifferential)),
            CentreOfMass = Offset(weight, radius, centreOfMass, pinToCg, topWeight, balanceLever),
            Finish = finish ?? Finish.Measured(0.5 * Micrometre),
            Cover = cover ?? Cover.Reactive,
            Marks = new() { MassBias = intermediateDifferential > 0 ? Vector3D.UnitY : null },
        };
    }

    /// <summary>The ball in the units of the trade.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Mass / Pound:F2} lb, diameter {2 * Radius / Inch:F3} in, RG {LowRg / Inch:F3} in, differential {Differential / Inch:F3} in, " +
        $"intermediate {IntermediateDifferential / Inch:F3} in, centre of mass off by {CentreOfMass.Length / Millimetre:F2} mm, " +
        $"{Cover.Name} cover, {Finish}, {(Marks.IsDrilled ? $"drilled for the {(Marks.Hand == Hand.Right ? "right" : "left")} hand" : "undrilled")}");

    /// <summary>The lever length of a balance scale, checked: 1 to 10 in.</summary>
    internal static double Lever(double balanceLever) => Check.Range(balanceLever, 1 * Inch, 10 * Inch, Quantity.Length);

    private static Vector3D Offset(double weight, double radius, Vector3D? centreOfMass, double? pinToCg, double topWeight, double lever)
    {
        Check.Range(topWeight, 0, 8 * Ounce, Quantity.Mass);
        Lever(lever);
        if (centreOfMass is { } given)
        {
            Check.That(pinToCg is null && topWeight == 0,
                "centreOfMass already places the centre of mass; leave out pinToCg and topWeight, or leave out centreOfMass", nameof(centreOfMass));
            return given;
        }
        if (pinToCg is not { } distance)
        {
            Check.That(topWeight == 0, "topWeight says how much but not where; give pinToCg, the arc from the pin to the centre of gravity's mark, too",
                nameof(topWeight));
            return Vector3D.Zero;
        }
        Check.Range(distance, 0, 10 * Inch, Quantity.Length, nameof(pinToCg));
        Check.That(topWeight > 0, "pinToCg says where but not how much; give topWeight, for example 3 * Ounce, too", nameof(pinToCg));
        var angle = distance / radius;
        return topWeight * lever / weight * new Vector3D(Math.Cos(angle), Math.Sin(angle), 0);
    }

    private static InertiaTensor Possible(InertiaTensor tensor)
    {
        Check.That(tensor.IsFinite, "Inertia has an entry that is not a number", nameof(Inertia));
        var p = tensor.Principal;
        Check.That(p.LeastMoment > 0,
            $"Inertia is not positive definite: its least principal moment is {Check.Text(p.LeastMoment)} kg m²", nameof(Inertia));
        Check.That(p.GreatestMoment <= (p.LeastMoment + p.MiddleMoment) * (1 + Slack),
            $"Inertia breaks the triangle inequality: the greatest principal moment {Check.Text(p.GreatestMoment)} kg m² exceeds the sum of the other two, " +
            $"{Check.Text(p.LeastMoment)} + {Check.Text(p.MiddleMoment)}; no body has such moments", nameof(Inertia));
        return tensor;
    }

    // The conditions between members. An initializer sets them one by one: those not set yet are zero, and the last one set checks.
    private void CheckBody(string name)
    {
        if (Radius == 0)
        {
            return;
        }
        Check.That(CentreOfMass.Length < Radius,
            $"CentreOfMass lies {Check.Text(CentreOfMass.Length)} m from the centre, outside the ball of Radius {Check.Text(Radius)} m", name);
        if (Mass == 0 || Inertia.Xx == 0)
        {
            return;
        }
        var spread = (Inertia.Xx + Inertia.Yy + Inertia.Zz) / 2 + Mass * CentreOfMass.Dot(CentreOfMass);
        var most = Mass * Radius * Radius;
        Check.That(spread <= most * (1 + Slack),
            $"Inertia needs mass outside the ball: half its trace plus m |CentreOfMass|² is {Check.Text(spread)} kg m², and " +
            $"{Check.Text(Mass)} kg within a radius of {Check.Text(Radius)} m reach {Check.Text(most)} kg m² at most", name);
    }

    private static string InInches(double length) => string.Create(CultureInfo.InvariantCulture, $"{length / Inch:G6} in");
}
