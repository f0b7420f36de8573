using BallSim.Drilling;
using BallSim.Lanes;
using static System.FormattableString;
using static BallSim.Units;

namespace BallSim.Shots;

/// <summary>
/// The line that the contact point draws on the ball, revolution by revolution from where the ball lands: rings that wander over the cover as the spin axis wanders in the ball.
/// All directions are unit vectors from the centre of the ball, in the ball frame; distances are arcs on the surface.
/// </summary>
public sealed record Track
{
    private Track(double radius, double contactRadius, IReadOnlyList<TrackRing> rings, IReadOnlyList<Vector3D> axisPath)
    {
        (Radius, ContactRadius, Rings, AxisPath) = (radius, contactRadius, rings, axisPath);
        var whole = rings.Where(r => r.IsWhole).ToArray();
        if (whole.Length < 2)
        {
            return;
        }
        var (first, last) = (whole[0], whole[^1]);
        Flare = radius * last.Points.Max(p => ToLoop(p, first.Points));
        FlarePerRevolution = whole.Skip(1).Average(r => r.Spacing!.Value);
        Crossings = CrossingsOf(whole);
    }

    /// <summary>Radius of the ball, m.</summary>
    public double Radius { get; }

    /// <summary>Half the width of the contact patch, m: the Hertz radius under the weight, with the moduli of cover and lane (assumed).</summary>
    public double ContactRadius { get; }

    /// <summary>One ring to a revolution (a turn of |ω| dt/2π), from the landing to the end of the shot; the last is open unless the shot ends on a whole turn.</summary>
    public IReadOnlyList<TrackRing> Rings { get; }

    /// <summary>
    /// Where the spin axis leaves the ball on the side of the positive axis point: at the landing, after every whole revolution, and at the end. From the positive axis point on, it is the
    /// migration of the axis. NaN components where the ball does not spin.
    /// </summary>
    public IReadOnlyList<Vector3D> AxisPath { get; }

    /// <summary>
    /// Total flare, m: the greatest distance on the surface of any point of the last whole ring from the first ring, each distance being the shortest, so square to the first ring. Zero with fewer than two
    /// whole rings. It does not grow for ever: an axis that goes round the pin comes back, and no place is farther from a ring than its pole. What every turn adds is <see cref="FlarePerRevolution"/>.
    /// </summary>
    public double Flare { get; }

    /// <summary>Flare in one revolution, m: the mean over the whole rings of <see cref="TrackRing.Spacing"/>, the distance from the ring before at the widest; zero with fewer than two.</summary>
    public double FlarePerRevolution { get; }

    /// <summary>The bow tie: the two places where the first and the last whole ring cross, with how nearly all others pass through them; empty where those two do not cross, as when the ball
    /// does not flare or the tilt changes more than the axis wanders.</summary>
    public IReadOnlyList<TrackCrossing> Crossings { get; } = [];

    /// <summary>How near every ring comes to every hole, hole by hole in the order of the rings.</summary>
    /// <param name="holes">The holes, in the ball frame: <see cref="DrillSheet.Holes"/>, or <see cref="DrilledBalls.Holes"/> of the grip.</param>
    public IReadOnlyList<HoleClearance> Against(IReadOnlyList<Hole> holes)
    {
        ArgumentNullException.ThrowIfNull(holes);
        return [.. from hole in holes let rim = HoleRim.Of(hole, Radius) from ring in Rings select rim.Clearance(ring, ContactRadius)];
    }

    /// <summary>
    /// A sentence for every hole that the track runs over or whose edge it touches, with the first revolution that does and the worst: a fault of the layout, for the ball bumps on the edge (common practice). Empty if the track stays clear of all.
    /// </summary>
    /// <param name="holes">The holes, in the ball frame.</param>
    public IReadOnlyList<string> Warnings(IReadOnlyList<Hole> holes) =>
        [.. from met in Against(holes).Where(c => c.IsTouched).GroupBy(c => c.Hole) select $"{met.First()}{Worst([.. met])}; a track should stay clear of every hole: change the layout"];

    /// <summary>Flare, rings and migration in inches.</summary>
    public override string ToString() => Invariant(
        $"flare {Flare / Inch:F2} in over {Rings.Count(r => r.IsWhole)} rings ({FlarePerRevolution / Inch:F2} in a turn), axis migrated {(Rings.Count > 0 ? Rings[^1].AxisMigration : 0) / Inch:F2} in");

    internal static Track Of(Shot shot, double contactRadius)
    {
        var landed = shot.PhaseChanges is [{ From: ShotPhase.Loft } landing, ..] ? Math.Min(landing.Time, shot.Duration) : 0;
        var begin = shot.At(landed).Revolutions;
        var radius = shot.Ball.Radius;
        var axisAtRelease = shot.Start.SpinAxisInBall;
        // In the air nothing is drawn; a shot that ends there has no track.
        var turns = shot.End.Phase == ShotPhase.Loft ? 0 : shot.End.Revolutions - begin;
        var points = new List<TrackPoint>((int)(turns * TrackRing.PerRevolution) + 3);
        var end = (int)Math.Ceiling(turns * TrackRing.PerRevolution - 1e-9);
        for (var i = 0; i <= end && turns > 0; i++)
        {
            points.Add(TrackPoint.Of(i == end ? shot.End : shot.AtRevolution(begin + i / (double)TrackRing.PerRevolution)));
        }
        var rings = new List<TrackRing>();
        var axes = new List<Vector3D>();
        for (var from = 0; from < points.Count - 1; from += TrackRing.PerRevolution)
        {
            axes.Add(points[from].SpinAxis);
            rings.Add(TrackRing.Of(points, from, radius, axisAtRelease));
        }
        if (points.Count > 0)
        {
            axes.Add(points[^1].SpinAxis);
        }
        return new(radius, contactRadius, rings.AsReadOnly(), axes.AsReadOnly());
    }

    private static string Worst(HoleClearance[] met) => met.MinBy(c => c.Clearance) is var worst && worst.Clearance < Math.Min(0, met[0].Clearance)
        ? Invariant($", at the worst {-worst.Clearance / Inch:F2} in into it on revolution {worst.Revolution}")
        : "";

    // Arc from a point to the nearest place of a closed line, rad.
    private static double ToLoop(Vector3D point, IReadOnlyList<Vector3D> loop)
    {
        var least = Sphere.ToArc(point, loop[^1], loop[0]);
        for (var i = 1; i < loop.Count; i++)
        {
            least = Math.Min(least, Sphere.ToArc(point, loop[i - 1], loop[i]));
        }
        return least;
    }

    // Two circles about a and b: u · a = cos α, u · b = cos β, |u| = 1.
    private IReadOnlyList<TrackCrossing> CrossingsOf(TrackRing[] whole)
    {
        var (a, b) = (-whole[0].Axis, -whole[^1].Axis);
        var (ca, cb) = (Math.Cos(whole[0].RadiusAngle), Math.Cos(whole[^1].RadiusAngle));
        var across = a.Cross(b);
        var (cosine, square) = (a.Dot(b), across.Dot(across));
        if (square < 1e-12)
        {
            return [];
        }
        var level = (ca - cb * cosine) / square * a + (cb - ca * cosine) / square * b;
        var height = (1 - level.Dot(level)) / square;
        if (!(height > 0))
        {
            return [];
        }
        return
        [
            .. from side in (double[])[1, -1]
               let u = level + side * Math.Sqrt(height) * across
               select new TrackCrossing(u, Radius * whole.Max(r => Math.Abs(u.AngleTo(-r.Axis) - r.RadiusAngle))),
        ];
    }
}
