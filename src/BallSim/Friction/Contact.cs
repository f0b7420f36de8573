using BallSim.Balls;
using BallSim.Lanes;
using BallSim.Spatial;

namespace BallSim.Friction;

/// <summary>
/// The contact of one ball with one lane: what the friction law needs of both, and the constants that follow from them once per ball, with the normal force held at N_0 = m · 9.80665.
/// </summary>
/// <remarks>
/// E* = 1/((1 - ν_b²)/E_b + (1 - ν_l²)/E_l), r_c = (3 N_0 R/(4 E*))^(1/3), p_c = N_0/(π r_c²) (Hertz);
/// h_ff = R · 7.32 (1 - 0.72 e^(-0.28)) U^0.64 W^(-0.22), U = η u_e/(2 E* R), W = N_0/(2 E* R²) (Hamrock and Dowson 1978, soft contact; coefficients from memory).
/// (F3) h_s = c_s · 1.25 √(Ra_ball² + Ra_lane²) + h_p.
/// </remarks>
internal sealed record Contact(double Mass, double Radius, double BallRoughness, double Pores, double BallModulus, double BallPoissonRatio,
    double LaneRoughness, double LaneModulus, double LanePoissonRatio, double Viscosity)
{
    /// <summary>The contact of a ball with a lane, at the lane's temperature.</summary>
    public static Contact Of(Ball ball, Lane lane) => new(ball.Mass, ball.Radius, ball.Finish.Roughness, ball.Cover.Pores, ball.Cover.Modulus, ball.Cover.PoissonRatio,
        lane.Roughness, lane.Modulus, lane.PoissonRatio, lane.Viscosity);

    /// <summary>N_0, N.</summary>
    public double Load => Mass * Units.StandardGravity;

    /// <summary>E*, Pa.</summary>
    public double EffectiveModulus => 1 / ((1 - BallPoissonRatio * BallPoissonRatio) / BallModulus + (1 - LanePoissonRatio * LanePoissonRatio) / LaneModulus);

    /// <summary>r_c, m.</summary>
    public double ContactRadius => Math.Cbrt(3 * Load * Radius / (4 * EffectiveModulus));

    /// <summary>p_c, Pa.</summary>
    public double MeanPressure => Load / (Math.PI * ContactRadius * ContactRadius);

    /// <summary>h_ff, the fully flooded film, m.</summary>
    public double FloodedFilm(double entrainmentSpeed)
    {
        var speed = Viscosity * entrainmentSpeed / (2 * EffectiveModulus * Radius);
        var load = Load / (2 * EffectiveModulus * Radius * Radius);
        return Radius * 7.32 * (1 - 0.72 * Math.Exp(-0.28)) * Math.Pow(speed, 0.64) * Math.Pow(load, -0.22);
    }

    /// <summary>h_s (F3), m.</summary>
    public double FilmScale(double multiplier) =>
        multiplier * 1.25 * Math.Sqrt(BallRoughness * BallRoughness + LaneRoughness * LaneRoughness) + Pores;

    /// <summary>The law of this contact.</summary>
    public FilmLaw<T> Law<T>(FrictionCalibration calibration)
        where T : struct, IReal<T> => new(this, calibration);
}
