using FsCheck;
using FsCheck.Fluent;

namespace BallSim.Tests.Lanes;

/// <summary>A table on uneven knots.</summary>
public sealed record Grid(double[] X, double[] Y, double[,] Values)
{
    public double Span => Values.Cast<double>().Max() - Values.Cast<double>().Min();

    public override string ToString() =>
        $"x [{string.Join(", ", X)}] y [{string.Join(", ", Y)}] values [{string.Join(", ", Values.Cast<double>())}]";
}

/// <summary>A point within a cell, as fractions.</summary>
public sealed record Spot(int Column, int Row, double U, double V);

/// <summary>Tables with what breaks an interpolation: cliffs, plateaus, saddles, very narrow beside very wide cells.</summary>
public static class Grids
{
    private static Gen<double> Width { get; } =
        from size in Gen.Elements(0.003, 0.03, 0.3, 3)
        from part in Gen.Choose(10, 100)
        select size * part / 100;

    private static Gen<double> Value { get; } = Gen.OneOf(
        Gen.Elements(0.0, 0.0, 1e-9, 50.0),
        from n in Gen.Choose(0, 10000) select n / 200.0);

    private static Gen<double[]> Knots(int count) =>
        from start in Gen.Choose(-100, 100)
        from widths in Width.ArrayOf(count - 1)
        select widths.Aggregate(new List<double> { start / 50.0 }, (knots, width) => [.. knots, knots[^1] + width]).ToArray();

    public static Arbitrary<Grid> Grid() => (
        from columns in Gen.Choose(2, 6)
        from rows in Gen.Choose(2, 6)
        from x in Knots(columns)
        from y in Knots(rows)
        from values in Value.ArrayOf(columns * rows)
        select new Grid(x, y, Table(rows, columns, (k, i) => values[k * columns + i]))).ToArbitrary();

    public static Arbitrary<Spot> Spot() => (
        from column in Gen.Choose(0, 1000)
        from row in Gen.Choose(0, 1000)
        from u in Gen.Choose(0, 1000)
        from v in Gen.Choose(0, 1000)
        select new Spot(column, row, u / 1000.0, v / 1000.0)).ToArbitrary();

    public static double[,] Table(int rows, int columns, Func<int, int, double> value)
    {
        var table = new double[rows, columns];
        for (var k = 0; k < rows; k++)
        {
            for (var i = 0; i < columns; i++)
            {
                table[k, i] = value(k, i);
            }
        }
        return table;
    }
}
