using System.Text;
using BallSim.Balls;
using BallSim.Lanes;
using BallSim.Motion;
using static System.FormattableString;
using static BallSim.Units;

namespace BallSim.Shots;

/// <summary>
/// One throw, computed: its path, dense in time and in distance, the changes of phase, and the numbers the trade speaks of. A shot that failed can be looked at too: it has its stop
/// reason and everything up to its last good state.
/// </summary>
public sealed record Shot
{
    // s.
    private const double Rounding = 1e-12;

    private readonly PathSegment[] segments;
    private readonly Instants instants;
    private readonly Lazy<Breakpoint> breakpoint;
    private readonly Lazy<EndOfSkid?> endOfSkid;
    private readonly Lazy<Track> track;
    private readonly Lazy<double> oilTakenUp;

    internal Shot(Ball ball, Lane lane, Hand hand, PathRecorder path, Instants instants, StopReason reason, int steps, int rejected)
    {
        (Ball, Lane, Hand, StopReason, Steps, RejectedSteps) = (ball, lane, hand, reason, steps, rejected);
        segments = [.. path.Segments];
        PhaseChanges = path.Changes;
        this.instants = instants;
        Start = At(0, 0);
        End = At(segments.Length - 1, 1);
        breakpoint = new(() => PathShape.Breakpoint(this));
        endOfSkid = new(() => PathShape.EndOfSkid(this));
        track = new(() => Track.Of(this, instants.ContactRadius));
        oilTakenUp = new(() => OilTaken.Of(this));
    }

    /// <summary>The ball that was thrown.</summary>
    public Ball Ball { get; }

    /// <summary>The lane it was thrown on.</summary>
    public Lane Lane { get; }

    /// <summary>The bowler's hand.</summary>
    public Hand Hand { get; }

    /// <summary>Why the shot ended.</summary>
    public StopReason StopReason { get; }

    /// <summary>The reason as a sentence, with the place.</summary>
    public string StopSentence => StopReason switch
    {
        StopReason.HeadPin => Invariant($"touched the head pin after {End.Time:F2} s"),
        StopReason.PassedHeadPin => Invariant($"passed the head pin on board {End.Board:F1}"),
        StopReason.Gutter => Invariant($"dropped into the {(End.X > 0 ? "right" : "left")} gutter at {End.Y / Foot:F1} ft"),
        StopReason.FoulLine => Invariant($"came back over the foul line after {End.Time:F2} s"),
        StopReason.LeftLane => Invariant($"left the lane at {End.Y / Foot:F1} ft: its offset centre of mass lifted it"),
        StopReason.TimeLimit => Invariant($"was ended after {End.Time:F2} s at {End.Y / Foot:F1} ft (MaxTime)"),
        StopReason.StepLimit => Invariant($"was ended after {Steps} steps at {End.Y / Foot:F1} ft (MaxSteps)"),
        _ => Invariant($"was ended after {PhaseChanges.Count} changes between sliding and rolling at {End.Y / Foot:F1} ft (MaxTransitions)"),
    };

    /// <summary>Steps taken, rejected ones included.</summary>
    public int Steps { get; }

    /// <summary>Steps rejected by the error control.</summary>
    public int RejectedSteps { get; }

    /// <summary>The ball at the release.</summary>
    public PathPoint Start { get; }

    /// <summary>The ball at the last instant computed.</summary>
    public PathPoint End { get; }

    /// <summary>Time computed, s.</summary>
    public double Duration => End.Time;

    /// <summary>True if the ball reached the pins, touching the head pin or not.</summary>
    public bool ReachedPins => StopReason is StopReason.HeadPin or StopReason.PassedHeadPin;

    /// <summary>Where and how the ball meets the pins.</summary>
    /// <exception cref="InvalidOperationException">The ball did not reach the pins; ask <see cref="ReachedPins"/> first.</exception>
    public Entry Entry => ReachedPins
        ? PathShape.Entry(this)
        : throw new InvalidOperationException($"there is no entry: the ball {StopSentence}; ask ReachedPins first");

    /// <summary>Every change between loft, sliding and rolling, in order.</summary>
    public IReadOnlyList<PhaseChange> PhaseChanges { get; }

    /// <summary>The first change from sliding to rolling, or null if the ball did not roll before the end.</summary>
    public PhaseChange? StartOfRoll
    {
        get
        {
            foreach (var change in PhaseChanges)
            {
                if (change.To == ShotPhase.Rolling)
                {
                    return change;
                }
            }
            return null;
        }
    }

    /// <summary>How often the ball slipped again after it had rolled.</summary>
    public int SlippedAgain => PhaseChanges.Count(c => c.From == ShotPhase.Rolling);

    /// <summary>Farthest point towards the bowler's own gutter.</summary>
    public Breakpoint Breakpoint => breakpoint.Value;

    /// <summary>Where the ball visibly starts to hook, or null if its heading changes by less than 1e-4 rad on the whole way.</summary>
    public EndOfSkid? EndOfSkid => endOfSkid.Value;

    /// <summary>The track on the ball, ring by ring; computed when first asked for.</summary>
    public Track Track => track.Value;

