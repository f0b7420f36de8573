using System.Diagnostics;
using System.Runtime.Intrinsics;
using BallSim.Ensembles;
using BallSim.Gpu;
using BallSim.Lanes;
using BallSim.Shots;

namespace BallSim.Benchmarks;

/// <summary>
/// Correctness and throughput of ensembles on the card, one run, to be read by ratio to the processor of the same machine. Errors are maxima over the 512 releases, at the pins, against doubles on the processor at a
/// tolerance of 1e-10. Kernel times are the best of some rounds over eight million shots, the device idle before and after every kernel; chunks side by side are six of a million, as in a large ensemble, with what is brought back and left over but without what prepares and reads them.
/// </summary>
internal static class GpuReport
{
    private static readonly (string Name, Lane Lane)[] Laws = [("bare law", ReleaseSet.Lane), ("full law", Scenarios.Oiled)];

    /// <summary>All of it, or the part named: agreement, bare, full. Parts that run side by side compile together and measure one after the other.</summary>
    public static void Report(TextWriter to, string[] parts, bool emulated)
    {
        using var engine = emulated ? GpuEngine.Emulated() : GpuEngine.Open(Console.Error.WriteLine);
        bool Wanted(string part) => parts.Length == 0 || parts.Any(p => part.StartsWith(p, StringComparison.Ordinal));
        to.WriteLine(FormattableString.Invariant($"card: {engine}; processor: {Environment.ProcessorCount} threads, {(Vector512.IsHardwareAccelerated ? "AVX-512" : "AVX2")}, {Ensemble.Width(Precision.Double)} doubles side by side"));
        if (Wanted("agreement"))
        {
            Agreement(to, engine, emulated ? 30 : 10_000);
        }
        foreach (var (law, lane) in Laws.Where(l => Wanted(l.Name)))
        {
            Throughput(to, engine, law, lane, emulated);
        }
    }

    private static void Throughput(TextWriter to, GpuEngine engine, string law, Lane lane, bool emulated)
    {
        var set = ReleaseSet.Releases.Take(emulated ? 8 : 512).ToArray();
        var throws = set.Select(r => new Throw(ReleaseSet.Ball, lane, r)).ToArray();
        var many = Scenarios.Alike(emulated ? 40 : 1 << 23, lane);
        // What a chunk leaves over meets code that the compiler has seen through.
        for (var warm = 0; warm < (emulated ? 1 : 30); warm++)
        {
            Ensemble.Throw(throws, new());
        }
        var exact = Ensemble.Throw(throws, new() { Shot = new() { Tolerance = 1e-10, MaxSteps = 5_000_000 } });
        foreach (var precision in new[] { Precision.Single, Precision.Double })
        {
            Ensemble.Throw(throws, new() { Precision = precision, Engine = engine });
        }
        using var alone = Alone();
        to.WriteLine($"{law}: tolerance [m] | numbers | greatest error [m] | kernels one by one [shots/s] | chunks side by side [shots/s] | end to end [shots/s] | begin, slide, end of slip, roll, end as it was meant, look for slip, start of slip, other ends, rare events, finish, the rest on the processor [ms of a million shots] | rounds");
        foreach (var precision in new[] { Precision.Single, Precision.Double })
        {
            foreach (var tolerance in new[] { 7e-3, 3e-3, 3e-4, 1e-4, 2e-5, 1e-5 })
            {
                var options = new EnsembleOptions { Shot = new() { Tolerance = tolerance }, Precision = precision, Engine = engine };
                var error = Ensemble.Throw(throws, options).Zip(exact, (a, b) => Math.Abs(a.X - b.X)).Max();
                var times = engine.Timed(many, options, rounds: emulated ? 1 : 3);
                var (chunks, rounds, chunk) = emulated ? (2, 1, many) : (6, 3, many.AsSpan(0, many.Length / 8).ToArray());
                engine.Together(chunk, options, chunks, 1);
                var together = chunks * rounds * chunk.Length / engine.Together(chunk, options, chunks, rounds);
                var seconds = Enumerable.Range(0, emulated ? 1 : 3).Min(_ =>
                {
                    var clock = Stopwatch.StartNew();
                    Ensemble.Throw(many, options);
                    return clock.Elapsed.TotalSeconds;
                });
                to.WriteLine(FormattableString.Invariant($"{tolerance:E0} | {(precision == Precision.Single ? "float" : "double")} | {error:E1} | {many.Length / times.All:E2} | {together:E2} | {many.Length / seconds:E2} | {times.Of(many.Length)}"));
                to.Flush();
            }
        }
        var some = many.AsSpan(0, Math.Min(many.Length, 1 << 17)).ToArray();
        foreach (var (name, options) in new (string, EnsembleOptions)[]
        {
            ("one by one, one thread", new() { SideBySide = false, Threads = 1 }), ("doubles side by side, two threads", new() { Threads = 2 }), ("floats side by side, two threads", new() { Threads = 2, Precision = Precision.Single }),
            ("doubles, all threads", new()),
        })
        {
            var part = name.StartsWith("one", StringComparison.Ordinal) ? some.AsSpan(0, Math.Min(some.Length, 1 << 14)).ToArray() : some;
            Ensemble.Throw(part.AsSpan(0, part.Length / 8).ToArray(), options);
            var clock = Stopwatch.StartNew();
            Ensemble.Throw(part, options);
            to.WriteLine(FormattableString.Invariant($"processor, {name}, 1e-4 m: {part.Length / clock.Elapsed.TotalSeconds:E2} shots/s"));
        }
        to.Flush();
    }

