using System.Numerics;
using BallSim.Integration;
using BallSim.Spatial;

namespace BallSim.Motion;

// From rolling to sliding, in lanes of doubles.
internal sealed partial class Pack<T, TSurface, TOne>
{
    // For each lane: whether the demand passes the limit, and where.
    private readonly Passage[] passages = new Passage[T.Count];
    private readonly Search[] searches = new Search[T.Count];

    // The step of rolling in which a lane has seen that the demand may pass the limit of grip, and, if it does, the start of slip there: Run.Rolled, Excess, Run.Slip.
    private void SlipAgain()
    {
        T one = 1.0;
        TakeRoll(out var h, out var atEnd, out var norm, out var next, out var rejected, out var after);
        var slips = active & ~T.Mask(T.Max(rejected, TooMany(next)));
        Seek(h, after, ref slips, out var rolls);
        for (var lanes = rolls; lanes != 0; lanes &= lanes - 1)
        {
            var lane = BitOperations.TrailingZeroCount(lanes);
            HandOver(lane, h, atEnd, norm, next, after);
        }
        if (slips != 0)
        {
            LandAtLimit(ref h, ref after, ref slips);
            (lastNorm, dt, steps) = (norm, next, steps + one);
            BeginSlip(h, after, ref slips);
            for (var lanes = slips; lanes != 0; lanes &= lanes - 1)
            {
                var lane = BitOperations.TrailingZeroCount(lanes);
                ref var run = ref runs[shotOf[lane]];
                if (run.MayChange)
                {
                    run.Slips();
                    Store(lane, ref run);
                }
                else
                {
                    slips &= ~(1u << lane);
                }
            }
        }
        for (var lanes = active; lanes != 0; lanes &= lanes - 1)
        {
            var lane = BitOperations.TrailingZeroCount(lanes);
            if (((slips | rolls) & (1u << lane)) == 0)
            {
                TakeAlone(ref runs[shotOf[lane]]);
            }
            Queue(shotOf[lane]);
            Fill(lane);
        }
    }

    // Where the demand passes the limit in a step, as Excess.First and Excess.Land look for it: the lanes in which it does, and those in which it does not.
    private void Seek(T h, in Grip<T> after, ref uint slips, out uint rolls)
    {
        var asked = slips & T.Mask(roll.MaySlip(grip, after));
        for (var lanes = asked; lanes != 0; lanes &= lanes - 1)
        {
            var lane = BitOperations.TrailingZeroCount(lanes);
            var swing = new Swing<Real> { Third = T.Lane(roll.Swing.Third, lane), Fourth = T.Lane(roll.Swing.Fourth, lane), Fifth = T.Lane(roll.Swing.Fifth, lane) };
            passages[lane] = new(T.Lane(grip.Excess, lane), swing, T.Lane(after.Excess, lane), T.Lane(after.Limit, lane));
            StartSearch(lane);
        }
        T place = 0.5, there = 0.0;
        var looking = asked;
        while (true)
        {
            for (var lanes = looking; lanes != 0; lanes &= lanes - 1)
            {
                var lane = BitOperations.TrailingZeroCount(lanes);
                if (passages[lane].IsOver && searches[lane].IsOver)
                {
                    looking &= ~(1u << lane);
                    continue;
                }
                T.SetLane(ref place, lane, passages[lane].IsOver ? searches[lane].Place : passages[lane].Place);
            }
            if (looking == 0)
            {
                break;
            }
            there = Look(h, place);
            for (var lanes = looking; lanes != 0; lanes &= lanes - 1)
            {
                var lane = BitOperations.TrailingZeroCount(lanes);
                if (passages[lane].IsOver)
                {
                    searches[lane].Tell(T.Lane(there, lane));
                    continue;
                }
                passages[lane].Tell(T.Lane(there, lane));
                StartSearch(lane);
            }
        }
        rolls = slips;
        for (var lanes = asked; lanes != 0; lanes &= lanes - 1)
        {
            var lane = BitOperations.TrailingZeroCount(lanes);
            rolls &= passages[lane].Between.Exists ? ~(1u << lane) : uint.MaxValue;
        }
        slips &= ~rolls;
    }

    private void StartSearch(int lane)
    {
        searches[lane] = new(passages[lane].Between, T.Lane(control.Guess, lane));
    }

    // The excess at a part of the step.
    private T Look(T h, T place)
    {
        Inside<T>.At(step, h, place, out var there);
        roll.Look(there, out var g);
        return g.Excess;
    }

    // Excess.Land. A lane that has come to the limit takes the same step again as long as others must try, and comes to the same.
    private void LandAtLimit(ref T h, ref Grip<T> after, ref uint slips)
    {
        T zero = 0.0, one = 1.0;
        for (var lanes = slips; lanes != 0; lanes &= lanes - 1)
        {
            var lane = BitOperations.TrailingZeroCount(lanes);
            T.SetLane(ref h, lane, T.Lane(h, lane) * searches[lane].Place);
        }
        for (var tries = 1; ; tries++)
        {
            roll.Take(ref step, h, out _);
            roll.Arrive(ref step, h, grip, out after);
            var back = 1e-3 * h;
            var slope = (after.Excess - Look(h, one - back / h)) / back;
            var rest = T.IfLess(zero, slope, -(after.Excess / slope), zero);
            slips &= T.Mask(T.IfLess(Excess<Real, TOne>.MostRest * T.Abs(h), T.Abs(rest), zero, one));
            var near = T.IfLess(T.Abs(rest), Excess<Real, TOne>.Rest, one, zero);
            if ((slips & ~T.Mask(near)) == 0 || tries == Excess<Real, TOne>.MostTries)
            {
                slips &= T.Mask(near);
                step.End.Add(rest, step.K7);
                h = h + rest;
                step.Interpolant = Interpolant.Mended;
                roll.GripAt(step.End, out after);
                return;
            }
            h = T.IfLess(zero, near, h, h + rest);
        }
    }

    // Run.Slip, at the end of such a step; lanes that meet something else are left out.
    private void BeginSlip(T h, in Grip<T> after, ref uint slips)
    {
        T zero = 0.0, one = 1.0;
        var stops = T.Max(Pace<T>.Lost(step), T.Max(Pace<T>.MayEnd(step, bounds), T.IfLess(zero, after.N, zero, one)));
        tally.Took(step, h, one);
        Turn();
        tally.Changed(Phase.Roll, Phase.Slide, step.End, q);
        var time = StartOfSlip<T, TSurface>.Seconds(control, false);
        grip = after;
        StartOfSlip<T, TSurface>.RollPast(ref roll, ref step, step.End, q, time, ref grip);
        stops = T.Max(stops, T.Max(Pace<T>.Lost(step), Pace<T>.MayEnd(step, bounds)));
        tally.Took(step, time, one);
        Turn();
        step.Start = step.End;
        StartOfSlip<T, TSurface>.Push(ref roll, ref slide, ref step.Start, q, time, false);
        dt = T.Min(dt, time);
        slips &= ~T.Mask(stops);
        roll.ByDistance = true;
    }

    // To the end of a step.
    private void Turn()
    {
        T zero = 0.0;
        q = q.Turned(step.End.Turn).Normalised();
        step.End.Turn = new(zero, zero, zero);
    }
}
