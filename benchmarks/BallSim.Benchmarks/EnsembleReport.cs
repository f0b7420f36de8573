using System.Diagnostics;
using System.Runtime.Intrinsics;
using BallSim.Ensembles;
using BallSim.Lanes;
using BallSim.Shots;
using static BallSim.Units;

namespace BallSim.Benchmarks;

/// <summary>
/// Throughput of ensembles, one run, to be read by ratio: shots one by one against shots side by side in doubles and in floats, one thread against all, few shots against many; the bare law (given friction) and the
/// full one (film, oil on the cover, fresh cover). The fastest of several rounds counts; errors are maxima over the 512 releases, at the pins, against a tolerance of 1e-12 m (full law 1e-10).
/// </summary>
internal static class EnsembleReport
{
    public static void Report(TextWriter to)
    {
        to.WriteLine(FormattableString.Invariant($"vectors: {(Vector512.IsHardwareAccelerated ? "AVX-512" : Vector256.IsHardwareAccelerated ? "AVX2" : "none")}, {Ensemble.Width(Precision.Double)} doubles or {Ensemble.Width(Precision.Single)} floats side by side; {Environment.ProcessorCount} processors"));
        var bare = Throws(ReleaseSet.Lane);
        var full = bare.Select(t => t with { Lane = ReleaseSet.Oiled }).ToArray();
        // The compiler arranges the code by what it sees first: let that be the work that is measured, not the many short steps of what it is compared with.
        foreach (var way in new EnsembleOptions[] { new() { SideBySide = false }, new(), new() { Precision = Precision.Single } })
        {
            for (var i = 0; i < 30; i++)
            {
                Ensemble.Throw(bare, way with { Threads = 1 });
                Ensemble.Throw(full, way with { Threads = 1 });
            }
        }
        var exact = Ensemble.Throw(bare, new() { Shot = new() { Tolerance = 1e-12, MaxSteps = 5_000_000 } });
        var peak = Peak.Measured();
        to.WriteLine(FormattableString.Invariant($"peak of one core, fused multiply-adds of {Peak.Doubles} doubles from registers: {peak:F1} GFLOP/s; of floats twice that"));
        // Several times the set, so that what a run starts and ends with does not count.
        Throw[] Many(Throw[] set) => [.. Enumerable.Repeat(set, 16).SelectMany(t => t)];
        var (manyBare, manyFull) = (Many(bare), Many(full));
        to.WriteLine("bare law: tolerance [m] | greatest error, one by one | doubles | floats [m] | one by one | doubles | floats [shots/s, one thread] | doubles : one by one | floats : one by one | two threads : one");
        var shares = new List<string>();
        foreach (var tolerance in new[] { 1e-3, 1e-4, 1e-5, 1e-6 })
        {
            var shot = new SimulatorOptions { Tolerance = tolerance };
            var alone = new EnsembleOptions { Shot = shot, SideBySide = false, Threads = 1 };
            var doubles = alone with { SideBySide = true };
            var floats = doubles with { Precision = Precision.Single };
            var errors = new[] { alone, doubles, floats }.Select(o => Error(bare, o, exact)).ToArray();
            var rates = new[] { alone, doubles, floats }.Select(o => Rate(manyBare, o)).ToArray();
            var threads = new[] { 1, 2 }.Select(n => Rate(manyBare, doubles with { Threads = n })).ToArray();
            to.WriteLine(FormattableString.Invariant($"{tolerance:E0} | {errors[0]:E1} | {errors[1]:E1} | {errors[2]:E1} | {rates[0]:F0} | {rates[1]:F0} | {rates[2]:F0} | {rates[1] / rates[0]:F2} | {rates[2] / rates[0]:F2} | {threads[1] / threads[0]:F2}"));
            var work = Work.PerShot(tolerance);
            shares.Add(FormattableString.Invariant($"{tolerance:E0} | {work:F0} | {string.Join(" | ", rates.Select((rate, i) => FormattableString.Invariant($"{rate * work / 1e9:F2} ({100 * rate * work / 1e9 / peak / (i == 2 ? 2 : 1):F0} %)")))}"));
        }
        to.WriteLine("bare law: tolerance [m] | floating-point operations a shot, counted | one by one | doubles | floats [GFLOP/s, one thread, and the share of the peak]");
        shares.ForEach(to.WriteLine);
        to.WriteLine("full law, one thread: what counts of the oil on the cover, tolerance [m] | greatest error, doubles | floats [m] | one by one | doubles | floats [shots/s]");
        foreach (var (what, law, tolerances) in new (string, SimulatorOptions, double[])[]
        {
            ("all", new(), [3e-3, 1e-3, 1e-4]),
            ("no fresh cover", new() { FreshCover = false }, [1e-4]),
            ("none", new() { FreshCover = false, CoverOil = false }, [1e-4]),
        })
        {
            exact = Ensemble.Throw(full, new() { Shot = law with { Tolerance = 1e-10, MaxSteps = 5_000_000 } });
            foreach (var tolerance in tolerances)
            {
                var alone = new EnsembleOptions { Shot = law with { Tolerance = tolerance }, SideBySide = false, Threads = 1 };
                var doubles = alone with { SideBySide = true };
                var floats = doubles with { Precision = Precision.Single };
                var rates = new[] { alone, doubles, floats }.Select(o => Rate(manyFull, o)).ToArray();
                to.WriteLine(FormattableString.Invariant($"{what}, {tolerance:E0} | {Error(full, doubles, exact):E1} | {Error(full, floats, exact):E1} | {rates[0]:F0} | {rates[1]:F0} | {rates[2]:F0}"));
            }
        }
        to.WriteLine("shots | us a shot (doubles, all threads, bare law at 1e-4 m) | bytes allocated a shot beside its outcome");
        foreach (var count in new[] { 1_000, 10_000, 100_000, 1_000_000 })
        {
            var many = Enumerable.Range(0, count).Select(i => bare[i % bare.Length]).ToArray();
            var options = new EnsembleOptions { Shot = new() { Tolerance = 1e-4 } };
            Ensemble.Throw(bare, options);
            // Few shots take milliseconds: the fastest of several rounds, as elsewhere.
            var rounds = Math.Max(1, 100_000 / count);
            var (time, before) = (double.MaxValue, GC.GetTotalAllocatedBytes(true));
            for (var i = 0; i < rounds; i++)
            {
                var clock = Stopwatch.StartNew();
                Ensemble.Throw(many, options);
                time = Math.Min(time, clock.Elapsed.TotalMicroseconds / count);
            }
            var bytes = (double)(GC.GetTotalAllocatedBytes(true) - before) / rounds / count - System.Runtime.CompilerServices.Unsafe.SizeOf<Outcome>();
            to.WriteLine(FormattableString.Invariant($"{count} | {time:F1} | {bytes:F0}"));
        }
    }

    private static Throw[] Throws(Lane lane) => [.. ReleaseSet.Releases.Select(r => new Throw(ReleaseSet.Ball, lane, r))];

    private static double Error(Throw[] throws, EnsembleOptions options, Outcome[] exact) => Ensemble.Throw(throws, options).Zip(exact, (a, b) => Math.Abs(a.X - b.X)).Max();

    private static double Rate(Throw[] throws, EnsembleOptions options)
    {
        Ensemble.Throw(throws, options);
        var best = double.PositiveInfinity;
        var clock = Stopwatch.StartNew();
        while (clock.Elapsed.TotalSeconds < 3)
        {
            var start = Stopwatch.GetTimestamp();
            Ensemble.Throw(throws, options);
            best = Math.Min(best, Stopwatch.GetElapsedTime(start).TotalSeconds);
        }
        return throws.Length / best;
    }
}
