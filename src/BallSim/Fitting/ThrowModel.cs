using BallSim.Friction;
using BallSim.Lanes;
using BallSim.Motion;
using BallSim.Releases;
using BallSim.Shots;
using BallSim.Spatial;

namespace BallSim.Fitting;

/// <summary>One shot as a function of the parameters: the equations of motion and their driver, run with numbers that carry derivatives.</summary>
internal sealed class ThrowModel
{
    private readonly FitShot shot;
    private readonly SimulatorOptions options;
    private readonly Station[] stations;
    private readonly Body<Real> body;
    private readonly Bounds<Dual> bounds;
    private readonly Contact contact;

    public ThrowModel(FitShot shot, SimulatorOptions options, Station[] stations)
    {
        (this.shot, this.options, this.stations) = (shot, options, stations);
        body = Simulator.BodyOf(shot.Ball, shot.Lane, options);
        contact = Contact.Of(shot.Ball, shot.Lane);
        Before = ParameterFacts.Before(shot, options);
        var b = Simulator.BoundsOf(shot.Ball, shot.Lane, options);
        bounds = new()
        {
            HalfWidth = b.HalfWidth,
            PinsAt = b.PinsAt,
            TouchDistance = b.TouchDistance,
            BackAt = b.BackAt,
            MaxTime = b.MaxTime,
            MaxSteps = b.MaxSteps,
            MaxTransitions = b.MaxTransitions,
        };
    }

    /// <summary>All parameters as the shot has them.</summary>
    public double[] Before { get; }

    /// <summary>
    /// Throws with the given values, those with a slot as variables, and notes the passages. Null if all stations were passed, else a sentence that says why not.
    /// </summary>
    public string? Throw(double[] values, int[] slots, Passage[] passages)
    {
        Dual Number(FitParameter p) => slots[(int)p] < 0 ? values[(int)p] : Dual.Variable(values[(int)p], slots[(int)p]);
        Array.Clear(passages);
        var lane = shot.Lane;
        if (lane.GivenFriction is { } given)
        {
            var (least, greatest) = given.Map.Extremes();
            var (low, high) = (Number(FitParameter.Floor), Number(FitParameter.Dry));
            // One coefficient everywhere is the dry one.
            Dual gain = greatest > least ? (high - low) / (greatest - least) : 0.0;
            var offset = greatest > least ? low - gain * least : high;
            return OnSlopes(Number, passages, new GivenSurface<Dual, MapOfDual>(new(given.Map, offset, gain)));
        }
        var friction = options.Friction with { Dry = values[(int)FitParameter.Dry], Floor = values[(int)FitParameter.Floor], FilmScale = values[(int)FitParameter.FilmScale] };
        if (!(friction.Floor + friction.ViscousCeiling < friction.Dry))
        {
            return "floor and viscous ceiling together are not below the dry friction";
        }
        return OnSlopes(Number, passages, new FilmSurface<Dual, MapOfDual>(Law(friction, Number), new(lane.Oil.Map, 0.0, 1.0)));
    }

    // The law's constants as functions of the parameters: (F3), and h_ff, which goes as the viscosity to the power 0.64.
    private FilmLaw<Dual> Law(FrictionCalibration friction, Func<FitParameter, Dual> number)
    {
        var rough = Math.Sqrt(contact.BallRoughness * contact.BallRoughness + contact.LaneRoughness * contact.LaneRoughness);
        var filmScale = number(FitParameter.FilmScale) * 1.25 * rough + number(FitParameter.Pores);
        var viscosity = number(FitParameter.Viscosity) * (shot.Lane.Viscosity / shot.Lane.OilViscosity);
        var η = (double)viscosity;
        var perFlooded = 1 / (contact with { Viscosity = η }).FloodedFilm(friction.EntrainmentSpeed);
        return new(contact, friction, number(FitParameter.Dry), number(FitParameter.Floor), filmScale, viscosity.Chain(perFlooded, -0.64 * perFlooded / η), viscosity);
    }

    private string? OnSlopes<TSurface>(Func<FitParameter, Dual> number, Passage[] passages, TSurface surface)
        where TSurface : struct, ISurface<Dual> => shot.Lane.Topography.Heights is { } heights
            ? Throw(number, passages, new SlopedSurface<Dual, TSurface, SlopesOfDual>(surface, new(heights)))
            : Throw(number, passages, surface);

    private string? Throw<TSurface>(Func<FitParameter, Dual> number, Passage[] passages, TSurface surface)
        where TSurface : struct, ISurface<Dual>
    {
        var ball = BodyWith(number);
        Start(number, out var x, out var vx, out var vy, out var q, out var ω);
        var recorder = new StationRecorder<TSurface>(ball, surface, shot.Ball.Marks.Hand, number(FitParameter.ClockOffset), stations, passages);
        var run = new Run<Dual, TSurface, StationRecorder<TSurface>>(ball, surface, bounds, options.Tolerance, recorder);
        var ending = run.Go(x, 0.0, vx, vy, q, ω, shot.Release.Loft);
        var missed = Array.FindIndex(passages, 0, stations.Length, p => !p.IsSeen);
        if (missed < 0)
        {
            return null;
        }
        var station = stations[missed];
        var last = run.Last;
        return FormattableString.Invariant($"the ball ended at {(double)last.Y:F2} m after {(double)last.Time:F2} s ({ending}), before the station at {station.At:F2} {(station.IsTime ? "s" : "m")}");
    }

