using BallSim.Balls;
using BallSim.Drilling;
using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Shots;
using static BallSim.Units;

namespace BallSim.Tests.Integration;

/// <summary>The whole of a shot converges with its tolerance: instants of events, places at the pins, and the balance of energy.</summary>
public class EventTests
{
    private static readonly double[] Tolerances = [1e-5, 1e-6, 1e-7, 1e-8, 1e-9, 1e-10];

    public static TheoryData<string> Names => ["strong", "straighter", "left-handed, heavy oil", "dry lane", "zones"];

    private static (Ball Ball, Lane Lane, Release Release) Shot(string name)
    {
        var hand = name.StartsWith("left", StringComparison.Ordinal) ? Hand.Left : Hand.Right;
        var ball = Ball.FromSpecification(15 * Pound, 2.48 * Inch, 0.05 * Inch, 0.015 * Inch, centreOfMass: new(0.3e-3, -0.2e-3, 0.5e-3), finish: Finish.Sanded(2000))
            .LayOut(new Layout(4.5 * Inch, 50 * Degree, 40 * Degree), Grip.Fingertip, new PositiveAxisPoint(5 * Inch, 0.5 * Inch, hand));
        var release = new Release
        {
            Speed = 18 * MilesPerHour,
            SpinRate = 350 * Rpm,
            AxisRotation = 60 * Degree,
            AxisTilt = 12 * Degree,
            Board = hand == Hand.Right ? 26 : 14,
            LaunchAngle = 3 * Degree,
        };
        return name switch
        {
            "straighter" => (ball, Lane.Regulation with { Oil = OilMap.Crowned(42 * Foot, 22 * Millilitre) },
                release with { AxisRotation = 25 * Degree, LaunchAngle = 0, Board = 22, SpinRate = 220 * Rpm }),
            "dry lane" => (ball, Lane.Unbounded(OilMap.Dry), release),
            "zones" => (ball, Lane.Unbounded(FrictionMap.Zones((0, 0.04), (12, 0.2), (15, 0.12))), release),
            "left-handed, heavy oil" => (ball, Lane.Regulation with { Oil = OilMap.Crowned(44 * Foot, 32 * Millilitre) }, release),
            _ => (ball, Lane.Regulation with { Oil = OilMap.Crowned(40 * Foot, 25 * Millilitre) }, release),
        };
    }

    private static Shot Throw(string name, double tolerance)
    {
        var (ball, lane, release) = Shot(name);
        return Simulator.Throw(ball, lane, release, new() { Tolerance = tolerance, MaxTime = 3, MaxSteps = 5_000_000 });
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void The_start_of_roll_and_the_end_converge_with_the_tolerance(string name)
    {
        // Against the same shot at 1e-12. Errors fall with the tolerance, each in its own leaps: a line through six decades has a slope of
        // about one.
        var exact = Throw(name, 1e-12);
        var shots = Tolerances.Select(t => Throw(name, t)).ToArray();
        var starts = shots.Select(s => Math.Abs(s.StartOfRoll!.Value.Time - exact.StartOfRoll!.Value.Time)).ToArray();
        var places = shots.Select(s => Math.Abs(s.End.X - exact.End.X)).ToArray();
        Assert.True(Slope.Of(Tolerances, starts) > 0.8, $"start of roll: {string.Join(", ", starts)} s");
        Assert.True(Slope.Of(Tolerances, places) > 0.8, $"x at the end: {string.Join(", ", places)} m");
        Assert.All(shots, s => Assert.Equal(exact.PhaseChanges.Count, s.PhaseChanges.Count));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void The_default_tolerance_is_kept_within_a_small_factor(string name)
    {
        var (exact, shot) = (Throw(name, 1e-12), Throw(name, SimulatorOptions.Default.Tolerance));
        References.ReferenceFile.Near(exact.End.X, shot.End.X, 3 * SimulatorOptions.Default.Tolerance, "x at the end");
        References.ReferenceFile.Near(exact.End.Y, shot.End.Y, 3 * SimulatorOptions.Default.Tolerance, "y at the end");
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Energy_balances_to_1e_8(string name)
    {
        // At a tolerance of 1e-9 m.
        var shot = Throw(name, 1e-9);
        var lost = shot.End.Energy - shot.Start.Energy - shot.End.FrictionWork - shot.End.DragWork;
        Assert.True(Math.Abs(lost) < 1e-8 * shot.Start.Energy, $"{lost:E2} J of {shot.Start.Energy:F0} J are not accounted for");
    }
}
