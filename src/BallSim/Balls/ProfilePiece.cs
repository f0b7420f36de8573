namespace BallSim.Balls;

/// <summary>A straight or circular piece of an outline along which the height rises, falls or stays.</summary>
internal readonly record struct ProfilePiece
{
    private ProfilePiece((double Along, double Off) from, (double Along, double Off) to) =>
        (FromAlong, FromOff, ToAlong, ToOff) = (from.Along, from.Off, to.Along, to.Off);

    public double FromAlong { get; }

    public double FromOff { get; }

    public double ToAlong { get; }

    public double ToOff { get; }

    public bool IsArc => Radius > 0;

    /// <summary>Centre and radius of an arc.</summary>
    public double CentreAlong { get; private init; }

    public double CentreOff { get; private init; }

    public double Radius { get; private init; }

    /// <summary>Angles of an arc at its ends, from the direction along the axis towards that away from it.</summary>
    public double FromAngle { get; private init; }

    public double ToAngle { get; private init; }

    public static ProfilePiece Line((double Along, double Off) from, (double Along, double Off) to) => new(from, to);

    public static IEnumerable<ProfilePiece> Arc((double Along, double Off) from, (double Along, double Off) through, (double Along, double Off) to)
    {
        // Centre of the circle through three points, from the first of them.
        var (bx, by, cx, cy) = (through.Along - from.Along, through.Off - from.Off, to.Along - from.Along, to.Off - from.Off);
        var (bb, cc, twice) = (bx * bx + by * by, cx * cx + cy * cy, 2 * (bx * cy - by * cx));
        Check.That(Math.Abs(twice) > 1e-9 * (bb + cc),
            $"the three points of the arc, ({Check.Text(from.Along)}, {Check.Text(from.Off)}), ({Check.Text(through.Along)}, {Check.Text(through.Off)}) and " +
            $"({Check.Text(to.Along)}, {Check.Text(to.Off)}) m, lie on one line; write LineTo", nameof(through));
        var (x, y) = ((cy * bb - by * cc) / twice, (bx * cc - cx * bb) / twice);
        var (centreAlong, centreOff, radius) = (from.Along + x, from.Off + y, Math.Sqrt(x * x + y * y));
        // A centre meant to lie on the axis makes a sphere, which is simpler than a torus.
        centreOff = Math.Abs(centreOff) < 1e-13 * radius ? 0 : centreOff;
        double Angle((double Along, double Off) p) => Math.Atan2(p.Off - centreOff, p.Along - centreAlong);
        var start = Angle(from);
        var turn = Turn(Angle(through) - start, 0) < Turn(Angle(to) - start, 0) ? Turn(Angle(to) - start, 0) : Turn(Angle(to) - start, 0) - 2 * Math.PI;
        var end = start + turn;
        // Cut where the circle stands upright, at whole multiples of π, so that every piece is one branch of it.
        var cuts = new List<double> { start };
        if (turn > 0)
        {
            for (var k = Math.Floor(start / Math.PI) + 1; k * Math.PI < end; k++)
            {
                cuts.Add(k * Math.PI);
            }
        }
        else
        {
            for (var k = Math.Ceiling(start / Math.PI) - 1; k * Math.PI > end; k--)
            {
                cuts.Add(k * Math.PI);
            }
        }
        cuts.Add(end);
        (double, double) At(int i) => i == 0 ? from : i == cuts.Count - 1 ? to : (centreAlong + radius * Math.Cos(cuts[i]), Math.Max(0, centreOff));
        Check.That(!(Holds(start, end) && centreOff - radius < -1e-12 * radius) && !(cuts.Count > 2 && centreOff < 0),
            $"the arc from ({Check.Text(from.Along)}, {Check.Text(from.Off)}) to ({Check.Text(to.Along)}, {Check.Text(to.Off)}) m crosses the axis", nameof(through));
        var pieces = new List<ProfilePiece>();
        for (var i = 0; i + 1 < cuts.Count; i++)
        {
            // A cut within rounding of an end makes no piece.
            if (Math.Abs(cuts[i + 1] - cuts[i]) > 1e-12)
            {
                pieces.Add(new(At(i), At(i + 1))
                {
                    CentreAlong = centreAlong, CentreOff = centreOff, Radius = radius, FromAngle = cuts[i], ToAngle = cuts[i + 1],
                });
            }
        }
        return pieces;
    }

    /// <summary>Distance from the axis at a height between the ends.</summary>
    public double OffAt(double along)
    {
        if (!IsArc)
        {
            return FromOff + (ToOff - FromOff) * (along - FromAlong) / (ToAlong - FromAlong);
        }
        var z = along - CentreAlong;
        var r = Math.Sqrt(Math.Max(0, Radius * Radius - z * z));
        return CentreOff + (Math.Sin((FromAngle + ToAngle) / 2) > 0 ? r : -r);
    }

    // The angle brought to [low, low + 2π).
    private static double Turn(double angle, double low) => angle - 2 * Math.PI * Math.Floor((angle - low) / (2 * Math.PI));

    // Whether a span of angles goes through the point of the circle next to the axis, at -π/2.
    private static bool Holds(double a, double b)
    {
        var (low, high) = (Math.Min(a, b), Math.Max(a, b));
        return Turn(-Math.PI / 2, low) < high;
    }
}
