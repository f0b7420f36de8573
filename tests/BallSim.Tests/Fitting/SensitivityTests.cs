using BallSim.Benchmarks;
using BallSim.Fitting;
using BallSim.Shots;

namespace BallSim.Tests.Fitting;

/// <summary>The solver's own derivatives against differences of whole shots.</summary>
public class SensitivityTests
{
    private static readonly Station[] Stations = [new(4, false, false), new(12.5, false, true), new(18, false, false)];

    // Twelve at a time.
    public static TheoryData<FitParameter, double> Steps => new()
    {
        { FitParameter.Dry, 1e-4 }, { FitParameter.Floor, 1e-4 }, { FitParameter.FilmScale, 1e-3 }, { FitParameter.Pores, 1e-9 }, { FitParameter.Viscosity, 1e-5 }, { FitParameter.DragCoefficient, 1e-3 },
        { FitParameter.CrossSlope, 1e-5 }, { FitParameter.LengthSlope, 1e-5 }, { FitParameter.Board, 1e-3 }, { FitParameter.LaunchAngle, 1e-5 }, { FitParameter.Speed, 1e-4 }, { FitParameter.SpinRate, 1e-3 },
        { FitParameter.AxisRotation, 1e-4 }, { FitParameter.AxisTilt, 1e-4 }, { FitParameter.RollPhase, 1e-4 }, { FitParameter.ClockOffset, 1e-4 },
    };

    [Theory]
    [MemberData(nameof(Steps))]
    public void Derivatives_agree_with_differences_of_shots(FitParameter parameter, double step)
    {
        // Without the narrow dips of the fresh fraction, which a difference does not resolve either; with the offset ball, sliding and rolling.
        var options = new SimulatorOptions { Tolerance = 1e-9, FreshCover = false };
        var shot = SyntheticTracks.Make(1, 10, 0, 0, 0, options: options)[0];
        var model = new ThrowModel(shot, options, Stations);
        var slots = Enumerable.Repeat(-1, ParameterFacts.Count).ToArray();
        slots[(int)parameter] = 7;
        var at = new Passage[Stations.Length];
        Assert.Null(model.Throw(model.Before, slots, at));

        Passage[] Beside(double change)
        {
            var values = (double[])model.Before.Clone();
            values[(int)parameter] += change;
            var passages = new Passage[Stations.Length];
            Assert.Null(model.Throw(values, [.. Enumerable.Repeat(-1, ParameterFacts.Count)], passages));
            return passages;
        }
        var (up, down) = (Beside(step), Beside(-step));
        for (var i = 0; i < Stations.Length; i++)
        {
            Same((double)up[i].X - (double)down[i].X, at[i].X.Partial(7), $"place at {Stations[i].At} m", 1e-7);
            Same((double)up[i].Time - (double)down[i].Time, at[i].Time.Partial(7), $"time at {Stations[i].At} m", 1e-7);
        }
        Same((double)up[1].Speed - (double)down[1].Speed, at[1].Speed.Partial(7), "speed", 1e-7);
        Same((double)up[1].SpinRate - (double)down[1].SpinRate, at[1].SpinRate.Partial(7), "spin rate", 1e-5);
        Same((double)up[1].AxisRotation - (double)down[1].AxisRotation, at[1].AxisRotation.Partial(7), "axis rotation", 1e-6);
        Same((double)up[1].AxisTilt - (double)down[1].AxisTilt, at[1].AxisTilt.Partial(7), "axis tilt", 1e-6);
        Same((double)up[1].Heading - (double)down[1].Heading, at[1].Heading.Partial(7), "heading", 1e-6);

        void Same(double difference, double slope, string what, double rounding) =>
            Assert.True(Math.Abs(difference - 2 * step * slope) <= 2e-3 * Math.Abs(difference) + rounding, $"{what} by {parameter}: difference {difference / 2 / step:G6}, derivative {slope:G6}");
    }

    [Fact]
    public void A_run_with_derivatives_takes_the_path_of_the_run_without()
    {
        var options = new SimulatorOptions { Tolerance = 1e-6, Friction = SyntheticTracks.Truth };
        var model = new ThrowModel(new(SyntheticTracks.Make(1, 10, 0, 0, 0)[0].Track, SyntheticTracks.Drilled, SyntheticTracks.Oiled, SyntheticTracks.Meant), options, Stations);
        var passages = new Passage[Stations.Length];
        var slots = Enumerable.Range(0, ParameterFacts.Count).Select(i => i < 12 ? i : -1).ToArray();
        Assert.Null(model.Throw(model.Before, slots, passages));
        var shot = Simulator.Throw(SyntheticTracks.Drilled, SyntheticTracks.Oiled, SyntheticTracks.Meant, options);
        for (var i = 0; i < Stations.Length; i++)
        {
            var p = shot.AtDistance(Stations[i].At);
            // The last bits of the release differ, and steps chosen by them make of that less than the tolerance.
            Assert.Equal(p.X, (double)passages[i].X, 2e-6);
            Assert.Equal(p.Time, (double)passages[i].Time, 1e-6);
        }
    }
}
