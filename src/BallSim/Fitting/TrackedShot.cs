using BallSim.Lanes;
using static System.FormattableString;

namespace BallSim.Fitting;

/// <summary>
/// One shot as a device on the lane saw it: points in order down the lane, and what is odd about them. Making one puts points in order, drops those that stand twice or off the lane, and marks gaps and outliers;
/// an outlier stays, since a fit with a robust loss knows better what to make of it.
/// </summary>
/// <remarks>A gap is a step of more than four times the median step. An outlier lies more than 30 mm, and more than six robust standard deviations, off what the parabolas through its neighbours suggest; fewer than nine places across are not judged. Both rules are conventions of this
/// library.</remarks>
public sealed record TrackedShot
{
    private const double GapSteps = 4;
    private const double OutlierDeviations = 6;
    private const double OutlierAtLeast = 0.03;

    private TrackedShot(string id, IReadOnlyList<TrackedPoint> points, IReadOnlyList<QualityNote> notes) => (Id, Points, Notes) = (id, points, notes);

    /// <summary>What the shot is called.</summary>
    public string Id { get; }

    /// <summary>The points, in order.</summary>
    public IReadOnlyList<TrackedPoint> Points { get; }

    /// <summary>What is odd about them.</summary>
    public IReadOnlyList<QualityNote> Notes { get; }

    /// <summary>A shot from its points.</summary>
    /// <param name="id">What it is called.</param>
    /// <param name="points">The points, at least one, all with a distance or all with a time alone, numbers finite and within what a lane allows (distance -5 to 30 m, time -1e6 to 1e6 s, place across -2 to 2 m).</param>
    /// <exception cref="ArgumentException">A point has no station or nothing measured there; or a number is out of range; or no point is left.</exception>
    public static TrackedShot Of(string id, IEnumerable<TrackedPoint> points)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(id);
        ArgumentNullException.ThrowIfNull(points);
        TrackedPoint[] given = [.. points];
        List<QualityNote> notes = [];
        foreach (var p in given)
        {
            CheckPoint(p);
        }
        var byDistance = given.Any(p => p.Distance is not null);
        Check.That(given.All(p => p.Distance is not null == byDistance), "some points have a distance and others a time alone; the points of a shot need one kind of station", nameof(points));
        double Station(TrackedPoint p) => (byDistance ? p.Distance : p.Time)!.Value;

