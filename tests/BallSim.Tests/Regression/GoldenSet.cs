using System.Globalization;
using System.Runtime.Intrinsics;
using BallSim.Balls;
using BallSim.Ensembles;
using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Shots;
using static BallSim.Units;

namespace BallSim.Tests.Regression;

/// <summary>
/// Three dozen throws over given friction, a film without and with the oil on the cover, a tilted lane and all small forces, and every number of their outcomes to the last bit. <c>BallSim.Tests golden</c> prints them; the test compares what processors
/// of less ability print, and what was printed when the numbers were last looked at (tests/data/golden.txt).
/// </summary>
internal static class GoldenSet
{
    private static readonly SimulatorOptions Exact = new() { Tolerance = 1e-6 };

    private static readonly Ball Offset = Ball.FromSpecification(
        weight: 15 * Pound, lowRg: 2.48 * Inch, differential: 0.050 * Inch, intermediateDifferential: 0.015 * Inch, centreOfMass: new Vector3D(0.20, 0.15, -0.25) * Millimetre);

    private static readonly Lane Oiled = Lane.Regulation with { Oil = OilMap.Crowned(40 * Foot, 25 * Millilitre) };

    private static readonly (string Name, Ball Ball, Lane Lane, SimulatorOptions Options)[] Worlds =
    [
        ("given", Offset, Lane.Regulation with { GivenFriction = FrictionMap.Smoothstep(0.04, 0.18, 10, 14) }, Exact),
        ("slips-again", Offset with { CentreOfMass = new Vector3D(2.4, 1.0, -1.4) * Millimetre }, Lane.Regulation with { GivenFriction = FrictionMap.Smoothstep(0.04, 0.2, 8, 11) }, Exact),
        ("film", Offset, Oiled, Exact with { CoverOil = false }),
        ("full", Offset with { Cover = Cover.Reactive }, Oiled, Exact),
        ("tilted", Offset, Oiled with { Topography = Topography.Tilted(0.001, -0.0005) }, Exact with { Tolerance = 1e-4 }),
        ("all-forces", Offset, Oiled, Exact with { RollingResistance = true, PivotingFriction = true, MagnusForce = true }),
    ];

    private static IEnumerable<Release> Releases() =>
        from i in Enumerable.Range(0, 6)
        select new Release
        {
            Board = 22 + i,
            Speed = 7.4 + 0.3 * i,
            SpinRate = 24 + 5 * (i * 5 % 6),
            AxisRotation = (15 + 10 * i) * Degree,
            AxisTilt = (2 + 4 * (i * 2 % 6)) * Degree,
            LaunchAngle = (2 + 0.8 * (i * 5 % 6)) * Degree,
            AxisInBall = new(0.6, 0.64, 0.48),
            Loft = 0.1 * (i % 2),
        };

    /// <summary>What the processor may do here, on the first line; then a line for every throw.</summary>
    public static IEnumerable<string> Lines(bool sideBySide = true, int threads = 1)
    {
        yield return $"# vectors of {(Vector512.IsHardwareAccelerated ? 512 : Vector256.IsHardwareAccelerated ? 256 : Vector128.IsHardwareAccelerated ? 128 : 0)} bits";
        foreach (var (name, ball, lane, options) in Worlds)
        {
            Throw[] rows = [.. Releases().Select(r => new Throw(ball, lane, r))];
            foreach (var (outcome, i) in Ensemble.Throw(rows, new() { Shot = options, SideBySide = sideBySide, Threads = threads }).Select((o, i) => (o, i)))
            {
                yield return $"{name} {i} {outcome.StopReason} {outcome.Steps} {outcome.SlippedAgain} {string.Join(' ', Numbers(outcome).Select(n => BitConverter.DoubleToInt64Bits(n).ToString("x16", CultureInfo.InvariantCulture)))}";
            }
        }
    }

    private static double[] Numbers(Outcome o) =>
    [
        o.Time, o.X, o.Distance, o.BoardAtPinLine, o.Offset, o.Angle, o.Speed, o.SlipSpeed, o.SpinRate, o.AxisRotation, o.AxisTilt, o.Revolutions, o.AxisMigration, o.BreakpointBoard, o.BreakpointDistance,
        o.RollDistance, o.RollBoard, o.RollTime, o.OilTakenUp,
    ];
}
