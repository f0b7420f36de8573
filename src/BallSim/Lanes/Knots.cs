namespace BallSim.Lanes;

/// <summary>
/// Increasing knots and the quick way from a coordinate to its interval: a table of equal bins, none wider than the narrowest interval (as far as the table's
/// size allows), so that one look and at most a step or two find it.
/// </summary>
internal sealed class Knots
{
    private readonly double[] values;
    private readonly int[] bins;
    private readonly double perUnit;

    public Knots(double[] values)
        : this(values, 1, 4096)
    {
    }

    /// <summary>The same with bins so fine that the interval a bin begins in or the next holds any place in it, as far as the table's size allows: with more bins floats could not tell them apart.</summary>
    public static Knots Fine(double[] values) => new(values, 2.02, 1 << 14);

    // So many bins to the narrowest interval, at least.
    private Knots(double[] values, double finer, int mostBins)
    {
        this.values = values;
        var narrowest = double.PositiveInfinity;
        for (var i = 1; i < values.Length; i++)
        {
            narrowest = Math.Min(narrowest, values[i] - values[i - 1]);
        }
        var span = values[^1] - values[0];
        var count = (int)Math.Clamp(Math.Ceiling(finer * span / narrowest), 1, mostBins);
        perUnit = count / span;
        bins = new int[count];
        for (int bin = 0, interval = 0; bin < count; bin++)
        {
            // One bin back from the exact place, against the rounding of the product in IndexOf.
            while (interval < values.Length - 2 && values[interval + 1] <= values[0] + (bin - 1) / perUnit)
            {
                interval++;
            }
            bins[bin] = interval;
        }
    }

    /// <summary>The interval that each bin begins in (or one before), for who keeps the numbers elsewhere.</summary>
    public int[] Bins => bins;

    /// <summary>So many steps from the interval that a bin begins in lead to any place in the bin, also for a coordinate in single precision.</summary>
    public int Steps
    {
        get
        {
            var most = 0;
            for (int bin = 0, last = 0; bin < bins.Length; bin++)
            {
                while (last < values.Length - 2 && values[last + 1] <= values[0] + (bin + 1.01) / perUnit)
                {
                    last++;
                }
                most = Math.Max(most, last - bins[bin]);
            }
            return Math.Max(most, values.Length - 2 - bins[^1]);
        }
    }

    /// <summary>Bins per metre.</summary>
    public double PerUnit => perUnit;

    /// <summary>The interval [k, k+1) that holds the coordinate; the first or last one outside.</summary>
    public int IndexOf(double coordinate)
    {
        var at = (coordinate - values[0]) * perUnit;
        var bin = at > 0 ? (int)Math.Min(at, bins.Length - 1) : 0;
        var interval = bins[bin];
        while (interval < values.Length - 2 && coordinate >= values[interval + 1])
        {
            interval++;
        }
        return interval;
    }

    /// <summary>Where an interval ends, or +∞ for the last: the outer intervals go on for ever.</summary>
    public double EndOf(int interval) => interval < values.Length - 2 ? values[interval + 1] : double.PositiveInfinity;
}
