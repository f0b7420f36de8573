using BallSim.Balls;

namespace BallSim.Drilling;

/// <summary>
/// What one hole takes from the static balance (top, side, finger, kg) as a function of its depth: integrated at nine Chebyshev points,
/// with the barycentric interpolation between them.
/// </summary>
internal sealed class HoleShare
{
    private const int Points = 9;

    private readonly double[] depths = new double[Points];
    private readonly double[][] taken = new double[Points][];

    public HoleShare(Ball laidOut, Hole hole, double least, double greatest, DensityProfile? profile)
    {
        var interior = DrillSheet.InteriorOf(laidOut, profile);
        var marks = laidOut.Marks;
        for (var i = 0; i < Points; i++)
        {
            depths[i] = (least + greatest) / 2 - (greatest - least) / 2 * Math.Cos(Math.PI * i / (Points - 1));
            var moment = interior.Within(new Hole(hole.Name, hole.Entry, hole.Axis, hole.Diameter, depths[i]).Shaft(laidOut.Radius)).First;
            taken[i] = [.. ((Vector3D[])[marks.GripCentre!.Value, marks.GripRight!.Value, marks.GripUp!.Value])
                .Select(direction => moment.Dot(direction) / StaticBalance.AssumedLever)];
        }
    }

    public double At(double depth, int component)
    {
        var (above, below) = (0.0, 0.0);
        for (var i = 0; i < Points; i++)
        {
            if (Math.Abs(depth - depths[i]) < 1e-12)
            {
                return taken[i][component];
            }
            var weight = (i % 2 == 0 ? 1 : -1) * (i is 0 or Points - 1 ? 0.5 : 1) / (depth - depths[i]);
            above += weight * taken[i][component];
            below += weight;
        }
        return above / below;
    }

    /// <summary>The values at the nine depths: a share rises or falls all the way unless its hole crosses the middle of the ball.</summary>
    public IEnumerable<double> Range(int component) => taken.Select(t => t[component]);
}
