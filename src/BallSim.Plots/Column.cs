namespace BallSim.Plots;

/// <summary>A column of a sweep or a fit as it is to be shown: a name, a unit, and numbers in that unit. A row that failed is NaN.</summary>
/// <param name="Name">What it is, "pin to axis".</param>
/// <param name="Unit">The unit of the numbers, "in"; empty for a plain number.</param>
/// <param name="Values">The numbers, one for each row.</param>
public sealed record Column(string Name, string Unit, IReadOnlyList<double> Values)
{
    /// <summary>Name and unit.</summary>
    internal string Label => Figure.Plain(Unit.Length > 0 ? $"{Name}, {Unit}" : Name);

    /// <summary>A number with its unit, in as many digits as a picture can show.</summary>
    internal string Text(double value) => FormattableString.Invariant($"{(IsRounding(value) ? 0 : value):G4}{(Unit.Length == 0 ? "" : Unit == "°" ? "°" : " " + Unit)}");

    // What is left of a nought beside numbers of the column's size.
    private bool IsRounding(double value) => Math.Abs(value) < 1e-9 && Span is var (least, greatest) && Math.Abs(value) < 1e-12 * Math.Max(Math.Abs(least), Math.Abs(greatest));

    /// <summary>Least and greatest of the numbers that are numbers.</summary>
    internal (double Least, double Greatest) Span
    {
        get
        {
            double[] finite = [.. Values.Where(double.IsFinite)];
            return finite.Length > 0 ? (finite.Min(), finite.Max()) : throw new ArgumentException($"column \"{Name}\" holds no number", Name);
        }
    }

    /// <summary>All columns of one length, and at least one row.</summary>
    internal static int Rows(params IReadOnlyList<Column> columns)
    {
        var (first, rows) = (columns[0].Name, columns[0].Values.Count);
        if (rows == 0)
        {
            throw new ArgumentException($"column \"{first}\" has no rows", first);
        }
        if (columns.FirstOrDefault(c => c.Values.Count != rows) is { } other)
        {
            throw new ArgumentException($"column \"{other.Name}\" has {other.Values.Count} rows, column \"{first}\" {rows}; columns of one table have as many", other.Name);
        }
        return rows;
    }
}
