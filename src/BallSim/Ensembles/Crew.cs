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

    protected SimulatorOptions Options => options;

    /// <summary>Computes the first so many rows.</summary>
    public void Finish(Rows.Work work, int count)
    {
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
            work.Outcomes[i] = runs.Outcome(0, work, i, lane);
        }
    }

    private void OneByOne(Lane lane, Rows.Work work, Given under) => OneByOne<GivenSurface<Real, MapOfReal>, Given>(lane, work, under);

    private void OneByOne(Lane lane, Rows.Work work, Film under) => OneByOne<FilmSurface<Real, MapOfReal>, Film>(lane, work, under);

    private void OneByOne(Lane lane, Rows.Work work, SlopedGiven under) => OneByOne<SlopedSurface<Real, GivenSurface<Real, MapOfReal>, SlopesOfReal>, SlopedGiven>(lane, work, under);

    private void OneByOne(Lane lane, Rows.Work work, SlopedFilm under) => OneByOne<SlopedSurface<Real, FilmSurface<Real, MapOfReal>, SlopesOfReal>, SlopedFilm>(lane, work, under);

    /// <summary>The rows of the group at hand.</summary>
    protected List<int> Group => group;
}

/// <summary>The same with shots side by side, in lanes of numbers of either kind; what lies between plain steps in lanes of doubles.</summary>
internal sealed class Crew<T, TFine>(SimulatorOptions options) : Crew(options)
    where T : struct, ILanes<T>, IReal<T>
    where TFine : struct, ILanes<TFine>, IReal<TFine>
{
    private Runs<GivenSurface<Real, MapOfReal>>? given;
    private Runs<FilmSurface<Real, MapOfReal>>? film;
    private Pack<T, GivenOfLanes<T>, GivenSurface<Real, MapOfReal>>? givenPack;
    private Pack<T, FilmOfLanes<T>, FilmSurface<Real, MapOfReal>>? filmPack;
    private PiecewiseBicubic? givenMap, filmMap;

    public override void Dispose()
    {
        givenPack?.Dispose();
        filmPack?.Dispose();
        base.Dispose();
    }

    protected override void OnGiven(PiecewiseBicubic map, Lane lane, Rows.Work work)
    {
        given ??= new(ProcessorEngine.Chunk);
        Begin(given, lane, work, new Given(map));
        if (givenPack is null || !ReferenceEquals(givenMap, map))
        {
            givenPack?.Dispose();
            ref readonly var body = ref given[0].slide.Body;
            var changes = typeof(T) == typeof(TFine) ? null : new Pack<TFine, GivenOfLanes<TFine>, GivenSurface<Real, MapOfReal>>(new(map), body, Options.MaxSteps);
            (givenPack, givenMap) = (new Pack<T, GivenOfLanes<T>, GivenSurface<Real, MapOfReal>>(new(map), body, Options.MaxSteps, changes), map);
        }
        givenPack.Finish(given.All, Group.Count);
        End(given, lane, work);
    }

    protected override void OnFilm(PiecewiseBicubic map, Lane lane, Rows.Work work)
    {
        film ??= new(ProcessorEngine.Chunk);
        Begin(film, lane, work, new Film(map));
        if (filmPack is null || !ReferenceEquals(filmMap, map))
        {
            filmPack?.Dispose();
            ref readonly var body = ref film[0].slide.Body;
            var changes = typeof(T) == typeof(TFine) ? null : new Pack<TFine, FilmOfLanes<TFine>, FilmSurface<Real, MapOfReal>>(new(map), body, Options.MaxSteps);
            (filmPack, filmMap) = (new Pack<T, FilmOfLanes<T>, FilmSurface<Real, MapOfReal>>(new(map), body, Options.MaxSteps, changes), map);
        }
        filmPack.Finish(film.All, Group.Count);
        End(film, lane, work);
    }

    private void Begin<TOne, TUnder>(Runs<TOne> runs, Lane lane, Rows.Work work, TUnder under)
        where TOne : struct, ISurface<Real>
        where TUnder : struct, IUnder<TOne>
    {
        for (var k = 0; k < Group.Count; k++)
        {
            runs.Begin(k, work, Group[k], lane, Options, under);
        }
    }

    private void End<TOne>(Runs<TOne> runs, Lane lane, Rows.Work work)
        where TOne : struct, ISurface<Real>
    {
        for (var k = 0; k < Group.Count; k++)
        {
            work.Outcomes[Group[k]] = runs.Outcome(k, work, Group[k], lane);
        }
    }
}
