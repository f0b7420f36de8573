using BallSim.Balls;
using BallSim.Friction;
using BallSim.Lanes;
using BallSim.Motion;
using BallSim.Releases;
using BallSim.Shots;
using BallSim.Spatial;

namespace BallSim.Ensembles;

/// <summary>What one thread computes chunks of shots with, one shot after the other. What follows from a ball and a lane is worked out once for shots in a row that share them.</summary>
internal class Crew(SimulatorOptions options) : IDisposable
{
    private readonly List<int> group = new(ProcessorEngine.Chunk);
    private readonly bool[] taken = new bool[ProcessorEngine.Chunk];

    /// <summary>Computes a chunk; shots that wait for company may be left over, see <see cref="Drain"/>.</summary>
    public void Take(Rows.Work work)
    {
        var count = work.Left = work.Count;
        // Shots on one lane go together: they read one map.
        Array.Clear(taken);
        for (var first = 0; first < count; first++)
        {
            if (taken[first])
            {
                continue;
            }
            var lane = work.Lanes[first];
            group.Clear();
            for (var i = first; i < count; i++)
            {
                if (ReferenceEquals(work.Lanes[i], lane))
                {
                    taken[i] = true;
                    group.Add(i);
                }
            }
            OnLane(lane, work);
        }
    }

    /// <summary>Computes what is left over of all chunks that were taken.</summary>
    public virtual void Drain()
    {
    }

    /// <summary>The crew is done.</summary>
    public virtual void Dispose() => GC.SuppressFinalize(this);

    private void OnLane(Lane lane, Rows.Work work)
    {
        switch (lane.GivenFriction, lane.Topography.Heights)
        {
            case ({ } friction, null):
                OnGiven(friction.Map, lane, work);
                break;
            case (null, null):
                OnFilm(lane.Oil.Map, lane, work);
                break;
            case ({ } friction, { } heights):
                OneByOne(lane, work, new SlopedGiven(friction.Map, heights));
                break;
            case (null, { } heights):
                OneByOne(lane, work, new SlopedFilm(lane.Oil.Map, heights));
                break;
        }
    }

    protected virtual void OnGiven(PiecewiseBicubic map, Lane lane, Rows.Work work) => OneByOne(lane, work, new Given(map));

    protected virtual void OnFilm(PiecewiseBicubic map, Lane lane, Rows.Work work) => OneByOne(lane, work, new Film(map));

    private void OneByOne<TOne, TUnder>(Lane lane, Rows.Work work, TUnder under)
        where TOne : struct, ISurface<Real>
        where TUnder : struct, IUnder<TOne>
    {
        var runs = new Runs<TOne>(1);
        foreach (var i in group)
        {
            runs.Begin(0, work, i, lane, options, under);
            ref var run = ref runs[0];
            while (run.Ended == Ending.None)
            {
                run.Ended = run.Continue();
            }
            work.Keep(i, runs.Outcome(0, work, i, lane));
        }
    }

    private void OneByOne(Lane lane, Rows.Work work, Given under) => OneByOne<GivenSurface<Real, MapOfReal>, Given>(lane, work, under);

    private void OneByOne(Lane lane, Rows.Work work, Film under) => OneByOne<FilmSurface<Real, MapOfReal>, Film>(lane, work, under);

    private void OneByOne(Lane lane, Rows.Work work, SlopedGiven under) => OneByOne<SlopedSurface<Real, GivenSurface<Real, MapOfReal>, SlopesOfReal>, SlopedGiven>(lane, work, under);

    private void OneByOne(Lane lane, Rows.Work work, SlopedFilm under) => OneByOne<SlopedSurface<Real, FilmSurface<Real, MapOfReal>, SlopesOfReal>, SlopedFilm>(lane, work, under);

    /// <summary>The rows of the group at hand.</summary>
    protected List<int> Group => group;
}

/// <summary>The same with shots side by side, in lanes of numbers of either kind; what lies between plain steps in lanes of doubles, and so are shots that floats do not tell.</summary>
internal sealed class Crew<T, TFine>(SimulatorOptions options) : Crew(options)
    where T : struct, ILanes<T>, IReal<T>
    where TFine : struct, ILanes<TFine>, IReal<TFine>
{
    private readonly Squad<Given> given = new Squad<T, GivenOfLanes<T>, GivenSurface<Real, MapOfReal>, Given>(options,
        (map, body) => new(new(map), body, options.MaxSteps, IsFine ? null : FineOnGiven(map, body, options)),
        IsFine ? null : new Squad<TFine, GivenOfLanes<TFine>, GivenSurface<Real, MapOfReal>, Given>(options, (map, body) => FineOnGiven(map, body, options), null));

    private readonly Squad<Film> film = new Squad<T, FilmOfLanes<T>, FilmSurface<Real, MapOfReal>, Film>(options,
        (map, body) => new(new(map), body, options.MaxSteps, IsFine ? null : FineOnFilm(map, body, options)),
        IsFine ? null : new Squad<TFine, FilmOfLanes<TFine>, FilmSurface<Real, MapOfReal>, Film>(options, (map, body) => FineOnFilm(map, body, options), null));

    private static bool IsFine => typeof(T) == typeof(TFine);

    public override void Drain()
    {
        given.Drain();
        film.Drain();
    }

    public override void Dispose()
    {
        given.Dispose();
        film.Dispose();
        base.Dispose();
    }

    protected override void OnGiven(PiecewiseBicubic map, Lane lane, Rows.Work work) => given.Take(map, lane, work, Group, new(map));

    protected override void OnFilm(PiecewiseBicubic map, Lane lane, Rows.Work work) => film.Take(map, lane, work, Group, new(map));

    private static Pack<TFine, GivenOfLanes<TFine>, GivenSurface<Real, MapOfReal>> FineOnGiven(PiecewiseBicubic map, in Body<Real> body, SimulatorOptions options) => new(new(map), body, options.MaxSteps);

    private static Pack<TFine, FilmOfLanes<TFine>, FilmSurface<Real, MapOfReal>> FineOnFilm(PiecewiseBicubic map, in Body<Real> body, SimulatorOptions options) => new(new(map), body, options.MaxSteps);
}
