using BallSim.Ensembles;

namespace BallSim.Gpu;

/// <summary>Single rows of a chunk, thrown elsewhere.</summary>
internal sealed class RestOfChunk(FilledChunk chunk, int[] at) : Rows
{
    public override int Count => at.Length;

    public override void Fill(int from, int count, Work work)
    {
        for (var i = 0; i < count; i++)
        {
            var row = at[from + i];
            (work.Balls[i], work.Lanes[i], work.Launches[i]) = (chunk.Balls[row], chunk.Lanes[row], chunk.Launches[row]);
        }
    }

    public override void Keep(int from, ReadOnlySpan<Outcome> outcomes)
    {
        for (var i = 0; i < outcomes.Length; i++)
        {
            chunk.Outcomes[at[from + i]] = outcomes[i];
        }
    }
}
