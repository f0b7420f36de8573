using System.Collections.Concurrent;
using System.Text.RegularExpressions;
using BallSim.Benchmarks;
using BallSim.Ensembles;
using BallSim.Lanes;
using ILGPU.Runtime.Cuda;

namespace BallSim.Gpu.Tests;

/// <summary>
/// The kernels as a card gets them. Those that take the time must live in registers, without local memory or calls; and no branch that depends on data may be marked as the same for all threads of a warp, as ILGPU's
/// optimiser does at its higher level: such a kernel does not return.
/// </summary>
public partial class PtxTests
{
    // The steps, and the events that many shots meet; in this order.
    private static readonly string[] InRegisters = ["StartSlip", "Slide", "Roll", "Relax", "Stick", "EndSliding", "EndRolling", "BeginSliding", "Finish"];

    // All of them for the bare law; of the full one the largest: each takes some seconds to compile.
    [Theory]
    [InlineData("bare", 9)]
    [InlineData("full", 1)]
    public void Steps_and_common_events_live_in_registers(string law, int kernels)
    {
        // Each in a context of its own, so side by side; one when another is done, since some take many times as long.
        var found = Partitioner.Create(InRegisters[..kernels], loadBalance: true).AsParallel().AsOrdered().Select(name => Compiled(law, name.Equals).Single()).ToArray();
        Assert.Equal(InRegisters[..kernels], found.Select(k => k.Name));
        Assert.All(found, k =>
        {
            Assert.Contains(".entry", k.Text);
            Assert.False(Local().IsMatch(k.Text), $"{k.Name} has local memory");
            Assert.False(Call().IsMatch(k.Text), $"{k.Name} calls");
            Assert.True(Branch().IsMatch(k.Text), $"{k.Name} has no branch at all");
            Assert.False(UniformBranch().IsMatch(k.Text), $"{k.Name} has a branch on data marked as uniform");
        });
        Assert.All(found.Where(k => k.Name == "Slide"), k => IsFast(k.Text));
    }

    // What keeps the steps of floats fast.
    private static void IsFast(string slide)
    {
        Assert.False(Nought().IsMatch(slide), $"a product with nought: {Nought().Match(slide).Value}");
        // Six slopes and one on a new row, each reading the four columns of coefficients whole.
        Assert.Equal(28, Column().Count(slide));
        // Registers for so many threads.
        Assert.Contains(".maxntid 384,", slide);
        // The threads of a block wait for each other, once in a while.
        Assert.Single(Together().Matches(slide));
    }

    // In doubles, as one who asks for so little error does; it is allowed to spill and to call.
    [Fact]
    public void Steps_that_foresee_the_dips_compile()
    {
        var found = Compiled("full", "Slide".Equals, tolerance: 1e-6, single: false).Single();
        Assert.Contains(".entry", found.Text);
        // Nothing for the driver's compiler to fuse, or the last bit would be its own.
        Assert.Contains("fma.rn.f64", found.Text);
        Assert.DoesNotContain("mul.f64", found.Text);
        Assert.False(UniformBranch().IsMatch(found.Text), "a branch on data marked as uniform");
    }

    [Fact]
    public void The_others_compile()
    {
        var found = Compiled("bare", name => !InRegisters.Contains(name)).ToArray();
        Assert.Equal(["Wait", "Begin", "Event"], found.Select(k => k.Name));
        Assert.All(found, k => Assert.False(UniformBranch().IsMatch(k.Text), k.Name));
        // They call and spill: what is looked for above can be found.
        Assert.True(Local().IsMatch(found[2].Text) && Call().IsMatch(found[2].Text));
    }

    // What an ensemble of the benchmark's ball on such a lane asks for.
    private static IEnumerable<(string Name, string Text)> Compiled(string law, Predicate<string> wanted, double tolerance = 1e-4, bool single = true)
    {
        var throws = Scenarios.Alike(1, law == "bare" ? ReleaseSet.Lane : Scenarios.Oiled);
        var chunk = new Chunks(new ThrowRows(throws, new Outcome[1]), new EnsembleOptions { Shot = new() { Tolerance = tolerance } }, null, default, 1).Filled(0, 1, new(1));
        var kind = chunk.Groups.Single().Kind(single);
        Assert.Equal(law == "bare", kind.Given);
        return KernelSet.Ptx(kind, CudaArchitecture.SM_80, CudaInstructionSet.ISA_78, wanted);
    }

    [GeneratedRegex(@"(mul\.\S+|fma\.rn\.f32)\s+%f\d+, (0f00000000|%f\d+, 0f00000000[,;]).*")]
    private static partial Regex Nought();

    [GeneratedRegex(@"\bld\.v4\.f32\b")]
    private static partial Regex Column();

    [GeneratedRegex(@"\bbar\.")]
    private static partial Regex Together();

    [GeneratedRegex(@"\.local\b")]
    private static partial Regex Local();

    [GeneratedRegex(@"^\s*(@!?%\w+\s+)?call\b", RegexOptions.Multiline)]
    private static partial Regex Call();

    [GeneratedRegex(@"@!?%\w+\s+bra\b")]
    private static partial Regex Branch();

    [GeneratedRegex(@"@!?%\w+\s+bra\.uni\b")]
    private static partial Regex UniformBranch();
}
