using BallSim.Balls;
using BallSim.Drilling;
using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Shots;
using static BallSim.Units;

namespace BallSim.Plots.Tests;

/// <summary>Shots to look at.</summary>
internal static class Throws
{
    public static Lane Oiled { get; } = Lane.Regulation with { Oil = OilMap.Crowned(length: 42 * Foot, volume: 25 * Millilitre) };

    public static Shot On(Lane lane, Finish? finish = null, double loft = 0) => Simulator.Throw(
        Ball.FromSpecification(15 * Pound, 2.48 * Inch, 0.05 * Inch, finish: finish), lane,
        new Release
        {
            Board = 26,
            LaunchAngle = 3 * Degree,
            Speed = 18 * MilesPerHour,
            SpinRate = 350 * Rpm,
            AxisRotation = 50 * Degree,
            AxisTilt = 12 * Degree,
            Loft = loft,
            AxisInBall = Vector3D.UnitY,
        });

    public static Release Usual { get; } = new()
    {
        Board = 24, LaunchAngle = 3 * Degree, Speed = 18 * MilesPerHour, SpinRate = 350 * Rpm, AxisRotation = 60 * Degree, AxisTilt = 12 * Degree,
    };

    public static DrillSheet Sheet(Hand hand = Hand.Right) => DrillSheet.Of(
        Ball.FromSpecification(15 * Pound, 2.48 * Inch, 0.05 * Inch, 0.015 * Inch, pinToCg: 3 * Inch, topWeight: 2.5 * Ounce, finish: Finish.Polished),
        new Layout(4.5 * Inch, 50 * Degree, 40 * Degree), Grip.Fingertip, new PositiveAxisPoint(5 * Inch, 0.5 * Inch, hand));

    public static Shot Drilled(double loft = 0) => Simulator.Throw(Sheet().Ball, Oiled, Usual with { Loft = loft });
}
