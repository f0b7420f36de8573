using System.Text.RegularExpressions;
using BallSim.Balls;
using BallSim.Ensembles;
using BallSim.Files.Text;
using BallSim.Sweeps;

namespace BallSim.Files.Json;

/// <summary>From JSON to the plan of a sweep.</summary>
internal static partial class SweepReader
{
    private const int MostFactors = 100;
    private const int MostValues = 10_000;
    private const string FactorExample = """[{ "vary": "release.speed", "from": "17 mph", "to": "20 mph" }]""";

    private static readonly string[] Lists = ["ball", "layout", "finish", "release", "lane"];
    private static readonly Cover[] Covers = [Cover.Plastic, Cover.Urethane, Cover.Reactive];
    private static readonly string[] Ways = ["from", "to", "steps", "values", "mean", "deviation", "among"];

    private static readonly Shape<PocketWindow> Window = new(
        new("from", UnitKind.Length, w => w.From, (w, v) => w with { From = v }),
        new("to", UnitKind.Length, w => w.To, (w, v) => w with { To = v }),
        new("leastAngle", UnitKind.Angle, w => w.LeastAngle, (w, v) => w with { LeastAngle = v }),
        new("greatestAngle", UnitKind.Angle, w => w.GreatestAngle, (w, v) => w with { GreatestAngle = v }));

    public static SweepFile Read(string path)
    {
        var (title, plan, scenario, scenarioPath) = From(JsonFile.Opened(path));
        return new() { Title = title, Plan = plan, Fingerprint = SweepFingerprint.Of(path, scenarioPath, scenario) };
    }

    /// <summary>The plan that a file's content describes, with the scenario that it varies and that one's own file, if it has one.</summary>
    public static (string Title, SweepPlan Plan, Scenario Scenario, string? ScenarioPath) From(Field root)
    {
        var members = root.Members("title", "scenario", "use", "design", "count", "seed", "tolerance", "window", "factors");
        var scenarioField = members.Required("scenario", "\"scenario.json\"");
        var scenarioPath = scenarioField.Value.ValueKind == System.Text.Json.JsonValueKind.String ? PartReader.Beside(scenarioField) : null;
        var scenario = scenarioPath is null ? ScenarioReader.From(scenarioField) : ScenarioReader.Read(scenarioPath);
        var subject = Start(scenario, members.Optional("use"));
        var targets = SweepTargets.Of(subject);
        var list = members.Required("factors", FactorExample).Items(MostFactors);
        var factors = list.Select(f => OfFactor(f, scenario, subject, targets)).ToArray();
        for (var i = 0; i < factors.Length; i++)
        {
            if (factors.Take(i).Any(f => f.Vary == factors[i].Vary))
            {
                throw list[i].Wrong($"varies {factors[i].Vary}, which a factor before it varies already");
            }
        }
        // A choice puts in a whole part, so it comes before the numbers within that part, whatever the order in the file.
        factors = [.. factors.OrderBy(f => f.Factor.Labels.Count == 0)];
        var made = new SweepThrows(subject, [.. factors.Select(f => (f.Stage, f.With))]);
        var tolerance = Tolerance(members.Optional("tolerance"));
        var window = members.Optional("window") is { } given ? Window.Read(given.Members(Window.Names), new()) : new();
        var design = DesignOf(members);
        var plan = new SweepPlan
        {
            Factors = [.. factors.Select(f => f.Factor)],
            Design = design,
            Build = made.Of,
            Metrics = [.. Metric.All.SkipLast(1), Metric.InWindow("in_pocket", window)],
            Options = new() { Shot = scenario.Options with { Tolerance = tolerance } },
        };
        members.Built(() => plan.Rows);
        return (members.Optional("title")?.Text() ?? scenario.Title, plan, scenario, scenarioPath);
    }

