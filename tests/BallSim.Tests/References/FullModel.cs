using System.Text.Json;
using BallSim.Balls;
using BallSim.Friction;
using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Shots;
using static BallSim.Tests.References.ReferenceFile;

namespace BallSim.Tests.References;

/// <summary>
/// The whole model on a film that is linear in x and y: film law, drag, offset, slipping again, and the metrics with their definitions (in the file). Newton-Euler in two formulations that
/// agree to 7e-11.
/// </summary>
public class FullModel
{
    private const string File = "full-model.json";

    public static TheoryData<string> Names => ReferenceFile.Names(File);

    [Theory]
    [MemberData(nameof(Names))]
    public void PathEventsAndMetrics(string name)
    {
        var c = Case(File, name);
        var inputs = c.GetProperty("inputs");
        var shot = Throw(inputs);
        var slipsAgain = c.GetProperty("metrics").GetProperty("slip_events").GetInt32() > 0;
        foreach (var sample in c.GetProperty("samples").EnumerateArray().Append(c.GetProperty("contact")).Prepend(c.GetProperty("initial")))
        {
            var point = shot.At(Math.Min(sample.Number("t"), shot.Duration));
            Matches(sample, point, slipsAgain ? 1e-6 : 1e-8, 1e-6);
            Near(sample.Number("N"), point.NormalForce, 1e-5, "N");
            if (point.Phase != ShotPhase.Loft)
            {
                Near(sample.Number("mu"), point.Friction, 1e-8, "mu");
                Near(sample.Number("h_B"), point.CoverFilm, 1e-12, "film on the cover");
                Near(sample.Number("fresh"), point.FreshCover, 1e-6, $"{point.Phase} t {point.Time} fresh fraction");
            }
            Near(sample.Number("energy"), point.Energy, 1e-5, "energy");
        }
        // A landing is listed twice, before and after.
        var events = c.GetProperty("events").EnumerateArray().Where(e => e.GetProperty("at").GetString() != "landed").ToArray();
        Assert.Equal(events.Length, shot.PhaseChanges.Count);
        foreach (var (expected, actual) in events.Zip(shot.PhaseChanges))
        {
            Near(expected.Number("t"), actual.Time, 1e-8, $"time of {expected.GetProperty("at").GetString()}");
        }
        Metrics(c.GetProperty("metrics"), shot);
    }

    private static void Metrics(JsonElement m, Shot shot)
    {
        var e = shot.Entry;
        Assert.Equal(StopReason.HeadPin, shot.StopReason);
        Near(m.Number("transit_time"), e.Time, 1e-6, "transit time");
        Near(m.Number("entry_board"), e.Board, 1e-6, "entry board");
        Near(m.Number("offset_from_pocket"), e.Offset, 1e-6, "offset from the pocket");
        Near(m.Number("entry_angle"), e.Angle, 1e-6, "entry angle");
        Near(m.Number("speed"), e.Speed, 1e-6, "speed");
        Near(m.Number("spin_rate"), e.SpinRate, 1e-6, "spin rate");
        Near(m.Number("axis_rotation"), e.AxisRotation, 1e-6, "axis rotation");
        Near(m.Number("axis_tilt"), e.AxisTilt, 1e-6, "axis tilt");
        Near(m.Number("revolutions"), e.Revolutions, 1e-6, "revolutions");
        Near(m.Number("slip_speed"), e.SlipSpeed, 1e-6, "slip speed");
        Near(m.Number("cover_oil"), shot.End.CoverFilm, 1e-12, "film on the cover");
        Near(m.Number("friction_work"), shot.End.FrictionWork, 1e-5, "work of friction");
        Near(m.Number("drag_work"), shot.End.DragWork, 1e-5, "work of drag");
        Assert.Equal(m.GetProperty("slip_events").GetInt32(), shot.SlippedAgain);
        var b = m.GetProperty("breakpoint");
        Near(b.Number("board"), shot.Breakpoint.Board, 1e-6, "breakpoint board");
        Near(b.Number("y"), shot.Breakpoint.Distance, 1e-6, "breakpoint distance");
        Near(b.Number("t"), shot.Breakpoint.Time, 1e-6, "breakpoint time");
        Assert.Equal(m.GetProperty("breakpoint_kind").GetString() != "v_x = 0", shot.Breakpoint.IsEnd);
        var roll = m.GetProperty("first_roll");
        Near(roll.Number("t"), shot.StartOfRoll!.Value.Time, 1e-6, "start of roll");
        Near(roll.Number("board"), shot.StartOfRoll!.Value.Board, 1e-6, "board at the start of roll");
    }

    private static Shot Throw(JsonElement inputs)
    {
        var (ball, lane, start, options) = Setup(inputs);
        return Simulator.Throw(ball, lane, start, options);
    }

    /// <summary>Ball, lane, start and switches of a case.</summary>
    internal static (Ball Ball, Lane Lane, InitialState Start, SimulatorOptions Options) Setup(JsonElement inputs)
    {
        var film = inputs.GetProperty("film");
        var f = inputs.GetProperty("friction");
        var slope = inputs.Numbers("slope");
        var air = inputs.GetProperty("air");
        var lane = Lane.Regulation with
        {
            Oil = OilMap.Linear(film.Number("a"), film.Number("b"), film.Number("c")),
            Roughness = f.Number("Ra_lane"),
            Modulus = f.Number("E_l"),
            PoissonRatio = f.Number("nu_l"),
            OilViscosity = f.Number("eta"),
            Gravity = inputs.Vector("gravity"),
            Topography = Topography.Tilted(slope[0], slope[1]),
            AirDensity = air.Number("rho"),
        };
        var ball = inputs.Ball(inputs.Tensor("I_com_body")) with
        {
            Finish = Finish.Measured(f.Number("Ra_ball")),
            Cover = Cover.Plastic with { Pores = f.Number("h_p"), Modulus = f.Number("E_b"), PoissonRatio = f.Number("nu_b"), Absorption = f.Number("k_abs") },
        };
        var start = inputs.Start() with { Loft = inputs.Number("loft"), Hand = inputs.GetProperty("hand").GetInt32() == 1 ? Hand.Right : Hand.Left };
        var options = new SimulatorOptions
        {
            Tolerance = 1e-12,
            MaxSteps = 10_000_000,
            CoverOil = inputs.GetProperty("cover_oil").GetBoolean(),
            AirDrag = air.GetProperty("on").GetBoolean(),
            DragCoefficient = air.Number("Cd"),
            Friction = FrictionCalibration.Default with
            {
                Dry = f.Number("mu_d"),
                Floor = f.Number("mu_0"),
                ViscousCeiling = f.Number("mu_L"),
                FilmScale = f.Number("c_s"),
                GapFloor = f.Number("h_g"),
                EntrainmentSpeed = f.Number("u_e"),
                PickUp = f.Number("phi_s"),
            },
        };
        return (ball, lane, start, options);
    }
}
