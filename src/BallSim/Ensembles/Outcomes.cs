using System.Runtime.CompilerServices;
using BallSim.Lanes;
using BallSim.Motion;
using BallSim.Releases;
using BallSim.Shots;
using BallSim.Spatial;

namespace BallSim.Ensembles;

/// <summary>The outcome of a run that has ended, from its numbers.</summary>
internal static class Outcomes
{
    // Not inlined: next to copies of whole vectors, the mathematics library's calls in here take ten times as long.
    [MethodImpl(MethodImplOptions.NoInlining)]
    public static Outcome Of(in Moment<Real> end, Tally<Real> tally, Ending ended, int steps, double oilTaken, in Launch launch, Lane on)
    {
        double hand = tally.Hand, x = end.X, y = end.Y;
        var (velocity, ω) = (new Vector3D(end.VelocityX, end.VelocityY, 0), Vector3D.From(end.AngularVelocity));
        var spin = SpinAxis.From(velocity, ω, launch.Hand);
        var (reach, breakY, turned) = ((double)tally.Reach, (double)tally.BreakY, tally.Turned > 0);
        if (hand * x > reach || (!turned && hand * x >= reach))
        {
            (reach, breakY) = (hand * x, y);
        }
        var before = launch.Orientation.Inverse.Apply(launch.AngularVelocity);
        var after = Rotation.From(end.Orientation).Inverse.Apply(ω);
        var rolled = tally.Rolled > 0;
        return new()
        {
            StopReason = Simulator.ReasonOf(ended),
            Time = end.Time,
            X = x,
            Distance = y,
            Board = on.BoardAt(x),
            BoardAtPinLine = velocity.Y > 0 ? on.BoardAt(x + (on.Length - y) * velocity.X / velocity.Y) : double.NaN,
            Offset = x - on.Pocket(launch.Hand),
            Angle = Math.Atan2(-hand * velocity.X, velocity.Y),
            Speed = velocity.Length,
            SlipSpeed = Math.Sqrt(end.SlipX * end.SlipX + end.SlipY * end.SlipY),
            SpinRate = spin.SpinRate,
            AxisRotation = spin.AxisRotation,
            AxisTilt = spin.AxisTilt,
            Revolutions = end.Revolutions,
            AxisMigration = before.Length > 0 && after.Length > 0 ? Math.Atan2(before.Cross(after).Length, before.Dot(after)) : double.NaN,
            BreakpointBoard = on.BoardAt(hand * reach),
            BreakpointDistance = breakY,
            RollDistance = rolled ? tally.RollY : double.NaN,
            RollBoard = rolled ? on.BoardAt(tally.RollX) : double.NaN,
            RollTime = rolled ? tally.RollTime : double.NaN,
            SlippedAgain = (int)(double)tally.SlippedAgain,
            OilTakenUp = oilTaken,
            Steps = steps,
        };
    }
}
