using System.Runtime.CompilerServices;
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
    /// <summary>Slip that is none but for rounding, m/s.</summary>
    public const double NoSlip = 1e-12;

    // The last drift over slip takes at most this many seconds for each m/s of the slip at which drifting is allowed.
    private const double DriftSeconds = 0.5;

    // Where dips are made whole (Body.HasDips), the cover counts as fresh above this slip, m/s, and less and less so below: near the end of sliding the effect of a dip is no matter of averages.
    private const double FreshSlip = 0.002;

    // Above this slip, m/s, a step does not trust the rate at its start alone, see Fading.
    private const double MuchSlip = 0.05;

    // With pivoting friction on, the largest slip, m/s, that may count as rolling.
    private const double CreepSlip = 1e-3;

    public Body<T> Body;
    public TSurface Surface;
    public Quat<T> Start;
    public bool ByDistance;

    /// <summary>What the last evaluation saw, but for the stages inside a step, of which the last is seen where there are dips; a step that is taken again starts from what was seen before it.</summary>
    public Seen<T> Seen;

    /// <summary>The same of the fresh cover, and the step's sums of it; used where <see cref="Body{T}.HasDips"/>.</summary>
    public Dip<T> Dip;

    public Dips<T> Dips;

    public readonly Vec3<T> ω => Seen.ω;

    public readonly T VelocityX => Seen.VelocityX;

    public readonly T VelocityY => Seen.VelocityY;

    public readonly T Slip => Seen.Slip;

    public readonly T N => Seen.N;

    /// <summary>How far, rad, a step may turn the ball.</summary>
    public readonly T MaxTurn(in Control<T> control) => Body.HasFineDips ? control.TurnThroughDips : Pace<T>.MaxTurn;

    // What the last slopes saw of the contact: here and not on the stack, so that lanes of it lie on the lines of the cache.
    private SlideContact<T> contact;

    // The slopes asked for are those of a stage inside a step.
    private bool inside;

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
    public void Linearise(in State<T> y)
    {
        Unsafe.SkipInit(out SlideContact<T> c);
        c.At(Body, Start, y);
        Push(ref c, y, c.s, out var cover);
        T zero = 0.0, one = 1.0;
        var (ex, ey) = (-c.sy / c.s, c.sx / c.s);
        var ρ = new Vec3<T>(-c.r_d.X, -c.r_d.Y, -(Body.Radius + c.r_d.Z));
        lever = ρ.Cross(new(ex, ey, zero));
        answer = c.InverseI_L * lever;
        var compliance = Body.InverseMass + lever.Dot(answer);
        var per = one / compliance;
        Rate = cover.Friction * c.N * compliance / c.s;
        answer = per * answer;
        (acrossX, acrossY) = (per * ex, per * ey);
        // (acrossX, acrossY) carries the scale of w; c takes it back.
        perMass = Body.InverseMass * compliance;
    }

    public void Rates(in State<T> y, out State<T> rates)
    {
        ref var c = ref contact;
        Unsafe.SkipInit(out rates);
        // The long chain of the law's roots runs beside the mechanics, of which it asks nothing.
        Touch(Body, ref Surface, y, out var cover);
        c.At(Body, Start, y);
        Push(Body, ref Surface, ref c, y, c.s, ref cover, Body.HasFineDips ? Dips.Foreseen : 0.0);
        if (!inside || Body.HasDips && Dips.IsAtEdge)
        {
            (Seen.VelocityX, Seen.VelocityY, Seen.Slip, Seen.N) = (c.vx, c.vy, c.s, c.N);
            Seen.ω = c.ω;
        }
        if (!inside)
        {
            See(c);
        }

        // Only here: what is at hand before a call must be brought to memory for it.
        T one = 1.0, zero = 0.0, vx = c.vx, vy = c.vy, wx = c.ωx, wy = c.ωy, wz = c.ωz;
        var scale = ByDistance ? one / vy : one;
        rates.SetPlace(scale, scale * vx, ByDistance ? one : vy, scale * c.ax);
        rates.SetMotion(scale * c.ay, scale * c.Mx, scale * c.My, scale * c.Mz);
        Kinematics<T>.Turning(y, scale * wx, scale * wy, scale * wz, out var tx, out var ty, out var tz, out var revolutions);
        rates.SetTurn(tx, ty, tz, zero);
        rates.SetSums(revolutions, scale * c.FrictionPower, scale * T.Fma(c.Dx, vx, c.Dy * vy), zero);
        if (Body.HasCoverOil)
        {
            if (!Dips.IsUnderWay)
            {
                cover.Rates(Body, y.CoverFilm, vx - c.sx, vy - c.sy, scale, ref rates);
            }
            if (Body.HasDips)
            {
                Note(ref c, y, cover, scale);
            }
        }
    }

    // What of the contact is seen at the ends of a step alone.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private void See(in SlideContact<T> c)
    {
        var (ax, ay) = c.SlipRate(Body);
        Seen.Fall = -(T.Fma(ax, c.sx, ay * c.sy) * c.perSlip);
        Seen.Pull = T.Sqrt(T.Fma(c.fx, c.fx, c.fy * c.fy));
    }

    /// <summary>An explicit step from the state whose slope is step.K1 and which was seen last; the dips of the fresh cover in it are made whole.</summary>
    public void Take(ref Step<State<T>> step, T h, out State<T> error)
    {
        if (Body.HasDips)
        {
            Dips.Start = Dip;
        }
        TakeAgain(ref step, h, out error);
    }

    /// <summary>The same step over another length.</summary>
    public void TakeAgain(ref Step<State<T>> step, T h, out State<T> error)
    {
        if (Body.HasDips)
        {
            T zero = 0.0;
            step.K1.SetOil(zero, zero);
            if (Body.HasFineDips)
            {
                Dips.BeginFinely(h);
            }
            else
            {
                Dips.Begin();
            }
        }
        inside = true;
        RungeKutta5<Slide<T, TSurface>, State<T>, T>.Approach(ref this, ref step, h);
        if (Body.HasDips)
        {
            Dips.Amend(ref step, h, ref Surface, Body, ref Dip, Seen, ByDistance);
            step.Interpolant = Interpolant.Mended;
        }
        inside = false;
        RungeKutta5<Slide<T, TSurface>, State<T>, T>.Arrive(ref this, ref step, h, out error);
    }

    // What the fresh cover does here; of the stages inside a step little is asked.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private void Note(ref SlideContact<T> c, in State<T> y, in CoverContact<T> cover, T scale)
    {
        T one = 1.0;
        Dip.Lost = cover.Friction - cover.WhenFresh;
        if (Dips.IsAtEdge)
        {
            // Per unit of friction: the force, its moment, and what it changes in the normal force.
            var per = one / c.s;
            T ux = -(per * c.sx), uy = -(per * c.sy), arm = Body.Radius + c.r_d.Z;
            T px = arm * uy, py = -(arm * ux), pz = T.Fms(c.r_d.Y, ux, c.r_d.X * uy);
            ref readonly var a = ref c.InverseI_L;
            var bx = T.Fma(a.Xx, px, T.Fma(a.Xy, py, a.Xz * pz));
            var by = T.Fma(a.Xy, px, T.Fma(a.Yy, py, a.Yz * pz));
            var press = Body.Mass * T.Fms(bx, c.r_d.Y, by * c.r_d.X);
            var n = scale * c.N;
            var grown = T.Fma(cover.Friction, press, one) * n;
            press = press * n;
            (Dip.PushX, Dip.PushY) = (Body.InverseMass * grown * ux, Body.InverseMass * grown * uy);
            (Dip.TurnX, Dip.TurnY, Dip.TurnZ) = (T.Fms(grown, px, press * c.r_d.Y), T.Fma(grown, py, press * c.r_d.X), grown * pz);
            Dip.Work = -(grown * c.s);
            (Dip.Film, Dip.WhenFresh, Dip.Slip, Dip.Scale) = (cover.Film, cover.WhenFresh, c.s, scale);
            T wx = c.vx - c.sx, wy = c.vy - c.sy;
            Dip.Strip = scale * (Body.ContactRadius + Body.ContactRadius) * T.Sqrt(T.Fma(wx, wx, wy * wy));
            if (Dips.Begins)
            {
                if (Body.HasFineDips)
                {
                    // Nothing is foreseen.
                    Dip.Rise = Dip.Bend = Dip.Depth = 0.0;
                    Dip.Swing = c.ω.Dot(c.ω);
                }
                else
                {
                    Dips<T>.Curve(ref Surface, ref Dip, y.CoverFilm);
                }
            }
        }
        if (Body.HasFineDips)
        {
            (Dip.Slip, Dip.WhenFresh) = (c.s, cover.WhenFresh);
            if (Dips.IsAtEnd)
            {
                (Dip.Film, Dip.Swing) = (cover.Film, c.ω.Dot(c.ω));
            }
        }
        // Last, since no slope waits for it: a processor goes on with the next stage meanwhile.
        if (Dips.Asks)
        {
            Dip.Shift = IsFresh(Body, c.s) ? ShiftWhenFresh(ref c, cover.WhenFresh) : cover.Shift;
        }
        Dips.Note(Dip, cover.Film, Body);
    }

    // Where a part of the friction is foreseen to be lost, of a fresh cover's force, not of that with which the stage goes on.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private readonly T ShiftWhenFresh(ref SlideContact<T> c, T μ)
    {
        if (Body.HasFineDips)
        {
            c.Press(Body, μ);
        }
        return c.Shift(Body);
    }

    /// <summary>
    /// Forces for sliding at a slip speed along the unit vector that the contact names. With oil on the cover the fresh fraction is needed before the friction that it depends on; to keep the law explicit, it is taken with
    /// the friction μ_1 = μ(h_L, s) of a fresh cover and the normal force that goes with it.
    /// </summary>
    public void Push(ref SlideContact<T> c, in State<T> y, T slip, out CoverContact<T> cover)
    {
        Touch(Body, ref Surface, y, out cover);
        T zero = 0.0;
        Push(Body, ref Surface, ref c, y, slip, ref cover, zero);
    }

    // The lane under the ball.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Touch(in Body<T> body, ref TSurface surface, in State<T> y, out CoverContact<T> cover)
    {
        Unsafe.SkipInit(out cover);
        cover.Film = surface.Value(y.X, y.Y);
        cover.BareShare = surface.BareShare(body.IsNeverFresh ? cover.Film + y.CoverFilm : cover.Film, out cover.InContact);
    }

    private static void Push(in Body<T> body, ref TSurface surface, ref SlideContact<T> c, in State<T> y, T slip, ref CoverContact<T> cover, T foreseen)
    {
        if (TSurface.HasSlopes)
        {
            Kinematics<T>.OnSlope(body, ref surface, y, c.r_d.X, c.r_d.Y, out c.gX, out c.gY);
        }
        cover.Fresh = body.IsNeverFresh ? 0.0 : 1.0;
        // By way of a local: what is copied from memory to the stack of a call is copied in parts, and a vector that has been written in parts is slow to read.
        var μ = surface.Friction(cover.Film, cover.BareShare, cover.InContact, slip);
        cover.Friction = μ;
        if (body.HasCoverOil && !body.IsNeverFresh)
        {
            cover.WhenFresh = μ;
            if (!IsFresh(body, slip))
            {
                Refresh(body, ref surface, ref c, y.CoverFilm, slip, ref cover);
                μ = cover.Friction;
            }
            if (body.HasFineDips)
            {
                μ = μ + T.IfLess(slip, FreshSlip, 0.0, foreseen);
                cover.Friction = μ;
            }
        }
        c.Push(body, μ);
    }

    /// <summary>What the cover does, and the friction, with which a ball that rolls would begin to slide along the unit vector that the contact names, with oil on the cover; of the cover are given the lane's film and the friction of a fresh one.</summary>
    public static void Grip(in Body<T> body, ref TSurface surface, ref SlideContact<T> c, ref CoverContact<T> cover, in State<T> y)
    {
        T zero = 0.0;
        var film = y.CoverFilm;
        Refresh(body, ref surface, ref c, film, zero, ref cover);
    }

    /// <summary>
    /// How the slip comes to its end, from what was last seen: whether it creeps below pivoting's own scale or has come to next to nothing (flags), and the longest step, s, that is safe. The direction of s relaxes
    /// at the rate stiffness/s, and explicit steps are stable while they cover less than about three of its time constants; with the friction that is there, since pivoting leaves less of it the smaller s is.
    /// </summary>
    public readonly void Fading(in Control<T> control, out Fade<T> fade)
    {
        T one = 1.0, zero = 0.0, infinite = double.PositiveInfinity, s = Seen.Slip, fall = Seen.Fall;
        // Pivoting turns the grip into a drag below its own scale of slip, and s = 0 is never reached; where that scale is next to nothing, creeping below it is rolling.
        var creep = T.Abs(Body.PivotRadius * Seen.ω.Z) * (8 / (3 * Math.PI));
        fade.Creeps = T.IfLess(s, T.Min(creep, CreepSlip), one, zero);
        // Where slip fades slowly, as it does after a slip that was hardly one, the present rate says little about the rest: go on until little is left.
        var little = T.Min(control.StickSlip, control.StickSlip * DriftSeconds * fall);
        fade.Ends = T.IfLess(zero, fall, T.IfLess(little, s, zero, one), zero);
        fade.Ends = T.IfLess(s, NoSlip, one, fade.Ends);
        // Slip acceleration per unit of tangential force, for a ball with all its inertia in the smallest moment.
        var compliance = Body.InverseMass + Body.Radius * Body.Radius * T.Max(Body.InverseMoments.X, T.Max(Body.InverseMoments.Y, Body.InverseMoments.Z));
        var stopping = s / (Seen.Pull * compliance);
        fade.Stable = Pace<T>.Coarse(2.8 * stopping);
        // The error of a step to close before the end grows with the slip and about the tenth power of the part of the time that is left.
        var part = 0.9 * T.Min(one, T.Sqrt(T.Sqrt(T.Sqrt(control.SureSlip / s))));
        // Slip that swings with the ball may fall twice as fast a moment later: while there is much of it, not further than the friction alone could bring it close to its end.
        var most = T.IfLess(MuchSlip, s, 0.9 * stopping, infinite);
        fade.Cap = T.IfLess(zero, fall, T.Min(s * part / fall, most), infinite);
    }

    /// <summary>How long, s, slip that comes to its end still takes, at the rate last seen.</summary>
    public readonly T Rest(in Control<T> control) => T.Min(Seen.Slip / T.Abs(Seen.Fall), control.StickSlip * DriftSeconds);

    // Not inlined: a lane of given friction has no use for it.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private static void Refresh(in Body<T> body, ref TSurface surface, ref SlideContact<T> c, T coverFilm, T slip, ref CoverContact<T> cover)
    {
        T one = 1.0;
        cover.Fresh = 0.0;
        if (body.HasFreshCover)
        {
            c.Press(body, cover.Friction);
            cover.Shift = c.Shift(body);
            cover.Fresh = FreshCover<T>.Fraction(cover.Shift);
            if (body.HasDips)
            {
                var part = T.Min(slip * (1 / FreshSlip), one);
                part = T.Fnma(part, part, one);
                cover.Fresh = T.Fma(part * part * part, cover.Fresh - one, one);
            }
        }
        cover.Friction = surface.Friction(T.Fma(one - cover.Fresh, coverFilm, cover.Film), slip, out cover.InContact);
    }

    /// <summary>Flag: the slip is so small that a step from here may come below where the cover counts as fresh.</summary>
    public readonly T IsLate()
    {
        T one = 1.0, zero = 0.0;
        return Body.HasDips ? T.IfLess(Seen.Slip, 2 * FreshSlip, one, zero) : zero;
    }

    // Whether the stages of a step take the cover for fresh, and leave the rest to Dips: for all lanes, or the long way is gone, at the end of which those are as fresh.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static bool IsFresh(in Body<T> body, T slip)
    {
        T one = 1.0, zero = 0.0;
        return body.HasDips && !T.Any(T.IfLess(slip, FreshSlip, one, zero));
    }
}
