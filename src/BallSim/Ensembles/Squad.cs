using BallSim.Friction;
using BallSim.Lanes;
using BallSim.Motion;
using BallSim.Shots;
using BallSim.Spatial;

namespace BallSim.Ensembles;

/// <summary>What one thread computes side by side on one map after the other: chunk after chunk, so that the lanes are full. Of a chunk some shots are left over to go on with those of the next.</summary>
internal sealed class Squad<T, TSurface, TOne>(Func<PiecewiseBicubic, Body<Real>, Pack<T, TSurface, TOne>> packOn) : IDisposable
    where T : struct, ILanes<T>, IReal<T>
    where TSurface : struct, ISurfaceOfLanes<T, TOne>
    where TOne : struct, ISurface<Real>
{
    // A chunk, and what may be left over: fewer shots than there are lanes, sixteen at most, for each of the six things that shots wait for.
    private const int Places = ProcessorEngine.Chunk + 6 * 16;

    // Which row of which chunk, on which lane, a place holds; none where it is free.
    private readonly (Rows.Work? Work, int Row, Lane? Lane)[] rows = new (Rows.Work?, int, Lane?)[Places];
    private readonly Stack<int> free = new(Enumerable.Range(0, Places).Reverse());
    private Runs<TOne>? runs;
    private Pack<T, TSurface, TOne>? pack;
    private PiecewiseBicubic? map;

    /// <summary>Computes rows of a chunk on one lane; shots may be left over.</summary>
    public void Take<TUnder>(PiecewiseBicubic on, Lane lane, Rows.Work work, List<int> group, SimulatorOptions options, TUnder under)
        where TUnder : struct, IUnder<TOne>
    {
        runs ??= new(Places);
        if (!ReferenceEquals(map, on))
        {
            Drain();
            pack?.Dispose();
            (pack, map) = (null, on);
        }
        foreach (var row in group)
        {
            var place = free.Pop();
            rows[place] = (work, row, lane);
            runs.Begin(place, work, row, lane, options, under);
            pack ??= packOn(on, runs[place].slide.Body);
            pack.Take(runs.All, place);
        }
        pack!.GoOn(false);
        Collect();
    }

    /// <summary>Computes what is left over.</summary>
    public void Drain()
    {
        pack?.GoOn(true);
        Collect();
    }

    public void Dispose() => pack?.Dispose();

    private void Collect()
    {
        for (var place = 0; place < Places; place++)
        {
            var (work, row, lane) = rows[place];
            if (work is not null && runs![place].Ended != Ending.None)
            {
                work.Keep(row, runs.Outcome(place, work, row, lane!));
                rows[place] = default;
                free.Push(place);
            }
        }
    }
}
