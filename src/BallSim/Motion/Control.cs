using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>
/// Step control for one shot. The user states a tolerance for the path in metres; every component of the state gets the error per step that, carried to the pins, moves
/// the path by about as much. The share per step is calibrated on the benchmark's releases.
/// </summary>
internal readonly struct Control<T>
    where T : struct, IReal<T>
{
    // The share of the tolerance that the estimate of one step may come to in its worst component, at a tolerance of a micrometre. Measured on the releases of the benchmark and on free bodies, not derived: most steps err by far less than
    // their estimate, since steps are chosen with a wide margin, which saves more rejected steps than it costs; in long steps, which what swings with the ball limits, by less than in short ones, so that the share falls with the tolerance.
    private const double Share = 0.35, SharePower = 0.15, MostShare = 0.8;

    // The fresh fraction has narrow dips, twice a turn, of which an error estimate sees too little.
    private const double PartWithFreshCover = 0.1;

    // Where they are foreseen, what is left of them is more than all the rest; it goes by the turn of a step, which has a bound of its own.
    private const double PartWithForeseen = 3;

    // Down to this tolerance, m, the fresh fraction's dips are made whole step by step: what that neglects moves the path by some micrometres. Down to the other they are foreseen as well, which leaves about one.
    private const double LeastMended = 5e-6, LeastForeseen = 8e-7;

    // The estimate of the linearly implicit method is less on the safe side.
    private const double WeightWhileStiff = 8;

    private readonly T perPlace, perVelocity, perMomentum, perTurn, perTime, perCover;

    public Control(double tolerance, in Body<T> body)
    {
        var share = Math.Min(MostShare, Share * Math.Pow(tolerance / 1e-6, SharePower));
        var part = body.HasFineDips ? PartWithForeseen : body.HasCoverOil && body.HasFreshCover && !body.HasDips ? PartWithFreshCover : 1;
        T local = share * part * tolerance;
        T one = 1.0;
        perPlace = one / local;
        perVelocity = perPlace;
        perMomentum = perPlace * body.Radius / body.Moments.X;
        perTurn = perPlace * body.Radius;
        perTime = perPlace * 8.0;
        // A micrometre on the cover changes the friction by about a tenth, and that the path by about a tenth of a metre.
        perCover = perPlace * 1e5;

        var scale = tolerance / 1e-6;
        StickSlip = Math.Clamp(3e-5 * scale, 1e-12, 1e-2);
        SureSlip = 5e-6 * scale;
        SlipStart = Math.Clamp(6e-4 * Math.Cbrt(scale), 2e-6, 2e-3);
        TurnThroughDips = 1.2 * Math.Sqrt(Math.Sqrt(scale));
        FirstStep = 5e-3 * Math.Pow(scale, 0.2);
        Guess = Math.Clamp(10 * tolerance, 1e-7, 1e-3);
    }

    /// <summary>How the dips of the fresh fraction are made whole step by step at a tolerance, see <see cref="Dips{T}"/>.</summary>
    public static Effects Mends(double tolerance, in Body<T> body)
    {
        if (!body.HasCoverOil || !body.HasFreshCover || tolerance <= LeastForeseen)
        {
            return Effects.None;
        }
        return tolerance > LeastMended ? Effects.Dips : Effects.Dips | Effects.FineDips;
    }

    /// <summary>Slip speed, m/s, below which sliding that is coming to its end is ended by drifting over the rest in one go.</summary>
    public readonly T StickSlip;

    /// <summary>Slip speed, m/s, below which a step may go as near to the end of sliding as it likes: the direction of the slip, which turns without bound there, is no matter any more.</summary>
    public readonly T SureSlip;

    /// <summary>Time, s, rolled on past the limit of grip before sliding is started, see <see cref="Run{T,TSurface,TRecorder}"/>.</summary>
    public readonly T SlipStart;

    /// <summary>How far, rad, a step turns the ball where the dips of the fresh cover are foreseen: what is smooth along it, and what a dip does in it, is known by a few places.</summary>
    public readonly T TurnThroughDips;

    /// <summary>First step, s.</summary>
    public readonly T FirstStep;

    /// <summary>How closely, in parts of a step, the limit of grip is looked for in it before a step that ends there is taken: the slope at the end of that one does the rest.</summary>
    public readonly T Guess;

    /// <summary>Largest error of a step in units of what is allowed: accept up to 1.</summary>
    public T Norm(in State<T> e)
    {
        var n = T.Max(T.Abs(e.X), T.Abs(e.Y)) * perPlace;
        n = T.Max(n, T.Max(T.Abs(e.VelocityX), T.Abs(e.VelocityY)) * perVelocity);
        n = T.Max(n, T.Max(T.Abs(e.MomentumX), T.Max(T.Abs(e.MomentumY), T.Abs(e.MomentumZ))) * perMomentum);
        n = T.Max(n, T.Max(T.Abs(e.TurnX), T.Max(T.Abs(e.TurnY), T.Abs(e.TurnZ))) * perTurn);
        n = T.Max(n, T.Abs(e.CoverFilm) * perCover);
        n = T.Max(n, T.Abs(e.Time) * perTime);
        // Not a number counts as large. A maximum may lose it; a sum keeps it, and times zero it adds nothing else.
        var sum = (e.X + e.Y) + (e.VelocityX + e.VelocityY) + (e.MomentumX + e.MomentumY + e.MomentumZ);
        return T.Min(T.Fma(sum, 0.0, n), 1e20);
    }

    /// <summary>The same of a step to an end; one that turned the ball farther than rotation vectors reach counts as large, so that the next turns it no farther than it may. A step is planned by the turn at its start, and a ball without spin may gain much in it.</summary>
    public T Norm(in State<T> e, in State<T> end)
    {
        const double Most = 4.7, Planned = Pace<T>.MaxTurn;
        T zero = 0.0, none = 1e20, square = end.Turn.Dot(end.Turn);
        // The next step goes by the sixth root of this.
        var part = square * (1 / (Planned * Planned));
        return T.Max(Norm(e), T.IfLess(square, Most * Most, zero, T.Min(part * part * part, none)));
    }

    /// <summary>As <see cref="Pace{T}.Next"/>, for the linearly implicit method, whose estimate is of third order.</summary>
    public static T NextStiff(T norm, T taken, out T rejected)
    {
        T one = 1.0, zero = 0.0;
        norm = norm * WeightWhileStiff;
        var factor = T.Max(0.2, T.Min(3.0, 1831.0 * T.InverseCubeRootGuess((norm + 1e-10) * 1e10)));
        rejected = T.IfLess(one, norm, one, zero);
        return Pace<T>.Coarse(taken * T.IfLess(one, norm, T.Min(factor, 0.8), factor));
    }
}
