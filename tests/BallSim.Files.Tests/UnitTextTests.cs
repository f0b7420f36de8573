using BallSim.Files.Text;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace BallSim.Files.Tests;

public class UnitTextTests
{
    private static readonly Dictionary<string, UnitKind> Kinds = new()
    {
        ["speed"] = UnitKind.Speed,
        ["length"] = UnitKind.Length,
        ["film"] = UnitKind.Film,
        ["roughness"] = UnitKind.Roughness,
        ["spin rate"] = UnitKind.SpinRate,
        ["angle"] = UnitKind.Angle,
        ["mass"] = UnitKind.Mass,
        ["volume"] = UnitKind.Volume,
        ["viscosity"] = UnitKind.Viscosity,
        ["pressure"] = UnitKind.Pressure,
        ["density"] = UnitKind.Density,
        ["rate"] = UnitKind.Rate,
        ["time"] = UnitKind.Time,
        ["temperature"] = UnitKind.Temperature,
    };

    // Expected values: the definitions of the units (inch, pound: agreement of 1959; degree: π/180; poise: 0.1 Pa s), worked by hand.
    [Theory]
    [InlineData("18 mph", "speed", 8.04672)]
    [InlineData("18mph", "speed", 8.04672)]
    [InlineData("  18   MPH ", "speed", 8.04672)]
    [InlineData("8 m/s", "speed", 8)]
    [InlineData("28.8 km/h", "speed", 8)]
    [InlineData("26 ft/s", "speed", 7.9248)]
    [InlineData("4.5 in", "length", 0.1143)]
    [InlineData("3 3/8 in", "length", 0.085725)]
    [InlineData("3/8 in", "length", 0.009525)]
    [InlineData("-1/2 in", "length", -0.0127)]
    [InlineData("-1 1/2 in", "length", -0.0381)]
    [InlineData("+0.5 in", "length", 0.0127)]
    [InlineData(".5 in", "length", 0.0127)]
    [InlineData("40 ft", "length", 12.192)]
    [InlineData("217 mm", "length", 0.217)]
    [InlineData("1.5e-3 m", "length", 0.0015)]
    [InlineData("0.5 um", "roughness", 0.5e-6)]
    [InlineData("0.5 µm", "roughness", 0.5e-6)]
    [InlineData("50 uin", "roughness", 1.27e-6)]
    [InlineData("7.5 um", "film", 7.5e-6)]
    [InlineData("3 units", "film", 3 * 0.0167e-6 / 0.09290304)]
    [InlineData("60 rpm", "spin rate", 2 * Math.PI)]
    [InlineData("30 rad/s", "spin rate", 30)]
    [InlineData("180 deg", "angle", Math.PI)]
    [InlineData("180°", "angle", Math.PI)]
    [InlineData("1.5 rad", "angle", 1.5)]
    [InlineData("15 lb", "mass", 6.80388555)]
    [InlineData("3 oz", "mass", 0.085048569375)]
    [InlineData("6.8 kg", "mass", 6.8)]
    [InlineData("25 mL", "volume", 25e-6)]
    [InlineData("25 ml", "volume", 25e-6)]
    [InlineData("0.030 Pa s", "viscosity", 0.03)]
    [InlineData("30 mPa s", "viscosity", 0.03)]
    [InlineData("34.7 cP", "viscosity", 0.0347)]
    [InlineData("800 MPa", "pressure", 0.8e9)]
    [InlineData("1.2 kg/m3", "density", 1.2)]
    [InlineData("3 1/s", "rate", 3)]
    [InlineData("11 1/s", "rate", 11)]
    [InlineData("2 s", "time", 2)]
    [InlineData("22 C", "temperature", 22)]
    [InlineData("72 F", "temperature", 200.0 / 9)]
    public void A_number_with_its_unit_becomes_SI(string text, string kind, double si)
    {
        Assert.True(UnitText.TryParse(text, Kinds[kind], out var value, out var sentence), sentence);
        Assert.Equal(si, value, Math.Abs(si) * 1e-14);
    }

    [Theory]
    [InlineData("18", "speed", "has no unit; a speed carries one, such as \"18 mph\" (allowed: mph, km/h, m/s, ft/s)")]
    [InlineData("18 rpm", "speed", "is a spin rate; here a speed is wanted (allowed: mph, km/h, m/s, ft/s)")]
    [InlineData("350 rpn", "spin rate", "has the unknown unit \"rpn\"; did you mean \"rpm\"? (allowed for a spin rate: rpm, rad/s, deg/s)")]
    [InlineData("4,5 in", "length", "is not a number with a unit; write the decimals after a point, such as \"4.5 in\"")]
    [InlineData("", "length", "is empty; a length is wanted, such as \"4.5 in\"")]
    [InlineData("NaN mph", "speed", "is not a number with a unit; a speed is wanted, such as \"18 mph\"")]
    [InlineData("Infinity mph", "speed", "is not a number with a unit; a speed is wanted, such as \"18 mph\"")]
    [InlineData("1e999 mph", "speed", "is not a number with a unit; a speed is wanted, such as \"18 mph\"")]
    [InlineData("fast", "speed", "is not a number with a unit; a speed is wanted, such as \"18 mph\"")]
    [InlineData("1/0 in", "length", "is not a number with a unit; a length is wanted, such as \"4.5 in\"")]
    [InlineData("3 9/8 in", "length", "is not a number with a unit; a length is wanted, such as \"4.5 in\"")]
    [InlineData("3-4 in", "length", "has the unknown unit \"-4 in\" (allowed for a length: in, ft, mm, cm, m)")]
    public void Anything_else_is_refused_with_what_would_be_right(string text, string kind, string expected)
    {
        Assert.False(UnitText.TryParse(text, Kinds[kind], out _, out var sentence));
        Assert.Equal(expected, sentence);
    }

    [Theory]
    [InlineData("18 mph", "speed")]
    [InlineData("2.48 in", "length")]
    [InlineData("0.05 in", "length")]
    [InlineData("42 units", "film")]
    [InlineData("0.5 um", "roughness")]
    [InlineData("15 lb", "mass")]
    [InlineData("72 F", "temperature")]
    public void A_written_value_reads_back_and_stays_as_short_as_it_was(string text, string kind)
    {
        UnitText.TryParse(text, Kinds[kind], out var value, out _);
        Assert.True(UnitText.Of(value, Kinds[kind]).Length <= text.Length + 4);
        Assert.Equal(text is "72 F" ? UnitText.Of(value, Kinds[kind]) : text, UnitText.Of(value, Kinds[kind]));
    }

    // Any finite value, in any kind, survives the way out and back to the last bit.
    [Property(MaxTest = 300)]
    public Property What_is_written_reads_back_exactly() => Prop.ForAll(
        (from mantissa in Gen.Choose(-1_000_000_000, 1_000_000_000)
         from exponent in Gen.Choose(-14, -2)
         from kind in Gen.Elements<UnitKind>([.. Kinds.Values])
         select (Value: mantissa * Math.Pow(10, exponent), Kind: kind)).ToArbitrary(),
        c => UnitText.TryParse(UnitText.Of(c.Value, c.Kind), c.Kind, out var back, out _) && back == c.Value);

    [Property(MaxTest = 500)]
    public bool No_text_makes_the_parser_throw(string? text) =>
        UnitText.TryParse(text ?? "", UnitKind.Length, out var value, out var sentence) ? double.IsFinite(value) : sentence.Length > 0;
}
