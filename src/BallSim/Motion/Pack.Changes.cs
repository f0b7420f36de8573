using System.Numerics;
using BallSim.Integration;
using BallSim.Spatial;

namespace BallSim.Motion;

// What lies between plain steps, in lanes of doubles: to those of floats slip as small as it is here would be nothing but rounding. As the run of one shot does it, step by step; where a shot meets something else, its run, which still
// stands before it, takes over.
internal sealed partial class Pack<T, TSurface, TOne>
{
    /// <inheritdoc/>
    public bool Change(Run<Real, TOne, Tally<Real>>[] begun, Waiting shots, bool toTheEnd)
    {
        (runs, waiting) = (begun, shots);
        var any = Drive(waiting.Slipping, toTheEnd);
        slide.Surface.Roam();
        slide.ByDistance = false;
        any |= Drive(waiting.Stiff, toTheEnd);
        slide.ByDistance = true;
        return any | Drive(waiting.Sticking, toTheEnd);
    }

    // From sliding to rolling, Run.EndsSliding: drifts over the rest of the slip at the present rates, and rolls if the contact can hold it.
    private void Stick()
    {
        T zero = 0.0, one = 1.0;
        slide.Start = q;
        var vy = slide.VelocityY;
        var h = Plan(slide.ω, vy, slide.MaxTurn(control), out _);
        slide.Fading(control, out var fade);
        var rest = slide.Rest(control);
        var ends = Pace<T>.MayEnd(slide.Seen, rest, step.Start, bounds);
        ends = T.IfLess(Slide<T, TSurface>.NoSlip, slide.Slip, ends, zero);
        var holds = T.IfLess(zero, T.Max(fade.Creeps, ends), zero, T.IfLess(zero, Pace<T>.MayStick(slide.Slip, h / vy), fade.Ends, zero));

        slide.ByDistance = false;
        slide.Rates(step.Start, out step.K1);
        slide.ByDistance = true;
        step.K3 = step.K4 = step.K5 = step.K6 = step.K7 = step.K1;
        step.Interpolant = Interpolant.Slopes;
        step.End = step.Start;
        step.End.Add(rest, step.K1);
        tally.Took(step, rest, one);
        q = q.Turned(step.End.Turn).Normalised();
        step.End.Turn = new(zero, zero, zero);
        step.Start = step.End;
        Impulse<T>.Stick(slide.Body, q, ref step.Start, out var vx, out vy);
        roll.Start = q;
        for (var lanes = active; lanes != 0; lanes &= lanes - 1)
        {
            var lane = BitOperations.TrailingZeroCount(lanes);
            T.SetLane(ref rowEnd, lane, roll.Surface.Enter(lane, T.Lane(step.Start.Y, lane)));
        }
        roll.GripAt(step.Start, out grip);
        roll.Rates(step.Start, out step.K1);
        holds = T.IfLess(zero, T.Max(GoesByTime(vx, vy), grip.Excess), zero, holds);
        tally.Changed(Phase.Slide, Phase.Roll, step.End, q);
        dt = T.Max(dt, control.FirstStep);

        var rolls = T.Mask(holds);
        for (var lanes = active; lanes != 0; lanes &= lanes - 1)
        {
            var lane = BitOperations.TrailingZeroCount(lanes);
            var i = shotOf[lane];
            ref var run = ref runs[i];
            if ((rolls & (1u << lane)) != 0)
            {
                run.Rolls();
                Store(lane, ref run);
            }
            else
            {
                TakeAlone(ref run);
            }
            Queue(i);
            Fill(lane);
        }
    }

    // The run goes on by itself from where it stands, over what is too short for the lanes.
    private void TakeAlone(ref Run<Real, TOne, Tally<Real>> run)
    {
        var (phase, from) = (run.Phase, (double)run.y.Y);
        do
        {
            run.Ended = run.Continue();
        }
        while (run.Ended == Ending.None && run.Phase == phase && run.y.Y - from < waiting.Shortest);
    }

    // As Run.SlideOn does it.
    private void StepStiff()
    {
        T zero = 0.0, one = 1.0;
        slide.Start = q;
        slide.Rates(step.Start, out step.K1);
        slide.Fading(control, out var fade);
        var ends = T.Max(fade.Creeps, fade.Ends);
        var eases = T.IfLess(zero, ends, zero, T.IfLess(fade.Stable, dt * 0.5, zero, one));
        var special = T.Max(ends, eases);
        slide.Linearise(step.Start);
        var h = T.Min(Pace<T>.CapTurn(dt, slide.ω), fade.Cap);
        RosenbrockW3<Slide<T, TSurface>, State<T>, T>.Take(ref slide, ref step, h, out var error);
        var norm = control.Norm(error, step.End);
        var next = Control<T>.NextStiff(norm, h, out var rejected);
        special = T.Max(special, T.Max(TooMany(next), T.IfLess(zero, rejected, zero, T.Max(Pace<T>.MayEnd(step, bounds), T.IfLess(zero, slide.N, zero, one)))));
        var taken = T.IfLess(zero, T.Max(special, rejected), zero, one);
        tally.Took(step, h, taken);
        Commit(taken, special, next, one, slide.Seen.ω, out _);
        for (var alone = T.Mask(special) & active; alone != 0; alone &= alone - 1)
        {
            var lane = BitOperations.TrailingZeroCount(alone);
            var i = shotOf[lane];
            Store(lane, ref runs[i]);
            if (T.Lane(eases, lane) > 0)
            {
                runs[i].Ease();
            }
            else
            {
                runs[i].Ended = runs[i].Continue();
            }
            Queue(i);
            Fill(lane);
        }
    }
}
