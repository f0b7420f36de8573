using System.Diagnostics.CodeAnalysis;
using System.Runtime.CompilerServices;
using BallSim.Friction;
using BallSim.Integration;
using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>
/// Drives one shot through its phases: loft, then sliding and rolling as often as physics wants. Steps go by distance down-lane and end on the rows of the lane's map;
/// where the ball barely moves down-lane they go by time. Events (limit of grip, gutter, head pin) are found on the dense output and then stepped to.
/// <para>Sliding to rolling: towards s = 0 steps are capped by the time that is left; below <see cref="Control{T}.StickSlip"/> the rest is drifted over in one go
/// and what slip remains is taken by an impulse at the contact, which leaves the momentum about the contact point alone.</para>
/// <para>Slipping again: <see cref="StartOfSlip{T,TSurface}"/>.</para>
/// </summary>
internal partial struct Run<T, TSurface, TRecorder>
    where T : struct, IScalar<T>, IReal<T>
    where TSurface : struct, ISurface<T>
    where TRecorder : struct, IRecorder<T>
{
    // Open to the driver of many shots, which takes plain steps for this one.
    internal Slide<T, TSurface> slide;
    internal Roll<T, TSurface> roll;
    internal readonly Bounds<T> bounds;
    internal readonly Control<T> control;
    internal TRecorder recorder;

    internal Quat<T> q;
    internal T dt;
    internal T lastNorm;

    // Where the row of the map that the steps read ends.
    internal T rowEnd;

    // Slip has just begun, and its direction relaxes faster than an explicit step could follow: the linearly implicit method takes the steps.
    private bool stiff;
    internal Grip<T> grip;

    // The grip at the start of the step under way.
    private Grip<T> held;
    internal Step<State<T>> step;

    // The state is where the next step starts: it need not be brought there.
    [UnscopedRef]
    internal ref State<T> y => ref step.Start;

    public Run(in Body<T> body, TSurface surface, in Bounds<T> bounds, double tolerance, TRecorder recorder)
        : this(body.At(tolerance), surface, bounds, new Control<T>(tolerance, body.At(tolerance)), recorder)
    {
    }

    /// <param name="body">As the equations see it, <see cref="Body{T}.At"/>.</param>
    /// <param name="surface">Under the ball.</param>
    /// <param name="bounds">Where the run ends.</param>
    /// <param name="control">For that body and a tolerance.</param>
    /// <param name="recorder">Looks on.</param>
    public Run(in Body<T> body, TSurface surface, in Bounds<T> bounds, in Control<T> control, TRecorder recorder)
    {
        slide.Body = roll.Body = body;
        slide.Surface = roll.Surface = surface;
        this.bounds = bounds;
        this.recorder = recorder;
        this.control = control;
        lastNorm = 1.0;
    }

    public int Steps { get; internal set; }
    public int Rejected { get; private set; }

    /// <summary>Changes between sliding and rolling so far.</summary>
    public int Transitions { get; private set; }

    public Phase Phase { get; private set; }

    /// <summary>How the run ended, as the driver of many shots keeps it.</summary>
    public Ending Ended { get; internal set; }

    /// <summary>The last good state, in the layout of <see cref="Phase"/>, and the orientation it is relative to.</summary>
    public readonly State<T> Last => step.Start;

    public readonly Quat<T> Orientation => q;

    /// <summary>Runs from Bo at (x, y) with velocity (vx, vy), orientation and angular velocity (lane frame) to the end.</summary>
    public Ending Go(T x, T y0, T vx, T vy, Quat<T> orientation, Vec3<T> ω, double loft)
    {
        var ending = Begin(x, y0, vx, vy, orientation, ω, loft);
        while (ending == Ending.None)
        {
            ending = Phase == Phase.Slide ? SlideOn() : RollOn();
        }
        return ending;
    }

    /// <summary>The start of <see cref="Go"/>: up to the first step on the lane.</summary>
    public Ending Begin(T x, T y0, T vx, T vy, Quat<T> orientation, Vec3<T> ω, double loft)
    {
        FoulLine<T>.Leave(slide.Body, x, y0, vx, vy, orientation, ω, out y, out q);
        dt = control.FirstStep;
        if (loft > 0)
        {
            var landed = Fly(loft);
            if (landed != Ending.None)
            {
                return landed;
            }
        }
        FoulLine<T>.Land(slide.Body, q, ref y);
        if (loft > 0)
        {
            recorder.Changed(Phase.Loft, Phase.Slide, y, q);
        }

        Phase = Phase.Slide;
        slide.Start = q;
        slide.Surface.Roam();
        dt = control.FirstStep;
        Unsafe.SkipInit(out SlideContact<T> c);
        c.At(slide.Body, q, y);
        if (c.s <= Slide<T, TSurface>.NoSlip)
        {
            return Stick();
        }
        EnterSlide(c.vx, c.vy, y.Y);
        return Ending.None;
    }

    /// <summary>Goes on until a plain step can be taken (by distance, nothing near), one step at least.</summary>
    public Ending Continue()
    {
        Ending ending;
        do
        {
            ending = Phase == Phase.Slide ? SlideOn() : RollOn();
        }
        while (ending == Ending.None && !IsPlain);
        return ending;
    }

    /// <summary>Starts to slip where rolling has come to the limit of grip.</summary>
    public Ending SlipAtLimit() => Slip(jump: false);

    /// <summary>Starts to slip where a new row of the map offers less grip than rolling asks.</summary>
    public Ending SlipAtRow() => Slip(jump: true);

    /// <summary>Slips on where slip has come to its end and the contact cannot hold the ball rolling.</summary>
    public Ending SlipOn() => Slip(jump: true, rolled: false);

    /// <summary>Goes on with explicit steps: the slip that has just begun, and was seen last, has become so much that they follow its direction.</summary>
    public void Ease()
    {
        stiff = false;
        EnterSlide(slide.VelocityX, slide.VelocityY, y.Y);
    }

    /// <summary>Whether the next step goes by distance with the explicit method.</summary>
    public readonly bool IsPlain => Phase == Phase.Slide ? !stiff && slide.ByDistance : roll.ByDistance;

    /// <summary>Whether slip has just begun, so that the next step is one of the linearly implicit method, in time.</summary>
    public readonly bool IsStiff => Phase == Phase.Slide && stiff;

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
            ode.Rates(y, out step.K1);
            var h = T.Min(Pace<T>.CapTurn(dt, ode.ω), left);
            // No sliver of a step is left over.
            h = T.IfLess(left - h, 1e-9, left, h);
            RungeKutta5<Loft<T>, State<T>, T>.Take(ref ode, ref step, h, out var error);
            if (!Accept(error, h, out var ending))
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

    // The slopes at the start of a stretch, or of a row, of sliding.
    private void EnterSlide(T vx, T vy, T from)
    {
        slide.Start = q;
        slide.ByDistance = GoesByDistance(vx, vy);
        Enter(ref slide.Surface, slide.ByDistance, from);
        slide.Rates(y, out step.K1);
    }

    // The same for rolling. A new row may bring another friction: is there still grip? False if not.
    private bool EnterRoll(T vx, T vy, T from)
    {
        roll.Start = q;
        roll.ByDistance = GoesByDistance(vx, vy);
        Enter(ref roll.Surface, roll.ByDistance, from);
        roll.GripAt(y, out grip);
        if (grip.Excess > 0.0)
        {
            return false;
        }
        roll.Rates(y, out step.K1);
        return true;
    }

    // Whether new slopes are due after a step, and from where on. Not where a row ends and the next goes on alike: the last slopes hold there.
    private bool Enters(ref TSurface surface, T atEnd, bool otherwise, out T from)
    {
        from = atEnd > 0.0 ? Pace<T>.EntersAt(y.Y, rowEnd) : y.Y;
        if (otherwise || !(atEnd > 0.0) || !surface.Joins)
        {
            return otherwise || atEnd > 0.0;
        }
        rowEnd = surface.Enter(from);
        return false;
    }

    private void Enter(ref TSurface surface, bool byDistance, T from)
    {
        if (byDistance)
        {
            rowEnd = surface.Enter(from);
            return;
        }
        surface.Roam();
    }

    private T Plan(bool byDistance, Vec3<T> ω, T vy, T maxTurn, out T atEnd)
    {
        var capped = Pace<T>.CapTurn(dt, ω, maxTurn);
        if (byDistance)
        {
            return Pace<T>.ByDistance(capped, vy, Pace<T>.NextLine(y.X, y.Y, step.K1.X, rowEnd, bounds) - y.Y, out atEnd);
        }
        atEnd = 0.0;
        return capped;
    }

    // One step of sliding that holds, and with it the change to rolling or the end of the run. The first slopes, and what was last seen of the contact, belong to the state.
    private Ending SlideOn()
    {
        while (true)
        {
            slide.Start = q;
            T h, atEnd = 0.0;
            var (vy, seen) = (slide.VelocityY, slide.Seen);
            if (stiff)
            {
                slide.ByDistance = false;
                slide.Surface.Roam();
                slide.Rates(y, out step.K1);
                if (EndsSliding(out var cap, out var ended))
                {
                    return ended;
                }
                if (!stiff)
                {
                    Ease();
                    continue;
                }
                slide.Linearise(y);
                h = T.Min(Pace<T>.CapTurn(dt, slide.ω), cap);
            }
            else
            {
                h = Plan(slide.ByDistance, slide.ω, vy, slide.MaxTurn(control), out atEnd);
                if (Pace<T>.MayStick(slide.Slip, Seconds(h, slide.ByDistance, vy)) > 0.0)
                {
                    if (EndsSliding(out var cap, out var ended))
                    {
                        return ended;
                    }
                    if (slide.ByDistance)
                    {
                        cap = cap * vy;
                    }
                    if (cap < h)
                    {
                        (h, atEnd) = (cap, 0.0);
                    }
                }
            }

            TakeSlide(h, out var error);
            if (!Accept(error, Seconds(h, slide.ByDistance, vy), out var limit))
            {
                if (limit != Ending.None)
                {
                    return limit;
                }
                slide.Seen = seen;
                if (slide.Body.HasDips)
                {
                    slide.Dip = slide.Dips.Start;
                }
                continue;
            }
            var end = Complete(ref slide, h, slide.N > 0.0);
            NextSlopes(slide.ω);
            Advance();
            if (end != Ending.None || limit != Ending.None)
            {
                return end != Ending.None ? end : limit;
            }
            if (!stiff && Enters(ref slide.Surface, atEnd, slide.ByDistance != GoesByDistance(slide.VelocityX, slide.VelocityY), out var from))
            {
                EnterSlide(slide.VelocityX, slide.VelocityY, from);
            }
            return Ending.None;
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
            slide.Take(ref step, h, out error);
        }
    }

    // How long is left until s = 0 at the present rate? Drifts over the rest and ends the stretch if that is next to nothing, else caps the step.
    private bool EndsSliding(out T cap, out Ending ending)
    {
        slide.Fading(control, out var fade);
        cap = fade.Cap;
        ending = Ending.None;
        if (fade.Creeps > 0.0)
        {
            ending = Stick();
            return true;
        }
        if (fade.Ends > 0.0)
        {
            var left = slide.Rest(control);
            // Not over an end of the run: a step can stop there.
            if (slide.Slip <= Slide<T, TSurface>.NoSlip || !(Pace<T>.MayEnd(slide.Seen, left, y, bounds) > 0.0))
            {
                Drift(left);
                ending = Stick();
                return true;
            }
        }
        stiff = stiff && fade.Stable < dt * 0.5;
        if (!stiff)
        {
            cap = T.Min(cap, fade.Stable);
        }
        return false;
    }

    // One step of rolling that holds, and with it the change to sliding or the end of the run.
    private Ending RollOn()
    {
        while (true)
        {
            roll.Start = q;
            var h = Plan(roll.ByDistance, grip.ω, grip.VelocityY, Pace<T>.MaxTurnWhileRolling, out var atEnd);
            roll.Take(ref step, h, out var error);
            if (!Accept(error, Seconds(h, roll.ByDistance, grip.VelocityY), out var limit))
            {
                if (limit != Ending.None)
                {
                    return limit;
                }
                continue;
            }

            held = grip;
            roll.Arrive(ref step, h, held, out grip);
            return Rolled(h, atEnd, limit, true);
        }
    }

    /// <summary>Goes on from a step of rolling that a lane has taken and that holds: its length, whether it ends on a line, its error and the next step in time, the grip at its end; its demand does not pass the limit in it; the state and the grip are still those before it.</summary>
    internal Ending RollOver(T h, T atEnd, T norm, T next, in Grip<T> after)
    {
        roll.Start = q;
        (held, grip) = (grip, after);
        (lastNorm, dt) = (norm, next);
        return Rolled(h, atEnd, IsSpent() ? Ending.StepLimit : Ending.None, false);
    }

    // What a step of rolling that holds leads to.
    private Ending Rolled(T h, T atEnd, Ending limit, bool doubt)
    {
        Between between = default;
        var slips = doubt && Excess<T, TSurface>.First(ref roll, step, h, held, grip, out between);
        if (slips)
        {
            Excess<T, TSurface>.Land(ref roll, ref step, ref h, held, ref grip, between, control);
        }
        var end = Complete(ref roll, h, grip.N > 0.0);
        NextSlopes(roll.ω);
        Advance();
        if (end != Ending.None || limit != Ending.None)
        {
            return end != Ending.None ? end : limit;
        }
        if (slips)
        {
            return SlipAtLimit();
        }
        if (Enters(ref roll.Surface, atEnd, roll.ByDistance != GoesByDistance(grip.VelocityX, grip.VelocityY), out var from) && !EnterRoll(grip.VelocityX, grip.VelocityY, from))
        {
            return SlipAtRow();
        }
        return Ending.None;
    }

    // Ends a step that was taken where the run ends inside it, and shows it to who looks on.
    private Ending Complete<TOde>(ref TOde ode, T h, bool pressed)
        where TOde : struct, IOde<State<T>>
    {
        var lifts = LandIfLifting(ref ode, ref h, pressed);
        var end = LandIfEnding(ref ode, ref h);
        if (Lost())
        {
            return Ending.StepLimit;
        }
        recorder.Took(Phase, step, h, q);
        return end == Ending.None && lifts ? Ending.LeftLane : end;
    }

    // The last good state then stays.
    private bool Lost()
    {
        if (!Pace<T>.IsLost(step))
        {
            return false;
        }
        step.End = step.Start;
        return true;
    }

    private static T Seconds(T h, bool byDistance, T vy) => byDistance ? h / vy : h;

    private static bool GoesByDistance(T vx, T vy) => vy > 0.5 && vy > T.Abs(vx);

    private bool Accept(in State<T> error, T taken, out Ending ending)
    {
        ending = Ending.None;
        var norm = control.Norm(error, step.End);
        var next = stiff ? Control<T>.NextStiff(norm, taken, out var rejected) : Pace<T>.Next(norm, lastNorm, dt, taken, out rejected);
        dt = next;
        var accepted = !(rejected > 0.0);
        if (accepted)
        {
            lastNorm = stiff ? 1.0 : norm;
        }
        else
        {
            Rejected++;
        }
        if (IsSpent())
        {
            ending = Ending.StepLimit;
        }
        return accepted;
    }

    // Counts a step: was it the last, or is the next one none?
    private bool IsSpent() => ++Steps >= bounds.MaxSteps || !(dt > 1e-14);

    private void NextSlopes(Vec3<T> ω)
    {
        // The last slope of a step is the first of the next, but for the turn: its rate at a fresh rotation vector is ω itself.
        step.K1 = step.K7;
        step.K1.Turn = step.K7.Time * ω;
    }

    private void Advance()
    {
        y = step.End;
        q = q.Turned(y.Turn).Normalised();
        T zero = 0.0;
        y.Turn = new(zero, zero, zero);
    }
}
