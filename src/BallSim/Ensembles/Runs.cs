using BallSim.Balls;
using BallSim.Friction;
using BallSim.Lanes;
using BallSim.Motion;
using BallSim.Releases;
using BallSim.Shots;
using BallSim.Spatial;

namespace BallSim.Ensembles;

/// <summary>The runs of a chunk, used again and again.</summary>
internal sealed class Runs<TOne>(int size)
    where TOne : struct, ISurface<Real>
{
    private readonly Run<Real, TOne, Tally<Real>>[] runs = new Run<Real, TOne, Tally<Real>>[size];
    private Ball? ball;
    private Lane? lane;
    private Body<Real> body;
    private Bounds<Real> bounds;
    private TOne surface;

    public Run<Real, TOne, Tally<Real>>[] All => runs;

    public ref Run<Real, TOne, Tally<Real>> this[int k] => ref runs[k];

    public void Begin<TUnder>(int k, Rows.Work work, int row, Lane on, SimulatorOptions options, TUnder under)
        where TUnder : struct, IUnder<TOne>
    {
        if (!ReferenceEquals(ball, work.Balls[row]) || !ReferenceEquals(lane, on))
        {
            (ball, lane) = (work.Balls[row], on);
            body = Simulator.BodyOf(ball, on, options);
            bounds = Simulator.BoundsOf(ball, on, options);
            surface = under.Under(ball, on, options);
        }
        ref readonly var launch = ref work.Launches[row];
        ref var run = ref runs[k];
        run = new(body, surface, bounds, options.Tolerance, new Tally<Real>(launch.Hand == Hand.Right ? 1 : -1, launch.X));
        run.Ended = run.Begin(launch.X, 0, launch.Velocity.X, launch.Velocity.Y, launch.Orientation.Normalised.Spatial, launch.AngularVelocity.Spatial, launch.Loft);
    }

    public Outcome Outcome(int k, Rows.Work work, int row, Lane on)
    {
        ref var run = ref runs[k];
        ref readonly var launch = ref work.Launches[row];
        var m = Moment<Real>.Of(run.Phase, run.y, run.q, run.slide.Body, run.slide.Surface);
        var tally = run.recorder;
        double hand = tally.Hand, x = m.X, y = m.Y;
        var (velocity, ω) = (new Vector3D(m.VelocityX, m.VelocityY, 0), Vector3D.From(m.AngularVelocity));
        var spin = SpinAxis.From(velocity, ω, launch.Hand);
        var (reach, breakY, turned) = ((double)tally.Reach, (double)tally.BreakY, tally.Turned > 0);
        if (hand * x > reach || (!turned && hand * x >= reach))
        {
            (reach, breakY) = (hand * x, y);
        }
        var before = launch.Orientation.Inverse.Apply(launch.AngularVelocity);
        var after = Rotation.From(m.Orientation).Inverse.Apply(ω);
        var rolled = tally.Rolled > 0;
        return new()
        {
            StopReason = Simulator.ReasonOf(run.Ended),
            Time = m.Time,
            X = x,
            Distance = y,
            Board = on.BoardAt(x),
            BoardAtPinLine = velocity.Y > 0 ? on.BoardAt(x + (on.Length - y) * velocity.X / velocity.Y) : double.NaN,
            Offset = x - on.Pocket(launch.Hand),
            Angle = Math.Atan2(-hand * velocity.X, velocity.Y),
            Speed = velocity.Length,
            SlipSpeed = Math.Sqrt(m.SlipX * m.SlipX + m.SlipY * m.SlipY),
            SpinRate = spin.SpinRate,
            AxisRotation = spin.AxisRotation,
            AxisTilt = spin.AxisTilt,
            Revolutions = m.Revolutions,
            AxisMigration = Math.Atan2(before.Cross(after).Length, before.Dot(after)),
            BreakpointBoard = on.BoardAt(hand * reach),
            BreakpointDistance = breakY,
            RollDistance = rolled ? tally.RollY : double.NaN,
            RollBoard = rolled ? on.BoardAt(tally.RollX) : double.NaN,
            RollTime = rolled ? tally.RollTime : double.NaN,
            SlippedAgain = (int)(double)tally.SlippedAgain,
            OilTakenUp = run.y.OilTaken,
            Steps = run.Steps,
        };
    }
}
