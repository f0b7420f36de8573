using System.Diagnostics;

namespace BallSim.Tests.Regression;

/// <summary>
/// The golden set is the same to the last bit whatever vectors the processor has, on one thread or two, today or the day it was last looked at. After a change that is meant to move the numbers:
/// <c>dotnet run -c Release --project tests/BallSim.Tests -- golden > tests/data/golden.txt</c>, and look at what moved and by how much.
/// </summary>
public class GoldenTests
{
    private static readonly string[] Here = [.. GoldenSet.Lines()];

    private static string[] Kept => File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "data", "golden.txt"));

    [Fact]
    public void The_kept_set_is_whole() => Assert.Equal(1 + 36, Kept.Length);

    [Fact]
    public void It_is_what_was_kept() => Assert.Equal(Kept.Skip(1), GoldenSet.Lines().Skip(1));

    [Fact]
    public void It_is_the_same_one_by_one_and_on_two_threads()
    {
        Assert.Equal(Here, GoldenSet.Lines());
        Assert.Equal(Here, GoldenSet.Lines(sideBySide: false));
        Assert.Equal(Here, GoldenSet.Lines(threads: 2));
    }

    [Theory]
    [InlineData(256, "DOTNET_EnableAVX512", "DOTNET_EnableAVX512F")]
    [InlineData(128, "DOTNET_EnableAVX2", "DOTNET_EnableAVX")]
    [InlineData(0, "DOTNET_EnableHWIntrinsic")]
    public void It_is_the_same_on_a_processor_of_less_ability(int bits, params string[] switchedOff)
    {
        var start = new ProcessStartInfo("dotnet", [typeof(GoldenTests).Assembly.Location, "golden"]) { RedirectStandardOutput = true };
        foreach (var name in switchedOff)
        {
            start.Environment[name] = "0";
        }
        using var child = Process.Start(start)!;
        var printed = child.StandardOutput.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries);
        child.WaitForExit();
        Assert.Equal(0, child.ExitCode);
        // The switch must have taken effect, or nothing would be compared; a machine without such vectors has less from the start.
        Assert.True(int.Parse(printed[0].Split(' ')[3], System.Globalization.CultureInfo.InvariantCulture) <= bits, printed[0]);
        Assert.Equal(Here.Skip(1), printed.Skip(1));
    }
}
