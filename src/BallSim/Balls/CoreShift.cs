using System.Globalization;
using static BallSim.Units;

namespace BallSim.Balls;

/// <summary>How far the core must be carried along a direction to give a wanted top weight; the weight of the ball stays.</summary>
/// <remarks>
/// The core's excess over the filler, B = Σ (ρ - ρ_filler) V, carries the centre of mass: with the shift t along the unit vector n,
/// <code>
/// M d = A + B t n,   |M d| = s L   with the part along n not negative: a quadratic in t
/// </code>
/// </remarks>
public sealed record CoreShift
{
    private CoreShift()
    {
    }

    /// <summary>The build with its core there.</summary>
    public required BallBuild Build { get; init; }

    /// <summary>How far the core was carried along the direction, m; negative: against it.</summary>
    public required double Shift { get; init; }

    /// <summary>Least top weight that a shift along this line reaches, kg.</summary>
    public required double LeastTopWeight { get; init; }

    /// <summary>Greatest top weight that a shift along this line reaches, the core still fitting into the cover, kg.</summary>
    public required double GreatestTopWeight { get; init; }

    /// <summary>The shift for a wanted top weight.</summary>
    /// <param name="build">The ball with its core in place.</param>
    /// <param name="topWeight">Wanted static imbalance towards the point over the centre of mass, as a mass in kg; 0 to 8 oz.</param>
    /// <param name="direction">Line of the shift and side of the centre of mass, in the drawing; the pin's side if none is given.</param>
    /// <param name="balanceLever">Lever length of the balance scale, m; 3.36 in assumed.</param>
    /// <exception cref="ArgumentException">No shift gives that top weight; the message says which can be reached.</exception>
    public static CoreShift For(BallBuild build, double topWeight, Vector3D? direction = null, double balanceLever = 3.36 * Inch)
    {
        ArgumentNullException.ThrowIfNull(build);
        Check.Range(topWeight, 0, 8 * Ounce, Quantity.Mass);
        var lever = Ball.Lever(balanceLever);
        var n = Check.Direction(direction ?? build.PinSide, nameof(direction));
        var start = build.Properties;
        var a = start.Mass * start.CentreOfMass;
        // Parts in parts displace each other: the mass of the core over that of the filler in its place comes from the whole.
        var excess = start.Mass - (build with { Core = [] }).Properties.Mass;
        Check.That(Math.Abs(excess) > 1e-9 * start.Mass,
            "the core is as heavy as the filler it displaces; no shift of it moves the centre of mass", nameof(build));
        var (low, high) = Fitting(build, n);
        var along = a.Dot(n);
        var across = (a - along * n).Length;
        double Top(double t) => double.Hypot(along + excess * t, across) / lever;
        // The shift at which the part along n vanishes, and the end on which it is positive.
        var zero = -along / excess;
        var (near, far) = excess > 0 ? (Math.Max(low, zero), high) : (Math.Min(high, zero), low);
        var reachable = excess > 0 ? near <= far : near >= far;
        var (least, greatest) = reachable ? (Top(near), Top(far)) : (double.NaN, double.NaN);
        var wanted = topWeight * lever;
        var range = reachable
            ? string.Create(CultureInfo.InvariantCulture, $"it goes from {least / Ounce:F3} to {greatest / Ounce:F3} oz")
            : "the centre of mass stays on the other side";
        Check.That(reachable && topWeight >= least * (1 - 1e-12) && topWeight <= greatest * (1 + 1e-12), string.Create(CultureInfo.InvariantCulture,
            $"a top weight of {topWeight / Ounce:F3} oz is out of reach of a shift along {n}: {range}, the core having room from {low / Inch:F3} to " +
            $"{high / Inch:F3} in"), nameof(topWeight));
        var shift = (Math.Sqrt(Math.Max(0, wanted * wanted - across * across)) - along) / excess;
        return new() { Build = build.WithCoreMoved(shift * n), Shift = shift, LeastTopWeight = least, GreatestTopWeight = greatest };
    }

    // The room for a shift: the reach of the core from the centre is convex in it, so that bisection from the place where it fits finds
    // both ends.
    private static (double Low, double High) Fitting(BallBuild build, Vector3D n)
    {
        var room = build.Radius - build.CoverThickness;
        bool Fits(double t) => build.Core.All(p => p.Solid.Moved(t * n).Reach(Vector3D.Zero) <= room);
        double End(double outside)
        {
            var inside = 0.0;
            for (var i = 0; i < 60; i++)
            {
                var middle = (inside + outside) / 2;
                (inside, outside) = Fits(middle) ? (middle, outside) : (inside, middle);
            }
            return inside;
        }
        return (End(-2 * room), End(2 * room));
    }

    /// <summary>How far, and what top weights the line reaches.</summary>
    public override string ToString() => FormattableString.Invariant($"core moved by {Shift / Units.Inch:F3} in; top weights from {LeastTopWeight / Units.Ounce:F1} to {GreatestTopWeight / Units.Ounce:F1} oz within reach");
}