    // Held while one of several reports measures.
    private static FileStream Alone()
    {
        while (true)
        {
            try
            {
                return new(Path.Combine(Path.GetTempPath(), "BallSim.GpuReport.measuring"), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
            }
            catch (IOException)
            {
                Thread.Sleep(100);
            }
        }
    }

    /// <summary>A million releases and more in columns, thrown in floats on the card, with eight columns of the outcomes on disk: one block is written while the next two are thrown.</summary>
    public static void ToDisk(TextWriter to, string file, int rows)
    {
        const int Block = 1 << 22, Columns = 8, UnderWay = 3;
        using var engine = GpuEngine.Open(Console.Error.WriteLine);
        var random = new Random(1);
        double[] speed = new double[rows], rotation = new double[rows], angle = new double[rows];
        for (var i = 0; i < rows; i++)
        {
            (speed[i], rotation[i]) = (7.2 + 1.8 * random.NextDouble(), (15 + 45 * random.NextDouble()) * Units.Degree);
            angle[i] = 0.3 * Units.Degree + rotation[i] / 30;
        }
        var options = new EnsembleOptions { Shot = new() { Tolerance = 1e-4 }, Precision = Precision.Single, Engine = engine };
        var room = Enumerable.Range(0, UnderWay).Select(_ => Enumerable.Range(0, Columns).Select(_ => new double[Math.Min(Block, rows)]).ToArray()).ToArray();
        Memory<double>[] Thrown(int from)
        {
            var count = Math.Min(Block, rows - from);
            ArraySegment<double> Of(double[] all) => new(all, from, count);
            var columns = Array.ConvertAll(room[from / Block % UnderWay], column => column.AsMemory(0, count));
            Ensemble.ThrowInto(
                ReleaseSet.Ball, ReleaseSet.Lane, ReleaseSet.Releases[0], new() { Speed = Of(speed), AxisRotation = Of(rotation), LaunchAngle = Of(angle) },
                new() { Time = columns[0], X = columns[1], Angle = columns[2], Speed = columns[3], BreakpointBoard = columns[4], RollDistance = columns[5], Revolutions = columns[6], BoardAtPinLine = columns[7] }, options);
            return columns;
        }
        // As they go later, two at a time: memory is given, and locked, while that lasts.
        for (var warm = 0; warm < UnderWay; warm++)
        {
            Parallel.For(0, 2, k => Thrown(Math.Min((warm + k) * Block, (rows - 1) / Block * Block)));
        }
        var clock = Stopwatch.StartNew();
        double throwing = 0, writing = 0, flushing;
        Task<Memory<double>[]> Throwing(int from) => Task.Run(() => Thrown(from));
        using (var handle = File.OpenHandle(file, FileMode.Create, FileAccess.Write, FileShare.None, FileOptions.None, (long)rows * Columns * sizeof(double)))
        {
            var written = Task.CompletedTask;
            var ahead = Throwing(0);
            for (var from = 0; from < rows; from += Block)
            {
                // Two blocks under way: while one comes to its end, the card has the other; the one before them is being written, and the one before that has been, whose room the next has.
                var thrown = ahead;
                if (from + Block < rows)
                {
                    ahead = Throwing(from + Block);
                }
                var waiting = clock.Elapsed.TotalSeconds;
                var columns = thrown.Result;
                throwing += clock.Elapsed.TotalSeconds - waiting;
                written.Wait();
                var at = (long)from * Columns * sizeof(double);
                written = Task.Run(() =>
                {
                    var begun = clock.Elapsed.TotalSeconds;
                    // Column after column of a block, the plainest file there is: the disk is measured and not a format.
                    Parallel.For(0, Columns, new ParallelOptions { MaxDegreeOfParallelism = 4 }, k => RandomAccess.Write(handle, System.Runtime.InteropServices.MemoryMarshal.AsBytes(columns[k].Span), at + (long)k * columns[k].Length * sizeof(double)));
                    writing += clock.Elapsed.TotalSeconds - begun;
                });
            }
            written.Wait();
            flushing = clock.Elapsed.TotalSeconds;
            RandomAccess.FlushToDisk(handle);
            flushing = clock.Elapsed.TotalSeconds - flushing;
        }
        var all = clock.Elapsed.TotalSeconds;
        to.WriteLine(FormattableString.Invariant($"{engine}: {rows} rows with eight columns of doubles on disk in {all:F2} s ({rows / all:E2} rows/s); of that time {throwing:F2} s waiting for throws, writing, beside throwing, {writing:F2} s ({rows / writing:E2}/s), the last {flushing:F2} s until the disk has all of it"));
        File.Delete(file);
    }

    private static void Agreement(TextWriter to, GpuEngine engine, int count)
    {
        var kinds = Scenarios.OfAllKinds(count);
        foreach (var (name, throws) in new[] { ("the 512 releases", ReleaseSet.Releases.Take(Math.Min(512, count)).Select(r => new Throw(ReleaseSet.Ball, ReleaseSet.Lane, r)).ToArray()), ($"{count} scenarios", kinds) })
        {
            foreach (var precision in new[] { Precision.Double, Precision.Single })
            {
                var options = new EnsembleOptions { Shot = new() { Tolerance = 1e-4, MaxSteps = 20_000, MaxTransitions = 60 }, Precision = precision };
                var processor = Ensemble.Throw(throws, options with { Precision = Precision.Double });
                var clock = Stopwatch.StartNew();
                var card = Ensemble.Throw(throws, options with { Engine = engine });
                var seconds = clock.Elapsed.TotalSeconds;
                var pairs = processor.Zip(card).ToArray();
                double Most(Func<Outcome, double> of) => pairs.Where(p => p.First.StopReason == p.Second.StopReason).Max(p => Math.Abs(of(p.First) - of(p.Second)));
                var sameSteps = pairs.Where(p => p.First.Steps == p.Second.Steps && p.First.StopReason == p.Second.StopReason).ToArray();
                var near = precision == Precision.Double ? 1e-9 : 1e-4;
                double Off(int i) => Math.Max(Math.Abs(pairs[i].First.X - pairs[i].Second.X), Math.Abs(pairs[i].First.Distance - pairs[i].Second.Distance));
                var far = Enumerable.Range(0, pairs.Length).Where(i => Off(i) > near).OrderByDescending(Off).ToArray();
                to.WriteLine(FormattableString.Invariant($"{name}, {precision} against doubles of the processor at 1e-4 m: x {Most(o => o.X):E1} m, y {Most(o => o.Distance):E1} m, time {Most(o => o.Time):E1} s; {pairs.Count(p => p.First == p.Second)} of {pairs.Length} the same to the last bit, {sameSteps.Length} at the same steps, x {sameSteps.Max(p => Math.Abs(p.First.X - p.Second.X)):E1} m; {far.Length} farther than {near:E0} m in x or y; {pairs.Count(p => p.First.StopReason != p.Second.StopReason)} stop otherwise; {seconds:F1} s with compiling"));
                foreach (var i in far.Take(5))
                {
                    var (here, there) = pairs[i];
                    to.WriteLine(FormattableString.Invariant($"  scenario {i}: {here.StopReason} at x {here.X:F4} m, y {here.Distance:F3} m after {here.Time:F2} s; there {there.StopReason}, x off by {there.X - here.X:E1} m, y by {there.Distance - here.Distance:E1} m, time by {there.Time - here.Time:E1} s"));
                }
                to.WriteLine("  ended: " + string.Join(", ", processor.GroupBy(o => o.StopReason).Select(g => $"{g.Key} {g.Count()}")) + FormattableString.Invariant($"; slipped again {processor.Count(o => o.SlippedAgain > 0)}"));
            }
        }
        to.Flush();
    }
}
