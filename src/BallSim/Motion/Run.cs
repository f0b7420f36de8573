using BallSim.Friction;
using BallSim.Integration;
using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>
/// Drives one shot through its phases: loft, then sliding and rolling as often as physics wants. Steps go by distance down-lane and end on the rows of the lane's map;
/// where the ball barely moves down-lane they go by time. Events (limit of grip, gutter, head pin) are found on the dense output and then stepped to.
/// <para>Sliding to rolling: towards s = 0 steps are capped at 0.9 of the time that is left; below <see cref="Control{T}.StickSlip"/> the rest is drifted over in one go
/// and what slip remains is taken by an impulse at the contact, which leaves the momentum about the contact point alone.</para>
/// <para>Slipping again: s = 0 is a fixed point of the sliding equations, so the ball rolls on a short time past the limit of grip, and half (after a jump, all) of the
/// acceleration that sliding adds in that time is given to it, along the direction to which the contact's own response is parallel.</para>
/// </summary>
internal partial struct Run<T, TSurface, TRecorder>
    where T : struct, IScalar<T>, IReal<T>
    where TSurface : struct, ISurface<T>
    where TRecorder : IRecorder<T>
{
    // A step turns the ball by at most this, so that the rotation vector stays where its series hold.
    private const double MaxTurn = 2.5;

    // The last drift takes at most this many seconds for each m/s of the slip at which drifting is allowed.
    private const double DriftSeconds = 5;

    // No contact slows the slip of a ball faster than this, m/s²: below this times the step, the end of sliding may be near.
    private const double StickingDeceleration = 40;

    // With pivoting friction on, the largest slip, m/s, that may count as rolling.
    private const double CreepSlip = 1e-3;

    // Slip that is none but for rounding, m/s.
    private const double NoSlip = 1e-12;

    private Slide<T, TSurface> slide;
    private Roll<T, TSurface> roll;
    private readonly Bounds<T> bounds;
    private readonly Control<T> control;
    private readonly TRecorder recorder;

    private State<T> y;
    private Quat<T> q;
    private double dt;
    private double lastNorm;

    // Slip has just begun, and its direction relaxes faster than an explicit step could follow: the linearly implicit method takes the steps.
    private bool stiff;
    private Step<State<T>> step;

    public Run(in Body<T> body, TSurface surface, in Bounds<T> bounds, double tolerance, TRecorder recorder)
    {
        slide.Body = roll.Body = body;
        slide.Surface = roll.Surface = surface;
        roll.HasSmallMoments = body.RollingResistance > 0.0 || body.PivotRadius > 0.0;
        this.bounds = bounds;
        this.recorder = recorder;
        control = new(tolerance, body);
        lastNorm = 1;
    }

    public int Steps { get; private set; }
    public int Rejected { get; private set; }

    /// <summary>Changes between sliding and rolling so far.</summary>
    public int Transitions { get; private set; }

    public Phase Phase { get; private set; }

    /// <summary>The last good state, in the layout of <see cref="Phase"/>, and the orientation it is relative to.</summary>
    public readonly State<T> Last => y;

    public readonly Quat<T> Orientation => q;

    /// <summary>Runs from Bo at (x, y) with velocity (vx, vy), orientation and angular velocity (lane frame) to the end.</summary>
    public Ending Go(T x, T y0, T vx, T vy, Quat<T> orientation, Vec3<T> ω, double loft)
    {
        y = default;
        (y.X, y.Y) = (x, y0);
        q = orientation;
        dt = control.FirstStep;
        var R_LB = q.Matrix();
        y.Momentum = R_LB.Turned(slide.Body.I_B) * ω;
        (y.VelocityX, y.VelocityY) = (vx, vy);
        if (loft > 0)
        {
            var landed = Fly(loft);
            if (landed != Ending.None)
            {
                return landed;
            }
        }
        var ωr_d = ω.Cross(R_LB * slide.Body.d_B);
        if (loft > 0)
        {
            R_LB = q.Matrix();
            ωr_d = (R_LB.Turned(slide.Body.InverseI_B) * y.Momentum).Cross(R_LB * slide.Body.d_B);
        }
        (y.VelocityX, y.VelocityY) = (y.VelocityX + ωr_d.X, y.VelocityY + ωr_d.Y);
        if (loft > 0)
        {
            recorder.Changed(Phase.Loft, Phase.Slide, y, q);
        }

        Phase = Phase.Slide;
        slide.Start = q;
        slide.Surface.Roam();
        dt = control.FirstStep;
        var c = new SlideContact<T>(slide.Body, q, y);
        var ending = c.s <= NoSlip ? Stick() : Ending.None;
        while (ending == Ending.None)
        {
            ending = Phase == Phase.Slide ? SlideOn() : RollOn();
        }
        return ending;
    }

    private Ending Fly(double loft)
    {
        Phase = Phase.Loft;
        var ode = new Loft<T> { Body = slide.Body };
        // Loft is the distance down-lane to where the ball lands.
        var left = (T)loft / y.VelocityY;
        T tiny = 1e-15;
        while (left > tiny)
        {
            ode.Start = q;
            step.Start = y;
            ode.Rates(y, out step.K1);
            var h = T.Min(CapTurn(dt, ode.ω), left);
            Tsitouras5<Loft<T>, State<T>, T>.Take(ref ode, ref step, h, out var error);
            if (!Accept(error, (double)h, out var ending))
            {
                if (ending != Ending.None)
                {
                    return ending;
                }
                continue;
            }
            var end = LandIfEnding(ref ode, ref h);
            left = left - h;
            recorder.Took(Phase.Loft, step, h, q);
            Advance();
            if (end != Ending.None)
            {
                // A ball lofted over the edge comes down in the gutter.
                return end;
            }
            if (ending != Ending.None)
            {
                return ending;
            }
        }
        return Ending.None;
    }

    // One stretch of sliding: up to rolling, or to the end of the run.
    private Ending SlideOn()
    {
        var fresh = true;
        while (true)
        {
            slide.Start = q;
            step.Start = y;
            if (fresh)
            {
                var c = new SlideContact<T>(slide.Body, q, y);
                slide.ByDistance = GoesByDistance(c.vx, c.vy);
                ByRow(ref slide.Surface, slide.ByDistance, dt, c.vy, out _);
                slide.Rates(y, out step.K1);
            }
            var (vy, s) = (slide.VelocityY, (double)slide.Slip);
            var h = ByRow(ref slide.Surface, slide.ByDistance, CapTurn(dt, slide.ω), vy, out var atRow);
            if (s < StickingDeceleration * Seconds(h, slide.ByDistance, vy))
            {
                if (EndsSliding(s, out var cap, out var ended))
                {
                    return ended;
                }
                if (stiff)
                {
                    h = CapTurn(dt, slide.ω);
                    atRow = slide.ByDistance = false;
                    slide.Surface.Roam();
                    slide.Rates(y, out step.K1);
                }
                else if (slide.ByDistance)
                {
                    cap *= (double)vy;
                }
                if (cap < (double)h)
                {
                    (h, atRow) = (cap, false);
                }
            }

            TakeSlide(h, out var error);
            if (!Accept(error, Seconds(h, slide.ByDistance, vy), out var limit))
            {
                if (limit != Ending.None)
                {
                    return limit;
                }
                fresh = true;
                continue;
            }
            var lifts = LandIfLifting(ref slide, ref h, slide.N > 0.0);
            var end = LandIfEnding(ref slide, ref h);
            recorder.Took(Phase.Slide, step, h, q);
            NextSlopes(slide.ω);
            Advance();
            if (end != Ending.None)
            {
                return end;
            }
            if (lifts)
            {
                return Ending.LeftLane;
            }
            if (limit != Ending.None)
            {
                return limit;
            }
            fresh = atRow || stiff || slide.ByDistance != GoesByDistance(slide.VelocityX, slide.VelocityY);
        }
    }

    private void TakeSlide(T h, out State<T> error)
    {
        if (stiff)
        {
            RosenbrockW3<Slide<T, TSurface>, State<T>, T>.Take(ref slide, ref step, h, out error);
        }
        else
        {
            Tsitouras5<Slide<T, TSurface>, State<T>, T>.Take(ref slide, ref step, h, out error);
        }
    }

    // How long is left until s = 0 at the present rate? Drifts over the rest and ends the stretch if that is next to nothing, else caps the step.
    private bool EndsSliding(double s, out double cap, out Ending ending)
    {
        ending = Ending.None;
        var c = new SlideContact<T>(slide.Body, q, y);
        var (ex, ey) = (c.sx / c.s, c.sy / c.s);
        var μ = slide.Push(ref c, y, ex, ey, c.s).Friction;
        var (ax, ay) = c.SlipRate(slide.Body);
        var rate = -(double)T.Fma(ax, ex, ay * ey);
        // Pivoting turns the grip into a drag below its own scale of slip, and s = 0 is never reached; where that scale is next to nothing, creeping below it is rolling.
        var creep = Math.Abs((double)(slide.Body.PivotRadius * c.ω.Z)) * (8 / (3 * Math.PI));
        if (s < Math.Min(creep, CreepSlip))
        {
            (ending, cap) = (Stick(), 0);
            return true;
        }
        // Where slip fades slowly, as it does after a slip that was hardly one, the present rate says little about the rest: go on until little is left.
        if (rate > 0 && s <= Math.Min(control.StickSlip, DriftSeconds * control.StickSlip * rate) || s < NoSlip)
        {
            Drift(Math.Min(s / Math.Abs(rate), DriftSeconds * control.StickSlip));
            (ending, cap) = (Stick(), 0);
            return true;
        }
        // The direction of s relaxes at the rate stiffness/s; explicit steps are stable while they cover less than about three of its time constants.
        // With the friction that is there: pivoting leaves less of it the smaller s is, and the rate stays finite.
        var stiffness = (double)T.Sqrt(T.Fma(c.f.X, c.f.X, c.f.Y * c.f.Y)) * Compliance();
        var stable = 2.8 * s / stiffness;
        cap = rate > 0 ? 0.9 * s / rate : double.PositiveInfinity;
        stiff = stiff && stable < 0.5 * dt;
        if (stiff)
        {
            slide.Linearise(c, μ);
        }
        else
        {
            cap = Math.Min(cap, stable);
        }
        return false;
    }

    // One stretch of rolling: up to the limit of grip, or to the end of the run.
    private Ending RollOn()
    {
        var fresh = true;
        Grip grip = default;
        while (true)
        {
            roll.Start = q;
            step.Start = y;
            if (fresh)
            {
                // A new row may bring another friction: is there still grip?
                var c = new RollContact<T>(roll.Body, q, y);
                roll.ByDistance = GoesByDistance(c.vx, c.vy);
                ByRow(ref roll.Surface, roll.ByDistance, dt, c.vy, out _);
                grip = GripAt(y);
                if (grip.Excess > 0)
                {
                    return Slip(jump: true);
                }
                roll.Rates(y, out step.K1);
            }
            var h = ByRow(ref roll.Surface, roll.ByDistance, CapTurn(dt, grip.ω), grip.VelocityY, out var atRow);
            Tsitouras5<Roll<T, TSurface>, State<T>, T>.Take(ref roll, ref step, h, out var error);
            if (!Accept(error, Seconds(h, roll.ByDistance, grip.VelocityY), out var limit))
            {
                if (limit != Ending.None)
                {
                    return limit;
                }
                continue;
            }

            var before = grip;
            grip = GripAt(step.End);
            var slips = FirstExcess(h, before, grip, out var low, out var high);
            if (slips)
            {
                LandOnExcess(ref h, low, high);
            }
            var lifts = LandIfLifting(ref roll, ref h, grip.N > 0);
            var end = LandIfEnding(ref roll, ref h);
            recorder.Took(Phase.Roll, step, h, q);
            NextSlopes(roll.ω);
            Advance();
            if (end != Ending.None)
            {
                return end;
            }
            if (lifts)
            {
                return Ending.LeftLane;
            }
            if (limit != Ending.None)
            {
                return limit;
            }
            if (slips)
            {
                return Slip(jump: false);
            }
            fresh = atRow || roll.ByDistance != GoesByDistance(grip.VelocityX, grip.VelocityY);
        }
    }

    private static double Seconds(T h, bool byDistance, T vy) => byDistance ? (double)(h / vy) : (double)h;

    private static bool GoesByDistance(T vx, T vy) => vy > 0.5 && vy > T.Abs(vx);

    private static T CapTurn(double dt, Vec3<T> ω) => Math.Min(dt, MaxTurn / (1e-9 + Math.Sqrt((double)ω.Dot(ω))));

    // A step in the independent variable from a step in time, ended on the next row; two equal steps rather than a long one and a sliver.
    private readonly T ByRow(ref TSurface surface, bool byDistance, T dt, T vy, out bool atRow)
    {
        atRow = false;
        if (!byDistance)
        {
            surface.Roam();
            return dt;
        }
        T sliver = 1e-9;
        var row = T.Min(surface.Enter(y.Y), NextBound());
        var left = row - y.Y;
        var h = dt * vy;
        if (h > left - sliver)
        {
            atRow = true;
            return left;
        }
        T half = 0.5;
        return h > half * left ? half * left : h;
    }

    // The head pin can be touched from y = PinsAt - TouchDistance on: a step ends there, so that the last one is short.
    private readonly T NextBound()
    {
        var first = bounds.PinsAt - bounds.TouchDistance;
        T sliver = 1e-9;
        return y.Y < first - sliver ? first : bounds.PinsAt;
    }

    private bool Accept(in State<T> error, double dtTaken, out Ending ending)
    {
        ending = Ending.None;
        var norm = (double)control.Norm(error);
        var accepted = norm <= 1;
        var factor = stiff ? Control<T>.FactorOfThird(norm) : Control<T>.Factor(norm, lastNorm);
        if (accepted)
        {
            // A step that was cut short (row, cap) says nothing against the longer one planned.
            dt = factor > 1 ? Math.Max(dt, dtTaken * factor) : dtTaken * factor;
            lastNorm = stiff ? 1 : norm;
        }
        else
        {
            dt = dtTaken * Math.Min(factor, 0.8);
            Rejected++;
        }
        if (++Steps >= bounds.MaxSteps || !(dt > 1e-14))
        {
            ending = Ending.StepLimit;
        }
        return accepted;
    }

    private void NextSlopes(Vec3<T> ω)
    {
        // The last slope of a step is the first of the next, but for the turn: its rate at a fresh rotation vector is ω itself.
        step.K1 = step.K7;
        step.K1.Turn = step.K7.Time * ω;
    }

    private void Advance()
    {
        y = step.End;
        q = (Quat<T>.Exp(y.Turn) * q).Normalised();
        T zero = 0.0;
        y.Turn = new(zero, zero, zero);
    }

    // Slip acceleration per unit of tangential force, for a ball with all its inertia in the smallest moment.
    private readonly double Compliance()
    {
        var body = slide.Body;
        return (double)body.InverseMass + (double)(body.Radius * body.Radius / T.Min(body.I_B.Xx, T.Min(body.I_B.Yy, body.I_B.Zz)));
    }

    // The last bit of sliding, in one go at the present rates.
    private void Drift(double time)
    {
        slide.ByDistance = false;
        step.Start = y;
        slide.Rates(y, out step.K1);
        var h = (T)time;
        step.K2 = step.K3 = step.K4 = step.K5 = step.K6 = step.K7 = step.K1;
        step.End = y;
        step.End.Add(h, step.K1);
        recorder.Took(Phase.Slide, step, h, q);
        Advance();
    }

    // Slip has come to nothing: roll if the contact can hold it, else slide on at once.
    private Ending Stick()
    {
        var c = new SlideContact<T>(slide.Body, q, y);
        var before = y;
        // An impulse at the contact leaves the momentum about the contact point alone.
        T radius = slide.Body.Radius;
        var σ = new Vec3<T>(c.r_d.X, c.r_d.Y, c.r_d.Z + radius);
        var v_G = new Vec3<T>(y.VelocityX, y.VelocityY, c.ωr_d.Z);
        y.Momentum = y.Momentum + slide.Body.Mass * σ.Cross(v_G);
        T zero = 0.0;
        (y.VelocityX, y.VelocityY) = (zero, zero);
        roll.Start = q;
        roll.Surface.Roam();
        Phase = Phase.Roll;
        stiff = false;
        // What the impulse takes is work of friction: the difference of the kinetic energies.
        var held = new RollContact<T>(roll.Body, q, y);
        T half = 0.5;
        var lost = slide.Body.Mass * (held.v_G.Dot(held.v_G) - v_G.Dot(v_G)) + held.ω.Dot(held.I_L * held.ω) - c.ω.Dot(before.Momentum);
        y.FrictionWork = T.Fma(half, lost, y.FrictionWork);
        if (GripAt(y).Excess > 0)
        {
            return Slip(jump: true, rolled: false);
        }
        Transitions++;
        recorder.Changed(Phase.Slide, Phase.Roll, before, q);
        dt = Math.Max(dt, control.FirstStep);
        return Ending.None;
    }

    // Rolls on past the limit for a moment and gives the ball the slip that it would have by then.
    private Ending Slip(bool jump, bool rolled = true)
    {
        if (++Transitions > bounds.MaxTransitions)
        {
            return Ending.TransitionLimit;
        }
        if (rolled)
        {
            recorder.Changed(Phase.Roll, Phase.Slide, y, q);
        }
        T time = jump ? 1e-3 * control.SlipStart : control.SlipStart;
        roll.Start = q;
        roll.ByDistance = false;
        roll.Surface.Roam();
        step.Start = y;
        roll.Rates(y, out step.K1);
        Tsitouras5<Roll<T, TSurface>, State<T>, T>.Take(ref roll, ref step, time, out _);
        var end = LandIfEnding(ref roll, ref time);
        recorder.Took(Phase.Roll, step, time, q);
        Advance();
        if (end != Ending.None)
        {
            return end;
        }

        roll.Start = slide.Start = q;
        var held = roll.Contact(y, out _);
        T share = jump ? 1.0 : 0.5;
        var a_held = held.α.Cross(held.σ) + held.ω.Cross(held.ωr_d);

        // The sliding state at rest slip: same velocities, other variables.
        y.Momentum = held.I_L * held.ω;
        (y.VelocityX, y.VelocityY) = (held.v_G.X, held.v_G.Y);
        slide.Surface.Roam();
        var c = new SlideContact<T>(slide.Body, q, y);
        // At zero slip pivoting would take the whole grip: push as at a slip where it takes none.
        c.s = 1.0;
        PushAlongSlip(ref c, -held.f.X / held.Demand, -held.f.Y / held.Demand);
        var kick = share * time;
        var Δω = kick * (c.α - held.α);
        y.Momentum = y.Momentum + held.I_L * Δω;
        y.VelocityX = T.Fma(kick, c.a_G.X - a_held.X, y.VelocityX);
        y.VelocityY = T.Fma(kick, c.a_G.Y - a_held.Y, y.VelocityY);
        Phase = Phase.Slide;
        stiff = true;
        dt = Math.Min(dt, (double)time);
        return Ending.None;
    }

    // Pushes along the unit vector to which the slip acceleration that friction against it leaves is parallel: Newton on the angle, the derivative known but for small terms.
    private void PushAlongSlip(ref SlideContact<T> c, T ex, T ey)
    {
        for (var i = 0; i < 20; i++)
        {
            var μ = slide.Push(ref c, y, ex, ey, 0.0).Friction;
            var (ax, ay) = c.SlipRate(slide.Body);
            var across = (double)T.Fma(ex, ay, -(ey * ax));
            var along = Math.Max((double)T.Fma(ex, ax, ey * ay), 0);
            var turn = across / ((double)(μ * c.N) * Compliance() + along);
            (ex, ey) = (ex - turn * ey, ey + turn * ex);
            var norm = T.Sqrt(T.Fma(ex, ex, ey * ey));
            (ex, ey) = (ex / norm, ey / norm);
            if (Math.Abs(turn) < 1e-12)
            {
                break;
            }
        }
        slide.Push(ref c, y, ex, ey, 0.0);
    }
}
