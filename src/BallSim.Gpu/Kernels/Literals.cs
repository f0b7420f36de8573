using System.Globalization;
using System.Text.RegularExpressions;

namespace BallSim.Gpu;

/// <summary>
/// Doubles that stand in a kernel's text, put into a table in the card's constant memory, from which one instruction fetches one; written out they take two moves each, a tenth of all that a step in doubles does. Those whose lower half is
/// nought stay: they are part of the instruction that uses them.
/// </summary>
internal static partial class Literals
{
    /// <summary>A kernel's text with them there.</summary>
    public static string Of(string text)
    {
        var places = new Dictionary<string, int>();
        string Fetched(Match line)
        {
            var literals = Long().Matches(line.Value).Select(m => m.Value).Distinct().ToArray();
            if (literals.Length == 0)
            {
                return line.Value;
            }
            var (made, fetching) = (line.Value, "");
            for (var i = 0; i < literals.Length; i++)
            {
                if (!places.TryGetValue(literals[i], out var place))
                {
                    places[literals[i]] = place = places.Count;
                }
                fetching += string.Create(CultureInfo.InvariantCulture, $" .reg .f64 number{i}; ld.const.f64 number{i}, [numbers+{sizeof(double) * place}];");
                made = made.Replace(literals[i], $"number{i}", StringComparison.Ordinal);
            }
            return $"{{{fetching} {made} }}";
        }
        var body = Instruction().Replace(text, Fetched);
        return places.Count == 0 ? text : Header().Replace(body, $"$0\n.const .align 8 .b64 numbers[{places.Count}] = {{ {string.Join(", ", places.Keys.Select(k => "0x" + k[2..]))} }};", 1);
    }

    // Any but a move, which is one already.
    [GeneratedRegex(@"^[ \t]*(?!mov)[a-z][\w.]*\s[^;{}\n]*;", RegexOptions.Multiline)]
    private static partial Regex Instruction();

    [GeneratedRegex("0d[0-9A-Fa-f]{8}(?!0{8})[0-9A-Fa-f]{8}")]
    private static partial Regex Long();

    [GeneratedRegex(@"^\.address_size 64", RegexOptions.Multiline)]
    private static partial Regex Header();
}
