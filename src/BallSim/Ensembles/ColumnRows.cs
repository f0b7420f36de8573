using BallSim.Balls;
using BallSim.Lanes;
using BallSim.Releases;

namespace BallSim.Ensembles;

/// <summary>Releases of one ball on one lane as columns. A release that is none raises its own message with the row.</summary>
internal sealed class ColumnRows(Ball ball, Lane lane, Release common, ReleaseColumns columns, Keeper keeper) : Rows
{
    private readonly int count = columns.Count;

    public override int Count => count;

    public override void Fill(int from, Span<Ball> balls, Span<Lane> lanes, Span<Launch> launches)
    {
        for (var i = 0; i < balls.Length; i++)
        {
            var row = from + i;
            try
            {
                // A short-lived object: its checks are the point.
                var release = common with
                {
                    Board = columns.Board?[row] ?? common.Board,
                    LaunchAngle = columns.LaunchAngle?[row] ?? common.LaunchAngle,
                    Speed = columns.Speed?[row] ?? common.Speed,
                    SpinRate = columns.SpinRate?[row] ?? common.SpinRate,
                    AxisRotation = columns.AxisRotation?[row] ?? common.AxisRotation,
                    AxisTilt = columns.AxisTilt?[row] ?? common.AxisTilt,
                    Loft = columns.Loft?[row] ?? common.Loft,
                    RollPhase = columns.RollPhase?[row] ?? common.RollPhase,
                };
                (balls[i], lanes[i], launches[i]) = (ball, lane, release.LaunchOn(lane, ball));
            }
            catch (ArgumentException wrong)
            {
                throw new ArgumentException($"row {row}: {wrong.Message}", nameof(columns), wrong);
            }
        }
    }

    public override void Keep(int from, ReadOnlySpan<Outcome> found) => keeper(from, found);
}
