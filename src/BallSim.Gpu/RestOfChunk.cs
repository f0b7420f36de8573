using BallSim.Balls;
using BallSim.Ensembles;
using BallSim.Lanes;
using BallSim.Releases;

namespace BallSim.Gpu;

/// <summary>Single rows of a chunk, thrown elsewhere.</summary>
internal sealed class RestOfChunk(FilledChunk chunk, int[] at) : Rows
{
    public override int Count => at.Length;

    public override void Fill(int from, Span<Ball> balls, Span<Lane> lanes, Span<Launch> launches)
    {
        for (var i = 0; i < balls.Length; i++)
        {
            var row = at[from + i];
            (balls[i], lanes[i], launches[i]) = (chunk.Balls[row], chunk.Lanes[row], chunk.Launches[row]);
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
