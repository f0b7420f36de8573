using BallSim.Balls;
using BallSim.Friction;
using BallSim.Lanes;
using BallSim.Motion;
using BallSim.Releases;
using BallSim.Spatial;

namespace BallSim.Shots;

/// <summary>Computes how a ball moves.</summary>
public static class Simulator
{
    /// <summary>Throws a ball with a bowler's release.</summary>
    /// <param name="ball">The ball, drilled for its bowler (or the release names the axis itself).</param>
    /// <param name="lane">The lane.</param>
    /// <param name="release">The release.</param>
    /// <param name="options">Tolerance, small forces and limits; <see cref="SimulatorOptions.Default"/> if null.</param>
    /// <exception cref="ArgumentException">The release does not fit the ball or the lane; the message says why.</exception>
    public static Shot Throw(Ball ball, Lane lane, Release release, SimulatorOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(ball);
        ArgumentNullException.ThrowIfNull(lane);
        ArgumentNullException.ThrowIfNull(release);
        return Throw(ball, lane, release.StartOn(lane, ball), options);
    }

    /// <summary>Starts a ball from any state of motion on the lane: for study, and for the reference cases.</summary>
    /// <param name="ball">The ball.</param>
    /// <param name="lane">The lane; <see cref="Lane.Unbounded(FrictionMap)"/> has neither edges nor pins, and the shot then ends at <see cref="SimulatorOptions.MaxTime"/>.</param>
    /// <param name="start">Place and velocity of the centre, orientation, angular velocity.</param>
    /// <param name="options">Tolerance, small forces and limits; <see cref="SimulatorOptions.Default"/> if null.</param>
    public static Shot Throw(Ball ball, Lane lane, InitialState start, SimulatorOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(ball);
        ArgumentNullException.ThrowIfNull(lane);
        ArgumentNullException.ThrowIfNull(start);
        Check.That(start.Loft == 0 || start.VelocityY > 0, $"Loft = {Check.Text(start.Loft)} m needs a ball that moves down-lane; VelocityY is {Check.Text(start.VelocityY)} m/s", nameof(start));
        options ??= SimulatorOptions.Default;
        return lane.GivenFriction is { } friction
            ? OnSlopes(ball, lane, start, options, new GivenSurface<Real, MapOfReal>(new(friction.Map)))
            : OnSlopes(ball, lane, start, options, new FilmSurface<Real, MapOfReal>(Contact.Of(ball, lane).Law<Real>(options.Friction), new(lane.Oil.Map)));
    }

    private static Shot OnSlopes<TSurface>(Ball ball, Lane lane, InitialState start, SimulatorOptions options, TSurface surface)
        where TSurface : struct, ISurface<Real> => lane.Topography.Heights is { } heights
            ? Throw(ball, lane, start, options, new SlopedSurface<Real, TSurface, SlopesOfReal>(surface, new(heights)))
            : Throw(ball, lane, start, options, surface);

    private static Shot Throw<TSurface>(Ball ball, Lane lane, InitialState start, SimulatorOptions options, TSurface surface)
        where TSurface : struct, ISurface<Real>
    {
        var body = BodyOf(ball, lane, options);
        var recorder = new PathRecorder(lane);
        var run = new Run<Real, TSurface, PathRecorder>(body, surface, BoundsOf(ball, lane, options), options.Tolerance, recorder);
        var ending = run.Go(start.X, start.Y, start.VelocityX, start.VelocityY, start.Orientation.Spatial, start.AngularVelocity.Spatial, start.Loft);
        if (recorder.Segments.Count == 0)
        {
            recorder.Stood(run.Phase, run.Last, run.Orientation);
        }
        return new(ball, lane, start.Hand, recorder, new Instants<TSurface>(body, surface, lane, start.Hand), ReasonOf(ending), run.Steps, run.Rejected);
    }

    internal static StopReason ReasonOf(Ending ending) => ending switch
    {
        Ending.HeadPin => StopReason.HeadPin,
        Ending.PassedPins => StopReason.PassedHeadPin,
        Ending.Gutter => StopReason.Gutter,
        Ending.FoulLine => StopReason.FoulLine,
        Ending.LeftLane => StopReason.LeftLane,
        Ending.TimeLimit => StopReason.TimeLimit,
        Ending.StepLimit => StopReason.StepLimit,
        _ => StopReason.TransitionLimit,
    };

    internal static Body<Real> BodyOf(Ball ball, Lane lane, SimulatorOptions options)
    {
        var axes = ball.Inertia.Principal;
        // Lowest, highest, intermediate: for a ball that was not drilled these are the axes of its own frame.
        var (least, greatest) = (axes.Least, axes.Greatest);
        var toBall = Rotation.Between(Vector3D.UnitX, Vector3D.UnitY, least, greatest);
        var area = 0.5 * lane.AirDensity * Math.PI * ball.Radius * ball.Radius;
        var slope = lane.Topography;
        var g = -lane.Gravity.Z;
        return new()
        {
            Mass = ball.Mass,
            InverseMass = 1 / ball.Mass,
            Radius = ball.Radius,
            Moments = new(axes.LeastMoment, axes.GreatestMoment, axes.MiddleMoment),
            InverseMoments = new(1 / axes.LeastMoment, 1 / axes.GreatestMoment, 1 / axes.MiddleMoment),
            Axes = toBall.Spatial,
            d_P = toBall.Inverse.Apply(ball.CentreOfMass).Spatial,
            g = new(lane.Gravity.X - g * slope.CrossSlope, lane.Gravity.Y - g * slope.LengthSlope, lane.Gravity.Z),
            Drag = options.AirDrag ? options.DragCoefficient * area : 0,
            Lift = options.MagnusForce ? options.LiftCoefficient * area * ball.Radius : 0,
            RollingResistance = options.RollingResistance ? options.RollingResistanceCoefficient : 0,
            Effects = (options.MagnusForce ? Effects.Lift : 0)
                | (options.RollingResistance || options.PivotingFriction ? Effects.SmallMoments : 0)
                | (options.CoverOil && lane.GivenFriction is null ? Effects.CoverOil : 0)
                | (options.FreshCover ? Effects.FreshCover : 0),
            PickUp = options.Friction.PickUp,
            Absorption = ball.Cover.Absorption,
            ContactRadius = Contact.Of(ball, lane).ContactRadius,
            PivotRadius = options.PivotingFriction ? Contact.Of(ball, lane).ContactRadius : 0,
        };
    }

    internal static Bounds<Real> BoundsOf(Ball ball, Lane lane, SimulatorOptions options) => new()
    {
        HalfWidth = lane.HasEdges ? lane.Width / 2 : double.PositiveInfinity,
        PinsAt = lane.HasPins ? lane.Length : double.PositiveInfinity,
        TouchDistance = ball.Radius + PinDeck.BellyDiameter / 2,
        BackAt = lane.HasPins ? -1e-9 : double.NegativeInfinity,
        MaxTime = options.MaxTime,
        MaxSteps = options.MaxSteps,
        MaxTransitions = options.MaxTransitions,
    };
}
