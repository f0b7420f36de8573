namespace BallSim.Lanes;

/// <summary>Checks of the numbers that a map over the lane is made of.</summary>
internal static class Table
{
    public static double[] Increasing(IReadOnlyList<double> values, double low, double high, string name, Quantity? quantity = null)
    {
        quantity ??= Quantity.Length;
        Check.That(values.Count >= 2, $"{name} has {values.Count} value(s); a table needs at least two", name);
        for (var k = 0; k < values.Count; k++)
        {
            Check.Range(values[k], low, high, quantity, $"{name}[{k}]");
            Check.That(k == 0 || values[k] > values[k - 1],
                $"{name}[{k}] = {Check.Text(values[k])} is not greater than {name}[{k - 1}] = {(k == 0 ? "" : Check.Text(values[k - 1]))}; {name} must increase", name);
        }
        return [.. values];
    }

    public static double[,] Values(double[,] values, int rows, int columns, double low, double high, Quantity quantity, string name)
    {
        Check.That(values.GetLength(0) == rows && values.GetLength(1) == columns,
            $"{name} has {values.GetLength(0)} rows and {values.GetLength(1)} columns; {rows} stations and {columns} places across are given", name);
        for (var k = 0; k < rows; k++)
        {
            for (var i = 0; i < columns; i++)
            {
                Check.Range(values[k, i], low, high, quantity, $"{name}[{k}, {i}]");
            }
        }
        return values;
    }
}
