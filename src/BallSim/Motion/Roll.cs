using System.Runtime.CompilerServices;
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

    public void Rates(in State<T> y, out State<T> rates)
    {
        Unsafe.SkipInit(out RollContact<T> c);
        Unsafe.SkipInit(out rates);
        At(ref c, y);
        T one = 1.0, zero = 0.0, m = Body.Mass;
        T vx = c.vx, vy = c.vy, wx = c.ωx, wy = c.ωy, wz = c.ωz;
        // σ × m g - m v_c × v_G + R n × D, v_c horizontal.
        T gx = m * c.gX, gy = m * c.gY, gz = m * Body.g.Z;
        var pushX = T.Fma(-Body.Radius, c.Dy, T.Fma(-m, vy * c.ωrz, T.Fma(c.ry, gz, -(c.arm * gy))));
        var pushY = T.Fma(Body.Radius, c.Dx, T.Fma(m, vx * c.ωrz, T.Fma(c.arm, gx, -(c.rx * gz))));
        var pushZ = T.Fma(-m, T.Fma(vx, c.ωry, -(vy * c.ωrx)), T.Fma(c.rx, gy, -(c.ry * gx)));
        var scale = ByDistance ? one / vy : one;
        rates.FrictionWork = zero;
        rates.CoverFilm = zero;
        rates.OilTaken = zero;
        Kinematics<T>.Turning(y, scale * wx, scale * wy, scale * wz, ref rates);
        // The moments that grow with the normal force, and the oil, ask for it at every stage.
        if (Body.HasSmallMoments || Body.HasCoverOil)
        {
            Hold(ref c, y, out var small, out var cover);
            if (Body.HasSmallMoments)
            {
                pushX = T.Fma(c.N, small.X, pushX);
                pushY = T.Fma(c.N, small.Y, pushY);
                pushZ = T.Fma(c.N, small.Z, pushZ);
                rates.FrictionWork = scale * c.N * small.Dot(c.ω);
            }
            if (Body.HasCoverOil)
            {
                cover.Rates(Body, y.CoverFilm, vx, vy, scale, ref rates);
            }
        }

        ω = new(wx, wy, wz);
        rates.Time = scale;
        rates.X = scale * vx;
        rates.Y = ByDistance ? one : vy;
        rates.VelocityX = zero;
        rates.VelocityY = zero;
        rates.MomentumX = scale * pushX;
        rates.MomentumY = scale * pushY;
        rates.MomentumZ = scale * pushZ;
        rates.DragWork = scale * T.Fma(c.Dx, vx, c.Dy * vy);
    }

    private void At(ref RollContact<T> c, in State<T> y)
    {
        c.At(Body, Start, y);
        if (TSurface.HasSlopes)
        {
            Kinematics<T>.OnSlope(Body, ref Surface, y, c.rx, c.ry, out c.gX, out c.gY);
        }
    }

    // The contact's force, and the oil at the contact with it.
    private void Hold(ref RollContact<T> c, in State<T> y, out Vec3<T> small, out CoverContact<T> cover)
    {
        Unsafe.SkipInit(out cover);
        T zero = 0.0;
        var film = Surface.Value(y.X, y.Y);
        cover.Film = film;
        cover.Fresh = 1.0;
        cover.Friction = Surface.Friction(film, zero);
        small = Body.HasSmallMoments ? Kinematics<T>.SmallMoments(Body, c.ω, cover.Friction, zero) : new(zero, zero, zero);
        c.Hold(Body, small);
        if (Body.HasCoverOil)
        {
            cover.Fresh = c.FreshCover(Body);
            cover.InContact = Surface.FilmInContact(T.Fma(1.0 - cover.Fresh, y.CoverFilm, film));
        }
    }

    /// <summary>
    /// The contact with its force, and the friction with which sliding would start. Its fresh fraction is that of the friction at the limit, not of the force that holds now: else μ would jump at the change, and
    /// a ball could neither stick nor slip.
    /// </summary>
    public void Contact(in State<T> y, out RollContact<T> c, out CoverContact<T> cover)
    {
        Unsafe.SkipInit(out c);
        At(ref c, y);
        Hold(ref c, y, out _, out cover);
        if (Body.HasCoverOil)
        {
            T zero = 0.0, tiny = 1e-30;
            var per = -1.0 / T.Max(c.Demand, tiny);
            Unsafe.SkipInit(out SlideContact<T> s);
            s.At(Body, c);
            cover.Friction = Slide<T, TSurface>.Grip(Body, ref Surface, ref s, cover.Film, y.CoverFilm, c.fx * per, c.fy * per);
        }
    }

    /// <summary>Demand and limit at a state.</summary>
    public void GripAt(in State<T> at, out Grip<T> g)
    {
        Contact(at, out var c, out var cover);
        g.Limit = cover.Friction * c.N;
        g.Excess = c.Demand - g.Limit;
        (g.N, g.VelocityX, g.VelocityY) = (c.N, c.vx, c.vy);
        g.ω = c.ω;
    }

    /// <summary>
    /// Flag: the demand of rolling may pass the limit of grip inside a step just taken, looked at in quarters as a run does; where it may, the run itself looks again. Asked only where a flag is set. Before, after: at both ends.
    /// </summary>
    public T MaySlip(in Step<State<T>> step, T h, in Grip<T> before, in Grip<T> after, T asked)
    {
        T zero = 0.0, one = 1.0;
        var may = T.IfLess(zero, asked, Pace<T>.MaySlip(before.Excess, after.Excess, after.Limit), zero);
        if (!T.Any(may))
        {
            return zero;
        }
        var slips = zero;
        var (older, last) = (zero, before.Excess);
        for (var i = 1; i <= 4; i++)
        {
            var now = after.Excess;
            if (i < 4)
            {
                GripAt(Dense<State<T>, T>.Between(step, h, i / 4.0), out var inside);
                now = inside.Excess;
            }
            slips = T.IfLess(zero, now, one, slips);
            if (i > 1)
            {
                // A top between three values, however low: the run will see whether it comes near.
                slips = T.IfLess(older, last, T.IfLess(last, now, slips, Top(older, last, now, after.Limit, slips)), slips);
            }
            (older, last) = (last, now);
        }
        return T.IfLess(zero, may, slips, zero);
    }

    private static T Top(T older, T before, T now, T limit, T otherwise)
    {
        var slope = now - older;
        var curvature = now - 2.0 * before + older;
        return T.IfLess(limit * -0.021, before - slope * slope / (8.0 * curvature), 1.0, otherwise);
    }
}
