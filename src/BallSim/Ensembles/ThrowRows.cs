using BallSim.Balls;
using BallSim.Lanes;
using BallSim.Releases;

namespace BallSim.Ensembles;

/// <summary>A list of throws.</summary>
internal sealed class ThrowRows(IReadOnlyList<Throw> throws, Keeper keeper) : Rows
{
    public ThrowRows(IReadOnlyList<Throw> throws, Outcome[] outcomes)
        : this(throws, Into(outcomes))
    {
    }

    public override int Count => throws.Count;

    public override void Fill(int from, Span<Ball> balls, Span<Lane> lanes, Span<Launch> launches)
    {
        for (var i = 0; i < balls.Length; i++)
        {
            var (ball, lane, release) = throws[from + i];
            try
            {
                ArgumentNullException.ThrowIfNull(ball);
                ArgumentNullException.ThrowIfNull(lane);
                ArgumentNullException.ThrowIfNull(release);
                (balls[i], lanes[i], launches[i]) = (ball, lane, release.LaunchOn(lane, ball));
            }
            catch (ArgumentException wrong)
            {
                throw new ArgumentException($"throw {from + i}: {wrong.Message}", nameof(throws), wrong);
            }
        }
    }

    public override void Keep(int from, ReadOnlySpan<Outcome> found) => keeper(from, found);
}
