using System.Collections.Concurrent;
using BallSim.Balls;
using BallSim.Ensembles;
using BallSim.Lanes;

namespace BallSim.Files.Json;

/// <summary>
/// Makes throws from values. What no factor touches is made once; what factors touch is kept for the rows that repeat it, as those of a factorial do: the ensemble then works out once what follows from
/// the same ball and lane.
/// </summary>
internal sealed class SweepThrows(SweepSubject start, IReadOnlyList<(SweepStage Stage, Func<SweepSubject, double, SweepSubject> With)> factors)
{
    // A factorial runs through few at a time; a sampled design repeats none, and the store must not grow with it.
    private const int Kept = 512;

    private readonly ConcurrentDictionary<string, Ball> drilled = new();
    private readonly ConcurrentDictionary<string, Ball> finished = new();
    private readonly ConcurrentDictionary<string, Lane> lanes = new();

    public Throw Of(IReadOnlyList<double> values)
    {
        var subject = start;
        for (var i = 0; i < values.Count; i++)
        {
            subject = factors[i].With(subject, values[i]);
        }
        var made = Once(drilled, Key(values, SweepStage.Ball, SweepStage.Ball), subject.Drilled);
        var ball = Once(finished, Key(values, SweepStage.Ball, SweepStage.Finish), () => subject.Finished(made));
        var lane = Once(lanes, Key(values, SweepStage.Lane, SweepStage.Lane), subject.Oiled);
        return new(ball, lane, subject.Release);
    }

    private string Key(IReadOnlyList<double> values, SweepStage first, SweepStage last) =>
        string.Join(' ', values.Where((_, i) => factors[i].Stage >= first && factors[i].Stage <= last).Select(v => BitConverter.DoubleToInt64Bits(v).ToString("x")));

    private static T Once<T>(ConcurrentDictionary<string, T> made, string key, Func<T> make)
    {
        if (made.TryGetValue(key, out var found))
        {
            return found;
        }
        if (made.Count >= Kept)
        {
            made.Clear();
        }
        return made.GetOrAdd(key, make());
    }
}
