using BallSim.Balls;
using BallSim.Drilling;
using static BallSim.Units;

namespace BallSim.Tests.Drilling;

public class GripTests
{
    private static readonly Grip Uneven = new()
    {
        MiddleSpan = 4.25 * Inch,
        RingSpan = 4.5 * Inch,
        Bridge = 0.3125 * Inch,
        Thumb = new(1.0625 * Inch, 3 * Inch, forwardPitch: -0.25 * Inch),
        Middle = new(1 * Inch, 1.5 * Inch),
        Ring = new(31.0 / 32 * Inch, 1.5 * Inch),
    };

    private static Ball Drilled(Grip grip, Hand hand = Hand.Right) => Ball
        .FromSpecification(15 * Pound, 2.48 * Inch, 0.05 * Inch, 0.015 * Inch)
        .LayOut(new(4.5 * Inch, 50 * Degree, 40 * Degree), grip, new PositiveAxisPoint(5 * Inch, 0.5 * Inch, hand));

    public static TheoryData<string, Hand> Grips => new()
    {
        { nameof(Grip.Fingertip), Hand.Right }, { nameof(Grip.Conventional), Hand.Left }, { nameof(Uneven), Hand.Right }, { nameof(Uneven), Hand.Left },
    };

    private static Grip Named(string name) =>
        name switch { nameof(Grip.Fingertip) => Grip.Fingertip, nameof(Grip.Conventional) => Grip.Conventional, _ => Uneven };

    // Spans and bridge are arcs edge to edge, so the arcs between the edge points of the holes must measure them.
    [Theory]
    [MemberData(nameof(Grips))]
    public void Arcs_between_near_edges_are_the_spans_and_the_bridge(string name, Hand hand)
    {
        var grip = Named(name);
        var ball = Drilled(grip, hand);
        var (thumb, middle, ring) = (ball.Marks.Thumb!.Value, ball.Marks.MiddleFinger!.Value, ball.Marks.RingFinger!.Value);
        Assert.Equal(grip.MiddleSpan, EdgeToEdge(ball, thumb, grip.Thumb, middle, grip.Middle), 1e-14);
        Assert.Equal(grip.RingSpan, EdgeToEdge(ball, thumb, grip.Thumb, ring, grip.Ring), 1e-14);
        Assert.Equal(grip.Bridge, EdgeToEdge(ball, middle, grip.Middle, ring, grip.Ring), 1e-14);
    }

    [Theory]
    [MemberData(nameof(Grips))]
    public void The_grip_centre_halves_the_mean_span_on_the_centre_line(string name, Hand hand)
    {
        var grip = Named(name);
        var ball = Drilled(grip, hand);
        var marks = ball.Marks;
        var (centre, right, up) = (marks.GripCentre!.Value, marks.GripRight!.Value, marks.GripUp!.Value);
        var thumb = marks.Thumb!.Value;
        Assert.Equal(0, thumb.Dot(right), 1e-15);
        Assert.True(thumb.Dot(up) < 0);
        var nearEdge = Math.Asin(grip.Thumb.Diameter / 2 / ball.Radius);
        Assert.Equal((grip.MiddleSpan + grip.RingSpan) / 4, ball.Radius * (thumb.AngleTo(centre) - nearEdge), 1e-15);
        var (middle, ring) = (marks.MiddleFinger!.Value, marks.RingFinger!.Value);
        Assert.True(middle.Dot(up) > 0 && ring.Dot(up) > 0);
        Assert.True(middle.Dot(right) < 0 && ring.Dot(right) > 0);
        // The middle of the bridge, by a walk from the middle finger's centre to its edge and half the bridge on.
        var along = (ring - ring.Dot(middle) * middle).Unit;
        var arc = Math.Asin(grip.Middle.Diameter / 2 / ball.Radius) + grip.Bridge / 2 / ball.Radius;
        Assert.Equal(0, (Math.Cos(arc) * middle + Math.Sin(arc) * along).Dot(right), 1e-15);
    }

    [Fact]
    public void Equal_spans_and_fingers_lie_evenly_about_the_centre_line()
    {
        var marks = Drilled(Grip.Fingertip).Marks;
        Assert.Equal(-marks.MiddleFinger!.Value.Dot(marks.GripRight!.Value), marks.RingFinger!.Value.Dot(marks.GripRight!.Value), 1e-15);
        Assert.Equal(marks.MiddleFinger!.Value.Dot(marks.GripUp!.Value), marks.RingFinger!.Value.Dot(marks.GripUp!.Value), 1e-15);
    }

    [Fact]
    public void Spans_that_no_bridge_joins_are_refused()
    {
        var grip = Grip.Fingertip with { MiddleSpan = 3 * Inch, RingSpan = 5 * Inch };
        Assert.Contains("bridge", Assert.ThrowsAny<ArgumentException>(() => Drilled(grip)).Message);
    }

    [Fact]
    public void Slips_are_named()
    {
        Assert.Contains("for inches write 4.5 * Inch", Assert.ThrowsAny<ArgumentException>(() => Grip.Fingertip with { MiddleSpan = 4.5 }).Message);
        Assert.Contains("for inches write 1 * Inch", Assert.ThrowsAny<ArgumentException>(() => new Bore(1, 2 * Inch)).Message);
        Assert.Contains("no width", Assert.ThrowsAny<ArgumentException>(() => Grip.Fingertip with { Thumb = default }).Message);
    }

    private static double EdgeToEdge(Ball ball, Vector3D a, Bore boreA, Vector3D b, Bore boreB)
    {
        Vector3D Edge(Vector3D from, double diameter, Vector3D to)
        {
            var tangent = (to - to.Dot(from) * from).Unit;
            // The rim of a straight hole: half its width off the axis, on the surface.
            var half = diameter / 2 / ball.Radius;
            return Math.Sqrt(1 - half * half) * from + half * tangent;
        }
        return ball.Radius * Edge(a, boreA.Diameter, b).AngleTo(Edge(b, boreB.Diameter, a));
    }
}
