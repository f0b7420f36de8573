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
    /// <summary>Rounding, of a step.</summary>
    public const double Rounding = 5e-15;

    /// <summary>Where along a step a quantity passes from below zero at one place to above at another, as closely as <see cref="Search"/> says.</summary>
    public static double Crossing<TAlong, TContext>(in Between between, double least, TAlong f, ref TContext context)
        where TAlong : struct, IAlong<TContext>
        where TContext : struct
    {
        var search = new Search(between, least);
        while (!search.IsOver)
        {
            search.Tell(f.At(search.Place, ref context));
        }
        return search.Place;
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
