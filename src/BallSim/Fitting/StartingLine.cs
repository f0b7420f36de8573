namespace BallSim.Fitting;

/// <summary>Where the first metres of a track point: board, launch angle and speed to start a fit from. Medians of slopes (H. Theil 1950, P. K. Sen 1968), so that outliers do not matter.</summary>
internal static class StartingLine
{
    // The ball goes all but straight so far, m.
    private const double Straight = 8;
    private const int FewestPoints = 4;

    public static double? Of(FitShot shot, FitParameter parameter)
    {
        var hand = shot.Ball.Marks.Hand == Hand.Right ? 1 : -1;
        switch (parameter)
        {
            case FitParameter.Board:
                return Line(shot, p => p.X) is { } across ? Math.Clamp(shot.Lane.BoardAt(across.Start), 1, shot.Lane.Boards) : null;
            case FitParameter.LaunchAngle:
                return Line(shot, p => p.X) is { } aim ? hand * Math.Atan(aim.Slope) : null;
            case FitParameter.Speed:
                return Line(shot, p => p.Time) is { Slope: > 0 } pace ? 1 / (pace.Slope * Math.Cos(shot.Release.LaunchAngle)) : null;
            case FitParameter.ClockOffset:
                return Line(shot, p => p.Time)?.Start;
            default:
                return null;
        }
    }

    private static (double Start, double Slope)? Line(FitShot shot, Func<TrackedPoint, double?> value)
    {
        (double At, double Value)[] points = [.. from p in shot.Track.Points where p.Distance <= Straight && value(p) is not null select (p.Distance!.Value, value(p)!.Value)];
        if (points.Length < FewestPoints)
        {
            return null;
        }
        var slope = Median([.. from a in points from b in points where a.At < b.At select (b.Value - a.Value) / (b.At - a.At)]);
        return (Median([.. points.Select(p => p.Value - slope * p.At)]), slope);
    }

    private static double Median(double[] values)
    {
        Array.Sort(values);
        return values[values.Length / 2];
    }
}
