using BallSim.Friction;
using BallSim.Releases;
using BallSim.Shots;

namespace BallSim.Fitting;

/// <summary>What belongs to each parameter of a fit: its bounds, its unit, and where its value stands before the fit.</summary>
internal static class ParameterFacts
{
    public const int Count = (int)FitParameter.ClockOffset + 1;

    // The law must stay whole (Floor + ViscousCeiling < Dry); what the bounds let through of the rest is refused point by point.
    private static readonly (double Low, double High, Quantity Unit)[] Table =
    [
        (0.01, 1, Quantity.Number),
        (0, 0.5, Quantity.Number),
        (0.05, 20, Quantity.Number),
        (0, 20e-6, Quantity.Film),
        (0.001, 1, Quantity.Of("Pa s")),
        (0, 2, Quantity.Number),
        (-0.05, 0.05, Quantity.Number),
        (-0.05, 0.05, Quantity.Number),
        (0.5, 39.5, Quantity.Of("boards")),
        (-20 * Units.Degree, 20 * Units.Degree, Quantity.Angle),
        (0.5, 17.5, Quantity.Speed),
        (0, 80, Quantity.SpinRate),
        (-Math.PI, Math.PI, Quantity.Angle),
        (-Math.PI / 2, Math.PI / 2, Quantity.Angle),
        (-2 * Math.PI, 2 * Math.PI, Quantity.Angle),
        (-1e6, 1e6, Quantity.Time),
    ];

    public static (double Low, double High) Range(FitParameter p) => (Table[(int)p].Low, Table[(int)p].High);

    public static Quantity Unit(FitParameter p) => Table[(int)p].Unit;

    public static bool BelongsToRelease(FitParameter p) => p >= FitParameter.Board;

    /// <summary>Every parameter's value as the ball, the lane, the release and the options have it.</summary>
    public static double[] Before(FitShot shot, SimulatorOptions options)
    {
        var r = shot.Release;
        var (floor, dry) = shot.Lane.GivenFriction is { } given ? given.Map.Extremes() : (options.Friction.Floor, options.Friction.Dry);
        return
        [
            dry, floor, options.Friction.FilmScale, shot.Ball.Cover.Pores, shot.Lane.OilViscosity, options.DragCoefficient,
            shot.Lane.Topography.CrossSlope, shot.Lane.Topography.LengthSlope,
            r.Board, r.LaunchAngle, r.Speed, r.SpinRate, r.AxisRotation, r.AxisTilt, r.RollPhase, 0,
        ];
    }

    public static FrictionCalibration Calibrated(FrictionCalibration before, Func<FitParameter, double?> value) => before with
    {
        Dry = value(FitParameter.Dry) ?? before.Dry,
        Floor = value(FitParameter.Floor) ?? before.Floor,
        FilmScale = value(FitParameter.FilmScale) ?? before.FilmScale,
    };

    public static Release Released(Release before, ReadOnlySpan<double> values) => before with
    {
        Board = values[(int)FitParameter.Board],
        LaunchAngle = values[(int)FitParameter.LaunchAngle],
        Speed = values[(int)FitParameter.Speed],
        SpinRate = values[(int)FitParameter.SpinRate],
        AxisRotation = values[(int)FitParameter.AxisRotation],
        AxisTilt = values[(int)FitParameter.AxisTilt],
        RollPhase = values[(int)FitParameter.RollPhase],
    };
}
