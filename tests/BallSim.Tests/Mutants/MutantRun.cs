using System.Diagnostics;
using System.Globalization;
using System.Text.Json;

namespace BallSim.Tests.Mutants;

/// <summary>
/// Counts what tests notice of the mutants that Stryker has built into the core: reads its report for the list, asks a <see cref="MutantWorker"/> about each, and prints the score with every mutant that nothing noticed. Stryker's own runner starts a process
/// for every mutant, two to four seconds each; here one process answers for hundreds. A mutant that nothing noticed gets a process of its own for a second chance: it may stand in a static initialiser. One under which a test uses three times its time of the processor and two seconds more, or all of them five times theirs and ten seconds more, hangs; the clock is the processor's, so that a
/// busy machine kills nothing.
/// </summary>
internal sealed class MutantRun(string[] workerArguments, double least, double minutes, TextWriter output) : IDisposable
{
    private sealed record Mutant(int Id, string File, int Line, string What, string By);

    private sealed record Test(string Name, double Milliseconds, HashSet<int> Covered)
    {
        public int Kills { get; set; }

        // What notices most for its time is asked first.
        public double Promise => (Kills + 1) / (Milliseconds + 1);
    }

    private readonly List<Test> tests = [];

    private readonly HashSet<int> inStatics = [];

    private Process? worker;

    /// <summary>The command: report's path, folder, sample's size (0: all), seed, minutes after which no more are tried, least score in percent, then what the worker is told.</summary>
    public static int Of(string report, string folder, int sample, int seed, double minutes, double least, string[] workerArguments)
    {
        using var run = new MutantRun(workerArguments, least, minutes, Console.Out);
        return run.Score(report, folder, sample, seed);
    }

    public void Dispose() => Stop();