    private static double Tolerance(Field? field)
    {
        var tolerance = field?.Quantity(UnitKind.Length) ?? 1e-4;
        return field is { } given ? given.Built(() => new Shots.SimulatorOptions { Tolerance = tolerance }.Tolerance, UnitKind.Length) : tolerance;
    }

    private static Design DesignOf(FieldSet members)
    {
        var field = members.Required("design", "\"sobol\"");
        var word = field.Word("factorial", "latin", "sobol", "random");
        if (word == "factorial")
        {
            members.Refuse("a factorial has as many rows as its levels make, and nothing random", "count", "seed");
            return Design.Factorial;
        }
        var countField = members.Required("count", "4096");
        var count = Whole(countField, 1, Design.MostRows);
        var seed = members.Optional("seed") is { } seeded ? Whole(seeded, int.MinValue, int.MaxValue) : 1;
        return word switch
        {
            "latin" => Design.LatinHypercube(count, seed),
            "sobol" => Design.LowDiscrepancy(count, seed),
            _ => Design.Random(count, seed),
        };
    }

    private static int Whole(Field field, int low, int high)
    {
        var number = field.Number();
        return number == Math.Truncate(number) && number >= low && number <= high ? (int)number : throw field.Wrong($"{field.Written} must be a whole number in [{low}, {high}]");
    }

    // The first of each list unless the file picks by name.
    private static SweepSubject Start(Scenario scenario, Field? use)
    {
        var picked = use?.Members(Lists);
        var lane = Picked(scenario.Lanes, l => l.Name, picked?.Optional("lane"));
        return new()
        {
            Ball = Picked(scenario.Balls, b => b.Name, picked?.Optional("ball")),
            Layout = Picked(scenario.Layouts, l => l.Name, picked?.Optional("layout")).Value,
            Finish = scenario.Finishes.Count > 0 ? Picked(scenario.Finishes, f => f.Name, picked?.Optional("finish")) : null,
            Bowler = scenario.Bowler,
            Release = Picked(scenario.Releases, r => r.Name, picked?.Optional("release")).Value,
            Lane = lane.Lane,
            Oil = lane.Oil,
        };
    }

    private static T Picked<T>(IReadOnlyList<T> items, Func<T, string> name, Field? field)
    {
        if (field is not { } given)
        {
            return items[0];
        }
        var word = given.Word([.. items.Select(name)]);
        return items.First(i => name(i) == word);
    }

    private sealed record Varied(string Vary, Factor Factor, SweepStage Stage, Func<SweepSubject, double, SweepSubject> With);

    private static Varied OfFactor(Field field, Scenario scenario, SweepSubject subject, IReadOnlyList<SweepTarget> targets)
    {
        var members = field.Members(["vary", .. Ways]);
        var vary = members.Required("vary", "\"release.speed\"");
        var word = vary.Word([.. Lists, "cover", .. targets.Select(t => t.Name)]);
        if (Choice(word, scenario, members) is { } choice)
        {
            return choice;
        }
        members.Refuse("a number takes from and to, values, or mean and deviation", "among");
        var target = targets.First(t => t.Name == word);
        // The column carries the unit that the plan wrote first.
        Unit? written = null;
        double Value(Field given)
        {
            var value = target.Kind is null ? given.Number() : given.Quantity(target.Kind);
            written ??= target.Kind?.UnitNamed(UnitText.Split(given.Value.GetString()!).Symbol);
            given.Built(() => target.With(subject, value), target.Kind);
            return value;
        }
        var name = Snake().Replace(word, "_$0").Replace('.', '_').ToLowerInvariant();
        string[] given = [.. Ways.Where(w => members.Optional(w) is not null)];
        var factor = given switch
        {
            ["from", "to"] or ["from", "to", "steps"] => Ranged(members, name, Value),
            ["values"] => Factor.Values(name, [.. Listed(members.Required("values", "[]")).Select(Value)]),
            ["mean", "deviation"] => Normal(members, name, target, Value),
            _ => throw field.Wrong("give \"from\" and \"to\" (with \"steps\" for a factorial), or \"values\": [...], or \"mean\" and \"deviation\""),
        };
        return new(word, written is { } unit ? factor.In(Spelt(unit.Symbol), unit.Factor, unit.Zero) : factor, target.Stage, target.With);
    }

