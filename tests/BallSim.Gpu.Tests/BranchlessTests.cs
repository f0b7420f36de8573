using System.Globalization;

namespace BallSim.Gpu.Tests;

/// <summary>
/// What a card is given for a quotient and for a root is read here line by line and done with the processor's fused operations: it must come to the processor's own quotient and root, to the last bit, whatever the estimate that a card begins with (but for one mantissa, see there).
/// That has the upper word of a double (PTX ISA, rcp.approx.ftz.f64 and rsqrt.approx.ftz.f64) and errs by some units of its last place; here, by up to two.
/// </summary>
public class BranchlessTests
{
    private static readonly string[] Quotient = Lines("\tdiv.rn.f64\t%fd3, %fd1, %fd2;"), Reciprocal = Lines("\trcp.rn.f64\t%fd3, %fd2;"), Root = Lines("\tsqrt.rn.f64\t%fd3, %fd1;");

    [Fact]
    public void No_branch_and_no_instruction_that_makes_one_is_left()
    {
        Assert.All(Quotient.Concat(Reciprocal).Concat(Root), line => Assert.DoesNotMatch(@"\bbra\b|call|^div|^rcp\.rn|^sqrt|\.rn\.f64 .*\$", line));
        Assert.Contains("selp.f64 %fd3,", Quotient[^1]);
        Assert.Contains("selp.f64 %fd3,", Root[^1]);
        // Those of floats, and what else divides, stay.
        Assert.Equal("div.full.f32 %f3, %f1, %f2;\ndiv.s32 %r3, %r1, %r2;", Branchless.Of("div.full.f32 %f3, %f1, %f2;\ndiv.s32 %r3, %r1, %r2;"));
    }

    [Fact]
    public void Quotients_are_those_of_the_processor()
    {
        var random = new Random(1);
        for (var i = 0; i < 200_000; i++)
        {
            var (a, b) = (Any(random, i), Any(random, i / 7));
            // Of the last number before a power of two the quotient of a power of two lies as near to half a bit as can be: there it takes the best of estimates, as a card has it, whose own division goes the same way.
            var off = (BitConverter.DoubleToInt64Bits(b) + 1 & (1L << 52) - 1) == 0 ? 0 : random.Next(-2, 3);
            Assert.Equal(a / b, Done(Quotient, a, b, off));
            Assert.Equal(1 / b, Done(Reciprocal, 0, b, off));
        }
        for (var i = 0; i < 60 * 60; i++)
        {
            var (a, b) = (2 - i % 60 * Math.Pow(2, -52), 2 - i / 60 * Math.Pow(2, -52));
            Assert.Equal(a / b, Done(Quotient, a, b, 0));
            Assert.Equal(1 / b, Done(Reciprocal, 0, b, 0));
        }
    }

    [Fact]
    public void Roots_are_those_of_the_processor()
    {
        var random = new Random(2);
        for (var i = 0; i < 200_000; i++)
        {
            var a = Math.Abs(Any(random, i));
            Assert.Equal(Math.Sqrt(a), Done(Root, a, 0, random.Next(-2, 3)));
        }
    }

    [Fact]
    public void So_are_those_of_zero_and_infinity_and_of_no_number()
    {
        const double Infinite = double.PositiveInfinity;
        foreach (var a in new[] { 0, 1, -3.5, Infinite, -Infinite, double.NaN })
        {
            foreach (var b in new[] { 0.0, -0.0, 2, -7.25, Infinite, -Infinite, double.NaN })
            {
                Assert.Equal(a / b, Done(Quotient, a, b, 0));
                Assert.Equal(1 / b, Done(Reciprocal, 0, b, 0));
            }
        }
        Assert.All(new[] { 0, Infinite, double.NaN, -1 }, a => Assert.Equal(Math.Sqrt(a), Done(Root, a, 0, 0)));
        // Too large for a double.
        Assert.Equal(Infinite, Done(Quotient, 1e300, 1e-100, 0));
    }

    // Of all sizes that the equations may meet and more; of some the mantissa is nearly one or two, or has few digits, where rounding is hardest.
    private static double Any(Random random, int i)
    {
        var mantissa = (i % 5) switch
        {
            0 => 1 + random.Next(100) * double.Epsilon * Math.Pow(2, 1022),
            1 => 2 - (1 + random.Next(100)) * Math.Pow(2, -52),
            2 => 1 + random.Next(1 << 12) / (double)(1 << 12),
            _ => 1 + random.NextDouble(),
        };
        return (random.Next(2) == 0 ? mantissa : -mantissa) * Math.Pow(2, random.Next(-400, 400));
    }

    private static string[] Lines(string text) => [.. Branchless.Of(text).Split('\n').Select(l => l.Trim()).Where(l => l.Contains(' ') && l[0] != '.')];

    // The instructions, one after the other.
    private static double Done(string[] lines, double first, double second, int off)
    {
        var numbers = new Dictionary<string, double> { ["%fd1"] = first, ["%fd2"] = second };
        var flags = new Dictionary<string, bool>();
        int high = 0;
        foreach (var line in lines)
        {
            var (operation, rest) = (line[..line.IndexOf(' ', StringComparison.Ordinal)], line[line.IndexOf(' ', StringComparison.Ordinal)..].TrimEnd(';'));
            var names = rest.Split(',').Select(n => n.Trim()).ToArray();
            double Of(int i) => names[i].StartsWith("0d", StringComparison.Ordinal) ? BitConverter.UInt64BitsToDouble(ulong.Parse(names[i].AsSpan(2), NumberStyles.HexNumber, CultureInfo.InvariantCulture)) : numbers[names[i]];
            switch (operation)
            {
                case "mov.f64":
                    numbers[names[0]] = Of(1);
                    break;
                case "neg.f64":
                    numbers[names[0]] = -Of(1);
                    break;
                case "rcp.approx.ftz.f64":
                    numbers[names[0]] = Estimate(1 / Of(1), off);
                    break;
                case "rsqrt.approx.ftz.f64":
                    numbers[names[0]] = Estimate(1 / Math.Sqrt(Of(1)), off);
                    break;
                case "mov.b64" when names[0] == "{low":
                    high = (int)(BitConverter.DoubleToInt64Bits(Of(2)) >> 32);
                    break;
                case "mov.b64":
                    Assert.Equal(["r", "{1", "high}"], names);
                    numbers["r"] = BitConverter.Int64BitsToDouble((long)high << 32 | 1);
                    break;
                case "mul.rn.f64":
                    numbers[names[0]] = Of(1) * Of(2);
                    break;
                case "add.rn.f64":
                    numbers[names[0]] = Of(1) + Of(2);
                    break;
                case "fma.rn.f64":
                    numbers[names[0]] = Math.FusedMultiplyAdd(Of(1), Of(2), Of(3));
                    break;
                case "setp.nan.f64":
                    flags[names[0]] = double.IsNaN(Of(1)) || double.IsNaN(Of(2));
                    break;
                case "setp.eq.f64":
                    flags[names[0]] = Of(1) == Of(2);
                    break;
                case "selp.f64":
                    numbers[names[0]] = flags[names[3]] ? Of(1) : Of(2);
                    break;
                default:
                    Assert.Fail($"unknown here: {line}");
                    break;
            }
        }
        return numbers["%fd3"];
    }

    // The upper word, off by some units of its last place.
    private static double Estimate(double exact, int off)
    {
        var word = BitConverter.DoubleToInt64Bits(exact) >> 32;
        return double.IsFinite(exact) && exact != 0 ? BitConverter.Int64BitsToDouble((word + off) << 32) : exact;
    }
}
