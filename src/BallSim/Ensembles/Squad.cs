using BallSim.Friction;
using BallSim.Lanes;
using BallSim.Motion;
using BallSim.Shots;
using BallSim.Spatial;

namespace BallSim.Ensembles;

/// <summary>What one thread computes side by side on one map after the other: chunk after chunk, so that the lanes are full. Of a chunk some shots are left over to go on with those of the next.</summary>
internal abstract class Squad<TUnder> : IDisposable
{
    /// <summary>Computes rows of a chunk on one lane; shots may be left over.</summary>
    public abstract void Take(PiecewiseBicubic on, Lane lane, Rows.Work work, IReadOnlyList<int> group, TUnder under);

    /// <summary>Computes what is left over.</summary>
    public abstract void Drain();

    public abstract void Dispose();
}

/// <summary>The same for a number type. Shots that its numbers do not tell (<see cref="Doubt"/>) go to another squad, if there is one.</summary>
internal sealed class Squad<T, TSurface, TOne, TUnder>(SimulatorOptions options, Func<PiecewiseBicubic, Body<Real>, Pack<T, TSurface, TOne>> packOn, Squad<TUnder>? inDoubt) : Squad<TUnder>
    where T : struct, ILanes<T>, IReal<T>
    where TSurface : struct, ISurfaceOfLanes<T, TOne>
    where TOne : struct, ISurface<Real>
    where TUnder : struct, IUnder<TOne>
{
    // A chunk, and what may be left over: fewer shots than there are lanes, sixteen at most, for each of the six things that shots wait for.
    private const int Places = ProcessorEngine.Chunk + 6 * 16;

    // Which row of which chunk, on which lane, a place holds; none where it is free.
    private readonly (Rows.Work? Work, int Row, Lane? Lane)[] rows = new (Rows.Work?, int, Lane?)[Places];
    private readonly Stack<int> free = new(Enumerable.Range(0, Places).Reverse());
    private readonly List<int> certain = [], doubtful = [];
    private Runs<TOne>? runs;
    private Pack<T, TSurface, TOne>? pack;
    private PiecewiseBicubic? map;
    private TUnder under;

    public override void Take(PiecewiseBicubic on, Lane lane, Rows.Work work, IReadOnlyList<int> group, TUnder under)
    {
        runs ??= new(Places);
        if (!ReferenceEquals(map, on))
        {
            Drain();
            pack?.Dispose();
            (pack, map, this.under) = (null, on, under);
        }
        if (inDoubt is not null)
        {
            certain.Clear();
            doubtful.Clear();
            foreach (var row in group)
            {
                (Doubt.Of(work.Balls[row], lane, work.Launches[row]) ? doubtful : certain).Add(row);
            }
            if (doubtful.Count > 0)
            {
                inDoubt.Take(on, lane, work, doubtful, under);
            }
            group = certain;
        }
        foreach (var row in group)
        {
            var place = free.Pop();
            rows[place] = (work, row, lane);
            runs.Begin(place, work, row, lane, options, under);
            pack ??= packOn(on, runs[place].slide.Body);
            pack.Take(runs.All, place);
        }
        pack?.GoOn(false);
        Collect();
    }

    public override void Drain()
    {
        pack?.GoOn(true);
        Collect();
        inDoubt?.Drain();
    }

    public override void Dispose()
    {
        pack?.Dispose();
        inDoubt?.Dispose();
    }

    private void Collect()
    {
        for (var place = 0; place < Places; place++)
        {
            var (work, row, lane) = rows[place];
            if (work is not null && runs![place].Ended != Ending.None)
            {
                var outcome = runs.Outcome(place, work, row, lane!);
                rows[place] = default;
                free.Push(place);
                if (inDoubt is not null && Doubt.Of(outcome))
                {
                    inDoubt.Take(map!, lane!, work, [row], under);
                }
                else
                {
                    work.Keep(row, outcome);
                }
            }
        }
    }
}
