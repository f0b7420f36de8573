using System.Collections.Immutable;
using System.Globalization;
using BallSim.Balls;
using static BallSim.Units;

namespace BallSim.Drilling;

/// <summary>What drilling does to a ball: before, after, what was removed and how far everything moved.</summary>
/// <remarks>
/// The removed mass is integrated layer by layer under the true sphere, out of the true densities of a built ball; a ball known by its
/// numbers is drilled at a stated <see cref="DensityProfile"/>. Spheres, boxes and triangle meshes are exact to rounding, other core
/// solids to 1e-8 of what the hole takes.
/// </remarks>
public sealed record DrillSheet
{
    // A ball whose numbers were changed after it was built no longer is what it was poured from.
    private const double SameMass = 1e-9;

    private DrillSheet()
    {
    }

    /// <summary>The ball laid out, before any hole.</summary>
    public required Ball Before { get; init; }

    /// <summary>The drilled ball.</summary>
    public required Ball Ball { get; init; }

    /// <summary>The holes.</summary>
    public required IReadOnlyList<Hole> Holes { get; init; }

    /// <summary>What was drilled out, in the ball frame.</summary>
    public required MassProperties Removed { get; init; }

    /// <summary>Out of what: "the build" or the density profile in words.</summary>
    public required string DrilledOutOf { get; init; }

    /// <summary>From the centre of mass before to the one after, in the ball frame, m.</summary>
    public Vector3D CentreOfMassShift => Ball.CentreOfMass - Before.CentreOfMass;

    /// <summary>
    /// Angle between the axes of greatest inertia before and after, rad, 0 to π/2; null if the undrilled ball has none, its two greater
    /// moments being equal (to 1e-9).
    /// </summary>
    public double? PreferredAxisShift
    {
        get
        {
            var p = Before.Inertia.Principal;
            var angle = p.Greatest.AngleTo(Ball.PreferredAxis);
            return p.GreatestMoment - p.MiddleMoment > 1e-9 * p.GreatestMoment ? Math.Min(angle, Math.PI - angle) : null;
        }
    }

    /// <summary>Least thickness of the wall between two holes, m; null with fewer than two.</summary>
    public double? ThinnestWall => Holes.Count < 2
        ? null
        : (from i in Enumerable.Range(0, Holes.Count) from j in Enumerable.Range(0, i) select HoleCheck.Wall(Holes[i], Holes[j], Ball.Radius)).Min();

    /// <summary>Static imbalance after drilling, or null if the ball has no grip.</summary>
    public StaticBalance? Balance => Ball.Marks.IsDrilled ? StaticBalance.Of(Ball) : null;

    /// <summary>The sheet of a grip drilled by a layout.</summary>
    /// <param name="ball">An undrilled ball.</param>
    /// <param name="layout">Where the grip goes relative to pin and mark.</param>
    /// <param name="grip">The measures of the hand and of the holes.</param>
    /// <param name="axisPoint">The bowler's positive axis point.</param>
    /// <param name="profile">Density of a ball known by its numbers; its mean density (assumed) unless given. For a built ball leave it
    /// out.</param>
    /// <exception cref="ArgumentException">The layout, the grip or a hole is impossible on this ball.</exception>
    public static DrillSheet Of(Ball ball, Layout layout, Grip grip, PositiveAxisPoint axisPoint, DensityProfile? profile = null)
    {
        var laidOut = ball.LayOut(layout, grip, axisPoint);
        return Of(laidOut, GripHoles.Of(grip, laidOut), profile);
    }

    /// <summary>The sheet of any holes in a ball that is laid out or not.</summary>
    /// <param name="ball">The ball before any hole; its marks are kept.</param>
    /// <param name="holes">The holes, in the ball frame.</param>
    /// <param name="profile">Density of a ball known by its numbers; its mean density (assumed) unless given. For a built ball leave it
    /// out.</param>
    /// <exception cref="ArgumentException">A hole misses the ball, comes out of it or meets another; the ball was changed after it was
    /// built.</exception>
    public static DrillSheet Of(Ball ball, IReadOnlyList<Hole> holes, DensityProfile? profile = null)
    {
        ArgumentNullException.ThrowIfNull(ball);
        ArgumentNullException.ThrowIfNull(holes);
        HoleCheck.Possible(holes, ball.Radius);
        var interior = InteriorOf(ball, profile);
        var removed = holes.Aggregate(default(Moments), (sum, hole) => sum + interior.Within(hole.Shaft(ball.Radius))).Properties();
        var left = ball.Properties - removed;
        return new()
        {
            Before = ball,
            // In this order every step is a possible body: less inertia first.
            Ball = ball with { Inertia = left.Inertia, Mass = left.Mass, CentreOfMass = left.CentreOfMass },
            Holes = holes.ToImmutableArray(),
            Removed = removed,
            DrilledOutOf = ball.Interior is null ? (profile ?? DensityProfile.Mean).ToString() : "the build",
        };
    }

    /// <summary>The sheet in the units of the trade.</summary>
    public override string ToString()
    {
        static string Line(string name, Func<Ball, double> of, Ball before, Ball after, double unit, string symbol, string digits) => string.Create(
            CultureInfo.InvariantCulture, $"{name,-24}{(of(before) / unit).ToString(digits, CultureInfo.InvariantCulture),10} -> " +
            $"{(of(after) / unit).ToString(digits, CultureInfo.InvariantCulture),8} {symbol}\n");
        var text = Line("weight", b => b.Mass, Before, Ball, Pound, "lb", "F3") + Line("low RG", b => b.LowRg, Before, Ball, Inch, "in", "F4")
            + Line("differential", b => b.Differential, Before, Ball, Inch, "in", "F4")
            + Line("intermediate", b => b.IntermediateDifferential, Before, Ball, Inch, "in", "F4")
            + Line("centre of mass off by", b => b.CentreOfMass.Length, Before, Ball, Millimetre, "mm", "F3");
        var axis = PreferredAxisShift is { } angle ? string.Create(CultureInfo.InvariantCulture, $"{angle / Degree:F1}°") : "from anywhere";
        return text + string.Create(CultureInfo.InvariantCulture,
            $"centre of mass moved {CentreOfMassShift.Length / Millimetre:F3} mm, preferred axis {axis}; {Removed.Mass / Ounce:F2} oz removed, drilled out of: {DrilledOutOf}\n") +
            (Balance is { } balance ? $"{balance}\n" : "");
    }

    internal static Interior InteriorOf(Ball ball, DensityProfile? profile) => (profile, ball.Interior) switch
    {
        (not null, not null) => throw new ArgumentException(
            "the ball was built from parts whose densities are known; leave out the density profile", nameof(profile)),
        (_, { } built) => Unchanged(built, ball),
        _ => (profile ?? DensityProfile.Mean).InteriorOf(ball),
    };

    private static Interior Unchanged(Interior built, Ball ball)
    {
        var mass = built.Moments.Total;
        Check.That(Math.Abs(mass - ball.Mass) <= SameMass * mass && Math.Abs(built.Radius - ball.Radius) <= SameMass * ball.Radius,
            $"the ball was changed after it was built: it weighs {Check.Text(ball.Mass)} kg at a radius of {Check.Text(ball.Radius)} m, what it was poured from " +
            $"{Check.Text(mass)} kg at {Check.Text(built.Radius)} m; change the build and take its ball", nameof(ball));
        return built;
    }
}
