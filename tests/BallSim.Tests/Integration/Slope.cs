namespace BallSim.Tests.Integration;

/// <summary>Orders of convergence from a study over several steps.</summary>
internal static class Slope
{
    /// <summary>Least-squares slope of log(error) over log(h).</summary>
    public static double Of(IReadOnlyList<double> h, IReadOnlyList<double> errors)
    {
        double[] x = [.. h.Select(v => Math.Log(v))], y = [.. errors.Select(v => Math.Log(v))];
        var (mx, my) = (x.Average(), y.Average());
        return x.Zip(y, (a, b) => (a - mx) * (b - my)).Sum() / x.Sum(a => (a - mx) * (a - mx));
    }
}
