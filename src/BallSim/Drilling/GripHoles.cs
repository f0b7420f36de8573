using BallSim.Balls;

namespace BallSim.Drilling;

/// <summary>The holes of a grip on a ball that is laid out: where they go and how they lean.</summary>
/// <remarks>
/// At a hole's place T, with r the tangent along <see cref="BallMarks.GripRight"/> and f the tangent square to it on the side of the grip
/// centre, the axis leans inwards by β towards the pitches:
/// <code>
/// axis = cos β T - sin β (forward f + lateral r)/p,   p = hypot(forward, lateral),   sin β = p/R
/// </code>
/// so that it passes beside the centre of the ball by p.
/// </remarks>
internal static class GripHoles
{
    public static IReadOnlyList<Hole> Of(Grip grip, Ball ball)
    {
        ArgumentNullException.ThrowIfNull(grip);
        var marks = ball.Marks;
        if (marks is not { GripCentre: { } centre, GripRight: { } right, MiddleFinger: { } middle, RingFinger: { } ring })
        {
            throw new ArgumentException("the ball has no grip laid out; lay it out first: ball.LayOut(layout, grip, axisPoint)", nameof(ball));
        }
        Hole At(string name, Vector3D place, Bore bore) => new(name, place, Axis(place, centre, right, bore, ball.Radius), bore.Diameter, bore.Depth);
        var fingers = new List<Hole> { At("middle finger", middle, grip.Middle), At("ring finger", ring, grip.Ring) };
        if (marks.Thumb is { } thumb)
        {
            fingers.Insert(0, At("thumb", thumb, grip.Thumb));
        }
        return fingers;
    }

    private static Vector3D Axis(Vector3D place, Vector3D centre, Vector3D right, Bore bore, double radius)
    {
        var pitch = double.Hypot(bore.ForwardPitch, bore.LateralPitch);
        if (pitch == 0)
        {
            return place;
        }
        var lateral = (right - right.Dot(place) * place).Unit;
        var forward = place.Cross(lateral);
        // A hole on the grip centre has no side towards it; the sign is then the one of a thumb below it.
        forward = forward.Dot(centre - place) < 0 ? -forward : forward;
        var sin = pitch / radius;
        return Math.Sqrt(1 - sin * sin) * place - sin / pitch * (bore.ForwardPitch * forward + bore.LateralPitch * lateral);
    }
}
