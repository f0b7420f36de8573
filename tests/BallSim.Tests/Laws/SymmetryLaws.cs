using BallSim.Balls;
using BallSim.Lanes;
using BallSim.Shots;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using static BallSim.Tests.Laws.Along;

namespace BallSim.Tests.Laws;

/// <summary>What may not matter: which hand, where the origin lies, how heavy a ball of given radii of gyration is.</summary>
[Properties(Arbitrary = [typeof(Worlds)], MaxTest = 60)]
public class SymmetryLaws
{
    private static SimulatorOptions Exactly(bool drag = true) => new() { Tolerance = 1e-11, AirDrag = drag, MaxTime = Throwing.Duration, MaxSteps = 2_000_000 };

    // A ball that leaves the lane is ended at the end of a step, not at an instant: up to the earlier of the two ends.
    private static IEnumerable<PathPoint> Common(Shot a, Shot b) => Points(a, 40).Where(p => p.Time <= b.Duration);

    // The films and frictions of the random lanes are not symmetric in x: these are.
    private static readonly Lane[] Even =
    [
        Lane.Unbounded(OilMap.Crowned(40 * Units.Foot, 25 * Units.Millilitre)),
        Lane.Unbounded(OilMap.Even(35 * Units.Foot, 4e-6)),
        Lane.Unbounded(FrictionMap.Zones((0, 0.04), (12, 0.2))),
        Lane.Unbounded(FrictionMap.Constant(0.1)),
    ];

    [Property]
    public void Mirror_image_of_a_throw_goes_along_the_mirror_image_of_its_path(Throwing t, NonNegativeInt which)
    {
        var lane = Even[which.Get % Even.Length];
        var shot = Simulator.Throw(t.Ball, lane, t.Start, Exactly());
        var mirrored = Simulator.Throw(Mirror.Of(t.Ball), lane, Mirror.Of(t.Start), Exactly());
        foreach (var p in Common(shot, mirrored))
        {
            var m = mirrored.At(p.Time);
            Near(new Vector3D(-p.X, p.Y, 0), new(m.X, m.Y, 0), 1e-9, $"place at {p.Time} s");
            Near(new Vector3D(p.AngularVelocity.X, -p.AngularVelocity.Y, -p.AngularVelocity.Z), m.AngularVelocity, 1e-7, $"spin at {p.Time} s");
        }
        Assert.Equal(shot.PhaseChanges.Select(c => c.To), mirrored.PhaseChanges.Select(c => c.To));
    }

    [Property]
    public void Mass_does_not_matter_at_given_friction_radii_of_gyration_and_offset_without_drag(Throwing t, bool heavier)
    {
        var lane = t.Lane.GivenFriction is null ? Even[2] : t.Lane;
        var f = heavier ? 1.7 : 0.6;
        var I = t.Ball.Inertia;
        var other = new Ball
        {
            Mass = f * t.Ball.Mass,
            Radius = t.Ball.Radius,
            Inertia = new(f * I.Xx, f * I.Yy, f * I.Zz, f * I.Xy, f * I.Xz, f * I.Yz),
            CentreOfMass = t.Ball.CentreOfMass,
            Finish = t.Ball.Finish,
            Cover = t.Ball.Cover,
            Marks = t.Ball.Marks,
        };
        var shot = Simulator.Throw(t.Ball, lane, t.Start, Exactly(false));
        var changed = Simulator.Throw(other, lane, t.Start, Exactly(false));
        foreach (var p in Common(shot, changed))
        {
            var m = changed.At(p.Time);
            Near(new Vector3D(p.X, p.Y, 0), new(m.X, m.Y, 0), 1e-9, $"place at {p.Time} s");
            Near(p.AngularVelocity, m.AngularVelocity, 1e-7, $"spin at {p.Time} s");
        }
    }

    [Property]
    public void Origin_down_lane_does_not_matter_on_a_uniform_lane(Throwing t, bool oiled)
    {
        var lane = oiled ? Lane.Unbounded(OilMap.Linear(4e-6, 0, 0)) : Lane.Unbounded(FrictionMap.Constant(0.1));
        const double shift = 7.3;
        var shot = Simulator.Throw(t.Ball, lane, t.Start, Exactly());
        var shifted = Simulator.Throw(t.Ball, lane, t.Start with { Y = t.Start.Y + shift }, Exactly());
        foreach (var p in Common(shot, shifted))
        {
            var m = shifted.At(p.Time);
            Near(new Vector3D(p.X, p.Y + shift, 0), new(m.X, m.Y, 0), 1e-9, $"place at {p.Time} s");
        }
    }

    [Property]
    public void The_same_throw_gives_the_same_bits(Throwing t)
    {
        var (a, b) = (t.Pure(1e-6), t.Pure(1e-6));
        Assert.Equal(a.End, b.End);
        Assert.Equal(a.PhaseChanges, b.PhaseChanges);
    }
}