        List<TrackedPoint> kept = [];
        foreach (var p in given)
        {
            if (byDistance && (Station(p) < 0 || Station(p) > RegulationLane.Length + RegulationLane.LengthTolerance))
            {
                notes.Add(new(QualityIssue.OffLane, p.Line, Invariant($"{Station(p):F2} m is not between the foul line and the head pin; left out")));
                continue;
            }
            if (kept.Count > 0 && Station(p) < Station(kept[^1]))
            {
                notes.Add(new(QualityIssue.OutOfOrder, p.Line, Invariant($"{Station(p):F3} {(byDistance ? "m" : "s")} stands behind {Station(kept[^1]):F3}; put in order")));
            }
            if (kept.Any(k => Station(k) == Station(p)))
            {
                notes.Add(new(QualityIssue.Duplicate, p.Line, Invariant($"{Station(p):F3} {(byDistance ? "m" : "s")} stands twice; the first is kept")));
                continue;
            }
            kept.Add(p);
        }
        Check.That(kept.Count > 0, $"shot \"{id}\" has no point on the lane", nameof(points));
        // Stable: points that were in order stay so.
        TrackedPoint[] ordered = [.. kept.OrderBy(Station)];
        Gaps(ordered, Station, byDistance, notes);
        Outliers(ordered, Station, notes);
        return new(id, ordered, notes);
    }

    /// <summary>The name and the count of points.</summary>
    public override string ToString() => $"shot {Id}: {Points.Count} points" + (Notes.Count > 0 ? $", {Notes.Count} {(Notes.Count == 1 ? "remark" : "remarks")}" : "");

    private static void CheckPoint(TrackedPoint p)
    {
        var at = p.Line > 0 ? $"line {p.Line}: " : "";
        Check.That(p.Distance is not null || p.Time is not null, at + "a point has neither distance nor time", "points");
        Check.That(p.X is not null || p.Speed is not null || p.Heading is not null || p.SpinRate is not null || p.AxisRotation is not null || p.AxisTilt is not null
            || (p.Distance is not null && p.Time is not null), at + "a point has a station and nothing measured there", "points");
        In(p.Distance, -5, 30, Quantity.Length, at + "distance");
        In(p.Time, -1e6, 1e6, Quantity.Time, at + "time");
        In(p.X, -2, 2, Quantity.Length, at + "place across");
        In(p.Speed, 0, 30, Quantity.Speed, at + "speed");
        In(p.Heading, -Math.PI, Math.PI, Quantity.Angle, at + "heading");
        In(p.SpinRate, 0, 200, Quantity.SpinRate, at + "spin rate");
        In(p.AxisRotation, -Math.PI, Math.PI, Quantity.Angle, at + "axis rotation");
        In(p.AxisTilt, -Math.PI / 2, Math.PI / 2, Quantity.Angle, at + "axis tilt");
    }

    private static void In(double? value, double low, double high, Quantity quantity, string name)
    {
        if (value is { } v)
        {
            Check.Range(v, low, high, quantity, name);
        }
    }

    private static void Gaps(TrackedPoint[] points, Func<TrackedPoint, double> station, bool byDistance, List<QualityNote> notes)
    {
        if (points.Length < 5)
        {
            return;
        }
        double[] steps = [.. points.Skip(1).Zip(points, (b, a) => station(b) - station(a))];
        var usual = Median(steps);
        for (var i = 0; i < steps.Length; i++)
        {
            if (steps[i] > GapSteps * usual)
            {
                notes.Add(new(QualityIssue.Gap, points[i + 1].Line, Invariant($"no point for {steps[i]:F2} {(byDistance ? "m" : "s")} before it; usual is {usual:F2}")));
            }
        }
    }

    // What the neighbours suggest: the parabolas through every three of the eight nearest, each off by so much in units of its own noise (at the ends of a track it is drawn on beyond them, and tells less); the median, so that a bad
    // neighbour does no harm.
    private static void Outliers(TrackedPoint[] points, Func<TrackedPoint, double> station, List<QualityNote> notes)
    {
        TrackedPoint[] placed = [.. points.Where(p => p.X is not null)];
        if (placed.Length < 9)
        {
            return;
        }
        var off = new double[placed.Length];
        var deviations = new double[placed.Length];
        for (var i = 0; i < placed.Length; i++)
        {
            var m = Math.Clamp(i, 4, placed.Length - 5);
            (double S, double X)[] near = [.. Enumerable.Range(m - 4, 9).Where(k => k != i).Select(k => (station(placed[k]) - station(placed[i]), placed[k].X!.Value))];
            List<double> apart = [], inNoise = [];
            for (var a = 0; a < near.Length; a++)
            {
                for (var b = a + 1; b < near.Length; b++)
                {
                    for (var c = b + 1; c < near.Length; c++)
                    {
                        var (p, q, r) = (near[a], near[b], near[c]);
                        var u = q.S * r.S / ((p.S - q.S) * (p.S - r.S));
                        var v = p.S * r.S / ((q.S - p.S) * (q.S - r.S));
                        var w = p.S * q.S / ((r.S - p.S) * (r.S - q.S));
                        var gap = placed[i].X!.Value - (u * p.X + v * q.X + w * r.X);
                        apart.Add(gap);
                        inNoise.Add(gap / Math.Sqrt(1 + u * u + v * v + w * w));
                    }
                }
            }
            off[i] = Median([.. apart]);
            deviations[i] = Median([.. inNoise]);
        }
        var deviation = 1.4826 * Median([.. deviations.Select(Math.Abs)]);
        for (var i = 0; i < placed.Length; i++)
        {
            if (Math.Abs(off[i]) > OutlierAtLeast && Math.Abs(deviations[i]) > OutlierDeviations * deviation)
            {
                notes.Add(new(QualityIssue.Outlier, placed[i].Line, Invariant($"{1000 * Math.Abs(off[i]):F0} mm to the {(off[i] > 0 ? "right" : "left")} of what its neighbours suggest; kept, a robust fit gives it little weight")));
            }
        }
    }

    private static double Median(double[] values)
    {
        Array.Sort(values);
        return values.Length % 2 == 1 ? values[values.Length / 2] : 0.5 * (values[values.Length / 2 - 1] + values[values.Length / 2]);
    }
}
