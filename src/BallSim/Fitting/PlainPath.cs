using BallSim.Shots;

namespace BallSim.Fitting;

/// <summary>What a shot would show at the stations of its track, without derivatives.</summary>
internal static class PlainPath
{
    /// <summary>The computed numbers, in the order of the observations; null where there is no such shot, or it ends before a station.</summary>
    public static double[]? Of(FitShot shot, SimulatorOptions options, double[] values, Observation[] seen)
    {
        Shot path;
        try
        {
            path = FittedShot.Of(shot, options, values).Throw();
        }
        catch (ArgumentException)
        {
            // Beyond what a release, a law or a lane can be: the types say so, each for itself.
            return null;
        }
        // The clock of the track is ahead of the shot's by the offset.
        var ahead = values[(int)FitParameter.ClockOffset];
        var computed = new double[seen.Length];
        var (point, station) = (path.Start, -1);
        for (var k = 0; k < seen.Length; k++)
        {
            var o = seen[k];
            if (o.Station != station)
            {
                station = o.Station;
                if (o.Point.Distance is { } distance)
                {
                    if (!(path.End.Y >= distance))
                    {
                        return null;
                    }
                    point = path.AtDistance(distance);
                }
                else if (o.Point.Time!.Value - ahead is >= 0 and var time && time <= path.Duration)
                {
                    point = path.At(time);
                }
                else
                {
                    return null;
                }
            }
            computed[k] = o.Quantity switch
            {
                FitQuantity.Lateral => point.X,
                FitQuantity.Time => point.Time + ahead,
                FitQuantity.Speed => point.Speed,
                FitQuantity.Heading => point.Heading,
                FitQuantity.SpinRate => point.SpinRate,
                FitQuantity.AxisRotation => point.AxisRotation,
                _ => point.AxisTilt,
            };
        }
        return computed;
    }
}
