using System.Globalization;

namespace BallSim.Files.Text;

/// <summary>
/// Quantities as files write them: a number, then its unit. "18 mph", "4.5 in", "3 3/8 in", "0.030 Pa s". The number is a decimal with a
/// point, a fraction, or a whole number and a fraction, as drillers write inches.
/// </summary>
internal static class UnitText
{
    private const NumberStyles Plain = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent;

    /// <summary>The value in SI, or false and the sentence that says what is wrong and what is allowed.</summary>
    public static bool TryParse(string text, UnitKind kind, out double value, out string sentence)
    {
        value = double.NaN;
        var (figure, symbol) = Split(text);
        if (Figure(figure) is not { } number)
        {
            sentence = figure.Length + symbol.Length == 0 ? $"is empty; {kind.Name} is wanted, such as \"{kind.Example}\""
                : figure.Contains(',') ? $"is not a number with a unit; write the decimals after a point, such as \"{kind.Example}\""
                : $"is not a number with a unit; {kind.Name} is wanted, such as \"{kind.Example}\"";
            return false;
        }
        if (symbol.Length == 0)
        {
            sentence = $"has no unit; {kind.Name} carries one, such as \"{kind.Example}\" (allowed: {kind.Allowed})";
            return false;
        }
        if (kind.UnitNamed(symbol) is not { } unit)
        {
            sentence = UnitKind.Owning(symbol) is { } other
                ? $"is {other.Name}; here {kind.Name} is wanted (allowed: {kind.Allowed})"
                : $"has the unknown unit \"{symbol}\"{Nearest.Question(symbol, kind.Units.Select(u => u.Symbol))} (allowed for {kind.Name}: {kind.Allowed})";
            return false;
        }
        // A zero below nothing stays one: it is another number, and it reads back.
        value = unit.Zero == 0 ? number * unit.Factor : number * unit.Factor + unit.Zero;
        sentence = double.IsFinite(value) ? "" : "is too large for a number";
        return sentence.Length == 0;
    }

    /// <summary>
    /// The shortest text that reads back as exactly this value, in the kind's first unit if any text there does, else in the unit that
    /// needs the fewest figures.
    /// </summary>
    public static string Of(double value, UnitKind kind)
    {
        string? best = null;
        foreach (var unit in kind.Units)
        {
            double number = (value - unit.Zero) / unit.Factor;
            for (int digits = 1; digits <= 17; digits++)
            {
                var figure = number.ToString("G" + digits.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
                if (double.Parse(figure, CultureInfo.InvariantCulture) * unit.Factor + unit.Zero == value)
                {
                    var text = $"{figure} {unit.Symbol}";
                    // A trade number such as 2.48 in is short; only a value that came from elsewhere changes to a later unit.
                    best = best is null || text.Length + 4 < best.Length ? text : best;
                    break;
                }
            }
        }
        // A unit of factor one always reads back, and every kind has such a unit, or one so close (°C) that it is the first.
        return best ?? FormattableString.Invariant($"{value:R} {kind.Units[0].Symbol}");
    }

    /// <summary>The number and the unit's symbol, as written.</summary>
    public static (string Figure, string Symbol) Split(string text)
    {
        var trimmed = text.Trim();
        int end = EndOfNumber(trimmed);
        return (trimmed[..end].Trim(), trimmed[end..].Trim());
    }

    // Figures, signs, points and slashes, and an exponent's e when figures follow it; "1/s" and a bare "e" belong to the unit.
    private static int EndOfNumber(string text)
    {
        int end = 0;
        for (int i = 0; i < text.Length; i++)
        {
            char c = text[i];
            bool exponent = c is 'e' or 'E' && end == i && i > 0
                && i + 1 < text.Length && (char.IsAsciiDigit(text[i + 1]) || (text[i + 1] is '+' or '-' && i + 2 < text.Length && char.IsAsciiDigit(text[i + 2])));
            bool perSomething = c is '1' && i + 2 < text.Length && text[i + 1] == '/' && char.IsAsciiLetter(text[i + 2]) && i > 0 && text[i - 1] == ' ';
            if (perSomething)
            {
                break;
            }
            if (char.IsAsciiDigit(c) || c is '.' or ',' or '/' || (c is '+' or '-' && (i == 0 || text[i - 1] is 'e' or 'E')) || exponent)
            {
                end = i + 1;
            }
            else if (c != ' ')
            {
                break;
            }
        }
        // A slash belongs to the number only between figures.
        while (end > 0 && text[end - 1] is '/' or ' ')
        {
            end--;
        }
        return end;
    }

    private static double? Figure(string text)
    {
        var parts = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return parts.Length switch
        {
            1 when parts[0].Contains('/') => Fraction(parts[0]),
            1 => Decimal(parts[0]),
            2 when parts[1].Contains('/') && Decimal(parts[0]) is { } whole && whole == Math.Truncate(whole)
                && Fraction(parts[1]) is { } part and >= 0 and < 1 =>
                parts[0][0] == '-' ? whole - part : whole + part,
            _ => null,
        };
    }

    private static double? Fraction(string text)
    {
        var parts = text.Split('/');
        return parts.Length == 2 && Decimal(parts[0]) is { } above && Decimal(parts[1]) is { } below && below > 0
            && above == Math.Truncate(above) && below == Math.Truncate(below) ? above / below : null;
    }

    private static double? Decimal(string text) =>
        double.TryParse(text, Plain, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value) ? value : null;
}
