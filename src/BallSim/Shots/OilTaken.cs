namespace BallSim.Shots;

/// <summary>
/// The oil that a shot takes off the lane: the integral over time of <see cref="PathPoint.OilUptake"/>, by three points of Gauss and Legendre to every quarter of a step of the path, on which the
/// motion is a polynomial and the film one piece of the map; quarters, because the fresh fraction dips twice a turn.
/// </summary>
internal static class OilTaken
{
    // Roots and weights of the third Legendre polynomial on [0, 1].
    private static readonly double Outer = 0.5 * Math.Sqrt(0.6);

    public static double Of(Shot shot)
    {
        const int Parts = 4;
        double sum = 0;
        for (var i = 0; i < shot.SegmentCount; i++)
        {
            var length = shot.TimeOf(i) / Parts;
            double Uptake(double θ) => shot.At(i, θ / Parts).OilUptake;
            for (var part = 0.5; part < Parts; part++)
            {
                sum += length * (5 * Uptake(part - Outer) + 8 * Uptake(part) + 5 * Uptake(part + Outer)) / 18;
            }
        }
        return sum;
    }
}
