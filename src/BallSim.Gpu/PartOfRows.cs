using BallSim.Balls;
using BallSim.Ensembles;
using BallSim.Lanes;
using BallSim.Releases;

namespace BallSim.Gpu;

/// <summary>Some of the rows of an ensemble.</summary>
internal sealed class PartOfRows(Rows all, int first, int count) : Rows
{
    public override int Count => count;

    public override void Fill(int from, Span<Ball> balls, Span<Lane> lanes, Span<Launch> launches) => all.Fill(first + from, balls, lanes, launches);

    public override void Keep(int from, ReadOnlySpan<Outcome> outcomes) => all.Keep(first + from, outcomes);
}