    private int Score(string report, string folder, int sample, int seed)
    {
        var clock = Stopwatch.StartNew();
        var all = Read(report, folder);
        var mutants = Drawn(all, sample, seed);
        Cover();
        List<(Mutant Mutant, bool IsReached)> alive = [];
        int hung = 0, crashed = 0, tried = 0;
        foreach (var mutant in mutants.ToArray())
        {
            if (clock.Elapsed.TotalMinutes > minutes)
            {
                mutants = mutants[..tried];
                break;
            }
            if (tried++ % 20 == 0)
            {
                Console.Error.WriteLine($"{folder}: {tried - 1} of {mutants.Count} tried, {alive.Count} alive, {clock.Elapsed.TotalSeconds:F0} s");
            }
            int[] inOrder = [.. Enumerable.Range(0, tests.Count).OrderByDescending(t => tests[t].Promise)];
            int[] reach = [.. inOrder.Where(t => tests[t].Covered.Contains(mutant.Id))];
            var verdict = reach.Length == 0 ? "" : Asked(mutant.Id, reach);
            if (verdict is "" && (reach.Length > 0 || inStatics.Contains(mutant.Id)))
            {
                // A second chance from the start: what a static initialiser makes, or a test class keeps from test to test, was made without the mutant, and is seen by tests that do not make it.
                Stop();
                reach = inStatics.Contains(mutant.Id) ? inOrder : reach;
                verdict = Asked(mutant.Id, reach);
                Stop();
            }
            if (verdict is null)
            {
                crashed++;
            }
            else if (verdict == "hangs")
            {
                hung++;
            }
            else if (verdict.Length > 0)
            {
                // A mutant may change the data of a theory and with them its name.
                if (tests.Find(t => t.Name == verdict) is { } test)
                {
                    test.Kills++;
                }
            }
            else
            {
                alive.Add((mutant, reach.Length > 0));
                Console.Error.WriteLine(Line(mutant, reach.Length > 0));
            }
        }
        var killed = mutants.Count - alive.Count;
        var score = mutants.Count == 0 ? 0 : 100.0 * killed / mutants.Count;
        var (low, high) = Wilson(killed, mutants.Count);
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{folder}: {score:F1} % of {mutants.Count} mutants killed (asked: {least:0} %), {hung} of them by hanging, {crashed} by ending the process; {tests.Count} tests, {clock.Elapsed.TotalSeconds:F0} s")
            + (mutants.Count == all.Count ? "" : string.Create(CultureInfo.InvariantCulture, $"; a sample of {all.Count}, seed {seed}, 95 % interval {low:F1} to {high:F1} %")));
        foreach (var (m, isReached) in alive.OrderBy(a => a.Mutant.Id))
        {
            output.WriteLine(Line(m, isReached));
        }
        return score >= least ? 0 : 1;
    }

    // What compiles and was not left out by its kind. Stryker was asked for the heads of the files alone, so that nearly all are ignored by that, and no other reason counts.
    private static List<Mutant> Read(string report, string folder)
    {
        using var json = JsonDocument.Parse(File.ReadAllText(report));
        return
        [
            .. from file in json.RootElement.GetProperty("files").EnumerateObject()
               let name = file.Name[(file.Name.LastIndexOf("/src/BallSim/", StringComparison.Ordinal) + "/src/BallSim/".Length)..]
               where name.StartsWith(folder + "/", StringComparison.Ordinal)
               from m in file.Value.GetProperty("mutants").EnumerateArray()
               let status = m.GetProperty("status").GetString()
               let reason = m.TryGetProperty("statusReason", out var why) ? why.GetString() : ""
               let mutator = m.GetProperty("mutatorName").GetString()!
               where status != "CompileError" && (status != "Ignored" || reason!.Contains("mutate filter", StringComparison.Ordinal)) && !mutator.Contains("String", StringComparison.Ordinal)
               let id = int.Parse(m.GetProperty("id").GetString()!, CultureInfo.InvariantCulture)
               orderby id
               select new Mutant(id, name, m.GetProperty("location").GetProperty("start").GetProperty("line").GetInt32(), Short(m.GetProperty("replacement").GetString()!), mutator),
        ];
    }

    private static string Line(Mutant m, bool isReached) => $"    {m.File}:{m.Line}  {(isReached ? "survived" : "not reached")}: {m.By}: {m.What}";

    private static string Short(string text) => string.Join(' ', text.Split((char[])[' ', '\n', '\r', '\t'], StringSplitOptions.RemoveEmptyEntries)) is var line && line.Length > 140 ? line[..140] : line;

    // The first of all in an order of chance: whatever has been tried when time is up is a sample, too.
    private static List<Mutant> Drawn(List<Mutant> all, int sample, int seed)
    {
        var random = new Random(seed);
        return [.. all.Select(m => (m, random.NextDouble())).OrderBy(p => p.Item2).Take(sample == 0 ? all.Count : sample).Select(p => p.m)];
    }

    // Wilson, J. Am. Stat. Assoc. 22 (1927) 209, from memory.
    private static (double Low, double High) Wilson(int hits, int count)
    {
        const double z = 1.959964;
        double n = Math.Max(count, 1), p = hits / n;
        var half = z * Math.Sqrt(p * (1 - p) / n + z * z / (4 * n * n));
        return (100 * (p + z * z / (2 * n) - half) / (1 + z * z / n), 100 * (p + z * z / (2 * n) + half) / (1 + z * z / n));
    }

    private void Cover()
    {
        var process = Started();
        process.StandardInput.WriteLine("cover");
        inStatics.UnionWith(Numbers(process.StandardOutput.ReadLine()!));
        while (process.StandardOutput.ReadLine() is { Length: > 0 } line)
        {
            var parts = line.Split('\t');
            if (parts[2].Length > 0)
            {
                throw new InvalidOperationException($"{parts[0]} fails without any mutant: {parts[2]}");
            }
            tests.Add(new(parts[0], double.Parse(parts[1], CultureInfo.InvariantCulture), [.. Numbers(parts[3])]));
            inStatics.UnionWith(Numbers(parts[4]));
        }
        // Every mutant that nothing notices costs all of their time twice: what is slow here belongs into the script's list of the slow.
        foreach (var slow in tests.OrderByDescending(t => t.Milliseconds).Take(12))
        {
            Console.Error.WriteLine($"{slow.Milliseconds / 1000:F1} s  {slow.Name}");
        }
        var covered = tests.SelectMany(t => t.Covered).ToHashSet();
        output.WriteLine($"# {tests.Count} tests of {tests.Sum(t => t.Milliseconds) / 1000:F1} s pass by {covered.Count} mutants");
    }

    private static IEnumerable<int> Numbers(string list) => list.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(n => int.Parse(n, CultureInfo.InvariantCulture));

    /// <summary>The name of the test that noticed, "" for none, "hangs", or null where the process ended.</summary>
    private string? Asked(int id, int[] reach)
    {
        var process = Started();
        process.StandardInput.WriteLine($"{id} {string.Join(' ', reach.Select(t => $"{t}:{Limit(t)}"))}");
        var answer = process.StandardOutput.ReadLineAsync();
        // The worker watches its processor's time test by test; what slows all of them, or waits and uses none, is caught here.
        var limit = TimeSpan.FromMilliseconds(10_000 + 5 * reach.Sum(t => tests[t].Milliseconds)) + process.TotalProcessorTime;
        var wall = Stopwatch.StartNew();
        var hangs = false;
        while (!hangs && !answer.Wait(50))
        {
            process.Refresh();
            hangs = !process.HasExited && (process.TotalProcessorTime > limit || wall.Elapsed > 20 * limit);
        }
        var said = hangs ? "hangs" : answer.Result;
        if (said is null or "hangs")
        {
            Stop();
        }
        return said;
    }

    // In seconds of the processor.
    private int Limit(int test) => 2 + (int)(3 * tests[test].Milliseconds / 1000);

    private Process Started()
    {
        if (worker is null)
        {
            worker = Process.Start(new ProcessStartInfo("dotnet", [typeof(MutantRun).Assembly.Location, "mutants-worker", .. workerArguments])
            {
                RedirectStandardInput = true,
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            })!;
            // A process that dies of endless recursion tells it at length, and waits until somebody listens.
            worker.BeginErrorReadLine();
        }
        return worker;
    }

    private void Stop()
    {
        if (worker is { HasExited: false })
        {
            worker.Kill();
            worker.WaitForExit();
        }
        worker?.Dispose();
        worker = null;
    }
}
