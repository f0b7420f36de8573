using BallSim.Balls;
using BallSim.Friction;
using BallSim.Lanes;
using BallSim.Motion;
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
    private Control<Real> control;
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
            body = Simulator.BodyOf(ball, on, options).At(options.Tolerance);
            control = new(options.Tolerance, body);
            bounds = Simulator.BoundsOf(ball, on, options);
            surface = under.Under(ball, on, options);
        }
        ref readonly var launch = ref work.Launches[row];
        ref var run = ref runs[k];
        run = new(body, surface, bounds, control, new Tally<Real>(launch.Hand == Hand.Right ? 1 : -1, launch.X));
        run.Ended = run.Begin(launch.X, 0, launch.Velocity.X, launch.Velocity.Y, launch.Orientation.Normalised.Spatial, launch.AngularVelocity.Spatial, launch.Loft);
    }

    public Outcome Outcome(int k, Rows.Work work, int row, Lane on)
    {
        ref var run = ref runs[k];
        var end = Moment<Real>.Of(run.Phase, run.y, run.q, run.slide.Body, run.slide.Surface);
        return Outcomes.Of(end, run.recorder, run.Ended, run.Steps, run.y.OilTaken, work.Launches[row], on);
    }
}
