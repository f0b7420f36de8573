using static BallSim.Units;

namespace BallSim.Drilling;

/// <summary>One limit of the rules: what it limits, its value, where it comes from, and since when.</summary>
/// <param name="What">What is limited.</param>
/// <param name="AtLeast">Lower limit in SI units, or null.</param>
/// <param name="AtMost">Upper limit in SI units, or null. With neither limit the rule is off.</param>
/// <param name="Unit">Name of the unit it is printed in.</param>
/// <param name="UnitSize">Size of that unit in SI units.</param>
/// <param name="Digits">Digits after the point when printed.</param>
/// <param name="Source">Where the limit was read.</param>
/// <param name="Date">Date or year of the source, or since when the limit holds, as far as known.</param>
/// <param name="Standing">How it is known: seen in the source, seen as quoted by another text, from memory, computed.</param>
public sealed record RuleLimit(
    string What, double? AtLeast, double? AtMost, string Unit, double UnitSize, int Digits, string Source, string Date, string Standing)
{
    /// <summary>True if there is a limit at all.</summary>
    public bool IsSet => AtLeast is not null || AtMost is not null;

    /// <summary>The limit in its own unit.</summary>
    public string Text => (AtLeast, AtMost) switch
    {
        (null, null) => "none set",
        ({ } low, null) => $"at least {Number(low)}",
        (null, { } high) => $"at most {Number(high)}",
        ({ } low, { } high) => $"{Plain(low)} to {Number(high)}",
    };

    /// <summary>True if a value keeps the limit; a last digit of rounding is forgiven, nothing else.</summary>
    public bool Keeps(double value)
    {
        // A limit of 0.060 in and a ball made from 2.480 and 0.060 in differ in the sixteenth digit.
        const double Rounding = 1e-12;
        var slack = Rounding * UnitSize + 1e-13 * Math.Abs(value);
        return !(value < AtLeast - slack) && !(value > AtMost + slack);
    }

    /// <summary>A value in the unit of this limit, with the unit.</summary>
    public string Number(double value) => Unit.Length == 0 ? Plain(value) : $"{Plain(value)} {Unit}";

    private string Plain(double value) => (value / UnitSize).ToString("F" + Digits, System.Globalization.CultureInfo.InvariantCulture);

    internal static RuleLimit Inches(string what, double? atLeast, double? atMost, string source, string date, string standing) =>
        new(what, atLeast * Inch, atMost * Inch, "in", Inch, 3, source, date, standing);

    /// <summary>What is limited, the limit and its source.</summary>
    public override string ToString() => $"{What} {Text} ({Source}{(Date.Length == 0 ? "" : ", " + Date)})";
}
