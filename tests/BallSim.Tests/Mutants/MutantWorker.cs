using System.Diagnostics;
using System.Reflection;
using BallSim.Balls;
using Xunit.Abstractions;
using Xunit.Sdk;

namespace BallSim.Tests.Mutants;

/// <summary>
/// A process that runs tests on a core into which Stryker has built all its mutants, with one of them switched on at a time. It answers on the standard output what it is asked on the standard input: <c>cover</c> runs every test twice and tells each one's
/// name, its time, and the mutants that it passes by; <c>ID TEST:SECONDS...</c> runs tests by their numbers until one notices the mutant, and answers "hangs" and ends where one takes more of the processor's time than it is given. Facts and theories alone: whatever else there is (properties, fixtures) is not run here.
/// </summary>
internal sealed class MutantWorker
{
    private sealed record Test(string Name, MethodInfo Method, object?[] Arguments);

    private static readonly Type Control = typeof(Ball).Assembly.GetTypes().Single(t => t.Name == "MutantControl");

    private static readonly FieldInfo Active = Control.GetField("ActiveMutant")!;

    private sealed class Unheard : ITestOutputHelper
    {
        public void WriteLine(string message)
        {
        }

        public void WriteLine(string format, params object[] args)
        {
        }
    }

    private readonly string[] wanted;

    private readonly string[] unwanted;

    private readonly HashSet<string> ran = [];

    private Test[]? tests;

    private MutantWorker(string[] wanted, string[] unwanted) => (this.wanted, this.unwanted) = (wanted, unwanted);

    // The theories' data belong to the core, too: with a mutant in a static initialiser they must not be asked for before it is switched on.
    private Test[] Tests => tests ??= [.. Found()];

    public static int Serve(string[] wanted, string[] unwanted)
    {
        var worker = new MutantWorker(wanted, unwanted);
        var answers = Console.Out;
        Console.SetOut(TextWriter.Null);
        while (Console.In.ReadLine() is { } asked)
        {
            if (asked == "cover")
            {
                worker.Cover(answers);
            }
            else
            {
                string[] parts = asked.Split(' ');
                Active.SetValue(null, int.Parse(parts[0]));
                answers.WriteLine(parts.Skip(1).Select(p => p.Split(':')).Select(p => (Test: worker.Tests[int.Parse(p[0])], Seconds: int.Parse(p[1]))).FirstOrDefault(t => worker.FailsOrHangs(t.Test, t.Seconds, answers)).Test?.Name ?? "");
                Active.SetValue(null, -1);
            }
            answers.Flush();
        }
        return 0;
    }

    private void Cover(TextWriter answers)
    {
        Active.SetValue(null, -1);
        var capture = Control.GetField("CaptureCoverage")!;
        IList<int>[] Listened() => (IList<int>[])Control.GetMethod("GetCoverageData")!.Invoke(null, null)!;
        // What making the theories' data runs is over before any test, as a static initialiser is.
        capture.SetValue(null, true);
        _ = Tests;
        capture.SetValue(null, false);
        answers.WriteLine(string.Join(' ', Listened()[0]));
        foreach (var test in Tests)
        {
            // First for the list, in which static initialisers stand the first time only; then for the clock.
            var failed = Watched(test, capture);
            var clock = Stopwatch.StartNew();
            failed ??= Fails(test);
            var took = clock.Elapsed.TotalMilliseconds;
            var covered = Listened();
            answers.WriteLine(FormattableString.Invariant($"{test.Name}\t{took:F3}\t{failed?.Message.Split('\n')[0]}\t{string.Join(' ', covered[0])}\t{string.Join(' ', covered[1])}"));
        }
        answers.WriteLine();
    }

