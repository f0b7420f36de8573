using BallSim.Balls;
using BallSim.Friction;
using BallSim.Lanes;
using BallSim.Shots;
using BallSim.Spatial;

namespace BallSim.Ensembles;

/// <summary>Makes the surface under one shot: the map is the lane's, the law depends on the ball.</summary>
internal interface IUnder<TOne>
    where TOne : struct, ISurface<Real>
{
    TOne Under(Ball ball, Lane lane, SimulatorOptions options);
}

internal readonly struct Given(PiecewiseBicubic map) : IUnder<GivenSurface<Real, MapOfReal>>
{
    public GivenSurface<Real, MapOfReal> Under(Ball ball, Lane lane, SimulatorOptions options) => new(new(map));
}

internal readonly struct Film(PiecewiseBicubic map) : IUnder<FilmSurface<Real, MapOfReal>>
{
    public FilmSurface<Real, MapOfReal> Under(Ball ball, Lane lane, SimulatorOptions options) => new(Contact.Of(ball, lane).Law<Real>(options.Friction), new(map));
}

internal readonly struct SlopedGiven(PiecewiseBicubic map, PiecewiseBicubic heights) : IUnder<SlopedSurface<Real, GivenSurface<Real, MapOfReal>, SlopesOfReal>>
{
    public SlopedSurface<Real, GivenSurface<Real, MapOfReal>, SlopesOfReal> Under(Ball ball, Lane lane, SimulatorOptions options) => new(new Given(map).Under(ball, lane, options), new(heights));
}

internal readonly struct SlopedFilm(PiecewiseBicubic map, PiecewiseBicubic heights) : IUnder<SlopedSurface<Real, FilmSurface<Real, MapOfReal>, SlopesOfReal>>
{
    public SlopedSurface<Real, FilmSurface<Real, MapOfReal>, SlopesOfReal> Under(Ball ball, Lane lane, SimulatorOptions options) => new(new Film(map).Under(ball, lane, options), new(heights));
}
