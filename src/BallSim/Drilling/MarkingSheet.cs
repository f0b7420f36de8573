using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using BallSim.Balls;
using static BallSim.Units;

namespace BallSim.Drilling;

/// <summary>
/// What a driller tapes onto the ball: the arcs on the surface from the pin and from the mass-bias mark to the grip centre, to the
/// positive axis point and to each hole. Two arcs find a place up to its mirror image; the sheet says on which side.
/// </summary>
public sealed record MarkingSheet
{
    private MarkingSheet()
    {
    }

    /// <summary>The places in the order of work: grip centre, positive axis point, holes.</summary>
    public required IReadOnlyList<MarkingArc> Arcs { get; init; }

    /// <summary>The sheet of a ball that is laid out or drilled.</summary>
    /// <exception cref="ArgumentException">The ball has no grip.</exception>
    public static MarkingSheet Of(Ball ball)
    {
        ArgumentNullException.ThrowIfNull(ball);
        var marks = ball.Marks;
        Check.That(marks.IsDrilled, "the ball has no grip to mark; lay it out first: ball.LayOut(layout, grip, axisPoint)", nameof(ball));
        var pin = marks.Pin;
        MarkingArc? Arc(string name, Vector3D? place) => place is not { } p
            ? null
            : new(name, ball.Radius * pin.AngleTo(p), marks.MassBias is { } m ? ball.Radius * m.AngleTo(p) : null, Side(marks, p));
        return new()
        {
            Arcs = new[]
            {
                Arc("grip centre", marks.GripCentre), Arc("positive axis point", marks.PositiveAxis), Arc("thumb", marks.Thumb),
                Arc("middle finger", marks.MiddleFinger), Arc("ring finger", marks.RingFinger),
            }.OfType<MarkingArc>().ToImmutableArray(),
        };
    }

    /// <summary>The sheet in inches, to a sixty-fourth.</summary>
    public override string ToString()
    {
        var text = new StringBuilder("                      from pin   from mark   side of the line pin - mark\n");
        foreach (var arc in Arcs)
        {
            var mark = arc.FromMassBias is { } m ? Inches(m) : "-";
            text.Append(CultureInfo.InvariantCulture, $"{arc.Name,-20}{Inches(arc.FromPin),10}{mark,12}   {(arc.Side is { } s ? s.ToString().ToLowerInvariant() : "-")}\n");
        }
        return text.ToString();
    }

    private static Hand? Side(BallMarks marks, Vector3D place)
    {
        if (marks.MassBias is not { } mark)
        {
            return null;
        }
        // Seen from outside, going from pin to mark: what lies towards pin × mark is on the left.
        var left = place.Dot(marks.Pin.Cross(mark));
        return Math.Abs(left) < 1e-9 ? null : left > 0 ? Hand.Left : Hand.Right;
    }

    private static string Inches(double length)
    {
        var parts = (int)Math.Round(length / Inch * 64);
        var (whole, rest) = (parts / 64, parts % 64);
        var over = 64;
        while (rest > 0 && rest % 2 == 0)
        {
            (rest, over) = (rest / 2, over / 2);
        }
        return rest == 0 ? $"{whole}\"" : $"{whole} {rest}/{over}\"";
    }
}
