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

    /// <summary>What the stages of the last step saw of the demand.</summary>
    public Swing<T> Swing;

    // Of a step: the slopes still to come, and, where the oil is brought on step by step, the shift of the track at one of its stages.
    private int left;
    private T between;

    // What the last slopes saw of the contact, without its force: those at the end of a step serve for the grip there.
    private RollContact<T> seen;

    // The same about to slide. Here and not on the stack, so that lanes of it lie on the lines of the cache.
    private SlideContact<T> limit;

    public void Rates(in State<T> y, out State<T> rates)
    {
        Unsafe.SkipInit(out rates);
        Unsafe.SkipInit(out CoverContact<T> cover);
        ref var c = ref seen;
        At(ref c, y);
        // The moments that grow with the normal force, and the oil, ask for it at every stage; the swing at three. First, since what is at hand before a call must be brought to memory for it.
        var oils = Body.HasCoverOil && !Body.HasDips;
        var inside = --left is 4 or 3 or 2;
        Unsafe.SkipInit(out Vec3<T> small);
        if (Body.HasSmallMoments || oils || inside)
        {
            Hold(ref c, y, out small, out cover);
        }
        if (inside)
        {
            Note(ref c, y, cover);
        }
        T one = 1.0, zero = 0.0, m = Body.Mass;
        T vx = c.vx, vy = c.vy, wx = c.ωx, wy = c.ωy, wz = c.ωz;
        ω = new(wx, wy, wz);
        // σ × m g - m v_c × v_G + R n × D, v_c horizontal.
        T gx = m * c.gX, gy = m * c.gY, gz = m * Body.g.Z;
        var pushX = T.Fnma(Body.Radius, c.Dy, T.Fnma(m, vy * c.ωrz, T.Fms(c.r_d.Y, gz, c.arm * gy)));
        var pushY = T.Fma(Body.Radius, c.Dx, T.Fma(m, vx * c.ωrz, T.Fms(c.arm, gx, c.r_d.X * gz)));
        var pushZ = T.Fnma(m, T.Fms(vx, c.ωry, vy * c.ωrx), T.Fms(c.r_d.X, gy, c.r_d.Y * gx));
        var scale = ByDistance ? one / vy : one;
        T work = zero;
        if (Body.HasSmallMoments)
        {
            pushX = T.Fma(c.N, small.X, pushX);
            pushY = T.Fma(c.N, small.Y, pushY);
            pushZ = T.Fma(c.N, small.Z, pushZ);
            work = scale * c.N * small.Dot(ω);
        }

        rates.SetPlace(scale, scale * vx, ByDistance ? one : vy, zero);
        rates.SetMotion(zero, scale * pushX, scale * pushY, scale * pushZ);
        Kinematics<T>.Turning(y, scale * wx, scale * wy, scale * wz, out var tx, out var ty, out var tz, out var revolutions);
        rates.SetTurn(tx, ty, tz, zero);
        rates.SetSums(revolutions, work, scale * T.Fma(c.Dx, vx, c.Dy * vy), zero);
        if (oils)
        {
            c.Invert();
            cover.Fresh = c.FreshCover(Body);
            cover.InContact = Surface.FilmInContact(T.Fma(one - cover.Fresh, y.CoverFilm, cover.Film));
            cover.Rates(Body, y.CoverFilm, vx, vy, scale, ref rates);
        }
    }

    private void At(ref RollContact<T> c, in State<T> y)
    {
        c.At(Body, Start, y);
        if (TSurface.HasSlopes)
        {
            Kinematics<T>.OnSlope(Body, ref Surface, y, c.r_d.X, c.r_d.Y, out c.gX, out c.gY);
        }
    }

    // The contact's force.
    private void Hold(ref RollContact<T> c, in State<T> y, out Vec3<T> small, out CoverContact<T> cover)
    {
        Unsafe.SkipInit(out cover);
        T zero = 0.0;
        var film = Surface.Value(y.X, y.Y);
        cover.Film = film;
        cover.Friction = Surface.Friction(film, zero);
        small = Body.HasSmallMoments ? Kinematics<T>.SmallMoments(Body, c.ω, cover.Friction, zero) : new(zero, zero, zero);
        c.Hold(Body, small);
    }

    // At a stage: what the demand exceeds the limit by, and at one of them the shift of the track.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private void Note(ref RollContact<T> c, in State<T> y, in CoverContact<T> cover)
    {
        var excess = ExcessAtMost(c, y, cover);
        switch (left)
        {
            case 4:
                Swing.Third = excess;
                break;
            case 3:
                Swing.Fourth = excess;
                if (Body.HasDips)
                {
                    c.Invert();
                    between = c.Shift(Body);
                }
                break;
            default:
                Swing.Fifth = excess;
                break;
        }
    }

    // No less than the excess of demand over the limit, and sooner: with the least friction that the oil on the cover can leave. At no slip it falls as the film grows, and the cover is fresh in part.
    private T ExcessAtMost(in RollContact<T> c, in State<T> y, in CoverContact<T> cover)
    {
        T zero = 0.0;
        var least = cover.Friction * c.N;
        if (Body.HasCoverOil)
        {
            least = T.Min(least, Surface.Friction(cover.Film + y.CoverFilm, zero) * c.N);
        }
        return c.Demand - least;
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
        cover.Fresh = 1.0;
        if (Body.HasCoverOil)
        {
            c.Invert();
            Limit(c, y, ref cover);
            cover.Fresh = c.FreshCover(Body);
        }
    }

    // The friction with which sliding would start, with oil on the cover, and the cover's fresh fraction then.
    private void Limit(in RollContact<T> c, in State<T> at, ref CoverContact<T> cover)
    {
        T tiny = 1e-30;
        var per = -1.0 / T.Max(c.Demand, tiny);
        ref var s = ref limit;
        s.At(Body, c);
        (s.ex, s.ey) = (c.fx * per, c.fy * per);
        Slide<T, TSurface>.Grip(Body, ref Surface, ref s, ref cover, at);
    }

    /// <summary>Demand and limit at a state; what a step from it needs to know of the track is left out.</summary>
    public void Look(in State<T> at, out Grip<T> g) => See(at, false, out g);

    /// <summary>Demand and limit at a state from which a step begins.</summary>
    public void GripAt(in State<T> at, out Grip<T> g) => See(at, Body.HasDips, out g);

    private void See(in State<T> at, bool track, out Grip<T> g)
    {
        Unsafe.SkipInit(out g);
        ref var c = ref seen;
        At(ref c, at);
        Hold(ref c, at, out _, out var cover);
        g.Film = cover.Film;
        g.Shift = 0.0;
        if (Body.HasCoverOil)
        {
            c.Invert();
        }
        if (track)
        {
            g.Shift = c.Shift(Body);
        }
        GripOf(c, ref cover, at, ref g);
    }

    // By reference: what is copied to a call is copied in parts, see Slide.Push.
    private void GripOf(in RollContact<T> c, ref CoverContact<T> cover, in State<T> at, ref Grip<T> g)
    {
        if (Body.HasCoverOil)
        {
            Limit(c, at, ref cover);
        }
        g.Limit = cover.Friction * c.N;
        g.Excess = c.Demand - g.Limit;
        (g.N, g.VelocityX, g.VelocityY) = (c.N, c.vx, c.vy);
        g.ω = c.ω;
    }

    /// <summary>A step from the state whose slope is step.K1.</summary>
    public void Take(ref Step<State<T>> step, T h, out State<T> error)
    {
        left = 6;
        if (Body.HasDips)
        {
            T zero = 0.0;
            step.K1.SetOil(zero, zero);
        }
        RungeKutta5<Roll<T, TSurface>, State<T>, T>.Take(ref this, ref step, h, out error);
    }

    /// <summary>
    /// Demand and limit at the end of a step just taken that began with a grip. Where <see cref="Body{T}.HasDips"/> the oil on the cover, which the path of a ball that rolls does not ask for, is first brought there.
    /// </summary>
    public void Arrive(ref Step<State<T>> step, T h, in Grip<T> from, out Grip<T> g)
    {
        Unsafe.SkipInit(out g);
        ref var c = ref seen;
        Hold(ref c, step.End, out _, out var cover);
        g.Film = cover.Film;
        g.Shift = 0.0;
        if (Body.HasCoverOil)
        {
            c.Invert();
        }
        if (Body.HasDips)
        {
            g.Shift = c.Shift(Body);
            CarryOil(ref step, h, from, g);
        }
        GripOf(c, ref cover, step.End, ref g);
    }

    // The oil on the cover over a step: the shift of the track as the parabola through three values, the film of the lane between both ends.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private void CarryOil(ref Step<State<T>> step, T h, in Grip<T> from, in Grip<T> to)
    {
        const double Place = RungeKutta5.Place4;
        T half = 0.5, zero = 0.0;
        // q(θ) = q0 + θ (c1 + θ c2).
        var rise = to.Shift - from.Shift;
        Quartic<T> shift;
        shift.C0 = from.Shift;
        shift.C2 = T.Fma(rise, Place, from.Shift - between) * (1 / (Place * (1 - Place)));
        shift.C1 = rise - shift.C2;
        shift.C3 = shift.C4 = zero;
        BareSums<T>.Over(shift, out var sums);
        T dx = step.End.X - step.Start.X, dy = step.End.Y - step.Start.Y;
        var strip = (Body.ContactRadius + Body.ContactRadius) * T.Sqrt(T.Fma(dx, dx, dy * dy));
        CoverOil<T>.Carry(Body, ref Surface, half * (from.Film + to.Film), sums.Mean, strip, step.Start, ref step.End);
        // Inside the step, in a line.
        T one = 1.0, size = T.Abs(h), per = T.IfLess(zero, size, one / h, zero), film = per * (step.End.CoverFilm - step.Start.CoverFilm), taken = per * (step.End.OilTaken - step.Start.OilTaken);
        step.K1.CoverFilm = step.K3.CoverFilm = step.K4.CoverFilm = step.K5.CoverFilm = step.K6.CoverFilm = step.K7.CoverFilm = film;
        step.K1.OilTaken = step.K3.OilTaken = step.K4.OilTaken = step.K5.OilTaken = step.K6.OilTaken = step.K7.OilTaken = taken;
    }

    /// <summary>Flag: the demand may pass the limit of grip inside a step just taken, between a grip and another; where it may, a closer look is worth it.</summary>
    public readonly T MaySlip(in Grip<T> before, in Grip<T> after) => Swing.MayPass(before.Excess, after.Excess, after.Limit);
}
