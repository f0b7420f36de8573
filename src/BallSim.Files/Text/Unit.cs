namespace BallSim.Files.Text;

/// <summary>A unit: value in SI = number · Factor + Zero.</summary>
/// <param name="Symbol">The symbol as written and listed.</param>
/// <param name="Factor">One of this unit in SI.</param>
/// <param name="Aliases">Other spellings that are read.</param>
internal sealed record Unit(string Symbol, double Factor, params string[] Aliases)
{
    public double Zero { get; init; }

    public bool IsNamed(string symbol, StringComparison comparison) =>
        string.Equals(Symbol, symbol, comparison) || Aliases.Any(a => string.Equals(a, symbol, comparison));
}
