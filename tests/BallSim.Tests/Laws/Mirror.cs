using BallSim.Balls;
using BallSim.Releases;

namespace BallSim.Tests.Laws;

/// <summary>
/// The mirror image of a case in the plane x = 0 of the lane: the body is mirrored too, in its z axis, so that a rotation stays a
/// rotation: q' = (y, z, w, x). Angular velocity is a pseudovector.
/// </summary>
internal static class Mirror
{
    public static Vector3D OfBody(Vector3D v) => v with { Z = -v.Z };

    public static Ball Of(Ball ball) => ball with
    {
        Inertia = ball.Inertia with { Xz = -ball.Inertia.Xz, Yz = -ball.Inertia.Yz },
        CentreOfMass = OfBody(ball.CentreOfMass),
        Marks = Of(ball.Marks),
    };

    public static BallMarks Of(BallMarks marks) => new()
    {
        Pin = OfBody(marks.Pin),
        MassBias = OfBody(marks.MassBias),
        PositiveAxis = OfBody(marks.PositiveAxis),
        GripCentre = OfBody(marks.GripCentre),
        GripRight = OfBody(marks.GripRight),
        GripUp = OfBody(marks.GripUp),
        Thumb = OfBody(marks.Thumb),
        MiddleFinger = OfBody(marks.MiddleFinger),
        RingFinger = OfBody(marks.RingFinger),
        Hand = Of(marks.Hand),
    };

    public static Hand Of(Hand hand) => hand == Hand.Right ? Hand.Left : Hand.Right;

    public static InitialState Of(InitialState s) => s with
    {
        X = -s.X,
        VelocityX = -s.VelocityX,
        AngularVelocity = new(s.AngularVelocity.X, -s.AngularVelocity.Y, -s.AngularVelocity.Z),
        Orientation = new(s.Orientation.Y, s.Orientation.Z, s.Orientation.W, s.Orientation.X),
        Hand = Of(s.Hand),
    };

    private static Vector3D? OfBody(Vector3D? v) => v is { } given ? OfBody(given) : null;
}
