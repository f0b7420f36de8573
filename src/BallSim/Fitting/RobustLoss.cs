namespace BallSim.Fitting;

/// <summary>What a fit makes of a residual r, in units of its standard deviation.</summary>
public enum RobustLoss
{
    /// <summary>½ r²: least squares. Best where every error is normal; one point that is far off moves everything.</summary>
    LeastSquares,

    /// <summary>½ r² up to 1.345, linear beyond (Huber, Ann. Math. Stat. 35 (1964) 73): 95 % efficient on normal errors, and a far point still pulls a little.</summary>
    Huber,

    /// <summary>(c²/2) ln(1 + (r/c)²) with c = 2.385: 95 % efficient on normal errors (constant from memory), and the farther a point the less it pulls. The fit goes over Huber's loss first, since this one may have more than one minimum.</summary>
    Cauchy,
}
