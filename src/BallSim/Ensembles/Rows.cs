using BallSim.Balls;
using BallSim.Lanes;
using BallSim.Releases;

namespace BallSim.Ensembles;

/// <summary>Where outcomes go: those of the rows from one on, each row once; called from several threads.</summary>
internal delegate void Keeper(int from, ReadOnlySpan<Outcome> found);

/// <summary>Where the throws of an ensemble come from and where their outcomes go, a chunk at a time; called from several threads.</summary>
internal abstract class Rows
{
    public abstract int Count { get; }

    /// <summary>The throws from a row on, as many as there is room for.</summary>
    public abstract void Fill(int from, Span<Ball> balls, Span<Lane> lanes, Span<Launch> launches);

    public abstract void Keep(int from, ReadOnlySpan<Outcome> outcomes);

    /// <summary>Outcomes into an array.</summary>
    public static Keeper Into(Outcome[] outcomes) => (from, found) => found.CopyTo(outcomes.AsSpan(from));

    /// <summary>A chunk that one thread works on.</summary>
    public sealed class Work(int size)
    {
        /// <summary>Its first row; how many there are; how many have no outcome yet.</summary>
        public int From, Count, Left;

        public readonly Ball[] Balls = new Ball[size];
        public readonly Lane[] Lanes = new Lane[size];
        public readonly Launch[] Launches = new Launch[size];
        public readonly Outcome[] Outcomes = new Outcome[size];

        /// <summary>The outcome of a row.</summary>
        public void Keep(int row, in Outcome outcome)
        {
            Outcomes[row] = outcome;
            Left--;
        }
    }
}
