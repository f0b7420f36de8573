using System.Text;
using BallSim.Balls;
using static System.FormattableString;
using static BallSim.Units;

namespace BallSim.Shots;

/// <summary>
/// A spin test, computed: dense in time, with the track of the spin axis in the ball and the time it takes to the preferred axis.
/// </summary>
public sealed record SpinRecord
{
    // Moments that differ by less than this share are equal but for rounding: then there is no single preferred axis.
    private const double Equal = 1e-9;

    private readonly SpinSegment[] segments;
    private readonly bool hasRotor;
    private readonly PrincipalAxes axes;

    internal SpinRecord(Ball ball, SpinDissipation dissipation, SpinSegment[] segments, bool hasRotor, bool complete)
    {
        (Ball, Dissipation, IsComplete) = (ball, dissipation, complete);
        this.segments = segments;
        this.hasRotor = hasRotor;
        axes = ball.Inertia.Principal;
    }

    /// <summary>The ball that was spun.</summary>
    public Ball Ball { get; }

    /// <summary>What took energy from the spin.</summary>
    public SpinDissipation Dissipation { get; }

    /// <summary>False if the largest number of steps ended the test before its time (<see cref="SpinTestOptions.MaxSteps"/>).</summary>
    public bool IsComplete { get; }

    /// <summary>Time computed, s.</summary>
    public double Duration => segments[^1].EndTime;

    /// <summary>Steps taken.</summary>
    public int Steps => segments.Length;

    /// <summary>The start.</summary>
    public SpinMoment Start => At(segments[0], 0);

    /// <summary>The last instant computed.</summary>
    public SpinMoment End => At(segments[^1], Duration);

    /// <summary>The ball at a time.</summary>
    /// <param name="time">s since the start, 0 to <see cref="Duration"/>.</param>
    public SpinMoment At(double time)
    {
        Check.Range(time, 0, Duration, Quantity.Time);
        int low = 0, high = segments.Length - 1;
        while (low < high)
        {
            var middle = (low + high + 1) / 2;
            (low, high) = segments[middle].StartTime <= time ? (middle, high) : (low, middle - 1);
        }
        return At(segments[low], time);
    }

    /// <summary>
    /// The ball at equal steps of time, from start to end, both included: the track of the spin axis in the ball is their
    /// <see cref="SpinMoment.AxisInBall"/>, the approach to the preferred axis their <see cref="SpinMoment.AngleToPreferredAxis"/>.
    /// </summary>
    /// <param name="count">Number of instants, 2 to 1 000 000.</param>
    public IReadOnlyList<SpinMoment> Samples(int count)
    {
        Check.Range(count, 2, 1_000_000, Quantity.Number);
        return [.. Enumerable.Range(0, count).Select(i => At(Duration * i / (count - 1.0)))];
    }

    /// <summary>When the spin axis comes within an angle of the preferred axis, or why it does not.</summary>
    /// <param name="angle">The angle, rad; above 0, at most 90 degrees.</param>
    public Settling Settle(double angle)
    {
        Check.Range(angle, 1e-9, Math.PI / 2, Quantity.Angle);
        // Four looks per step: a step is a small part of the time in which the axis goes round in the ball.
        const int Looks = 4;
        double? first = null, good = null;
        var (was, wasAt) = (Off(segments[0], 0), 0.0);
        var nearest = was;
        if (was <= angle)
        {
            (first, good) = (0, 0);
        }
        foreach (var s in segments)
        {
            for (var i = 1; i <= Looks; i++)
            {
                var at = s.StartTime + (s.EndTime - s.StartTime) * i / Looks;
                var off = Off(s, at);
                nearest = Math.Min(nearest, off);
                if (off <= angle && was > angle)
                {
                    good = Crossing(s, wasAt, at, angle);
                    first ??= good;
                }
                else if (off > angle && was <= angle)
                {
                    good = null;
                }
                (was, wasAt) = (off, at);
            }
        }
        return new() { Angle = angle, FirstWithin = first, WithinForGood = good, Nearest = nearest, Reason = Reason(first, good, nearest) };
    }

    /// <summary>The test in the units of the trade.</summary>
    public override string ToString()
    {
        var text = new StringBuilder();
        text.AppendLine(Invariant($"{Dissipation}, {Duration:F1} s{(IsComplete ? "" : " (ended by MaxSteps)")}"));
        foreach (var m in (SpinMoment[])[Start, At(Duration / 4), At(Duration / 2), At(3 * Duration / 4), End])
        {
            text.AppendLine(m.ToString());
        }
        return text.ToString();
    }

    private string Reason(double? first, double? good, double nearest)
    {
        var came = Invariant($"it came to {nearest / Degree:F2} deg at the nearest in {Duration:F1} s");
        if (first is { } f)
        {
            return good is { } g
                ? Invariant($"first after {f:F2} s, and for good after {g:F2} s")
                : Invariant($"first after {f:F2} s, but outside again at the end of {Duration:F1} s");
        }
        return Dissipation switch
        {
            { Acts: false } => $"never: without dissipation nothing migrates, the axis stays on its polhode; {came}",
            { Migrates: false } => $"never: what acts slows the spin without bringing it to the preferred axis; {came}",
            _ => $"never within the time; {came}",
        };
    }

    private double Crossing(SpinSegment s, double outside, double inside, double angle)
    {
        for (var i = 0; i < 60 && inside - outside > 1e-13 * inside; i++)
        {
            var middle = (outside + inside) / 2;
            (outside, inside) = Off(s, middle) > angle ? (middle, inside) : (outside, middle);
        }
        return inside;
    }

    private double Off(SpinSegment s, double time) => At(s, time).AngleToPreferredAxis;

    private SpinMoment At(SpinSegment s, double time)
    {
        var (y, q) = s.At(time);
        var orientation = Rotation.From(q);
        var ball = Vector3D.From(y.Momentum - y.Rotor);
        var momentum = orientation.Inverse.Apply(ball);
        var spin = Vector3D.From(Ball.Inertia.Spatial.Inverse() * momentum.Spatial);
        var rotor = hasRotor ? orientation.Inverse.Apply(Vector3D.From(y.Rotor)) / Dissipation.RotorMoment : (Vector3D?)null;
        return new()
        {
            Time = time,
            Orientation = orientation,
            AngularVelocity = orientation.Apply(spin),
            AngularVelocityInBall = spin,
            AxisInBall = spin.Length > 0 ? spin.Unit : Vector3D.Zero,
            AngleToPreferredAxis = AngleToPreferred(spin),
            Momentum = Vector3D.From(y.Momentum),
            Energy = 0.5 * spin.Dot(momentum) + (rotor is { } r ? 0.5 * Dissipation.RotorMoment * r.Dot(r) : 0),
            RotorAngularVelocityInBall = rotor,
        };
    }

    private double AngleToPreferred(Vector3D spin)
    {
        double OffLine(Vector3D axis) => Math.Atan2(spin.Cross(axis).Length, Math.Abs(spin.Dot(axis)));
        if (axes.GreatestMoment - axes.MiddleMoment > Equal * axes.GreatestMoment)
        {
            return OffLine(axes.Greatest);
        }
        return axes.GreatestMoment - axes.LeastMoment > Equal * axes.GreatestMoment ? Math.PI / 2 - OffLine(axes.Least) : 0;
    }
}
