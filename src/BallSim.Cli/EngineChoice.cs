using System.CommandLine;
using System.Runtime.CompilerServices;
using BallSim.Ensembles;
using BallSim.Gpu;

namespace BallSim.Cli;

/// <summary>What <c>--engine</c> means. The card's library is large; it is loaded where a card is asked for, and nowhere else.</summary>
internal static class EngineChoice
{
    private const string Automatic = "auto", Processor = "cpu", Card = "gpu";

    public static Option<string> Option()
    {
        var option = new Option<string>("--engine")
        {
            Description = "What computes: cpu; gpu, NVIDIA cards; auto, a card where there is one. Numbers of a card differ by rounding",
            HelpName = string.Join('|', Automatic, Processor, Card),
            DefaultValueFactory = _ => Processor,
        };
        option.AcceptOnlyFromAmong(Automatic, Processor, Card);
        return option;
    }

    /// <summary>The engine, told in a line unless it is the one that always was.</summary>
    /// <exception cref="UnfinishedException">A card is asked for and there is none.</exception>
    public static EnsembleEngine Engine(string name, Screen screen)
    {
        if (name == Processor)
        {
            return EnsembleEngine.Processor;
        }
        void Tell(string sentence)
        {
            // A card's notices come from any thread.
            lock (screen)
            {
                screen.Error.WriteLine($"ballsim: {sentence}");
            }
        }
        var engine = name == Card ? Opened(Tell) : OpenedOrProcessor(Tell);
        Tell($"engine: {engine.Description}");
        return engine;
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static EnsembleEngine OpenedOrProcessor(Action<string> tell) => GpuEngine.OrProcessor(tell);

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static EnsembleEngine Opened(Action<string> tell)
    {
        try
        {
            return GpuEngine.Open(tell);
        }
        catch (GpuUnavailableException none)
        {
            throw new UnfinishedException($"--engine {Card}: {none.Message}", none);
        }
    }
}
