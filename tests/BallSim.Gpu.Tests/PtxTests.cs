using System.Collections.Concurrent;
using System.Reflection;
using System.Runtime.CompilerServices;
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
public partial class PtxTests(PtxTests.Kernels kernels) : IClassFixture<PtxTests.Kernels>
{
    // The steps, and the events that many shots meet; the other two.
    private static readonly string[] InRegisters = ["StartSlip", "Look", "Slide", "Roll", "Stick", "EndSliding", "ReachEnd", "EndRolling", "BeginSliding", "Finish"], Others = ["Begin", "Event"];

    /// <summary>All kernels that these tests look at, by law and name: each in a context of its own, so side by side, and one when another is done, since they take from no time to half a minute.</summary>
    public sealed class Kernels
    {
        private readonly Dictionary<(string Law, string Name), string> texts;

        public Kernels()
        {
            (string Law, string Name)[] wanted = [("foreseen", "Slide"), ("full", "StartSlip"), ("full", "Look"), .. InRegisters.Concat(Others).Select(name => ("bare", name))];
            texts = Partitioner.Create(wanted, loadBalance: true).AsParallel().Select(of => (Of: of, Text: Compiled(of.Law, of.Name))).ToDictionary(found => found.Of, found => found.Text);
        }

        public string this[string law, string name] => texts[(law, name)];
    }

    // All of them for the bare law; of the full one the largest.
    [Theory]
    [InlineData("bare", 10)]
    [InlineData("full", 2)]
    public void Steps_and_common_events_live_in_registers(string law, int many)
    {
        Assert.All(InRegisters[..many], name =>
        {
            var text = kernels[law, name];
            Assert.Contains(".entry", text);
            Assert.False(Local().IsMatch(text), $"{name} has local memory");
            Assert.False(Call().IsMatch(text), $"{name} calls");
            Assert.True(Branch().IsMatch(text), $"{name} has no branch at all");
            Assert.False(UniformBranch().IsMatch(text), $"{name} has a branch on data marked as uniform");
            // Which the driver's compiler would make calls of.
            Assert.False(LongQuotient().IsMatch(text), $"{name} divides long numbers");
        });
    }

    // As many as an instruction brings: four floats, two doubles.
    [Fact]
    public void Numbers_of_a_shot_come_together()
    {
        var (begin, slide, doubles, finish) = (kernels["bare", "BeginSliding"], kernels["bare", "Slide"], kernels["foreseen", "Slide"], kernels["bare", "Finish"]);
        // State and slopes, pace, orientation, the tally in two parts, and what was last seen; steps change one part of the tally.
        Assert.Equal(3 + 3 + 1 + 1 + 1 + 2 + 3, Regex.Count(begin, @"\bst\.v4\.f32\b"));
        Assert.Equal(3 + 3 + 1 + 1 + 1 + 3, Regex.Count(slide, @"\bst\.v4\.f32\b"));
        Assert.Matches(@"\bst\.v2\.f64\b", doubles);
        foreach (var text in new[] { begin, slide, doubles })
        {
            Assert.DoesNotMatch(@"\bst\.f(32|64)\b", text);
        }
        // What comes back, gathered in the block's memory, in as many doubles as it takes.
        Assert.Equal(Finished.Doubles * sizeof(double), Unsafe.SizeOf<Finished>());
        Assert.Matches(@"\bst\.shared\.", finish);
        Assert.Single(Together().Matches(finish));
    }

    [Fact]
    public void Steps_of_floats_are_fast()
    {
        var slide = kernels["bare", "Slide"];
        Assert.False(Nought().IsMatch(slide), $"a product with nought: {Nought().Match(slide).Value}");
        // Six slopes and one on a new row, each reading the four columns of coefficients whole; and what is read of a shot.
        Assert.Equal(7 * 4 + 13, Four().Count(slide));
        // Registers for so many threads: in one block, and in three.
        Assert.Contains(".maxntid 384,", slide);
        Assert.Matches(@"\.maxntid 128,[^\n]*\n\.minnctapersm 3\b", kernels["bare", "Roll"]);
        // The threads of a block wait for each other, once in a while.
        Assert.Single(Together().Matches(slide));
    }

