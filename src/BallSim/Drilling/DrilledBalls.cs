using BallSim.Balls;

namespace BallSim.Drilling;

/// <summary>Laying a ball out for a bowler and drilling it: from an undrilled ball to one with a grip.</summary>
/// <remarks>
/// <see cref="LayOut(Ball, Layout, Grip, PositiveAxisPoint)"/> only marks the ball;
/// <see cref="Drill(Ball, Layout, Grip, PositiveAxisPoint, DensityProfile)"/> also takes out the mass of the holes, and
/// <see cref="DrillSheet"/> tells what that changed.
///
/// With the pin x, the unit tangent t at the pin towards the reference of the angle at the pin, h = +1 for a right-hander and -1 for a
/// left-hander, and angles turning
/// counter-clockwise as seen from outside (the great-circle construction of the trade's definitions; spherical trigonometry, NIST DLMF
/// 4.42):
/// <code>
/// axis point  A = cos a x + sin a t(hD)          a = pin to axis / R, D the angle at the pin
/// its up      u = (tangent at A towards x) turned by -hV,   V the angle at the axis
/// foot        F = A moved by -up/R along u       on the midline, which is square to u there
/// grip centre G = F moved by over/R along h F × u
/// </code>
/// </remarks>
public static class DrilledBalls
{
    /// <summary>The ball drilled by pin-to-axis distance and two angles: marked, and without the mass of the holes.</summary>
    /// <param name="ball">An undrilled ball.</param>
    /// <param name="layout">Where the grip goes relative to pin and mark.</param>
    /// <param name="grip">The measures of the hand and of its holes.</param>
    /// <param name="axisPoint">The bowler's positive axis point; its hand is the hand of the drilled ball.</param>
    /// <param name="profile">Density of a ball known by its numbers only; its mean density (assumed) unless given. For a built ball leave
    /// it out.</param>
    /// <exception cref="ArgumentException">The ball is drilled already, the layout or the grip is impossible on it, or holes meet, miss
    /// the ball or come out of it.</exception>
    public static Ball Drill(this Ball ball, Layout layout, Grip grip, PositiveAxisPoint axisPoint, DensityProfile? profile = null) =>
        DrillSheet.Of(ball, layout, grip, axisPoint, profile).Ball;

    /// <summary>The ball drilled by plain positions: marked, and without the mass of the holes.</summary>
    /// <param name="ball">An undrilled ball.</param>
    /// <param name="gripCentre">Direction of the grip centre from the centre of the ball, in the ball frame; any length but zero.</param>
    /// <param name="gripUp">Direction from thumb to fingers, in the ball frame; its part square to <paramref name="gripCentre"/>
    /// counts.</param>
    /// <param name="grip">The measures of the hand and of its holes.</param>
    /// <param name="axisPoint">The bowler's positive axis point; its hand is the hand of the drilled ball.</param>
    /// <param name="profile">Density of a ball known by its numbers only; its mean density (assumed) unless given. For a built ball leave
    /// it out.</param>
    /// <exception cref="ArgumentException">The ball is drilled already, a direction is missing, the grip is impossible on this ball, or
    /// holes meet, miss the ball or come out of it.</exception>
    public static Ball Drill(
        this Ball ball, Vector3D gripCentre, Vector3D gripUp, Grip grip, PositiveAxisPoint axisPoint, DensityProfile? profile = null)
    {
        var laidOut = ball.LayOut(gripCentre, gripUp, grip, axisPoint);
        return DrillSheet.Of(laidOut, GripHoles.Of(grip, laidOut), profile).Ball;
    }

    /// <summary>The holes of a grip on a ball that is laid out for it.</summary>
    /// <exception cref="ArgumentException">The ball is not laid out.</exception>
    public static IReadOnlyList<Hole> Holes(this Grip grip, Ball laidOut) => GripHoles.Of(grip, laidOut);

