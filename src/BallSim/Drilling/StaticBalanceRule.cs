using static BallSim.Units;

namespace BallSim.Drilling;

/// <summary>The static balance allowed for one class of weight in one span of time.</summary>
/// <param name="OverWeight">Lower end of the class, kg.</param>
/// <param name="IncludesOver">True if a ball of exactly <paramref name="OverWeight"/> belongs to the class.</param>
/// <param name="From">First day, or null for always.</param>
/// <param name="Until">First day on which it holds no more, or null.</param>
/// <param name="TopBottom">Most between top and bottom, kg (ounces of mass).</param>
/// <param name="Sides">Most between the sides and between finger and thumb half, kg.</param>
/// <param name="Source">Where it was read.</param>
/// <param name="Standing">How it is known.</param>
public sealed record StaticBalanceRule(
    double OverWeight, bool IncludesOver, DateOnly? From, DateOnly? Until, double TopBottom, double Sides, string Source, string Standing)
{
    /// <summary>True if the rule is for a ball of this weight on this day.</summary>
    public bool AppliesTo(double weight, DateOnly day) =>
        (IncludesOver ? weight >= OverWeight * (1 - 1e-12) : weight > OverWeight * (1 + 1e-12)) && !(day < From) && !(day >= Until);

    internal RuleLimit Limit(string what, double atMost) =>
        new(what, null, atMost, "oz", Ounce, 2, Source,
            From is { } f ? $"since {f:yyyy-MM-dd}" : Until is { } u ? $"until {u:yyyy-MM-dd}" : "", Standing);

    /// <summary>For which balls and when, and what is allowed.</summary>
    public override string ToString() => string.Create(System.Globalization.CultureInfo.InvariantCulture,
        $"{(IncludesOver ? "from" : "over")} {OverWeight / Pound:0.##} lb{(From is { } f ? $" since {f:yyyy-MM-dd}" : "")}{(Until is { } u ? $" until {u:yyyy-MM-dd}" : "")}: {TopBottom / Ounce:0.##} oz top to bottom, {Sides / Ounce:0.##} oz side to side");
}
