using System.Globalization;
using BallSim.Files.Text;

namespace BallSim.Files.Json;

/// <summary>
/// The library's argument errors in the words of a file: no parameter names, no code, ranges in the unit that was written.
/// </summary>
internal static class Worded
{
    /// <summary>The sentence without the parameter note that .NET appends and without advice that belongs in code.</summary>
    public static string Sentence(ArgumentException e)
    {
        var text = e.Message;
        int note = text.IndexOf(" (Parameter '", StringComparison.Ordinal);
        text = (note < 0 ? text : text[..note]).Split('\n')[0].TrimEnd();
        int advice = text.IndexOf("; for ", StringComparison.Ordinal);
        return advice >= 0 && text.IndexOf(" * ", advice, StringComparison.Ordinal) > 0 ? text[..advice] : text;
    }

    /// <summary>"[0.5, 40] mph", and the unit that was probably meant when another one of the kind would have been in range.</summary>
    public static string Range(string written, UnitKind? kind, double low, double high)
    {
        if (kind is null)
        {
            return $"[{Bound(low)}, {Bound(high)}]";
        }
        var (figure, symbol) = UnitText.Split(written);
        var unit = kind.UnitNamed(symbol) ?? kind.Units[0];
        var span = $"[{Bound((low - unit.Zero) / unit.Factor)}, {Bound((high - unit.Zero) / unit.Factor)}] {unit.Symbol}";
        foreach (var other in kind.Units)
        {
            if (other != unit && UnitText.TryParse($"{figure} {other.Symbol}", kind, out var meant, out _) && meant >= low && meant <= high)
            {
                return $"{span}; did you mean \"{figure} {other.Symbol}\"?";
            }
        }
        return span;
    }

    // Four figures, but no powers of ten where people count in thousands.
    private static string Bound(double value) => double.IsPositiveInfinity(value) ? "∞" : double.IsNegativeInfinity(value) ? "-∞"
        : value.ToString(Math.Abs(value) is >= 1e4 and < 1e7 ? "F0" : "G4", CultureInfo.InvariantCulture);
}