    // In doubles, as one who asks for so little error does; it is allowed to spill and to call.
    [Fact]
    public void Steps_that_foresee_the_dips_compile()
    {
        var slide = kernels["foreseen", "Slide"];
        Assert.Contains(".entry", slide);
        // Nothing for the driver's compiler to fuse, or the last bit would be its own.
        Assert.Contains("fma.rn.f64", slide);
        Assert.DoesNotContain("mul.f64", slide);
        // Nor to branch round, and long numbers in a table: what is done to the text has been done.
        Assert.DoesNotMatch(@"\b(div|rcp|sqrt)\.rn\.f64\b", slide);
        Assert.Contains("rcp.approx.ftz.f64", slide);
        Assert.Contains("ld.const.f64", slide);
        Assert.False(UniformBranch().IsMatch(slide), "a branch on data marked as uniform");
    }

    [Fact]
    public void The_others_compile()
    {
        Assert.Equal(typeof(ShotKernels).GetMethods(BindingFlags.Public | BindingFlags.Static | BindingFlags.DeclaredOnly).Select(m => m.Name).Order(), InRegisters.Concat(Others).Order());
        Assert.All(Others, name => Assert.False(UniformBranch().IsMatch(kernels["bare", name]), name));
        // Two flags that lie side by side in a struct are read as a vector of bytes, which the driver's compiler refuses.
        Assert.All(Others, name => Assert.False(Flags().IsMatch(kernels["bare", name]), name));
        // They call and spill: what is looked for above can be found.
        Assert.True(Local().IsMatch(kernels["bare", "Event"]) && Call().IsMatch(kernels["bare", "Event"]));
    }

    // What an ensemble of the benchmark's ball asks for: given friction, oil, and oil at so small a tolerance that the dips of the fresh cover are foreseen.
    private static string Compiled(string law, string name)
    {
        var throws = Scenarios.Alike(1, law == "bare" ? ReleaseSet.Lane : Scenarios.Oiled);
        var chunk = new Chunks(new ThrowRows(throws, new Outcome[1]), new EnsembleOptions { Shot = new() { Tolerance = law == "foreseen" ? 1e-6 : 1e-4 } }, null, default, 1).Filled(0, 1, new(1));
        var kind = chunk.Groups.Single().Kind(single: law != "foreseen");
        Assert.Equal(law == "bare", kind.Given);
        return KernelSet.Ptx(kind, CudaArchitecture.SM_80, CudaInstructionSet.ISA_78, name.Equals).Single().Text;
    }

    [GeneratedRegex(@"(mul\.\S+|fma\.rn\.f32)\s+%f\d+, (0f00000000|%f\d+, 0f00000000[,;]).*")]
    private static partial Regex Nought();

    [GeneratedRegex(@"\bld\.v4\.f32\b")]
    private static partial Regex Four();

    [GeneratedRegex(@"\b(div|rem)\.[su]64\b")]
    private static partial Regex LongQuotient();

    [GeneratedRegex(@"\bbar\.")]
    private static partial Regex Together();

    [GeneratedRegex(@"\.v[24]\.b8\b")]
    private static partial Regex Flags();

    [GeneratedRegex(@"\.local\b")]
    private static partial Regex Local();

    [GeneratedRegex(@"^\s*(@!?%\w+\s+)?call\b", RegexOptions.Multiline)]
    private static partial Regex Call();

    [GeneratedRegex(@"@!?%\w+\s+bra\b")]
    private static partial Regex Branch();

    [GeneratedRegex(@"@!?%\w+\s+bra\.uni\b")]
    private static partial Regex UniformBranch();
}
