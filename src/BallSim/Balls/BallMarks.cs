namespace BallSim.Balls;

/// <summary>
/// The marks on a ball's surface, as unit directions from its centre in the ball frame. An undrilled ball carries the pin and perhaps a
/// mass-bias
/// mark; drilling adds the grip and the bowler's positive axis point. A direction given in any length but zero is scaled to one.
/// </summary>
public sealed record BallMarks
{
    /// <summary>The pin: it marks the axis of lowest radius of gyration, the x axis of the ball frame.</summary>
    public Vector3D Pin { get; init => field = Check.Direction(value, nameof(Pin)); } = Vector3D.UnitX;

    /// <summary>
    /// The mass-bias mark: the axis of highest radius of gyration, the y axis of the ball frame; null on a symmetric ball.
    /// </summary>
    public Vector3D? MassBias { get; init => field = Direction(value, nameof(MassBias)); }

    /// <summary>The bowler's positive axis point that the ball was laid out for; null on an undrilled ball.</summary>
    public Vector3D? PositiveAxis { get; init => field = Direction(value, nameof(PositiveAxis)); }

    /// <summary>The centre of the grip; null on an undrilled ball.</summary>
    public Vector3D? GripCentre { get; init => field = Direction(value, nameof(GripCentre)); }

    /// <summary>
    /// Square to the grip centre, along the midline of the grip towards the side of the positive axis point: to the right for a
    /// right-handed grip with the
    /// fingers up, to the left for a left-handed one. Null on an undrilled ball.
    /// </summary>
    public Vector3D? GripRight { get; init => field = Direction(value, nameof(GripRight)); }

    /// <summary>Square to the grip centre, along the centre line of the grip from thumb to fingers; null on an undrilled ball.</summary>
    public Vector3D? GripUp { get; init => field = Direction(value, nameof(GripUp)); }

    /// <summary>The centre of the thumb hole; null on an undrilled ball.</summary>
    public Vector3D? Thumb { get; init => field = Direction(value, nameof(Thumb)); }

    /// <summary>The centre of the middle finger's hole; null on an undrilled ball.</summary>
    public Vector3D? MiddleFinger { get; init => field = Direction(value, nameof(MiddleFinger)); }

    /// <summary>The centre of the ring finger's hole; null on an undrilled ball.</summary>
    public Vector3D? RingFinger { get; init => field = Direction(value, nameof(RingFinger)); }

    /// <summary>The hand the ball is thrown with; it belongs to the positive axis point.</summary>
    public Hand Hand { get; init; }

    /// <summary>True once the grip is laid out.</summary>
    public bool IsDrilled => GripCentre is not null;

    private static Vector3D? Direction(Vector3D? value, string name) => value is { } v ? Check.Direction(v, name) : null;

    /// <summary>Which marks there are, and whose hand they are for.</summary>
    public override string ToString()
    {
        (string Name, Vector3D? Mark)[] marks = [("pin", Pin), ("mass bias", MassBias), ("axis", PositiveAxis), ("grip", GripCentre)];
        return $"{string.Join(", ", marks.Where(m => m.Mark is not null).Select(m => m.Name))}; {(Hand == Hand.Right ? "right" : "left")}-handed";
    }
}
