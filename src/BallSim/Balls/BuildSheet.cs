using System.Globalization;
using static BallSim.Units;

namespace BallSim.Balls;

/// <summary>What comes out of a build: the ball in its own frame, and where its marks lie in the drawing.</summary>
public sealed record BuildSheet
{
    // Principal moments nearer to each other than this, relatively, are equal: what separates them is rounding.
    private const double Equal = 1e-9;

    private BuildSheet()
    {
    }

    /// <summary>The build.</summary>
    public required BallBuild Build { get; init; }

    /// <summary>The ball, undrilled, in its own frame.</summary>
    public required Ball Ball { get; init; }

    /// <summary>Mass, centre of mass and inertia tensor in the drawing.</summary>
    public required MassProperties Properties { get; init; }

    /// <summary>From the axes of the drawing to those of the ball; both have their origin in the centre of the ball.</summary>
    public required Rotation DrawingToBall { get; init; }

    /// <summary>The pin in the drawing, a unit direction: the axis of lowest radius of gyration, on
    /// <see cref="BallBuild.PinSide"/>.</summary>
    public Vector3D Pin => DrawingToBall.Inverse.Apply(Vector3D.UnitX);

    /// <summary>
    /// The axis of highest radius of gyration in the drawing, a unit direction, on the side of the centre of mass (or, that lying square
    /// to it, so that x × y is). It is marked as mass bias if the
    /// ball is asymmetric.
    /// </summary>
    public Vector3D HighAxis => DrawingToBall.Inverse.Apply(Vector3D.UnitY);

    /// <summary>
    /// Whether the intermediate differential exceeds 5 % of the total (the governing body's glossary); only then the ball gets a
    /// mass-bias mark.
    /// </summary>
    public required bool IsAsymmetric { get; init; }

    /// <summary>Arc on the surface from the pin to the point over the centre of mass, m; null for a ball balanced to a nanometre.</summary>
    public double? PinToCg => Ball.CentreOfMass.Length < 1e-9 ? null : Ball.Radius * Vector3D.UnitX.AngleTo(Ball.CentreOfMass);

    /// <summary>Static imbalance towards the point over the centre of mass, as a mass in kg: s = W e/L.</summary>
    /// <param name="balanceLever">Lever length L of the balance scale, m; 3.36 in assumed.</param>
    public double TopWeight(double balanceLever = 3.36 * Inch) => Ball.Mass * Ball.CentreOfMass.Length / Ball.Lever(balanceLever);

    /// <summary>The sheet of a build.</summary>
    /// <exception cref="ArgumentException">The core does not fit into the cover, or parts of it overlap.</exception>
    public static BuildSheet Of(BallBuild build)
    {
        ArgumentNullException.ThrowIfNull(build);
        var interior = build.Interior;
        var body = interior.Moments.Properties();
        var (x, y) = Axes(body, build.PinSide);
        var turn = Rotation.Between(x, y, Vector3D.UnitX, Vector3D.UnitY);
        var turned = body.Turned(turn);
        var p = body.Principal;
        double Rg(double moment) => Math.Sqrt(moment / body.Mass);
        var asymmetric = p.GreatestMoment - p.MiddleMoment > Equal * p.GreatestMoment
            && Rg(p.GreatestMoment) - Rg(p.MiddleMoment) > 0.05 * (Rg(p.GreatestMoment) - Rg(p.LeastMoment));
        return new()
        {
            Build = build,
            Properties = body,
            DrawingToBall = turn,
            IsAsymmetric = asymmetric,
            Ball = new()
            {
                Mass = body.Mass,
                Radius = build.Radius,
                Inertia = turned.Inertia,
                CentreOfMass = turned.CentreOfMass,
                Finish = build.Finish,
                Cover = build.Cover,
                Marks = new() { MassBias = asymmetric ? Vector3D.UnitY : null },
                Interior = interior.Turned(turn),
            },
        };
    }

    /// <summary>The sheet in the units of the trade.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Ball.Mass / Pound:F2} lb, diameter {2 * Ball.Radius / Inch:F3} in; RG {Ball.LowRg / Inch:F3} in, differential {Ball.Differential / Inch:F3} in, " +
        $"intermediate {Ball.IntermediateDifferential / Inch:F3} in ({(IsAsymmetric ? "asymmetric" : "symmetric")}); " +
        $"top weight {TopWeight() / Ounce:F2} oz, pin to CG {(PinToCg is { } arc ? (arc / Inch).ToString("F2", CultureInfo.InvariantCulture) + " in" : "undefined")}; " +
        $"filler {Build.FillerDensity / GramPerMillilitre:F3} g/mL");

    // The axes of the ball frame in the drawing. Where moments are equal the choice is free: the pin goes as near to its side as it can,
    // and a symmetric ball gets its y axis towards the centre of mass, so that pin, centre of mass and y lie in one plane.
    private static (Vector3D X, Vector3D Y) Axes(MassProperties body, Vector3D pinSide)
    {
        var p = body.Principal;
        bool Same(double a, double b) => Math.Abs(a - b) <= Equal * p.GreatestMoment;
        var centre = body.CentreOfMass.Length > 1e-9 ? body.CentreOfMass : Vector3D.Zero;
        Vector3D? Square(Vector3D v, Vector3D to)
        {
            var rest = v - v.Dot(to) * to;
            return rest.Length > 1e-6 * v.Length && v.Length > 0 ? rest.Unit : null;
        }
        Vector3D AnySquare(Vector3D to) => Square(Vector3D.UnitX, to) is { } x && Math.Abs(to.X) < 0.9 ? x : Square(Vector3D.UnitY, to)!.Value;
        var (x, y) = (p.Least, p.Greatest);
        if (Same(p.LeastMoment, p.MiddleMoment))
        {
            x = Same(p.MiddleMoment, p.GreatestMoment) ? pinSide : Square(pinSide, y) ?? AnySquare(y);
        }
        x = x.Dot(pinSide) < 0 ? -x : x;
        if (Same(p.MiddleMoment, p.GreatestMoment))
        {
            y = Square(centre, x) ?? AnySquare(x);
        }
        // With the centre of mass in the plane square to y, on the side that gives it a z not negative: no end of y is then told by
        // rounding.
        var side = y.Dot(centre);
        return (x, (Math.Abs(side) > 1e-9 * centre.Length ? side : x.Cross(y).Dot(centre)) < 0 ? -y : y);
    }
}
