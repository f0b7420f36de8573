using BallSim.Balls;
using BallSim.Friction;
using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Shots;
using Xunit.Abstractions;
using static BallSim.Units;

namespace BallSim.Tests.Shots;

/// <summary>
/// The fresh fraction, which the motion takes from the present drift of the axis without a history, against a count on the ball: along a whole shot it is kept where the contact patch has been, and of the patch the
/// share is counted that lies on cover which the turn before did not touch.
/// </summary>
public class FreshCoverCountTests(ITestOutputHelper output)
{
    private const int PerTurn = 720;
    private const int Across = 81;

    [Theory]
    [InlineData(0.014)]
    [InlineData(0.030)]
    [InlineData(0.045)]
    [InlineData(0.059)]
    public void The_local_law_agrees_with_a_count_of_rings(double differential)
    {
        var ball = Ball.FromSpecification(15 * Pound, 2.48 * Inch, differential * Inch, cover: Cover.Reactive);
        var lane = Lane.Regulation with { Oil = OilMap.Crowned(40 * Foot, 25 * Millilitre) };
        var shot = Simulator.Throw(ball, lane, new Release
        {
            Speed = 17.9 * MilesPerHour,
            SpinRate = 350 * Rpm,
            AxisRotation = 45 * Degree,
            AxisTilt = 13 * Degree,
            LaunchAngle = 2 * Degree,
            Board = 25,
            AxisInBall = new(1, 0.6, 0.8),
        });
        Assert.True(shot.ReachedPins);
        var halfWidth = Contact.Of(ball, lane).ContactRadius;
        var turns = (int)(shot.End.Revolutions * PerTurn);
        var points = Enumerable.Range(0, turns + 1).Select(i => shot.AtRevolution(i / (double)PerTurn)).ToArray();
        var places = Array.ConvertAll(points, p => p.Orientation.Inverse.Apply(new(0, 0, -1)));

        // The first turn has none before it; from one and a half on the whole turn around the place one turn back is there.
        double error = 0, bias = 0, greatest = 0, mean = 0;
        var count = 0;
        for (var i = PerTurn * 3 / 2 + 1; i < places.Length - 1; i += 5)
        {
            var counted = Untouched(places, i, ball.Radius, halfWidth);
            var off = points[i].FreshCover - counted;
            (error, bias, greatest, mean, count) = (error + Math.Abs(off), bias + off, Math.Max(greatest, Math.Abs(off)), mean + counted, count + 1);
        }
        output.WriteLine($"differential {differential} in: mean absolute error {error / count:F3}, bias {bias / count:+0.000;-0.000}, greatest {greatest:F2}, mean counted {mean / count:F2}, {count} places");
        Assert.True(count > 1000);
        Assert.InRange(error / count, 0, 0.15);
        // A law that said nothing would be off by as much as the count itself.
        Assert.True(error < 0.5 * mean);
    }

    private static double Untouched(Vector3D[] places, int at, double radius, double halfWidth)
    {
        var (first, last) = (at - PerTurn * 3 / 2, at - PerTurn / 2);
        var k = places[at];
        var nearest = first;
        for (var j = first; j <= last; j++)
        {
            nearest = (places[j] - k).Length < (places[nearest] - k).Length ? j : nearest;
        }
        var side = k.Cross(places[at + 1] - places[at - 1]).Unit;
        var untouched = 0;
        for (var n = 0; n < Across; n++)
        {
            var x = halfWidth * (2 * n / (Across - 1.0) - 1);
            var u = radius * (Math.Cos(x / radius) * k + Math.Sin(x / radius) * side);
            var touched = false;
            for (var j = Math.Max(first, nearest - 8); j < Math.Min(last, nearest + 8) && !touched; j++)
            {
                touched = ToSegment(u, radius * places[j], radius * places[j + 1]) <= halfWidth;
            }
            untouched += touched ? 0 : 1;
        }
        return untouched / (double)Across;
    }

    private static double ToSegment(Vector3D u, Vector3D a, Vector3D b)
    {
        var along = b - a;
        var share = Math.Clamp((u - a).Dot(along) / along.Dot(along), 0, 1);
        return (u - a - share * along).Length;
    }
}
