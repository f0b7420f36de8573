using System.Text.RegularExpressions;

namespace BallSim.Gpu;

/// <summary>
/// Quotients and roots of doubles in a kernel's text, without the branch and the call that the driver's compiler makes of each, round which it can move nothing: an estimate of half the digits, Newton's steps to all of them, and the remainder
/// for the last bit (P. Markstein, IBM J. Res. Dev. 34 (1990) 111), which is that of IEEE 754 wherever numbers, quotients and remainders are normal numbers (of numbers and quotients from 1e-290 to 1e290 they are), and for zero and infinity.
/// Smaller numbers than that may lose the last bit or count as zero; the equations have none.
/// </summary>
internal static partial class Branchless
{
    // The one in the low word is for quotients that lie as near to half a bit as they can.
    private const string ToQuotient = """
        {
        .reg .f64 d, s, r, e, q;
        .reg .b32 low, high;
        .reg .pred none;
        mov.f64 d, $3;
        rcp.approx.ftz.f64 s, d;
        mov.b64 {low, high}, s;
        mov.b64 r, {1, high};
        neg.f64 d, d;
        fma.rn.f64 e, r, d, 0d3FF0000000000000;
        fma.rn.f64 e, e, e, e;
        fma.rn.f64 r, r, e, r;
        fma.rn.f64 e, r, d, 0d3FF0000000000000;
        fma.rn.f64 r, r, e, r;
        mul.rn.f64 q, r, $2;
        fma.rn.f64 e, q, d, $2;
        fma.rn.f64 q, r, e, q;
        mul.rn.f64 s, s, $2;
        setp.nan.f64 none, q, q;
        selp.f64 $1, s, q, none;
        }
        """;

    // Zero and infinity, twice which is the same, are their own roots.
    private const string ToRoot = """
        {
        .reg .f64 a, y, e, c, s;
        .reg .pred own;
        mov.f64 a, $2;
        rsqrt.approx.ftz.f64 y, a;
        neg.f64 e, y;
        mul.rn.f64 e, e, y;
        fma.rn.f64 e, e, a, 0d3FF0000000000000;
        fma.rn.f64 c, e, 0d3FD8000000000000, 0d3FE0000000000000;
        mul.rn.f64 e, y, e;
        fma.rn.f64 y, c, e, y;
        mul.rn.f64 s, y, a;
        mul.rn.f64 y, y, 0d3FE0000000000000;
        neg.f64 e, s;
        fma.rn.f64 e, e, s, a;
        fma.rn.f64 s, e, y, s;
        add.rn.f64 e, a, a;
        setp.eq.f64 own, e, a;
        selp.f64 $1, a, s, own;
        }
        """;

    /// <summary>A kernel's text with these instead.</summary>
    public static string Of(string text) => Root().Replace(Quotient().Replace(Reciprocal().Replace(text, "div.rn.f64 $1, 0d3FF0000000000000, $2;"), ToQuotient), ToRoot);

    [GeneratedRegex(@"\bdiv\.rn\.f64\s+(\S+), (\S+), (\S+);")]
    private static partial Regex Quotient();

    [GeneratedRegex(@"\brcp\.rn\.f64\s+(\S+), (\S+);")]
    private static partial Regex Reciprocal();

    [GeneratedRegex(@"\bsqrt\.rn\.f64\s+(\S+), (\S+);")]
    private static partial Regex Root();
}
