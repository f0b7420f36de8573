using BallSim.Ensembles;

namespace BallSim.Gpu;

/// <summary>Some of the rows of an ensemble.</summary>
internal sealed class PartOfRows(Rows all, int first, int count) : Rows
{
    public override int Count => count;

    public override void Fill(int from, int rows, Work work) => all.Fill(first + from, rows, work);

    public override void Keep(int from, ReadOnlySpan<Outcome> outcomes) => all.Keep(first + from, outcomes);
}
