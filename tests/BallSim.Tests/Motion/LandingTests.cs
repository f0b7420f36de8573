using BallSim.Integration;
using BallSim.Motion;
using BallSim.Spatial;

namespace BallSim.Tests.Motion;

/// <summary>The last step of a run, past the head pin or to it, against the least distance from the pin's axis along the step, place by place.</summary>
public class LandingTests
{
    private const double PinsAt = 18.288, Touch = 0.169;

    private static readonly Bounds<Real> Bounds = new() { HalfWidth = 0.53, PinsAt = PinsAt, TouchDistance = Touch, BackAt = -1, MaxTime = 10 };

    [Fact]
    public void A_step_to_the_pins_line_passes_the_head_pin_where_it_comes_no_nearer_than_the_touch()
    {
        var random = new Random(5);
        int passed = 0, touched = 0, atOnce = 0;
        for (var i = 0; i < 20_000; i++)
        {
            double x = 0.26 * (2 * random.NextDouble() - 1), first = 0.3 * (2 * random.NextDouble() - 1), last = first + 0.15 * (2 * random.NextDouble() - 1);
            var (step, h) = To(x, PinsAt - Touch, first, last, PinsAt);
            var nearest = Enumerable.Range(0, 1001).Min(k => Away(Dense<State<Real>, Real>.Between(step, h, k / 1000.0)));
            // What it comes to within the thousand places, and a hair.
            if (Math.Abs(nearest - Touch) < 1e-6)
            {
                continue;
            }
            var (meant, length) = (step, h);
            var quick = Landing<Real>.AtOnce(ref meant, ref length, Bounds);
            var ending = Landing<Real>.First(ref step, ref h, Bounds, out var θ);
            Assert.Equal(nearest > Touch ? Ending.PassedPins : Ending.HeadPin, ending);
            passed += ending == Ending.PassedPins ? 1 : 0;
            touched += ending == Ending.HeadPin ? 1 : 0;
            if (quick != Ending.None)
            {
                Assert.Equal((ending, 1.0, h), (quick, θ, length));
                atOnce++;
            }
            // So far beside it all along, where the direction changes by at most 0.15 over 0.17 m, no closer look is taken.
            Assert.True(quick == Ending.PassedPins || Math.Min(Math.Abs(x), Math.Abs((double)step.End.X)) < Touch + 0.026, $"{x} {first} {last}: {nearest}");
        }
        Assert.True(passed > 3000 && touched > 10_000 && atOnce > 2500, $"{passed} {touched} {atOnce}");
    }

    [Fact]
    public void One_that_crosses_in_front_of_the_pin_does_not_keep_clear()
    {
        // From one side to the other, beyond its reach at both ends: almost across the lane, so that it touches in between.
        var (step, h) = To(-0.2, PinsAt - 0.02, 20, 20, PinsAt);
        Assert.True((double)step.End.X > Touch);
        Assert.Equal(Ending.None, Landing<Real>.AtOnce(ref step, ref h, Bounds));
        Assert.Equal(Ending.HeadPin, Landing<Real>.First(ref step, ref h, Bounds, out var θ));
        Assert.InRange(θ, 0.0799, 0.0801);
    }

    // A step along y, of a direction that changes evenly from the first to the last dx/dy.
    private static (Step<State<Real>> Step, Real h) To(double x, double y, double first, double last, double end)
    {
        var h = end - y;
        return (new()
        {
            Start = new() { X = x, Y = y, Time = 2 }, End = new() { X = x + h * (first + last) / 2, Y = end, Time = 2 + h / 8 },
            K1 = new() { X = first, Y = 1, Time = 0.125 }, K7 = new() { X = last, Y = 1, Time = 0.125 }, Interpolant = Interpolant.Cubic,
        }, h);
    }

    private static double Away(in State<Real> at) => Math.Sqrt((double)at.X * at.X + (at.Y - PinsAt) * (at.Y - PinsAt));
}