    // Noting a mutant takes a hundred times as long as passing it by, and a test that runs long passes by the same ones again and again: after ten seconds it is looked at for a tenth of the time. What is missed counts as not reached, against the score.
    private static Exception? Watched(Test test, FieldInfo capture)
    {
        using var over = new ManualResetEventSlim();
        capture.SetValue(null, true);
        var blinking = new Thread(() =>
        {
            for (var wait = 10_000; !over.Wait(wait); wait = wait == 90 ? 10 : 90)
            {
                capture.SetValue(null, wait == 90);
            }
        });
        blinking.Start();
        var failed = Fails(test);
        over.Set();
        blinking.Join();
        capture.SetValue(null, false);
        return failed;
    }

    private bool FailsOrHangs(Test test, int seconds, TextWriter answers)
    {
        // The first time in a process it is compiled on its way.
        seconds += ran.Add(test.Name) ? 5 : 0;
        using var over = new ManualResetEventSlim();
        var limit = Process.GetCurrentProcess().TotalProcessorTime + TimeSpan.FromSeconds(seconds);
        // A thread of its own: a test that hangs may hold all those of the pool.
        var watch = new Thread(() =>
        {
            while (!over.Wait(200))
            {
                if (Process.GetCurrentProcess().TotalProcessorTime > limit)
                {
                    answers.WriteLine("hangs");
                    answers.Flush();
                    Process.GetCurrentProcess().Kill();
                }
            }
        });
        watch.Start();
        var fails = Fails(test) is not null;
        over.Set();
        watch.Join();
        return fails;
    }

    private static Exception? Fails(Test test)
    {
        object? instance = null;
        try
        {
            instance = test.Method.IsStatic ? null : Maker(test.Method.ReflectedType!)!();
            if (test.Method.Invoke(instance, test.Arguments) is Task task)
            {
                task.GetAwaiter().GetResult();
            }
            (instance as IDisposable)?.Dispose();
            return null;
        }
        catch (Exception e)
        {
            return (e as TargetInvocationException)?.InnerException ?? e;
        }
    }

    // How a class of tests is made: of nothing, or of somewhere to write to; null where it asks for more.
    private static Func<object>? Maker(Type type) =>
        type.GetConstructor([]) is { } plain ? () => plain.Invoke([])
        : type.GetConstructor([typeof(ITestOutputHelper)]) is { } telling ? () => telling.Invoke([new Unheard()])
        : null;

    private IEnumerable<Test> Found() =>
        from type in typeof(MutantWorker).Assembly.GetTypes()
        where type is { IsPublic: true, IsAbstract: false } && Maker(type) is not null
        orderby type.FullName
        from method in type.GetMethods()
        let fact = method.GetCustomAttributes<FactAttribute>().SingleOrDefault()
        where fact?.GetType() == typeof(FactAttribute) || fact?.GetType() == typeof(TheoryAttribute)
        let full = $"{type.FullName}.{method.Name}"
        where wanted.Any(w => full.StartsWith("BallSim.Tests." + w, StringComparison.Ordinal))
        from arguments in fact is TheoryAttribute ? method.GetCustomAttributes<DataAttribute>().SelectMany(d => d.GetData(method)) : [[]]
        let name = $"{full["BallSim.Tests.".Length..]}({string.Join(',', arguments)})"
        where !unwanted.Any(w => name.Contains(w, StringComparison.Ordinal))
        select new Test(string.Join(' ', name.Split((char[])['\t', '\n', '\r'])), method, Filled(method, arguments));

    // Arguments as the method wants them: what is left out has its default, and what follows params is one array.
    private static object?[] Filled(MethodInfo method, object?[] given)
    {
        var parameters = method.GetParameters();
        if (parameters.Length > 0 && parameters[^1].IsDefined(typeof(ParamArrayAttribute)) && (given.Length != parameters.Length || given[^1] is not Array))
        {
            var rest = given.Skip(parameters.Length - 1).ToArray();
            var packed = Array.CreateInstance(parameters[^1].ParameterType.GetElementType()!, rest.Length);
            Array.Copy(rest, packed, rest.Length);
            given = [.. given.Take(parameters.Length - 1), packed];
        }
        return [.. parameters.Select((p, i) => i >= given.Length ? p.DefaultValue : given[i] is IConvertible c && p.ParameterType == typeof(double) ? c.ToDouble(null) : given[i])];
    }
}
