namespace BallSim.Integration;

/// <summary>A quantity along a step, from 0 at its start to 1 at its end.</summary>
internal interface IAlong<TContext>
    where TContext : struct
{
    double At(double θ, ref TContext context);
}

/// <summary>Places inside a step.</summary>
internal static class Root
{
    /// <summary>Where along a step a quantity passes from below zero to above: by secants to rounding, the end that stays weighing half each time (the Illinois rule), with bisection's help where that is slow.</summary>
    public static double Crossing<TAlong, TContext>(double low, double high, TAlong f, ref TContext context)
        where TAlong : struct, IAlong<TContext>
        where TContext : struct
    {
        const double Least = 5e-15;
        double gLow = 0, gHigh = 0;
        var stayed = 0;
        // Both ends first. In one loop with the rest, because a card's kernel holds a copy of the quantity for each place where it is asked for.
        for (var i = -2; i < 60 && (i < 0 || high - low > 2 * Least); i++)
        {
            var secant = low - gLow * (high - low) / (gHigh - gLow);
            var middle = i % 8 == 7 || !(secant >= low && secant <= high) ? 0.5 * (low + high) : Math.Max(low + Least, Math.Min(high - Least, secant));
            middle = i == -2 ? low : i == -1 ? high : middle;
            var g = f.At(middle, ref context);
            if (i < 0)
            {
                (gLow, gHigh) = i == -2 ? (g, gHigh) : (gLow, g);
                continue;
            }
            if (g == 0)
            {
                return middle;
            }
            if (g > 0)
            {
                (high, gHigh) = (middle, g);
                gLow = stayed < 0 ? 0.5 * gLow : gLow;
                stayed = -1;
            }
            else
            {
                (low, gLow) = (middle, g);
                gHigh = stayed > 0 ? 0.5 * gHigh : gHigh;
                stayed = 1;
            }
        }
        return high;
    }

    /// <summary>Where along a step a quantity with one maximum is greatest: golden section.</summary>
    public static double Peak<TAlong, TContext>(TAlong f, ref TContext context)
        where TAlong : struct, IAlong<TContext>
        where TContext : struct
    {
        const double Ratio = 0.6180339887498949;
        double low = 0, high = 1;
        var (a, b) = (high - Ratio, low + Ratio);
        var (ga, gb) = (f.At(a, ref context), f.At(b, ref context));
        for (var i = 0; i < 40; i++)
        {
            if (ga < gb)
            {
                (low, a, ga) = (a, b, gb);
                b = low + Ratio * (high - low);
                gb = f.At(b, ref context);
            }
            else
            {
                (high, b, gb) = (b, a, ga);
                a = high - Ratio * (high - low);
                ga = f.At(a, ref context);
            }
        }
        return 0.5 * (low + high);
    }
}