    private static Factor Ranged(FieldSet members, string name, Func<Field, double> value)
    {
        var (from, to) = (value(members.Required("from", "")), members.Required("to", ""));
        var steps = members.Optional("steps") is { } field ? Whole(field, 2, 100_000) : 2;
        var end = value(to);
        return end > from ? Factor.Range(name, from, end, steps) : throw to.Wrong($"{to.Written} must be greater than \"from\"");
    }

    // A deviation is a difference: a unit with a zero of its own (degrees Fahrenheit) must not shift it.
    private static Factor Normal(FieldSet members, string name, SweepTarget target, Func<Field, double> value)
    {
        var (mean, deviation) = (value(members.Required("mean", "")), members.Required("deviation", ""));
        var size = target.Kind is null ? deviation.Number() : deviation.Quantity(target.Kind);
        if (target.Kind?.UnitNamed(UnitText.Split(deviation.Written.Trim('"')).Symbol) is { } unit)
        {
            size -= unit.Zero;
        }
        return size > 0 ? Factor.Normal(name, mean, size) : throw deviation.Wrong($"{deviation.Written} must be more than nothing");
    }

    private static IEnumerable<Field> Listed(Field field)
    {
        if (field.Value.ValueKind != System.Text.Json.JsonValueKind.Array)
        {
            throw field.Wrong($"{field.Written} must be a list [...]");
        }
        return field.Items(MostValues);
    }

    private static Varied? Choice(string word, Scenario scenario, FieldSet members)
    {
        var known = word switch
        {
            "ball" => scenario.Balls.Select(b => b.Name),
            "layout" => scenario.Layouts.Select(l => l.Name),
            "finish" => scenario.Finishes.Select(f => f.Name),
            "release" => scenario.Releases.Select(r => r.Name),
            "lane" => scenario.Lanes.Select(l => l.Name),
            "cover" => Covers.Select(c => c.Name),
            _ => null,
        };
        if (known is null)
        {
            return null;
        }
        string[] names = [.. known];
        if (names.Length == 0)
        {
            throw members.Owner.Wrong($"varies {word}, and the scenario has no such list");
        }
        members.Refuse($"{word} is a choice: give \"among\": [names], or nothing for all of the scenario's", Ways.Except(["among"]));
        string[] among = members.Optional("among") is { } field ? [.. Listed(field).Select(f => f.Word(names))] : names;
        T Of<T>(IReadOnlyList<T> items, double place) => items[Array.IndexOf(names, among[(int)place])];
        (SweepStage, Func<SweepSubject, double, SweepSubject>) way = word switch
        {
            "ball" => (SweepStage.Ball, (s, v) => s with { Ball = Of(scenario.Balls, v) }),
            "layout" => (SweepStage.Ball, (s, v) => s with { Layout = Of(scenario.Layouts, v).Value }),
            "finish" => (SweepStage.Finish, (s, v) => s with { Finish = Of(scenario.Finishes, v) }),
            "release" => (SweepStage.Release, (s, v) => s with { Release = Of(scenario.Releases, v).Value }),
            "lane" => (SweepStage.Lane, (s, v) => s with { Lane = Of(scenario.Lanes, v).Lane, Oil = Of(scenario.Lanes, v).Oil }),
            _ => (SweepStage.Ball, (s, v) => SweepTargets.WithCover(s, Of(Covers, v))),
        };
        return new(word, Factor.Choice(word, among), way.Item1, way.Item2);
    }

    // As columns spell units: kg/m3 would read as a quotient of columns.
    private static string Spelt(string symbol) => symbol.Replace("/", "_per_").Replace(' ', '_');

    [GeneratedRegex("(?<=[a-z])[A-Z]")]
    private static partial Regex Snake();
}
