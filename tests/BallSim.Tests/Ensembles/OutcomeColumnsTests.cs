using System.Reflection;
using BallSim.Balls;
using BallSim.Ensembles;
using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Shots;
using static BallSim.Units;

namespace BallSim.Tests.Ensembles;

/// <summary>Outcomes in columns are the outcomes, bit for bit, and nothing else is written.</summary>
public class OutcomeColumnsTests
{
    // What lies around a column in a larger array.
    private const int Before = 3, After = 2;

    private const int Many = 3 * ProcessorEngine.Chunk + 7;

    private static readonly EnsembleOptions Coarse = new() { Shot = new() { Tolerance = 1e-4, MaxTime = 3 } };

    private static readonly Ball Ball = Ball.FromSpecification(15 * Pound, 2.48 * Inch, 0.050 * Inch, 0.015 * Inch, centreOfMass: new Vector3D(2.4, 1.0, -1.4) * Millimetre);

    private static readonly Lane Lane = Lane.Regulation with { Oil = OilMap.Crowned(40 * Foot, 25 * Millilitre) };

    private static readonly Release Common = new() { Board = 24, Speed = 8, SpinRate = 30, AxisInBall = new(0.6, 0.64, 0.48), AxisTilt = 10 * Degree, LaunchAngle = 2 * Degree };

    // Some gutter, some are too slow for the longest time and roll early, to slip again in the oil.
    private static ReleaseColumns Releases(int count) => new()
    {
        Speed = [.. Enumerable.Range(0, count).Select(i => i % 11 == 5 ? 3 : 7.5 + 0.002 * (i % 500))],
        LaunchAngle = [.. Enumerable.Range(0, count).Select(i => (i % 7 == 3 ? -8 : 0.5 * (i % 9)) * Degree)],
        AxisRotation = [.. Enumerable.Range(0, count).Select(i => (i % 11 == 5 ? 0 : 45) * Degree)],
    };

    private static Throw[] Throws(int count)
    {
        var releases = Releases(count);
        return [.. Enumerable.Range(0, count).Select(i => new Throw(Ball, Lane, Common with { Speed = releases.Speed![i], LaunchAngle = releases.LaunchAngle![i], AxisRotation = releases.AxisRotation![i] }))];
    }

    private static readonly PropertyInfo[] Numbers = [.. typeof(Outcome).GetProperties().Where(p => p.CanWrite)];

    public static TheoryData<string> Names => [.. Numbers.Select(n => n.Name)];

    /// <summary>Throws so many of the rows by one of the two ways.</summary>
    private static void Thrown(bool fromColumns, int count, OutcomeColumns outcomes, EnsembleOptions? options = null, IProgress<int>? progress = null, CancellationToken cancellation = default)
    {
        if (fromColumns)
        {
            Ensemble.ThrowInto(Ball, Lane, Common, Releases(count), outcomes, options ?? Coarse, progress, cancellation);
        }
        else
        {
            Ensemble.ThrowInto(Throws(count), outcomes, options ?? Coarse, progress, cancellation);
        }
    }

    /// <summary>An array full of what no shot leaves, and as the column of a number the part of it between what lies around.</summary>
    private static Array Give(OutcomeColumns columns, PropertyInfo number, int count)
    {
        var whole = Array.CreateInstance(number.PropertyType, Before + count + After);
        for (var i = 0; i < whole.Length; i++)
        {
            whole.SetValue(Untouched(number.PropertyType), i);
        }
        typeof(OutcomeColumns).GetProperty(number.Name)!.SetValue(columns, Activator.CreateInstance(typeof(Memory<>).MakeGenericType(number.PropertyType), whole, Before, count));
        return whole;
    }

    private static object Untouched(Type type) => type == typeof(double) ? BitConverter.Int64BitsToDouble(0x7FF8_0000_0BAD_0BAD) : type.IsEnum ? Enum.ToObject(type, -77) : -77;

    private static long Bits(object? number) => number is double d ? BitConverter.DoubleToInt64Bits(d) : Convert.ToInt64(number);