    /// <summary>
    /// Oil that the ball took off the lane, m³, less what it left there: the integral of <see cref="PathPoint.OilUptake"/> over the shot. It is carried on the track's rings and soaks into the cover. Of
    /// the order of 60 µL on a first shot with a fresh ball (computed, with the assumed share <see cref="Friction.FrictionCalibration.PickUp"/>). Zero on a lane of given friction.
    /// </summary>
    public double OilTakenUp => oilTakenUp.Value;

    /// <summary>The ball at a time.</summary>
    /// <param name="time">s since the release, 0 to <see cref="Duration"/>.</param>
    public PathPoint At(double time)
    {
        // The time at which a run was told to end may lie a rounding beyond its last instant.
        time = time > Duration && time - Duration < Rounding ? Duration : time;
        Check.Range(time, 0, Duration, Quantity.Time);
        // A time on the seam of two steps belongs to the later one.
        int low = 0, high = segments.Length - 1;
        while (low < high)
        {
            var middle = (low + high + 1) / 2;
            if (segments[middle].StartTime <= time)
            {
                low = middle;
            }
            else
            {
                high = middle - 1;
            }
        }
        return At(low, segments[low].AtTime(time));
    }

    /// <summary>The ball where its centre first comes to a distance down-lane.</summary>
    /// <param name="distance">m from the foul line, within the path.</param>
    public PathPoint AtDistance(double distance)
    {
        for (var i = 0; i < segments.Length; i++)
        {
            // A step ends where the next begins, whatever the rounding of its polynomial.
            var (a, b) = (segments[i].StartY, i + 1 < segments.Length ? segments[i + 1].StartY : segments[i].EndY);
            if ((a <= distance && distance <= b) || (b <= distance && distance <= a))
            {
                return At(i, segments[i].AtDistance(distance));
            }
        }
        Check.Range(distance, Start.Y, End.Y, Quantity.Length);
        return End;
    }

    /// <summary>The path at equal steps of distance, from the release to the end, both included: for plots and tables. Falls back to equal times where the ball comes back.</summary>
    /// <param name="count">Number of points, 2 to 1 000 000.</param>
    public IReadOnlyList<PathPoint> Samples(int count)
    {
        Check.Range(count, 2, 1_000_000, Quantity.Number);
        var samples = new PathPoint[count];
        var forward = segments.All(s => s.EndY > s.StartY);
        (samples[0], samples[^1]) = (Start, End);
        for (var i = 1; i < count - 1; i++)
        {
            var share = i / (count - 1.0);
            samples[i] = forward ? AtDistance(Start.Y + share * (End.Y - Start.Y)) : At(share * Duration);
        }
        return samples;
    }

    /// <summary>A summary in the units of the trade.</summary>
    public override string ToString()
    {
        var text = new StringBuilder();
        void Line(string name, string value) => text.Append(name.PadRight(16)).AppendLine(value);
        Line("the ball", StopSentence);
        if (ReachedPins)
        {
            var e = Entry;
            Line("entry", Invariant($"{e.Angle / Degree:F2} deg on board {e.Board:F1} ({Math.Abs(e.Offset) / Inch:F1} in {(e.Offset > 0 ? "right" : "left")} of the pocket; board {e.BoardAtPinLine:F1} at the pin's line)"));
            // Plus zero: a ball that rolls has none, and rounding shows no sign.
            Line("at the pins", Invariant($"{e.Speed / MilesPerHour:F1} mph, {e.SpinRate / Rpm:F0} rpm, rotation {Math.Round(e.AxisRotation / Degree, 1) + 0.0:F1} deg, tilt {e.AxisTilt / Degree:F1} deg, {e.Revolutions:F1} turns"));
        }
        Line("breakpoint", Breakpoint.ToString());
        if (EndOfSkid is { } skid)
        {
            Line("end of skid", skid.ToString());
        }
        Line("start of roll", StartOfRoll is { } roll
            ? Invariant($"{roll.Distance / Foot:F1} ft, board {roll.Board:F1}, {roll.Time:F2} s; slipped again {(SlippedAgain == 1 ? "once" : $"{SlippedAgain} times")}")
            : "not before the end");
        Line("work", Invariant($"friction {End.FrictionWork:F1} J, drag {End.DragWork:F1} J of {Start.Energy - End.Energy:F1} J lost"));
        return text.ToString();
    }

    /// <summary>The ball when it has turned so often since the release; turns do not go back.</summary>
    internal PathPoint AtRevolution(double revolutions)
    {
        int low = 0, high = segments.Length - 1;
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = segments[middle].EndRevolutions < revolutions ? (middle + 1, high) : (low, middle);
        }
        return At(low, segments[low].AtRevolutions(revolutions));
    }

    internal int SegmentCount => segments.Length;

    /// <summary>How long a step lasts, s.</summary>
    internal double TimeOf(int segment) => segments[segment].EndTime - segments[segment].StartTime;

    internal PathSegment Segment(int segment) => segments[segment];

    internal OilExchange ExchangeAt(int segment, double θ)
    {
        var s = segments[segment];
        return instants.ExchangeAt(s.Phase, s.At(θ), s.Orientation);
    }

    internal PathPoint At(int segment, double θ)
    {
        var s = segments[segment];
        return instants.At(s.Phase, s.At(θ), s.Orientation);
    }
}
