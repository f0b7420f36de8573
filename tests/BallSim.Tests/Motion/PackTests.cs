using BallSim.Balls;
using BallSim.Friction;
using BallSim.Lanes;
using BallSim.Motion;
using BallSim.Shots;
using BallSim.Spatial;

namespace BallSim.Tests.Motion;

/// <summary>How the driver of lanes lies in memory; that lanes are the shots alone is for <see cref="DriverTests"/> and the tests of ensembles.</summary>
public class PackTests
{
    [Fact]
    public void Vectors_lie_on_the_lines_of_the_cache()
    {
        Assert.Equal(0, Askew<Doubles8>());
        Assert.Equal(0, Askew<Floats16>());
        Assert.Equal(0, Askew<Doubles4>());
        Assert.Equal(0, Askew<Floats8>());
    }

    private static int Askew<T>()
        where T : struct, ILanes<T>, IReal<T>
    {
        var map = PiecewiseBicubic.Constant(0.1);
        var body = Simulator.BodyOf(new Ball { Mass = 6.8, Radius = 0.1085, Inertia = new(0.028, 0.028, 0.028) }, Lane.Regulation, new());
        using var film = new Pack<T, FilmOfLanes<T>, FilmSurface<Real, MapOfReal>>(new(map), body, 1000);
        using var given = new Pack<T, GivenOfLanes<T>, GivenSurface<Real, MapOfReal>>(new(map), body, 1000);
        return film.Askew | given.Askew;
    }
}
