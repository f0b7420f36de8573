using BallSim.Motion;
using BallSim.Shots;
using BallSim.Spatial;

namespace BallSim.Fitting;

/// <summary>Tracked shots as a least-squares problem: a block for every shot, its priors included, and one more for the priors of what all shots share.</summary>
internal sealed class ShotBlocks : IResidualBlocks
{
    private readonly IReadOnlyList<FitShot> shots;
    private readonly ThrowModel[] models;
    private readonly Passage[] passages;
    private readonly double[][] values;
    private string sentence = "";

    public ShotBlocks(IReadOnlyList<FitShot> shots, IReadOnlyList<FreeParameter> parameters, TrackNoise noise, SimulatorOptions options)
    {
        this.shots = shots;
        Shared = [.. parameters.Where(p => !p.IsPerShot)];
        Local = [.. parameters.Where(p => p.IsPerShot)];
        Notes = [.. shots.Select(_ => new List<QualityNote>())];
        Observations = new Observation[shots.Count][];
        models = new ThrowModel[shots.Count];
        values = new double[shots.Count][];
        for (var s = 0; s < shots.Count; s++)
        {
            var (stations, observations) = Seen(shots[s], noise, Notes[s]);
            Observations[s] = observations;
            models[s] = new(shots[s], options, stations);
            values[s] = [.. models[s].Before];
        }
        passages = new Passage[Observations.Max(o => o.Length)];
        SharedPriors = [.. Enumerable.Range(0, Shared.Length).Where(i => Shared[i].Prior is not null)];
        LocalPriors = [.. Enumerable.Range(0, Local.Length).Where(i => Local[i].Prior is not null)];
    }

    public FreeParameter[] Shared { get; }

    public FreeParameter[] Local { get; }

    public int[] SharedPriors { get; }

    public int[] LocalPriors { get; }

    /// <summary>By shot.</summary>
    public Observation[][] Observations { get; }

    /// <summary>By shot: points that a fit cannot use.</summary>
    public List<QualityNote>[] Notes { get; }

    public int SharedCount => Shared.Length;

    public int BlockCount => shots.Count + (SharedPriors.Length > 0 ? 1 : 0);

    public int LocalCount(int block) => block < shots.Count ? Local.Length : 0;

    public int RowCount(int block) => block < shots.Count ? Observations[block].Length + LocalPriors.Length : SharedPriors.Length;

    /// <summary>Why the last evaluation had no answer.</summary>
    public override string ToString() => sentence;

    /// <summary>A shot's own value of a parameter before the fit.</summary>
    public double Before(int shot, FreeParameter p) => models[shot].Before[(int)p.Parameter];

    /// <summary>All parameters of a shot at a point of the fit.</summary>
    public double[] ValuesAt(int shot, ReadOnlySpan<double> shared, ReadOnlySpan<double> local)
    {
        double[] all = [.. models[shot].Before];
        Place(all, shared, local);
        return all;
    }

    public bool Evaluate(int block, ReadOnlySpan<double> shared, ReadOnlySpan<double> local, BlockRows into)
    {
        Array.Clear(into.Slopes);
        if (block == shots.Count)
        {
            for (var k = 0; k < SharedPriors.Length; k++)
            {
                var p = Shared[SharedPriors[k]];
                PriorRow(into, k, SharedPriors[k], p.Prior!.Value, shared[SharedPriors[k]], Before(0, p));
            }
            return true;
        }
        var all = values[block];
        Place(all, shared, local);
        var observations = Observations[block];
        // Twelve parameters at a time.
        for (var first = 0; first == 0 || first < SharedCount + Local.Length; first += Dual.Slots)
        {
            var slots = new int[ParameterFacts.Count];
            Array.Fill(slots, -1);
            var count = Math.Min(Dual.Slots, SharedCount + Local.Length - first);
            for (var slot = 0; slot < count; slot++)
            {
                slots[(int)At(first + slot).Parameter] = slot;
            }
            if (models[block].Throw(all, slots, passages) is { } failed)
            {
                sentence = $"shot {shots[block].Track.Id}: {failed}";
                return false;
            }
            for (var k = 0; k < observations.Length; k++)
            {
                var o = observations[k];
                var seen = Predicted(passages[o.Station], o.Quantity);
                into.Residuals[k] = o.Off((double)seen, o.Value) / o.Deviation;
                into.IsObservation[k] = true;
                for (var slot = 0; slot < count; slot++)
                {
                    into.Slopes[k, first + slot] = seen.Partial(slot) / o.Deviation;
                }
            }
        }
        for (var k = 0; k < LocalPriors.Length; k++)
        {
            var p = Local[LocalPriors[k]];
            PriorRow(into, observations.Length + k, SharedCount + LocalPriors[k], p.Prior!.Value, local[LocalPriors[k]], Before(block, p));
        }
        return true;
    }

