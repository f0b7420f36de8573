namespace BallSim.Fitting;

/// <summary>A loss ρ(r) with its weight ρ'(r)/r and its curvature ρ''(r).</summary>
internal static class Loss
{
    private const double HuberAt = 1.345;
    private const double CauchyAt = 2.385;
    private const double HuberPull = 0.7101645479070;
    private const double HuberSquare = 0.8556923433726;
    private const double CauchyPull = 0.5119528756693;
    private const double CauchySquare = 0.7948426858500;

    public static double Of(RobustLoss loss, double r) => loss switch
    {
        RobustLoss.Huber when Math.Abs(r) > HuberAt => HuberAt * (Math.Abs(r) - 0.5 * HuberAt),
        RobustLoss.Cauchy => 0.5 * CauchyAt * CauchyAt * Math.Log(1 + r * r / (CauchyAt * CauchyAt)),
        _ => 0.5 * r * r,
    };

    public static double Weight(RobustLoss loss, double r) => loss switch
    {
        RobustLoss.Huber when Math.Abs(r) > HuberAt => HuberAt / Math.Abs(r),
        RobustLoss.Cauchy => 1 / (1 + r * r / (CauchyAt * CauchyAt)),
        _ => 1,
    };

    public static double Curvature(RobustLoss loss, double r)
    {
        var u = r * r / (CauchyAt * CauchyAt);
        return loss switch
        {
            RobustLoss.Huber => Math.Abs(r) > HuberAt ? 0 : 1,
            RobustLoss.Cauchy => (1 - u) / ((1 + u) * (1 + u)),
            _ => 1,
        };
    }

    /// <summary>Mean ρ'² of normal residuals of variance one, by numerical integration.</summary>
    public static double MeanPull(RobustLoss loss) => loss switch
    {
        RobustLoss.Huber => HuberPull,
        RobustLoss.Cauchy => CauchyPull,
        _ => 1,
    };

    /// <summary>Weighted mean square of the same residuals, by numerical integration.</summary>
    public static double MeanWeightedSquare(RobustLoss loss) => loss switch
    {
        RobustLoss.Huber => HuberSquare,
        RobustLoss.Cauchy => CauchySquare,
        _ => 1,
    };
}
