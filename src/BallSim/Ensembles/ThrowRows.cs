namespace BallSim.Ensembles;

/// <summary>A list of throws, outcomes into an array.</summary>
internal sealed class ThrowRows(IReadOnlyList<Throw> throws, Outcome[] outcomes) : Rows
{
    public override int Count => throws.Count;

    public override void Fill(int from, int count, Work work)
    {
        for (var i = 0; i < count; i++)
        {
            var (ball, lane, release) = throws[from + i];
            try
            {
                ArgumentNullException.ThrowIfNull(ball);
                ArgumentNullException.ThrowIfNull(lane);
                ArgumentNullException.ThrowIfNull(release);
                (work.Balls[i], work.Lanes[i], work.Launches[i]) = (ball, lane, release.LaunchOn(lane, ball));
            }
            catch (ArgumentException wrong)
            {
                throw new ArgumentException($"throw {from + i}: {wrong.Message}", nameof(throws), wrong);
            }
        }
    }

    public override void Keep(int from, ReadOnlySpan<Outcome> found) => found.CopyTo(outcomes.AsSpan(from));
}
