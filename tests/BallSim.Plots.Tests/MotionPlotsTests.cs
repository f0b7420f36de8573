using BallSim.Shots;
using static BallSim.Units;

namespace BallSim.Plots.Tests;

public class MotionPlotsTests
{
    public static TheoryData<string, Func<PathPoint, double>> Panels => new()
    {
        { "y", p => p.Speed / MilesPerHour },
        { "y2", p => p.SpinRate / Rpm },
        { "y3", p => p.AxisRotation / Degree },
        { "y4", p => p.AxisTilt / Degree },
        { "y5", p => p.SlipSpeed / MilesPerHour },
    };

    [Theory, MemberData(nameof(Panels))]
    public void Every_panel_shows_its_quantity(string axis, Func<PathPoint, double> quantity)
    {
        var shot = Throws.On(Throws.Oiled);
        var curve = new ChartText(shot.MotionCurves()).Named("path").Single(t => (string?)t["yaxis"] == axis);
        var (x, y) = (ChartText.Numbers(curve, "x"), ChartText.Numbers(curve, "y"));
        for (var i = 1; i < x.Length - 1; i += 15)
        {
            Assert.Equal(quantity(shot.AtDistance(x[i] * Foot)), y[i], 1e-5);
        }
    }

    [Fact]
    public void Friction_used_is_the_coefficient_while_sliding_and_less_while_rolling()
    {
        var shot = Throws.On(Throws.Oiled);
        var curve = new ChartText(shot.MotionCurves()).Named("path").Single(t => (string?)t["yaxis"] == "y6");
        var (x, y) = (ChartText.Numbers(curve, "x"), ChartText.Numbers(curve, "y"));
        var roll = shot.StartOfRoll!.Value.Distance;
        Assert.Equal(0, shot.SlippedAgain);
        for (var i = 1; i < x.Length - 1; i++)
        {
            var p = shot.AtDistance(x[i] * Foot);
            if (p.Y < roll - 1e-6)
            {
                Assert.Equal(p.Friction, y[i], 1e-6);
            }
            else if (p.Y > roll + 1e-6)
            {
                Assert.True(y[i] < p.Friction);
            }
        }
    }

    [Fact]
    public void Several_shots_are_told_apart_by_name()
    {
        var chart = new ChartText(new[] { Throws.On(Throws.Oiled), Throws.On(Lanes.Lane.Regulation) }.MotionCurves(["oil", "dry"]));
        Assert.Equal(6, chart.Named("oil").Count());
        Assert.Equal(6, chart.Named("dry").Count());
    }
}
