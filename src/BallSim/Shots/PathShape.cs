namespace BallSim.Shots;

/// <summary>The numbers of the trade from a path; each definition stands on the type it makes.</summary>
internal static class PathShape
{
    // Samples to a revolution when the turning rate is sought.
    private const int PerRevolution = 24;

    public static Entry Entry(Shot shot)
    {
        var end = shot.End;
        var hand = shot.Hand == Hand.Right ? 1 : -1;
        // A study may start a ball at the pins' line that moves along it or not at all.
        var line = end.VelocityY > 0 ? end.X + (shot.Lane.Length - end.Y) * end.VelocityX / end.VelocityY : end.X;
        return new()
        {
            TouchesHeadPin = shot.StopReason == StopReason.HeadPin,
            Time = end.Time,
            X = end.X,
            Distance = end.Y,
            Board = end.Board,
            BoardAtPinLine = shot.Lane.BoardAt(line),
            Offset = end.X - shot.Lane.Pocket(shot.Hand),
            Angle = Math.Atan2(-hand * end.VelocityX, end.VelocityY),
            Speed = end.Speed,
            SpinRate = end.SpinRate,
            AxisRotation = end.AxisRotation,
            AxisTilt = end.AxisTilt,
            Revolutions = end.Revolutions,
            SlipSpeed = end.SlipSpeed,
        };
    }

    public static Breakpoint Breakpoint(Shot shot)
    {
        var hand = shot.Hand == Hand.Right ? 1 : -1;
        var (best, isEnd) = (shot.Start, true);
        void Try(PathPoint p, bool end)
        {
            if (hand * p.X > hand * best.X)
            {
                (best, isEnd) = (p, end);
            }
        }
        Try(shot.End, true);
        for (var i = 0; i < shot.SegmentCount; i++)
        {
            // Outward at the start of a piece and inward at its end: the turning point lies between. Halves, because an offset ball's velocity swings.
            for (var half = 0; half < 2; half++)
            {
                double low = half / 2.0, high = low + 0.5;
                if (!(hand * shot.At(i, low).VelocityX > 0) || !(hand * shot.At(i, high).VelocityX <= 0))
                {
                    continue;
                }
                for (var n = 0; n < 50; n++)
                {
                    var middle = 0.5 * (low + high);
                    (low, high) = hand * shot.At(i, middle).VelocityX > 0 ? (middle, high) : (low, middle);
                }
                Try(shot.At(i, high), false);
            }
        }
        return new(best.Time, best.X, best.Y, best.Board, isEnd);
    }

    public static EndOfSkid? EndOfSkid(Shot shot)
    {
        // A shot that ends as it lands may end a rounding error before.
        var landed = shot.PhaseChanges is [{ From: ShotPhase.Loft } landing, ..] ? Math.Min(landing.Time, shot.Duration) : 0;
        var begin = shot.At(landed);
        var turns = shot.End.Revolutions - begin.Revolutions;
        if (turns < 1 || Math.Abs(shot.End.Heading - begin.Heading) < 1e-4)
        {
            return null;
        }

        // Heading and path length at equal fractions of a revolution (equal in time is near enough: the spin rate changes slowly), then differences over one revolution.
        var count = (int)Math.Ceiling(turns * PerRevolution) + 1;
        var points = new PathPoint[count];
        var lengths = new double[count];
        for (var i = 0; i < count; i++)
        {
            points[i] = shot.At(Math.Min(landed + (shot.Duration - landed) * i / (count - 1.0), shot.Duration));
            lengths[i] = i == 0 ? 0 : lengths[i - 1] + Math.Sqrt(Square(points[i].X - points[i - 1].X) + Square(points[i].Y - points[i - 1].Y));
        }
        var rates = new double[count - PerRevolution];
        double greatest = 0;
        for (var i = 0; i < rates.Length; i++)
        {
            // A ball that turns on the spot has no heading to change.
            var length = lengths[i + PerRevolution] - lengths[i];
            rates[i] = length > 0 ? Math.Abs(points[i + PerRevolution].Heading - points[i].Heading) / length : 0;
            greatest = Math.Max(greatest, rates[i]);
        }
        if (!(greatest > 0 && double.IsFinite(greatest)))
        {
            return null;
        }
        var first = Array.FindIndex(rates, r => r >= greatest / 2);
        var share = first == 0 ? 0 : (greatest / 2 - rates[first - 1]) / (rates[first] - rates[first - 1]) - 1;
        var step = (shot.Duration - landed) / (count - 1);
        var at = shot.At(landed + (first + share + PerRevolution / 2.0) * step);
        return new(at.Time, at.X, at.Y, at.Board, greatest);
    }

    private static double Square(double a) => a * a;
}