    private FreeParameter At(int i) => i < SharedCount ? Shared[i] : Local[i - SharedCount];

    private void Place(double[] all, ReadOnlySpan<double> shared, ReadOnlySpan<double> local)
    {
        for (var i = 0; i < Shared.Length; i++)
        {
            all[(int)Shared[i].Parameter] = shared[i];
        }
        for (var i = 0; i < Local.Length; i++)
        {
            all[(int)Local[i].Parameter] = local[i];
        }
    }

    private static void PriorRow(BlockRows into, int row, int column, Prior prior, double value, double before)
    {
        into.Residuals[row] = (value - (prior.Mean ?? before)) / prior.StandardDeviation;
        into.Slopes[row, column] = 1 / prior.StandardDeviation;
    }

    private static Dual Predicted(in Passage p, FitQuantity quantity) => quantity switch
    {
        FitQuantity.Lateral => p.X,
        FitQuantity.Time => p.Time,
        FitQuantity.Speed => p.Speed,
        FitQuantity.Heading => p.Heading,
        FitQuantity.SpinRate => p.SpinRate,
        FitQuantity.AxisRotation => p.AxisRotation,
        _ => p.AxisTilt,
    };

    private static (Station[] Stations, Observation[] Observations) Seen(FitShot shot, TrackNoise noise, List<QualityNote> notes)
    {
        List<Station> stations = [];
        List<Observation> seen = [];
        // Where the head pin may first be touched, and a hair before it.
        var farthest = shot.Lane.HasPins ? shot.Lane.Length - shot.Ball.Radius - Lanes.PinDeck.BellyDiameter / 2 - 1e-6 : double.PositiveInfinity;
        foreach (var p in shot.Track.Points)
        {
            if (p.Distance > farthest)
            {
                notes.Add(new(QualityIssue.OffLane, p.Line, FormattableString.Invariant($"at {p.Distance:F2} m the ball may already have met the pins; left out")));
                continue;
            }
            var asksMotion = p.Speed is not null || p.Heading is not null || p.SpinRate is not null || p.AxisRotation is not null || p.AxisTilt is not null;
            var at = stations.Count;
            stations.Add(p.Distance is { } y ? new(y, IsTime: false, asksMotion) : new(p.Time!.Value, IsTime: true, asksMotion));
            void Add(FitQuantity quantity, double? value, double deviation)
            {
                if (value is { } v)
                {
                    seen.Add(new(quantity, at, v, deviation, p));
                }
            }
            Add(FitQuantity.Lateral, p.X, noise.Lateral);
            Add(FitQuantity.Time, p.Distance is null ? null : p.Time, noise.Time);
            Add(FitQuantity.Speed, p.Speed, noise.Speed);
            Add(FitQuantity.Heading, p.Heading, noise.Heading);
            Add(FitQuantity.SpinRate, p.SpinRate, noise.SpinRate);
            Add(FitQuantity.AxisRotation, p.AxisRotation, noise.AxisRotation);
            Add(FitQuantity.AxisTilt, p.AxisTilt, noise.AxisTilt);
        }
        Check.That(seen.Count > 0, $"shot \"{shot.Track.Id}\" has nothing measured before the pins", nameof(shot));
        return ([.. stations], [.. seen]);
    }
}
