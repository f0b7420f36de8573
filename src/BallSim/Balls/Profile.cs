using System.Collections.Immutable;

namespace BallSim.Balls;

/// <summary>
/// The outline of a solid of revolution, in the half plane of height along the axis and distance from it: straight lines and circular arcs
/// from point to point, either way round. It closes by a straight line to its start; an outline that starts and ends on the axis is closed
/// along the axis.
/// </summary>
/// <example><code>
/// // A cone with a round cap
/// var outline = Profile.From(0, 0).LineTo(0, 2 * Inch).LineTo(3 * Inch, 1 * Inch).ArcTo(3.7 * Inch, 0.7 * Inch, 4 * Inch, 0);
/// </code></example>
public sealed record Profile
{
    private const double Largest = 1;

    private Profile(ImmutableArray<ProfilePiece> pieces, (double Along, double Off) start, (double Along, double Off) end) =>
        (Pieces, Start, End) = (pieces, start, end);

    /// <summary>An outline that begins at a point.</summary>
    /// <param name="along">Height along the axis, m; -1 to 1.</param>
    /// <param name="off">Distance from the axis, m; 0 to 1.</param>
    public static Profile From(double along, double off)
    {
        var start = Point(along, off);
        return new([], start, start);
    }

    /// <summary>The outline with a straight line on to a point.</summary>
    /// <param name="along">Height along the axis, m; -1 to 1.</param>
    /// <param name="off">Distance from the axis, m; 0 to 1.</param>
    public Profile LineTo(double along, double off)
    {
        var end = Point(along, off);
        return new(Pieces.Add(ProfilePiece.Line(End, end)), Start, end);
    }

    /// <summary>The outline with a circular arc on, through one point to another.</summary>
    /// <param name="throughAlong">Height of a point on the arc, m; -1 to 1.</param>
    /// <param name="throughOff">Its distance from the axis, m; 0 to 1.</param>
    /// <param name="along">Height of the end, m; -1 to 1.</param>
    /// <param name="off">Its distance from the axis, m; 0 to 1.</param>
    /// <exception cref="ArgumentException">The three points lie on one line, or the arc crosses the axis.</exception>
    public Profile ArcTo(double throughAlong, double throughOff, double along, double off)
    {
        var end = Point(along, off);
        return new(Pieces.AddRange(ProfilePiece.Arc(End, Point(throughAlong, throughOff), end)), Start, end);
    }

    /// <summary>Pieces along which the height only rises, only falls or stays.</summary>
    internal ImmutableArray<ProfilePiece> Pieces { get; }

    internal (double Along, double Off) Start { get; }

    internal (double Along, double Off) End { get; }

    /// <summary>The pieces with the closing one, none of them without length or on the axis.</summary>
    internal ImmutableArray<ProfilePiece> Closed() =>
        [.. Pieces.Add(ProfilePiece.Line(End, Start)).Where(p => (p.FromAlong != p.ToAlong || p.FromOff != p.ToOff) && (p.FromOff > 0 || p.ToOff > 0 || p.IsArc))];

    private static (double, double) Point(double along, double off) =>
        (Check.Range(along, -Largest, Largest, Quantity.Length), Check.Range(off, 0, Largest, Quantity.Length));
}
