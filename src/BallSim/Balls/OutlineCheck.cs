using System.Collections.Immutable;

namespace BallSim.Balls;

/// <summary>Whether an outline crosses itself; arcs are looked at as sixteen chords each.</summary>
internal static class OutlineCheck
{
    private const int ChordsOfArc = 16;

    /// <summary>Refuses an outline that crosses itself: its volume would be the difference of its loops.</summary>
    public static void Simple(ImmutableArray<ProfilePiece> pieces, string name)
    {
        var chords = pieces.SelectMany(Chords).ToArray();
        for (var i = 0; i < chords.Length; i++)
        {
            for (var j = i + 1; j < chords.Length; j++)
            {
                if (Cross(chords[i], chords[j]))
                {
                    var (p, q) = chords[i];
                    Check.That(false, $"the outline crosses itself near ({Check.Text((p.Z + q.Z) / 2)}, {Check.Text((p.R + q.R) / 2)}) m " +
                        "(height along the axis, distance from it)", name);
                }
            }
        }
    }

    private static IEnumerable<((double Z, double R), (double Z, double R))> Chords(ProfilePiece p)
    {
        if (!p.IsArc)
        {
            return [((p.FromAlong, p.FromOff), (p.ToAlong, p.ToOff))];
        }
        (double, double) At(int k)
        {
            var angle = p.FromAngle + (p.ToAngle - p.FromAngle) * k / ChordsOfArc;
            return k == 0 ? (p.FromAlong, p.FromOff) : k == ChordsOfArc ? (p.ToAlong, p.ToOff)
                : (p.CentreAlong + p.Radius * Math.Cos(angle), p.CentreOff + p.Radius * Math.Sin(angle));
        }
        return Enumerable.Range(0, ChordsOfArc).Select(k => (At(k), At(k + 1)));
    }

    // Properly, each with its ends on either side of the other; a common end point is none.
    private static bool Cross(((double Z, double R) A, (double Z, double R) B) p, ((double Z, double R) A, (double Z, double R) B) q)
    {
        double Side((double Z, double R) a, (double Z, double R) b, (double Z, double R) c)
        {
            var size = (b.Z - a.Z) * (c.R - a.R) - (b.R - a.R) * (c.Z - a.Z);
            var scale = double.Hypot(b.Z - a.Z, b.R - a.R) * double.Hypot(c.Z - a.Z, c.R - a.R);
            return Math.Abs(size) <= 1e-9 * scale ? 0 : size;
        }
        return Side(p.A, p.B, q.A) * Side(p.A, p.B, q.B) < 0 && Side(q.A, q.B, p.A) * Side(q.A, q.B, p.B) < 0;
    }
}
