namespace BallSim.Shots;

/// <summary>
/// The oil that a shot takes off the lane: the integral over time of <see cref="PathPoint.OilUptake"/>, by three points of Gauss and Legendre to every step of the path, on which the
/// motion is a polynomial and the film one piece of the map.
/// </summary>
internal static class OilTaken
{
    // Roots and weights of the third Legendre polynomial on [0, 1].
    private static readonly double Outer = 0.5 * Math.Sqrt(0.6);

    public static double Of(Shot shot)
    {
        double sum = 0;
        for (var i = 0; i < shot.SegmentCount; i++)
        {
            var length = shot.TimeOf(i);
            sum += length * (5 * shot.At(i, 0.5 - Outer).OilUptake + 8 * shot.At(i, 0.5).OilUptake + 5 * shot.At(i, 0.5 + Outer).OilUptake) / 18;
        }
        return sum;
    }
}
