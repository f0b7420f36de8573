namespace BallSim.Gpu.Tests;

/// <summary>Doubles written out in a kernel's text go into its table; all else of the text stays as it was.</summary>
public class LiteralsTests
{
    [Fact]
    public void Long_doubles_are_fetched_from_the_table()
    {
        var text = Literals.Of(".version 7.8\n.address_size 64\n\n.visible .entry Kernel(\n\t.param .b32 a\n)\n{\n\tfma.rn.f64\t%fd3, %fd1, 0d3FF0000000000000, 0d3FB999999999999A;\n\tmul.rn.f64\t%fd4, 0d3FB999999999999A, 0d3FD5555555555555;\n}\n");
        Assert.Equal(
            ".version 7.8\n.address_size 64\n.const .align 8 .b64 numbers[2] = { 0x3FB999999999999A, 0x3FD5555555555555 };\n\n.visible .entry Kernel(\n\t.param .b32 a\n)\n{\n"
            + "{ .reg .f64 number0; ld.const.f64 number0, [numbers+0]; \tfma.rn.f64\t%fd3, %fd1, 0d3FF0000000000000, number0; }\n"
            + "{ .reg .f64 number0; ld.const.f64 number0, [numbers+0]; .reg .f64 number1; ld.const.f64 number1, [numbers+8]; \tmul.rn.f64\t%fd4, number0, number1; }\n}\n",
            text);
    }

    [Theory]
    [InlineData("\tmov.f64\t%fd1, 0d3FB999999999999A;")]
    [InlineData("\tadd.rn.f64\t%fd1, %fd2, 0d4008000000000000;")]
    [InlineData("\tfma.rn.f32\t%f1, %f2, 0f3DCCCCCD, %f3;")]
    public void Others_stay(string line) => Assert.Equal(".address_size 64\n" + line, Literals.Of(".address_size 64\n" + line));
}