    private static long[] Bits(Array whole) => [.. whole.Cast<object>().Select(Bits)];

    /// <summary>The array as it must be: the numbers of these outcomes, and around them what was there.</summary>
    private static long[] Around(PropertyInfo number, IEnumerable<Outcome> outcomes)
    {
        var untouched = Bits(Untouched(number.PropertyType));
        return [.. Enumerable.Repeat(untouched, Before), .. outcomes.Select(o => Bits(number.GetValue(o))), .. Enumerable.Repeat(untouched, After)];
    }

    [Fact]
    public void Every_number_of_an_outcome_has_a_column_of_its_name_and_type()
    {
        Assert.Equal(Numbers.Select(n => (n.Name, typeof(Memory<>).MakeGenericType(n.PropertyType))).OrderBy(n => n.Name), typeof(OutcomeColumns).GetProperties().Select(c => (c.Name, c.PropertyType)).OrderBy(c => c.Name));
        // What else an outcome tells follows from its numbers.
        Assert.Equal([nameof(Outcome.ReachedPins)], typeof(Outcome).GetProperties().Except(Numbers).Select(p => p.Name));
    }

    [Fact]
    public void The_rows_are_of_many_kinds()
    {
        var outcomes = Ensemble.Throw(Throws(Many), Coarse);
        Assert.Superset(new HashSet<StopReason>([StopReason.HeadPin, StopReason.PassedHeadPin, StopReason.Gutter, StopReason.TimeLimit]), outcomes.Select(o => o.StopReason).ToHashSet());
        Assert.Contains(outcomes, o => double.IsNaN(o.RollDistance));
        Assert.Contains(outcomes, o => o.SlippedAgain > 0);
    }

    [Theory]
    [InlineData(false, 1)]
    [InlineData(false, 4)]
    [InlineData(true, 1)]
    [InlineData(true, 4)]
    public void All_columns_are_the_outcomes_to_the_last_bit_and_what_lies_around_stays(bool fromColumns, int threads)
    {
        var expected = Ensemble.Throw(Throws(Many), Coarse with { Threads = 1 });
        var columns = new OutcomeColumns();
        var given = Numbers.Select(n => (Number: n, Whole: Give(columns, n, Many))).ToArray();
        Thrown(fromColumns, Many, columns, Coarse with { Threads = threads });
        Assert.All(given, g => Assert.Equal(Around(g.Number, expected), Bits(g.Whole)));
    }

    [Theory, MemberData(nameof(Names))]
    public void A_column_alone_is_enough(string name)
    {
        const int Count = 12;
        var number = Numbers.Single(n => n.Name == name);
        var columns = new OutcomeColumns();
        var whole = Give(columns, number, Count);
        Thrown(fromColumns: true, Count, columns);
        Assert.Equal(Around(number, Ensemble.Throw(Throws(Count), Coarse)), Bits(whole));
        Assert.Equal(name, columns.ToString());
    }

    [Fact]
    public void An_array_is_a_column()
    {
        var x = new double[5];
        var steps = new int[5];
        Ensemble.ThrowInto(Throws(5), new() { X = x, Steps = steps }, Coarse);
        var expected = Ensemble.Throw(Throws(5), Coarse);
        Assert.Equal(expected.Select(o => o.X), x);
        Assert.Equal(expected.Select(o => o.Steps), steps);
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(1)]
    public void A_column_of_another_length_is_told_before_anything_is_thrown(int more)
    {
        double[] time = [1, 2, 3], x = new double[3 + more];
        var columns = new OutcomeColumns { Time = time, X = x };
        // No throw among them: whoever began would say so.
        var wrong = Assert.Throws<ArgumentException>(() => Ensemble.ThrowInto(new Throw[3], columns));
        Assert.Contains($"X has {x.Length} places, there are 3 rows", wrong.Message, StringComparison.Ordinal);
        Assert.Equal("X", wrong.ParamName);
        wrong = Assert.Throws<ArgumentException>(() => Ensemble.ThrowInto(Ball, Lane, Common, new() { Speed = [800, 800, 800] }, columns));
        Assert.Contains($"X has {x.Length} places, there are 3 rows", wrong.Message, StringComparison.Ordinal);
        Assert.Equal([1, 2, 3], time);
        Assert.All(x, number => Assert.Equal(0, number));
    }