    private Body<Dual> BodyWith(Func<FitParameter, Dual> number)
    {
        static Vec3<Dual> Fixed(Vec3<Real> v) => new(v.X, v.Y, v.Z);
        var (lane, b) = (shot.Lane, body);
        var area = 0.5 * lane.AirDensity * Math.PI * shot.Ball.Radius * shot.Ball.Radius;
        Dual g = -lane.Gravity.Z;
        return new()
        {
            Mass = b.Mass,
            InverseMass = b.InverseMass,
            Radius = b.Radius,
            Moments = Fixed(b.Moments),
            InverseMoments = Fixed(b.InverseMoments),
            Axes = new(b.Axes.W, b.Axes.X, b.Axes.Y, b.Axes.Z),
            d_P = Fixed(b.d_P),
            g = new(lane.Gravity.X - g * number(FitParameter.CrossSlope), lane.Gravity.Y - g * number(FitParameter.LengthSlope), lane.Gravity.Z),
            Drag = options.AirDrag ? number(FitParameter.DragCoefficient) * area : 0.0,
            Lift = b.Lift,
            RollingResistance = b.RollingResistance,
            PickUp = b.PickUp,
            Absorption = b.Absorption,
            ContactRadius = b.ContactRadius,
            PivotRadius = b.PivotRadius,
            Effects = b.Effects,
        };
    }

    // The release as in Release.StartOn, with derivatives.
    private void Start(Func<FitParameter, Dual> number, out Dual x, out Dual vx, out Dual vy, out Quat<Dual> q, out Vec3<Dual> ω)
    {
        var (board, launch, speed, spin) = (number(FitParameter.Board), number(FitParameter.LaunchAngle), number(FitParameter.Speed), number(FitParameter.SpinRate));
        var (rotation, tilt, phase) = (number(FitParameter.AxisRotation), number(FitParameter.AxisTilt), number(FitParameter.RollPhase));
        var release = shot.Release with
        {
            Board = (double)board,
            LaunchAngle = (double)launch,
            Speed = (double)speed,
            SpinRate = (double)spin,
            AxisRotation = (double)rotation,
            AxisTilt = (double)tilt,
            RollPhase = (double)phase,
        };
        var start = release.StartAt(shot.Lane.PlaceOf((double)board), shot.Ball);
        Dual h = start.Hand == Hand.Right ? 1 : -1, zero = 0.0, one = 1.0;
        x = board.Chain(start.X, -shot.Lane.BoardWidth);

        var e = new Vec3<Dual>(h * Dual.Sin(launch), Dual.Cos(launch), zero);
        var l = new Vec3<Dual>(-e.Y, e.X, zero);
        (vx, vy) = (speed * e.X, speed * e.Y);
        var level = Dual.Cos(tilt);
        var spinAxis = Vec3<Dual>.AddScaled(level * (Dual.Cos(rotation) * l), -(h * Dual.Sin(rotation) * level), e) + new Vec3<Dual>(zero, zero, h * Dual.Sin(tilt));
        ω = spin * spinAxis;

        // The ball is carried along by a frame that the axis and the travel define; how that frame turns with the parameters, to first order, is the rotation vector ½ Σ c × c'.
        var axis = h * spinAxis;
        var behind = Square(-e, axis) ?? Square(new(zero, zero, -one), axis)!.Value;
        var beside = spinAxis.Cross(behind);
        behind = Vec3<Dual>.AddScaled(Dual.Cos(phase) * behind, Dual.Sin(phase), beside);
        Dual half = 0.5;
        var turn = half * (Turn(axis) + Turn(behind) + Turn(axis.Cross(behind)));
        var o = start.Orientation;
        var at = new Quat<Dual>(o.W, o.X, o.Y, o.Z);
        var by = new Quat<Dual>(zero, half * turn.X, half * turn.Y, half * turn.Z) * at;
        q = new(at.W + by.W, at.X + by.X, at.Y + by.Y, at.Z + by.Z);
    }

    private static Vec3<Dual> Turn(Vec3<Dual> c) => new Vec3<Dual>((double)c.X, (double)c.Y, (double)c.Z).Cross(c);

    private static Vec3<Dual>? Square(Vec3<Dual> direction, Vec3<Dual> axis)
    {
        var part = Vec3<Dual>.AddScaled(direction, -direction.Dot(axis), axis);
        var length = Dual.Sqrt(part.Dot(part));
        return (double)length > 1e-9 ? (1.0 / length) * part : null;
    }
}
