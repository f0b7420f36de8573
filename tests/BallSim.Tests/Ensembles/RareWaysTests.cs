using BallSim.Balls;
using BallSim.Ensembles;
using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Shots;
using BallSim.Sweeps;
using static BallSim.Units;

namespace BallSim.Tests.Ensembles;

/// <summary>Rarely taken ways through an ensemble: lanes of measured surface, sentences, every column of a sweep.</summary>
public class RareWaysTests
{
    private static readonly SimulatorOptions Coarse = new() { Tolerance = 1e-4 };

    private static readonly Ball Ball = Ball.FromSpecification(15 * Pound, 2.48 * Inch, 0.050 * Inch, 0.015 * Inch);

    private static readonly Release Line = new() { Speed = 18 * MilesPerHour, SpinRate = 350 * Rpm, AxisRotation = 60 * Degree, AxisTilt = 12 * Degree, Board = 24, LaunchAngle = 3 * Degree, AxisInBall = new(0.6, 0.64, 0.48) };

    private static readonly Topography Hills = Topography.FromHeights([0, 6, 12, 19], [1, 13, 27, 39], new[,] { { 0, 1e-3, 0, 0 }, { 0, 0, 1e-3, 0 }, { 1e-3, 0, 0, 1e-3 }, { 0, 1e-3, 0, 0 } });

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Over_a_measured_surface_an_ensemble_is_its_shots(bool film)
    {
        var lane = (film ? Lane.Regulation with { Oil = OilMap.Crowned(40 * Foot, 25 * Millilitre) } : Lane.Regulation with { GivenFriction = FrictionMap.Smoothstep(0.04, 0.18, 10, 14) }) with { Topography = Hills };
        Throw[] rows = [.. Enumerable.Range(0, 3).Select(i => new Throw(Ball, lane, Line with { Board = 23 + i }))];
        foreach (var ((ball, on, release), found) in rows.Zip(Ensemble.Throw(rows, new() { Shot = Coarse })))
        {
            var shot = Simulator.Throw(ball, on, release, Coarse);
            Assert.Equal(shot.StopReason, found.StopReason);
            Assert.Equal(shot.Steps, found.Steps);
            Assert.Equal(shot.End.X, found.X, 1e-12);
            Assert.Equal(shot.End.Time, found.Time, 1e-12);
            // And the hills do something.
            Assert.NotEqual(Simulator.Throw(ball, on with { Topography = Topography.Flat }, release, Coarse).End.X, found.X, 1e-4);
        }
    }

    [Fact]
    public void Every_column_is_the_shots_number_in_its_unit()
    {
        var lane = Lane.Regulation with { Oil = OilMap.Crowned(40 * Foot, 25 * Millilitre) };
        var drilled = Ball with { Cover = Cover.Reactive };
        Throw[] rows = [new(drilled, lane, Line), new(drilled, lane, Line with { Board = 3, LaunchAngle = 8 * Degree })];
        var outcomes = Ensemble.Throw(rows, new() { Shot = Coarse });
        var shot = Simulator.Throw(rows[0].Ball, rows[0].Lane, rows[0].Release, Coarse);
        Assert.True(shot.ReachedPins && outcomes[1].StopReason == StopReason.Gutter);
        double Of(string name, int row = 0) => Metric.All.Single(m => m.Name == name).Value(outcomes[row]);
        Assert.Equal(shot.StopReason == StopReason.HeadPin ? 1 : 0, Of("touches_head_pin"));
        Assert.Equal(shot.Entry.Angle / Degree, Of("entry_angle_deg"), 1e-6);
        Assert.Equal(shot.Entry.BoardAtPinLine, Of("entry_board_at_pin_line"), 1e-6);
        Assert.Equal(shot.End.Speed / MilesPerHour, Of("entry_speed_mph"), 1e-6);
        Assert.Equal(double.Hypot(shot.End.SlipX, shot.End.SlipY) / MilesPerHour, Of("entry_slip_mph"), 1e-6);
        Assert.Equal(shot.End.SpinRate / Rpm, Of("entry_spin_rpm"), 1e-6);
        Assert.Equal(shot.End.AxisRotation / Degree, Of("entry_axis_rotation_deg"), 1e-6);
        Assert.Equal(shot.End.AxisTilt / Degree, Of("entry_axis_tilt_deg"), 1e-6);
        Assert.Equal(shot.End.Time, Of("transit_time_s"), 1e-9);
        Assert.Equal(shot.End.Y / Foot, Of("end_ft"), 1e-9);
        Assert.Equal(shot.End.Board, Of("end_board"), 1e-9);
        Assert.Equal(shot.End.Revolutions, Of("revolutions"), 1e-9);
        Assert.Equal(shot.StartOfRoll?.Distance / Foot ?? double.NaN, Of("start_of_roll_ft"), 1e-6);
        Assert.Equal(shot.StartOfRoll?.Board ?? double.NaN, Of("start_of_roll_board"), 1e-6);
        Assert.Equal(shot.StartOfRoll?.Time ?? double.NaN, Of("start_of_roll_s"), 1e-6);
        Assert.Equal(shot.SlippedAgain, Of("slipped_again"));
        // The shot sums along its kept path, the ensemble carries the oil as a state of the motion; steps are coarse here.
        Assert.Equal(1, Of("oil_taken_up_uL") / (shot.OilTakenUp / Microlitre), 5e-3);
        Assert.InRange(Of("oil_taken_up_uL"), 1, 1000);
        Assert.InRange(Of("axis_migration_deg"), 0, 180);
        // What a gutter ball never met is not a number.
        Assert.All((string[])["entry_speed_mph", "entry_spin_rpm", "transit_time_s", "entry_board_at_pin_line"], name => Assert.Equal(double.NaN, Of(name, 1)));
        Assert.Equal(0, Of("touches_head_pin", 1));
        Assert.StartsWith("Gutter at ", outcomes[1].ToString());
        Assert.Matches(@"^board \d+\.\d, \d+\.\d\d deg, \d+\.\d mph, ", outcomes[0].ToString());
    }

    [Fact]
    public void Factors_print_what_they_can_be()
    {
        Assert.Equal("speed_mph: 16 to 20", Factor.Range("speed", 16 * MilesPerHour, 20 * MilesPerHour, 3).In("mph", MilesPerHour).ToString());
        Assert.Equal("speed_mph: 18 ± 0.5", Factor.Normal("speed", 18 * MilesPerHour, 0.5 * MilesPerHour).In("mph", MilesPerHour).ToString());
        Assert.Equal("film_µm: 1, 2.5", Factor.Values("film", 1 * Micrometre, 2.5 * Micrometre).In("µm", Micrometre).ToString());
        Assert.Equal("finish: polished, sanded", Factor.Choice("finish", "polished", "sanded").ToString());
    }
}
