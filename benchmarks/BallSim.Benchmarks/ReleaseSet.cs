using BallSim.Balls;
using BallSim.Drilling;
using BallSim.Friction;
using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Shots;
using BallSim.Spatial;
using static BallSim.Units;

namespace BallSim.Benchmarks;

/// <summary>
/// The set that accuracy and speed are stated over: 512 releases of one drilled, offset, asymmetric ball on a lane whose friction is given (0.04 on the first 10 m, rising smoothly to 0.18 at
/// 14 m), so that any general solver can be set the same problem.
/// </summary>
internal static class ReleaseSet
{
    public static Ball Ball { get; } = Ball.FromSpecification(
        weight: 15 * Pound, lowRg: 2.48 * Inch, differential: 0.050 * Inch, intermediateDifferential: 0.015 * Inch, diameter: 8.55 * Inch,
        centreOfMass: new Vector3D(0.20, 0.15, -0.25) * Millimetre)
        .LayOut(new Layout(4.5 * Inch, 50 * Degree, 40 * Degree), Grip.Fingertip, new PositiveAxisPoint(5 * Inch, 0.5 * Inch));

    /// <summary>Coefficient of friction before and after its smooth change, and where that begins and ends, m.</summary>
    public const double Mu1 = 0.04, Mu2 = 0.18, ChangeFrom = 10, ChangeTo = 14;

    public static Lane Lane { get; } = Lane.Regulation with { GivenFriction = FrictionMap.Smoothstep(Mu1, Mu2, ChangeFrom, ChangeTo) };

    /// <summary>A lane with 25 mL of oil to 42 ft, for the full law.</summary>
    public static Lane Oiled { get; } = Lane.Regulation with { Oil = OilMap.Crowned(42 * Foot, 25 * Millilitre) };

    /// <summary>The same lane with its friction given: at the knots of the oil map, what the law makes of the film there under a fresh cover at a slip of 2 m/s. The ball goes nearly the same way as over the oil, with none of the law and the states to work out.</summary>
    public static Lane OiledAsGiven { get; } = Lane.Regulation with { GivenFriction = AsGiven(Oiled.Oil) };

    private static FrictionMap AsGiven(OilMap oil)
    {
        double[] x = [.. oil.Cells.X.Where(double.IsFinite)], y = [.. oil.Cells.Y.Where(double.IsFinite)];
        var law = Contact.Of(Ball, Oiled).Law<Real>(new SimulatorOptions().Friction);
        var mu = new double[y.Length, x.Length];
        for (var k = 0; k < y.Length; k++)
        {
            for (var i = 0; i < x.Length; i++)
            {
                mu[k, i] = law.Friction(oil.FilmAt(x[i], y[k]), 2.0);
            }
        }
        return FrictionMap.FromTable(y, x, mu);
    }

    /// <summary>Eight speeds, four spin rates, four rotations, four tilts, aimed the further out the more side roll, so that none ends in a gutter.</summary>
    public static Release[] Releases { get; } = [.. Grid()];

    private static IEnumerable<Release> Grid()
    {
        foreach (var speed in Steps(8, 7.2, 9.0))
        {
            foreach (var spin in Steps(4, 25, 40))
            {
                foreach (var rotation in Steps(4, 15, 60))
                {
                    foreach (var tilt in Steps(4, 2, 20))
                    {
                        yield return new()
                        {
                            Speed = speed,
                            SpinRate = spin,
                            AxisRotation = rotation * Degree,
                            AxisTilt = tilt * Degree,
                            Board = 17,
                            LaunchAngle = (0.3 + rotation / 30) * Degree,
                        };
                    }
                }
            }
        }
    }

    private static IEnumerable<double> Steps(int count, double from, double to) => Enumerable.Range(0, count).Select(i => from + (to - from) * i / (count - 1));
}
