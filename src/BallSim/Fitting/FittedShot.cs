using BallSim.Balls;
using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Shots;

namespace BallSim.Fitting;

/// <summary>A tracked shot with the numbers that the fit found for it: throw it to see the fitted path and its metrics.</summary>
/// <param name="Track">The track.</param>
/// <param name="Ball">The ball, with fitted pores if they were fitted.</param>
/// <param name="Lane">The lane, with fitted slope, viscosity or given friction if they were fitted.</param>
/// <param name="Release">The fitted release.</param>
/// <param name="Options">The options, with the fitted friction law.</param>
public sealed record FittedShot(TrackedShot Track, Ball Ball, Lane Lane, Release Release, SimulatorOptions Options)
{
    /// <summary>The fitted path.</summary>
    public Shot Throw() => Simulator.Throw(Ball, Lane, Release, Options);

    internal static FittedShot Of(FitShot shot, SimulatorOptions options, double[] values)
    {
        double Of(FitParameter p) => values[(int)p];
        var (ball, lane) = (shot.Ball, shot.Lane);
        if (Of(FitParameter.Pores) != ball.Cover.Pores)
        {
            ball = ball with { Cover = ball.Cover with { Pores = Of(FitParameter.Pores) } };
        }
        if (Of(FitParameter.Viscosity) != lane.OilViscosity)
        {
            lane = lane with { OilViscosity = Of(FitParameter.Viscosity) };
        }
        if (Of(FitParameter.CrossSlope) != lane.Topography.CrossSlope || Of(FitParameter.LengthSlope) != lane.Topography.LengthSlope)
        {
            // A measured surface keeps its heights; a tilt on top of it is gravity's.
            lane = lane.Topography.Heights is null
                ? lane with { Topography = Topography.Tilted(Of(FitParameter.CrossSlope), Of(FitParameter.LengthSlope)) }
                : lane with { Gravity = lane.Gravity + lane.Gravity.Z * new Vector3D(Of(FitParameter.CrossSlope), Of(FitParameter.LengthSlope), 0) };
        }
        var friction = options.Friction;
        if (lane.GivenFriction is { } given)
        {
            lane = lane with { GivenFriction = given.Between(Of(FitParameter.Floor), Of(FitParameter.Dry)) };
        }
        else
        {
            friction = friction with { Dry = Of(FitParameter.Dry), Floor = Of(FitParameter.Floor), FilmScale = Of(FitParameter.FilmScale) };
        }
        return new(shot.Track, ball, lane, ParameterFacts.Released(shot.Release, values), options with { Friction = friction, DragCoefficient = Of(FitParameter.DragCoefficient) });
    }

    /// <summary>The track, and the release that was found.</summary>
    public override string ToString() => $"{Track}; {Release}";
}
