using BallSim.Friction;
using BallSim.Integration;
using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>
/// Rolling without slip, (M7), as the change of the angular momentum K about the contact point: K = (I + m(σ² - σσᵀ)) ω, dK/dt = σ × m g + R n × D + τ - m v_c × v_G.
/// For d = 0 on a level lane without drag K is constant, and only the turn is left to integrate. With <see cref="ByDistance"/> all rates are per metre.
/// </summary>
internal struct Roll<T, TSurface> : IOde<State<T>>
    where T : struct, IReal<T>
    where TSurface : struct, ISurface<T>
{
    public Body<T> Body;
    public TSurface Surface;
    public Quat<T> Start;
    public bool ByDistance;

    /// <summary>Angular velocity of the last evaluation, lane frame.</summary>
    public Vec3<T> ω;

    /// <summary>Whether moments that grow with the normal force act (rolling resistance, pivoting friction): then N is needed at every stage.</summary>
    public bool HasSmallMoments;

    private readonly bool NeedsForce => HasSmallMoments || Body.HasCoverOil;

    public void Rates(in State<T> y, out State<T> rates)
    {
        var c = new RollContact<T>(Body, Start, y);
        T one = 1.0, zero = 0.0;
        var push = c.σ.Cross(Body.Mass * Body.g);
        // v_c × v_G with v_c horizontal.
        push = new(
            T.Fma(-Body.Mass, c.vy * c.v_G.Z, push.X),
            T.Fma(Body.Mass, c.vx * c.v_G.Z, push.Y),
            T.Fma(-Body.Mass, T.Fma(c.vx, c.v_G.Y, -(c.vy * c.v_G.X)), push.Z));
        push = new(T.Fma(-Body.Radius, c.D.Y, push.X), T.Fma(Body.Radius, c.D.X, push.Y), push.Z);
        var power = zero;
        var cover = default(CoverContact<T>);
        if (NeedsForce)
        {
            cover = Hold(ref c, y, out var small);
            push = Vec3<T>.AddScaled(push, c.N, small);
            power = c.N * small.Dot(c.ω);
        }

        ω = c.ω;
        var scale = ByDistance ? one / c.vy : one;
        var moment = scale * push;
        var turn = scale * Quat<T>.TurnRate(y.Turn, c.ω);
        rates.Time = scale;
        rates.X = scale * c.vx;
        rates.Y = ByDistance ? one : c.vy;
        rates.VelocityX = zero;
        rates.VelocityY = zero;
        (rates.MomentumX, rates.MomentumY, rates.MomentumZ) = (moment.X, moment.Y, moment.Z);
        (rates.TurnX, rates.TurnY, rates.TurnZ) = (turn.X, turn.Y, turn.Z);
        rates.CoverFilm = scale * cover.Rate(Body, c.ω, y.CoverFilm);
        rates.Revolutions = scale * T.Sqrt(c.ω.Dot(c.ω)) * (1 / (2 * Math.PI));
        rates.FrictionWork = scale * power;
        rates.DragWork = scale * T.Fma(c.D.X, c.vx, c.D.Y * c.vy);
    }

    // The contact's force, and the oil at the contact with it.
    private CoverContact<T> Hold(ref RollContact<T> c, in State<T> y, out Vec3<T> small)
    {
        T zero = 0.0;
        var film = Surface.Value(y.X, y.Y);
        var cover = new CoverContact<T> { Film = film, Friction = Surface.Friction(film, zero), Fresh = 1.0 };
        small = HasSmallMoments ? Kinematics<T>.SmallMoments(Body, c.ω, cover.Friction, zero) : new(zero, zero, zero);
        c.Hold(Body, small);
        if (Body.HasCoverOil)
        {
            cover.Fresh = c.FreshCover(Body);
            cover.Offered = T.Fma(1.0 - cover.Fresh, y.CoverFilm, film);
            cover.InContact = Surface.FilmInContact(cover.Offered);
        }
        return cover;
    }

    /// <summary>
    /// The contact with its force, and the friction with which sliding would start. Its fresh fraction is that of the friction at the limit, not of the force that holds now: else μ would jump at the change, and
    /// a ball could neither stick nor slip.
    /// </summary>
    public RollContact<T> Contact(in State<T> y, out CoverContact<T> cover)
    {
        var c = new RollContact<T>(Body, Start, y);
        cover = Hold(ref c, y, out _);
        if (Body.HasCoverOil)
        {
            T zero = 0.0, tiny = 1e-30;
            var per = -1.0 / T.Max(c.Demand, tiny);
            var slide = new Slide<T, TSurface> { Body = Body, Surface = Surface, Start = Start };
            var at = c.Sliding(y);
            var s = new SlideContact<T>(Body, Start, at);
            cover.Friction = slide.Push(ref s, at, c.f.X * per, c.f.Y * per, zero).Friction;
        }
        return c;
    }
}
