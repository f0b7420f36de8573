using BallSim.Balls;
using BallSim.Drilling;
using BallSim.Ensembles;
using BallSim.Lanes;
using BallSim.Releases;
using static BallSim.Units;

namespace BallSim.Benchmarks;

/// <summary>Throws for the card, from seeds: the benchmark's releases with every number moved a little, and scenarios of all kinds.</summary>
internal static class Scenarios
{
    public static Lane Oiled { get; } = Lane.Regulation with { Oil = OilMap.Crowned(42 * Foot, 25 * Millilitre) };

    /// <summary>One ball on one lane, releases over the range of the benchmark's set.</summary>
    public static Throw[] Alike(int count, Lane lane)
    {
        var random = new Random(20261125);
        double Between(double a, double b) => a + (b - a) * random.NextDouble();
        return [.. Enumerable.Range(0, count).Select(_ =>
        {
            var rotation = Between(15, 60);
            return new Throw(ReleaseSet.Ball, lane, new()
            {
                Speed = Between(7.2, 9), SpinRate = Between(25, 40), AxisRotation = rotation * Degree, AxisTilt = Between(2, 20) * Degree, Board = 17, LaunchAngle = (0.3 + rotation / 30) * Degree,
            });
        })];
    }

    /// <summary>Balls with and without an offset centre of mass, both hands, film and given friction, slopes, loft; releases that gutter, stop short, slip again.</summary>
    public static Throw[] OfAllKinds(int count)
    {
        var random = new Random(7);
        double Between(double a, double b) => a + (b - a) * random.NextDouble();
        Ball Drilled(Hand hand, double offset) => Ball.FromSpecification(Between(12, 16) * Pound, Between(2.46, 2.62) * Inch, Between(0.01, 0.058) * Inch, Between(0, 0.02) * Inch,
            centreOfMass: new Vector3D(Between(-offset, offset), Between(-offset, offset), Between(-offset, offset)) * Millimetre)
            .LayOut(new Layout(Between(1, 6) * Inch, Between(10, 90) * Degree, Between(10, 90) * Degree), Grip.Fingertip, new PositiveAxisPoint(Between(4, 6) * Inch, Between(-1, 1) * Inch, hand));
        Ball[] balls = [Drilled(Hand.Right, 0), Drilled(Hand.Right, 0.6), Drilled(Hand.Left, 0.3), Drilled(Hand.Left, 2)];
        Lane[] lanes =
        [
            Oiled, Lane.Regulation, Lane.Regulation with { Oil = OilMap.Crowned(35 * Foot, 12 * Millilitre) }, ReleaseSet.Lane, Lane.Regulation with { GivenFriction = FrictionMap.Constant(0.07) },
        ];
        return [.. Enumerable.Range(0, count).Select(i => new Throw(balls[random.Next(balls.Length)], lanes[random.Next(lanes.Length)], new()
        {
            Speed = Between(3, 11), SpinRate = Between(1, 60), AxisRotation = Between(-10, 100) * Degree, AxisTilt = Between(-5, 45) * Degree, Board = Between(5, 35), LaunchAngle = Between(-2, 4) * Degree,
            Loft = i % 3 == 0 ? Between(0, 2) : 0,
        }))];
    }
}
