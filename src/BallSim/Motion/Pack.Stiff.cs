using BallSim.Integration;
using BallSim.Spatial;

namespace BallSim.Motion;

// Slip that has just begun: the steps of the linearly implicit method, in time, side by side as well.
internal sealed partial class Pack<T, TSurface, TOne>
{
    // Floats leave these steps to the runs: slip as small as it is then is nothing but rounding to them.
    private static readonly bool isFine = T.Lane(T.Sliver, 0) <= Real.Sliver;

    // Shots whose slip has just begun and that wait for a lane.
    private readonly Stack<int> stiff = new();

    private static bool TakesStiff(in Run<Real, TOne, Tally<Real>> run) => isFine && run.IsStiff;

    // Those that have begun to slip, up to where their steps are plain again.
    private void SlipOn()
    {
        Fill(stiff);
        slide.Surface.Roam();
        slide.ByDistance = false;
        while (active != 0)
        {
            StepStiff();
        }
        slide.ByDistance = true;
    }

    // As Run.SlideOn does it.
    private void StepStiff()
    {
        T zero = 0.0, one = 1.0;
        slide.Start = q;
        slide.Rates(step.Start, out step.K1);
        slide.Fading(control, out var fade);
        var special = T.Max(T.Max(fade.Creeps, fade.Ends), T.IfLess(fade.Stable, dt * 0.5, zero, one));
        slide.Linearise(step.Start);
        var h = T.Min(Pace<T>.CapTurn(dt, slide.ω), fade.Cap);
        RosenbrockW3<Slide<T, TSurface>, State<T>, T>.Take(ref slide, ref step, h, out var error);
        var norm = control.Norm(error);
        var next = Control<T>.NextStiff(norm, h, out var rejected);
        special = T.Max(special, T.Max(TooMany(next), T.IfLess(zero, rejected, zero, T.Max(Pace<T>.MayEnd(step, bounds), T.IfLess(zero, slide.N, zero, one)))));
        var taken = T.IfLess(zero, T.Max(special, rejected), zero, one);
        tally.Took(step, h, taken);
        Commit(taken, special, next, one, slide.Seen.ω, out _);
        for (var alone = T.Mask(special) & active; alone != 0; alone &= alone - 1)
        {
            var lane = System.Numerics.BitOperations.TrailingZeroCount(alone);
            var i = shotOf[lane];
            Store(lane, ref runs[i]);
            runs[i].Ended = runs[i].Continue();
            Queue(i);
            Fill(lane);
        }
    }
}
