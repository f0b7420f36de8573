using BallSim.Balls;

namespace BallSim.Drilling;

/// <summary>Where the three holes of a grip lie on the sphere.</summary>
/// <remarks>
/// With T, M, F the centres of thumb, middle and ring finger as points of the unit sphere, and the half width of a hole seen from the
/// centre e = asin(w/2R):
/// <code>
/// arc TM = middle span/R + e_T + e_M,   arc TF = ring span/R + e_T + e_F,   arc MF = bridge/R + e_M + e_F
/// </code>
/// The thumb lies on the centre line, its near edge half the mean span below the grip centre; the centre line goes through the middle of
/// the bridge.
/// </remarks>
internal static class GripGeometry
{
    /// <summary>The marks with the centres of the three holes; grip centre, right and up must be there.</summary>
    public static BallMarks Placed(Grip grip, BallMarks marks, double radius)
    {
        var (centre, right, up) = (marks.GripCentre!.Value, marks.GripRight!.Value, marks.GripUp!.Value);
        double HalfWidth(Bore bore) => Math.Asin(bore.Diameter / (2 * radius));
        var (eT, eM, eF) = (HalfWidth(grip.Thumb), HalfWidth(grip.Middle), HalfWidth(grip.Ring));
        var toMiddle = grip.MiddleSpan / radius + eT + eM;
        var toRing = grip.RingSpan / radius + eT + eF;
        var across = grip.Bridge / radius + eM + eF;
        Check.That(Math.Abs(toMiddle - toRing) < across,
            $"MiddleSpan and RingSpan differ by more than the finger holes are apart; a bridge of {Check.Text(grip.Bridge)} m cannot join them", nameof(grip));

        // Angle at the thumb between the two fingers, by the half-side formula: no cancellation at the small angles of a grip.
        double Hav(double x) => Math.Pow(Math.Sin(x / 2), 2);
        var opening = 2 * Math.Asin(Math.Sqrt((Hav(across) - Hav(toMiddle - toRing)) / (Math.Sin(toMiddle) * Math.Sin(toRing))));

        var below = (grip.MiddleSpan + grip.RingSpan) / 4 / radius + eT;
        var thumb = Sphere.Along(centre, up, -below);
        var upAtThumb = Sphere.Carried(centre, up, -below);
        // First with the middle finger on the centre line, then turned about the thumb until the middle of the bridge lies on it. `right`
        // is the pole of
        // the centre line: the same tangent at the thumb as at the grip centre.
        Vector3D At(double azimuth, double arc) => Sphere.Along(thumb, Math.Cos(azimuth) * upAtThumb + Math.Sin(azimuth) * right, arc);
        var (middle, ring) = (At(0, toMiddle), At(opening, toRing));
        var bridge = Sphere.Along(middle, Sphere.Towards(middle, ring)!.Value, eM + grip.Bridge / radius / 2);
        var lean = Math.Atan2(bridge.Dot(right), bridge.Dot(upAtThumb));
        return marks with { Thumb = grip.Thumbless ? null : thumb, MiddleFinger = At(-lean, toMiddle), RingFinger = At(opening - lean, toRing) };
    }
}
