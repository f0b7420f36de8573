using BallSim.Balls;
using BallSim.Friction;
using BallSim.Lanes;
using BallSim.Motion;
using BallSim.Shots;
using BallSim.Spatial;

namespace BallSim.Gpu;

/// <summary>All that is constant in a shot: ball, ends, step control, law of friction.</summary>
internal struct Setup<T>
    where T : unmanaged, IDeviceReal<T>, IReal<T>
{
    public Constants<T> Constants;
    public Bounds<T> Bounds;
    public Control<T> Control;
    public FilmLaw<T> Law;

    /// <summary>What the processor's engine works out for a ball on a lane, for the card.</summary>
    public static Setup<T> Of(Ball ball, Lane lane, SimulatorOptions options)
    {
        var body = Simulator.BodyOf(ball, lane, options).At(options.Tolerance);
        var constants = Constants<T>.Of(body);
        var bounds = Simulator.BoundsOf(ball, lane, options);
        Setup<T> setup = default;
        setup.Constants = constants;
        (setup.Bounds.HalfWidth, setup.Bounds.PinsAt, setup.Bounds.TouchDistance) = ((double)bounds.HalfWidth, (double)bounds.PinsAt, (double)bounds.TouchDistance);
        (setup.Bounds.BackAt, setup.Bounds.MaxTime) = ((double)bounds.BackAt, (double)bounds.MaxTime);
        (setup.Bounds.MaxSteps, setup.Bounds.MaxTransitions) = (bounds.MaxSteps, bounds.MaxTransitions);
        setup.Control = new(options.Tolerance, constants.Body(body.Effects));
        setup.Law = lane.GivenFriction is null ? Contact.Of(ball, lane).Law<T>(options.Friction) : default;
        return setup;
    }
}
