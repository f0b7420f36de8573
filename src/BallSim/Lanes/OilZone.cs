using System.Globalization;
using static BallSim.Units;

namespace BallSim.Lanes;

/// <summary>The mean film over a stretch of the lane.</summary>
/// <param name="FromDistance">Where it begins, m from the foul line.</param>
/// <param name="ToDistance">Where it ends, m.</param>
/// <param name="FromBoard">Its rightmost board.</param>
/// <param name="ToBoard">Its leftmost board.</param>
/// <param name="Film">Mean film, m.</param>
public readonly record struct OilZone(double FromDistance, double ToDistance, int FromBoard, int ToBoard, double Film)
{
    private const double Step = 10 * Foot;

    // Outside, track, middle, track, outside: the middle eleven and seven to each step outward.
    private static readonly int[] Last = [7, 14, 25, 32, 39];

    /// <summary>The lane in stretches of ten feet by five groups of boards (1-7, 8-14, 15-25, 26-32, 33-39; the grouping is ours), row by row from the foul line, each row from the right.</summary>
    public static IReadOnlyList<OilZone> Of(OilMap oil)
    {
        ArgumentNullException.ThrowIfNull(oil);
        // From left to right, as x grows.
        double[] x = [.. Last.Reverse().Select(b => RegulationLane.PlaceOf(b + 0.5)), RegulationLane.PlaceOf(0.5)];
        double[] y = [.. Enumerable.Range(0, 7).Select(k => k * Step)];
        var integrals = oil.Map.Integrals(x, y);
        return
        [
            .. from k in Enumerable.Range(0, 6)
               from part in Enumerable.Range(0, Last.Length)
               let column = Last.Length - 1 - part
               select new OilZone(y[k], y[k + 1], part == 0 ? 1 : Last[part - 1] + 1, Last[part], integrals[k, column] / ((x[column + 1] - x[column]) * Step)),
        ];
    }

    /// <summary>Feet, boards and micrometres.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{FromDistance / Foot:0.#} to {ToDistance / Foot:0.#} ft, boards {FromBoard} to {ToBoard}: {Film / Micrometre:0.##} µm");
}