    [Fact]
    public void No_column_is_told_before_anything_is_thrown()
    {
        Assert.Contains("there is no column of outcomes", Assert.Throws<ArgumentException>(() => Ensemble.ThrowInto(new Throw[3], new OutcomeColumns())).Message, StringComparison.Ordinal);
        Assert.Contains("there is no column of outcomes", Assert.Throws<ArgumentException>(() => Ensemble.ThrowInto(Ball, Lane, Common, new() { Speed = [800] }, new OutcomeColumns { X = Array.Empty<double>() })).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentNullException>("outcomes", () => Ensemble.ThrowInto(Throws(1), outcomes: null!));
        Assert.Throws<ArgumentNullException>("outcomes", () => Ensemble.ThrowInto(Ball, Lane, Common, Releases(1), outcomes: null!));
    }

    [Fact]
    public void No_rows_want_no_places()
    {
        Ensemble.ThrowInto([], new OutcomeColumns { X = Array.Empty<double>() });
        Assert.Throws<ArgumentException>(() => Ensemble.ThrowInto([], new OutcomeColumns { X = new double[1] }));
    }

    [Fact]
    public void A_wrong_row_is_told_as_ever()
    {
        var x = new double[2];
        Assert.Contains("throw 1", Assert.Throws<ArgumentException>(() => Ensemble.ThrowInto([Throws(1)[0], default], new OutcomeColumns { X = x })).Message, StringComparison.Ordinal);
        Assert.Contains("row 1", Assert.Throws<ArgumentException>(() => Ensemble.ThrowInto(Ball, Lane, Common, new() { Speed = [8, 800] }, new OutcomeColumns { X = x })).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void On_cancellation_rows_are_written_as_far_as_they_came(bool fromColumns)
    {
        const int Count = 10 * ProcessorEngine.Chunk;
        using var source = new CancellationTokenSource();
        var number = typeof(Outcome).GetProperty(nameof(Outcome.X))!;
        var columns = new OutcomeColumns();
        var whole = Give(columns, number, Count);
        var most = 0;
        Assert.ThrowsAny<OperationCanceledException>(() => Thrown(fromColumns, Count, columns, Coarse with { Threads = 1 }, new Told(n =>
        {
            most = n;
            source.Cancel();
        }), source.Token));
        var all = Around(number, Ensemble.Throw(Throws(Count), Coarse));
        var untouched = Bits(Untouched(typeof(double)));
        var written = Bits(whole).Zip(all).Where(p => p.First != untouched).ToArray();
        Assert.InRange(written.Length, 1, Count - 1);
        Assert.Equal(most, written.Length);
        Assert.All(written, p => Assert.Equal(p.Second, p.First));

        whole = Give(columns, number, Count);
        Assert.ThrowsAny<OperationCanceledException>(() => Thrown(fromColumns, Count, columns, cancellation: source.Token));
        Assert.All(Bits(whole), bits => Assert.Equal(untouched, bits));
    }

    [Fact]
    public void No_shot_allocates()
    {
        var outcomes = Ensemble.Throw(Throws(20), Coarse);
        var columns = new OutcomeColumns();
        foreach (var number in Numbers)
        {
            Give(columns, number, 20);
        }
        var keeper = columns.Into(20);
        keeper(0, outcomes);
        var before = GC.GetAllocatedBytesForCurrentThread();
        keeper(10, outcomes.AsSpan(10));
        keeper(0, outcomes.AsSpan(0, 10));
        Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());
    }

    private sealed class Told(Action<int> tell) : IProgress<int>
    {
        public void Report(int value) => tell(value);
    }
}
