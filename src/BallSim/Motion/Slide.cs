using BallSim.Friction;
using BallSim.Integration;
using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>
/// Sliding, (M1) to (M6): N from a_c · n = 0, friction of size μ N against the slip. The state's velocity is that of Bcm, its momentum about Bcm, both in the lane
/// frame, where they turn slowly. With <see cref="ByDistance"/> all rates are per metre down-lane instead of per second.
/// </summary>
internal struct Slide<T, TSurface> : IStiffOde<State<T>, T>
    where T : struct, IReal<T>
    where TSurface : struct, ISurface<T>
{
    public Body<T> Body;
    public TSurface Surface;
    public Quat<T> Start;
    public bool ByDistance;

    /// <summary>Of the last evaluation, in the lane frame: angular velocity, velocity of Bo, slip, normal force. The driver reads them instead of computing them again.</summary>
    public Vec3<T> ω;
    public T VelocityX, VelocityY, Slip, N;

    // The stiff direction: a change of the slip across itself turns the friction, which acts at the contact against that change.
    private T acrossX, acrossY, perMass;
    private Vec3<T> lever, answer;

    /// <inheritdoc/>
    public T Rate { get; private set; }

    /// <inheritdoc/>
    public readonly T Along(in State<T> x) => T.Fma(acrossX, x.VelocityX, T.Fma(acrossY, x.VelocityY, answer.Dot(x.Momentum)));

    /// <inheritdoc/>
    public readonly void AddAcross(ref State<T> x, T amount)
    {
        var push = amount * perMass;
        x.VelocityX = T.Fma(push, acrossX, x.VelocityX);
        x.VelocityY = T.Fma(push, acrossY, x.VelocityY);
        x.Momentum = Vec3<T>.AddScaled(x.Momentum, amount, lever);
    }

    /// <summary>
    /// Takes the stiff direction from a contact with friction μ N against the slip s: e square to the slip, c = (e/m, ρ × e), w = (e, I⁻¹(ρ × e))/(w · c), Rate = μ N w · c/s. For steps in time.
    /// </summary>
    public void Linearise(in SlideContact<T> c, T μ)
    {
        T zero = 0.0, one = 1.0;
        var (ex, ey) = (-c.sy / c.s, c.sx / c.s);
        var ρ = new Vec3<T>(-c.r_d.X, -c.r_d.Y, -(Body.Radius + c.r_d.Z));
        lever = ρ.Cross(new(ex, ey, zero));
        answer = c.InverseI_L * lever;
        var compliance = Body.InverseMass + lever.Dot(answer);
        var per = one / compliance;
        Rate = μ * c.N * compliance / c.s;
        answer = per * answer;
        (acrossX, acrossY) = (per * ex, per * ey);
        // (acrossX, acrossY) carries the scale of w; c takes it back.
        perMass = Body.InverseMass * compliance;
    }

    public void Rates(in State<T> y, out State<T> rates)
    {
        var c = new SlideContact<T>(Body, Start, y);
        T one = 1.0;
        var per = one / c.s;
        var cover = Push(ref c, y, c.sx * per, c.sy * per, c.s);

        (ω, VelocityX, VelocityY, Slip, N) = (c.ω, c.vx, c.vy, c.s, c.N);
        var scale = ByDistance ? one / c.vy : one;
        var moment = scale * c.Moment(Body);
        var turn = scale * Quat<T>.TurnRate(y.Turn, c.ω);
        rates.Time = scale;
        rates.X = scale * c.vx;
        rates.Y = ByDistance ? one : c.vy;
        rates.VelocityX = scale * c.a_G.X;
        rates.VelocityY = scale * c.a_G.Y;
        (rates.MomentumX, rates.MomentumY, rates.MomentumZ) = (moment.X, moment.Y, moment.Z);
        (rates.TurnX, rates.TurnY, rates.TurnZ) = (turn.X, turn.Y, turn.Z);
        rates.CoverFilm = scale * cover.Rate(Body, c.ω, y.CoverFilm);
        rates.Revolutions = scale * T.Sqrt(c.ω.Dot(c.ω)) * (1 / (2 * Math.PI));
        rates.FrictionWork = scale * c.FrictionPower;
        rates.DragWork = scale * T.Fma(c.D.X, c.vx, c.D.Y * c.vy);
    }

    /// <summary>
    /// Forces for sliding along the unit vector (ex, ey) at a slip speed. With oil on the cover the fresh fraction is needed before the friction that it depends on; to keep the law explicit, it is taken with
    /// the friction μ_1 = μ(h_L, s) of a fresh cover and the normal force that goes with it.
    /// </summary>
    public CoverContact<T> Push(ref SlideContact<T> c, in State<T> y, T ex, T ey, T slip)
    {
        var film = Surface.Value(y.X, y.Y);
        var cover = new CoverContact<T> { Film = film, Friction = Surface.Friction(film, slip), Fresh = 1.0 };
        c.Push(Body, y.Momentum, ex, ey, cover.Friction);
        if (Body.HasCoverOil)
        {
            cover.Fresh = c.FreshCover(Body, y.Momentum);
            cover.Offered = T.Fma(1.0 - cover.Fresh, y.CoverFilm, film);
            cover.InContact = Surface.FilmInContact(cover.Offered);
            cover.Friction = Surface.Friction(cover.Offered, slip);
            c.Push(Body, y.Momentum, ex, ey, cover.Friction);
        }
        return cover;
    }
}