    /// <summary>The ball laid out by pin-to-axis distance and two angles, nothing drilled out of it: for study, and for what only asks
    /// where the marks go.</summary>
    /// <param name="ball">An undrilled ball.</param>
    /// <param name="layout">Where the grip goes relative to pin and mark.</param>
    /// <param name="grip">The measures of the hand.</param>
    /// <param name="axisPoint">The bowler's positive axis point; its hand is the hand of the drilled ball.</param>
    /// <exception cref="ArgumentException">The ball is drilled already, or the layout or the grip is impossible on it.</exception>
    public static Ball LayOut(this Ball ball, Layout layout, Grip grip, PositiveAxisPoint axisPoint)
    {
        var h = Side(axisPoint.Hand);
        var pin = ball.Marks.Pin;
        var a = layout.PinToAxis / ball.Radius;
        Check.That(layout.PinToAxis > 0 && a < Math.PI - 1e-4,
            $"PinToAxis = {Check.Text(layout.PinToAxis)} m must be above zero and below half the circumference of this ball, " +
            $"{Check.Text(Math.PI * ball.Radius)} m: at either end the arc has no direction and neither angle means anything", nameof(layout));
        var toAxis = Sphere.Turned(pin, ReferenceAtPin(ball), h * layout.AngleAtPin);
        var axis = Sphere.Along(pin, toAxis, a);
        var toPin = -Sphere.Carried(pin, toAxis, a);
        var upAtAxis = Sphere.Turned(axis, toPin, -h * layout.AngleAtAxis);
        var drop = -axisPoint.Up / ball.Radius;
        var foot = Sphere.Along(axis, upAtAxis, drop);
        var up = Sphere.Carried(axis, upAtAxis, drop);
        var gripCentre = Sphere.Along(foot, h * foot.Cross(up), axisPoint.Over / ball.Radius);
        return ball.LayOut(gripCentre, up, grip, axisPoint);
    }

    /// <summary>The ball laid out by plain positions, nothing drilled out of it: where the grip centre goes, and which way the fingers
    /// point there.</summary>
    /// <param name="ball">An undrilled ball.</param>
    /// <param name="gripCentre">Direction of the grip centre from the centre of the ball, in the ball frame; any length but zero.</param>
    /// <param name="gripUp">Direction from thumb to fingers, in the ball frame; its part square to <paramref name="gripCentre"/>
    /// counts.</param>
    /// <param name="grip">The measures of the hand.</param>
    /// <param name="axisPoint">The bowler's positive axis point; its hand is the hand of the drilled ball.</param>
    /// <exception cref="ArgumentException">The ball is drilled already, a direction is missing, or the grip is impossible on this
    /// ball.</exception>
    public static Ball LayOut(this Ball ball, Vector3D gripCentre, Vector3D gripUp, Grip grip, PositiveAxisPoint axisPoint)
    {
        ArgumentNullException.ThrowIfNull(grip);
        Check.That(!ball.Marks.IsDrilled, "the ball is drilled already; lay out the undrilled ball", nameof(ball));
        var centre = Check.Direction(gripCentre, nameof(gripCentre));
        var up = Sphere.Towards(centre, Check.Direction(gripUp, nameof(gripUp)))
            ?? throw new ArgumentException("gripUp points along gripCentre; it must point along the surface, from thumb to fingers", nameof(gripUp));
        var laidOut = ball with
        {
            Marks = ball.Marks with
            {
                GripCentre = centre,
                GripUp = up,
                GripRight = Side(axisPoint.Hand) * up.Cross(centre),
                Hand = axisPoint.Hand,
            },
        };
        var marks = laidOut.Marks with { PositiveAxis = axisPoint.DirectionOn(laidOut) };
        return laidOut with { Marks = GripGeometry.Placed(grip, marks, ball.Radius) };
    }

    /// <summary>
    /// The tangent at the pin from which the angle at the pin is counted: to the mass-bias mark, else to the centre of mass, else to y.
    /// </summary>
    internal static Vector3D ReferenceAtPin(Ball ball)
    {
        var pin = ball.Marks.Pin;
        if (ball.Marks.MassBias is { } mark)
        {
            return Sphere.Towards(pin, mark) ?? throw new ArgumentException(
                "the mass-bias mark lies on the axis of the pin; the arc between them has no direction", nameof(ball));
        }
        // An offset below a nanometre is rounding, not a place.
        var offset = ball.CentreOfMass.Length > 1e-9 ? Sphere.Towards(pin, ball.CentreOfMass) : null;
        return offset ?? Sphere.Towards(pin, Vector3D.UnitY) ?? Sphere.Towards(pin, Vector3D.UnitZ)!.Value;
    }

    private static double Side(Hand hand) => hand == Hand.Right ? 1 : -1;
}
