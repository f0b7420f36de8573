using System.Collections.Concurrent;
using System.Runtime.InteropServices;
using BallSim.Benchmarks;
using BallSim.Ensembles;
using ILGPU.Runtime;

namespace BallSim.Gpu.Tests;

/// <summary>No card, and a card that fails: the ensemble is whole all the same, or the reason is told.</summary>
public class FailureTests
{
    private static readonly EnsembleOptions Coarse = new() { Shot = new() { Tolerance = 1e-4 } };

    private static readonly Throw[] Throws = Scenarios.Alike(36, ReleaseSet.Lane);

    private static bool HasDriver => NativeLibrary.TryLoad(OperatingSystem.IsWindows() ? "nvcuda.dll" : "libcuda.so.1", out _);

    [Fact]
    public void Without_a_card_the_reason_is_told_and_the_processor_computes()
    {
        var notices = new List<string>();
        var either = GpuEngine.OrProcessor(notices.Add);
        if (HasDriver && either is GpuEngine card)
        {
            Assert.NotEmpty(card.Devices);
            Assert.Empty(notices);
            card.Dispose();
            return;
        }
        Assert.Same(EnsembleEngine.Processor, either);
        var said = Assert.Single(notices);
        Assert.StartsWith("The processor computes: ", said);
        var none = Assert.Throws<GpuUnavailableException>(() => GpuEngine.Open());
        Assert.EndsWith(none.Message, said);
        Assert.Contains("driver", none.Message);
        Assert.DoesNotContain("\n", none.Message);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(12)]
    [InlineData(30)]
    public void A_lost_card_leaves_its_shots_to_the_processor(int from)
    {
        var notices = new ConcurrentQueue<string>();
        using var engine = GpuEngine.Emulated(6, notices.Enqueue, at =>
        {
            if (at == from)
            {
                throw new Lost();
            }
        });
        var told = new Told();
        var options = Coarse with { Engine = engine };
        Assert.Equal(Ensemble.Throw(Throws, Coarse), Ensemble.Throw(Throws, options, told));
        Assert.Equal(Throws.Length, told.Values.Max());
        Assert.EndsWith("failed (the card fell off the bus): its 6 shots are computed on the processor", Assert.Single(notices));
        // It is not asked again.
        Assert.Equal(Ensemble.Throw(Throws, Coarse), Ensemble.Throw(Throws, options));
        Assert.Single(notices);
    }

    [Fact]
    public void A_card_without_memory_leaves_the_chunk_and_goes_on()
    {
        var notices = new ConcurrentQueue<string>();
        using var engine = GpuEngine.Emulated(6, notices.Enqueue, at =>
        {
            if (at is 6 or 18)
            {
                throw new OutOfMemoryException("no room");
            }
        });
        Assert.Equal(Ensemble.Throw(Throws, Coarse), Ensemble.Throw(Throws, Coarse with { Engine = engine }));
        Assert.Equal(2, notices.Count);
        Assert.All(notices, n => Assert.Contains("(no room)", n));
    }

    [Fact]
    public void What_is_no_failure_of_the_card_is_not_hidden()
    {
        using var engine = GpuEngine.Emulated(6, null, _ => throw new InvalidOperationException("ours"));
        Assert.Equal("ours", Assert.Throws<InvalidOperationException>(() => Ensemble.Throw(Throws, Coarse with { Engine = engine })).Message);
    }

    private sealed class Lost() : AcceleratorException("the card fell off the bus")
    {
        public override AcceleratorType AcceleratorType => AcceleratorType.Cuda;
    }
}
