namespace BallSim.Integration;

/// <summary>
/// The search for a zero between a place where a quantity is below and one where it is above, look by look: by secants, the end that stays weighing half each time (the Illinois rule), with bisection's help where that is slow, until both
/// ends are twice the least distance apart; first where it is likely, if that is known. Who searches looks at <see cref="Place"/> and tells what he found.
/// </summary>
internal struct Search
{
    private readonly double least;
    private double low, atLow, high, atHigh;

    // Looks so far, and on which side the last one was, above 1, below -1.
    private int looks, side;

    public Search(in Between between, double least)
    {
        (low, atLow, high, atHigh, this.least) = (between.Low, between.AtLow, between.High, between.AtHigh, least);
        Go();
        if (between.Likely > low && between.Likely < high)
        {
            Place = between.Likely;
        }
    }

    /// <summary>Where to look next; in the end, where it is.</summary>
    public double Place { get; private set; }

    public bool IsOver { get; private set; }

    /// <summary>The quantity at <see cref="Place"/>.</summary>
    public void Tell(double g)
    {
        if (g == 0)
        {
            IsOver = true;
            return;
        }
        if (g > 0)
        {
            (high, atHigh) = (Place, g);
            atLow = side > 0 ? 0.5 * atLow : atLow;
            side = 1;
        }
        else
        {
            (low, atLow) = (Place, g);
            atHigh = side < 0 ? 0.5 * atHigh : atHigh;
            side = -1;
        }
        looks++;
        Go();
    }

    private void Go()
    {
        const int MostLooks = 60;
        if (looks == MostLooks || !(high - low > 2 * least))
        {
            (Place, IsOver) = (high, true);
            return;
        }
        var secant = low - atLow * (high - low) / (atHigh - atLow);
        Place = looks % 8 == 7 || !(secant >= low && secant <= high) ? 0.5 * (low + high) : Math.Max(low + least, Math.Min(high - least, secant));
    }
}
