using System.Runtime.CompilerServices;
using BallSim.Balls;
using BallSim.Ensembles;
using BallSim.Lanes;
using BallSim.Releases;

namespace BallSim.Gpu;

/// <summary>Room on the processor for the rows of a chunk, used again from chunk to chunk: fresh memory costs more to be given than to be filled.</summary>
internal sealed class ChunkRows(int most)
{
    /// <summary>What a row takes, bytes.</summary>
    public static int Bytes => 2 * IntPtr.Size + Unsafe.SizeOf<Launch>() + Unsafe.SizeOf<Outcome>() + sizeof(bool) + Unsafe.SizeOf<Start>() + 2 * sizeof(int);

    public Ball[] Balls { get; } = new Ball[most];

    public Lane[] Lanes { get; } = new Lane[most];

    public Launch[] Launches { get; } = new Launch[most];

    public Outcome[] Outcomes { get; } = new Outcome[most];

    /// <summary>What the card's numbers do not tell.</summary>
    public bool[] InDoubt { get; } = new bool[most];

    /// <summary>Group after group. Never moved, so that a card can read it by itself.</summary>
    public Start[] Starts { get; } = GC.AllocateArray<Start>(most, pinned: true);

    /// <summary>The rows of the starts, and which of its group's setups each has.</summary>
    public int[] Places { get; } = new int[most];

    public int[] Setups { get; } = new int[most];

    /// <summary>Lets go of balls and lanes.</summary>
    public void Forget()
    {
        Array.Clear(Balls);
        Array.Clear(Lanes);
    }
}
