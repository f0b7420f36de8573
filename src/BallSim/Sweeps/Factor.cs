using System.Collections.Immutable;
using System.Globalization;
using MathNet.Numerics.Distributions;

namespace BallSim.Sweeps;

/// <summary>One input that a sweep varies: a range, a normal distribution, a list of values, or a choice between things with names.</summary>
public sealed record Factor
{
    private enum Way
    {
        Range,
        Normal,
        Values,
        Choice,
    }

    private readonly Way way;
    private readonly double first;
    private readonly double second;
    private readonly ImmutableArray<double> values = [];

    private Factor(string name, Way way, double first = 0, double second = 0)
    {
        Check.That(!string.IsNullOrWhiteSpace(name), "a factor needs a name", nameof(name));
        (Name, this.way, this.first, this.second) = (name, way, first, second);
    }

    /// <summary>The name of its column; with <see cref="In"/> the unit is part of it.</summary>
    public string Name { get; private init; }

    /// <summary>What one of the column's unit is in SI.</summary>
    public double UnitSize { get; private init; } = 1;

    /// <summary>Where the column's unit has its zero, SI.</summary>
    public double UnitZero { get; private init; }

    /// <summary>The names of a choice, in order; empty for numbers.</summary>
    public IReadOnlyList<string> Labels { get; private init; } = [];

    /// <summary>How many levels it has in a factorial.</summary>
    /// <exception cref="ArgumentException">A normal distribution has none.</exception>
    public int Levels
    {
        get
        {
            Check.That(way != Way.Normal, $"{Name} is normally distributed and has no levels: give values or a range for a factorial", Name);
            return way == Way.Range ? Steps : way == Way.Values ? values.Length : Labels.Count;
        }
    }

    private int Steps { get; init; } = 2;

    /// <summary>Anything within a range, SI.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="from">One end, SI.</param>
    /// <param name="to">The other end, SI; above the first.</param>
    /// <param name="steps">How many evenly spread levels it has in a factorial, both ends among them, 2 to 100 000.</param>
    public static Factor Range(string name, double from, double to, int steps = 2)
    {
        Check.That(double.IsFinite(from) && double.IsFinite(to) && to > from, $"{name} goes from {Check.Text(from)} to {Check.Text(to)}; the second must be greater", nameof(to));
        return new(name, Way.Range, from, to) { Steps = (int)Check.Range(steps, 2, 100_000, Quantity.Number) };
    }

    /// <summary>Normally distributed, SI; of a sampled design only.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="mean">Mean, SI.</param>
    /// <param name="deviation">Standard deviation, SI; more than 0.</param>
    public static Factor Normal(string name, double mean, double deviation)
    {
        Check.That(double.IsFinite(mean) && double.IsFinite(deviation) && deviation > 0, $"{name} has mean {Check.Text(mean)} and deviation {Check.Text(deviation)}; the deviation must be above 0",
            nameof(deviation));
        return new(name, Way.Normal, mean, deviation);
    }

    /// <summary>One of some values, SI, each as often as the others.</summary>
    public static Factor Values(string name, params IReadOnlyList<double> values)
    {
        ArgumentNullException.ThrowIfNull(values);
        Check.That(values.Count > 0 && values.All(double.IsFinite), $"{name} needs at least one value, all of them numbers", nameof(values));
        return new(name, Way.Values, values.ToImmutableArray());
    }

    /// <summary>One of some things with names; its value is the place in the list, from 0.</summary>
    public static Factor Choice(string name, params IReadOnlyList<string> labels)
    {
        ArgumentNullException.ThrowIfNull(labels);
        Check.That(labels.Count > 0 && labels.All(l => !string.IsNullOrWhiteSpace(l)), $"{name} needs at least one label, none of them empty", nameof(labels));
        return new(name, Way.Choice) { Labels = labels.ToImmutableArray() };
    }

    private Factor(string name, Way way, ImmutableArray<double> values)
        : this(name, way) => this.values = values;

    /// <summary>The same factor with its column in a unit: the name gets the unit's word, the numbers are divided by its size.</summary>
    /// <param name="word">The unit as columns spell it: mph, deg, in.</param>
    /// <param name="size">One of the unit in SI.</param>
    /// <param name="zero">Its zero in SI; 0 but for temperatures.</param>
    public Factor In(string word, double size, double zero = 0) => this with { Name = $"{Name}_{word}", UnitSize = size, UnitZero = zero };

    /// <summary>The value at a number in (0, 1), SI: the quantile.</summary>
    public double At(double u) => way switch
    {
        Way.Range => first + (second - first) * u,
        Way.Normal => MathNet.Numerics.Distributions.Normal.InvCDF(first, second, u),
        _ => Level(Math.Min(Levels - 1, (int)(u * Levels))),
    };

    /// <summary>A level, SI, from 0.</summary>
    public double Level(int level)
    {
        Check.Range(level, 0, Levels - 1, Quantity.Number);
        return way switch
        {
            Way.Range => level == Steps - 1 ? second : first + (second - first) * level / (Steps - 1),
            Way.Values => values[level],
            _ => level,
        };
    }

    /// <summary>A value as its column shows it: in the column's unit, or the label.</summary>
    public object Shown(double value) => Labels.Count > 0 ? Labels[(int)value] : (value - UnitZero) / UnitSize;

    /// <summary>Name and what it can be.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Name}: {way switch
    {
        Way.Range => $"{Shown(first):G6} to {Shown(second):G6}",
        Way.Normal => $"{Shown(first):G6} ± {second / UnitSize:G6}",
        Way.Values => string.Join(", ", values.Select(v => $"{Shown(v):G6}")),
        _ => string.Join(", ", Labels),
    }}");
}
