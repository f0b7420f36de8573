using MathNet.Numerics.LinearAlgebra;
using static BallSim.Units;

namespace BallSim.Balls;

/// <summary>The centre of mass of a made ball from the readings of a balance scale: least squares, with uncertainties.</summary>
/// <remarks>A reading s towards the unit direction n is W d·n = s L (statics); three directions or more, not in one plane, give
/// d.</remarks>
public sealed record MeasuredCentre
{
    // Directions nearer to one plane than this magnify errors more than twenty times. Assumed.
    private const double WorstCondition = 20;

    private MeasuredCentre()
    {
    }

    /// <summary>From the centre of the ball to the centre of mass, in the ball frame, m.</summary>
    public required Vector3D CentreOfMass { get; init; }

    /// <summary>Standard error of each component, m.</summary>
    public required Vector3D StandardErrors { get; init; }

    /// <summary>Ratio of the greatest to the least singular value of the equations.</summary>
    public required double Condition { get; init; }

    /// <summary>The centre of mass that fits the readings.</summary>
    /// <param name="readings">Three readings or more, in directions that do not lie in one plane.</param>
    /// <param name="mass">Mass of the ball, kg; 0.1 to 100.</param>
    /// <param name="readingError">Standard error of a reading, kg; 0.01 g to 1 oz. A sixteenth of an ounce is usual (assumed).</param>
    /// <param name="balanceLever">Lever length of the scale, m; 3.36 in assumed.</param>
    /// <exception cref="ArgumentException">Fewer than three readings, or directions near one plane.</exception>
    public static MeasuredCentre FromBalance(IReadOnlyList<BalanceReading> readings, double mass, double readingError = Ounce / 16,
        double balanceLever = 3.36 * Inch)
    {
        ArgumentNullException.ThrowIfNull(readings);
        Check.That(readings.Count >= 3, $"a place has three components; {readings.Count} readings cannot tell them", nameof(readings));
        Check.Range(mass, 0.1, 100, Quantity.Mass);
        Check.Range(readingError, 1e-5, 1 * Ounce, Quantity.Mass);
        var perKilogram = Ball.Lever(balanceLever) / mass;
        var design = Matrix<double>.Build.DenseOfRowArrays(readings.Select(r => new[] { r.Direction.X, r.Direction.Y, r.Direction.Z }));
        var svd = design.Svd();
        // Nothing left in some direction comes out as zero of either sign.
        var condition = svd.S[0] / Math.Abs(svd.S[2]);
        Check.That(condition < WorstCondition,
            $"the directions lie too near one plane to tell the offset square to it: they magnify errors {(condition > 1e8 ? "without bound" : Check.Text(condition) + " times")}, " +
            $"{Check.Text(WorstCondition)} is the most that is taken", nameof(readings));
        var qr = design.QR();
        var d = qr.Solve(Vector<double>.Build.DenseOfEnumerable(readings.Select(r => perKilogram * r.Imbalance)));
        var inverse = qr.R.SubMatrix(0, 3, 0, 3).Inverse();
        double Error(int i) => perKilogram * readingError * inverse.Row(i).L2Norm();
        return new() { CentreOfMass = new(d[0], d[1], d[2]), StandardErrors = new(Error(0), Error(1), Error(2)), Condition = condition };
    }

    /// <summary>The offset and its standard errors in millimetres.</summary>
    public override string ToString() => $"{CentreOfMass / Millimetre} mm, standard errors {StandardErrors / Millimetre} mm";
}
