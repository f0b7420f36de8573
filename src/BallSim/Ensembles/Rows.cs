using BallSim.Balls;
using BallSim.Lanes;
using BallSim.Releases;

namespace BallSim.Ensembles;

/// <summary>Where the throws of an ensemble come from and where their outcomes go, a chunk at a time; called from several threads.</summary>
internal abstract class Rows
{
    public abstract int Count { get; }

    public abstract void Fill(int from, int count, Work work);

    public abstract void Keep(int from, ReadOnlySpan<Outcome> outcomes);

    /// <summary>What one thread works on.</summary>
    public sealed class Work(int size)
    {
        public readonly Ball[] Balls = new Ball[size];
        public readonly Lane[] Lanes = new Lane[size];
        public readonly Launch[] Launches = new Launch[size];
        public readonly Outcome[] Outcomes = new Outcome[size];
    }
}
