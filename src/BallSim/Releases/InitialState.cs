using System.Globalization;
using static BallSim.Units;

namespace BallSim.Releases;

/// <summary>
/// The ball at the foul line, or wherever a study begins: the six numbers and the rotation from which the equations of motion start.
/// Everything in the lane frame (x
/// right, y down-lane, z up; origin on the surface in the middle of the foul line); any finite motion is taken, also such as no hand can
/// give.
/// </summary>
public sealed record InitialState
{
    /// <summary>Place of the ball's centre across the lane, m; -1000 to 1000.</summary>
    public double X { get; init => field = Check.Range(value, -1000, 1000, Quantity.Length, nameof(X)); }

    /// <summary>Place of the ball's centre down the lane, m; -1000 to 1000.</summary>
    public double Y { get; init => field = Check.Range(value, -1000, 1000, Quantity.Length, nameof(Y)); }

    /// <summary>Velocity of the ball's centre (not of its centre of mass) to the right, m/s; -50 to 50.</summary>
    public double VelocityX { get; init => field = Check.Range(value, -50, 50, Quantity.Speed, nameof(VelocityX)); }

    /// <summary>Velocity of the ball's centre (not of its centre of mass) down-lane, m/s; -50 to 50.</summary>
    public double VelocityY { get; init => field = Check.Range(value, -50, 50, Quantity.Speed, nameof(VelocityY)); }

    /// <summary>
    /// The rotation that takes vectors of the ball frame to the lane frame; of length one within 1e-6, and scaled to one.
    /// </summary>
    public Rotation Orientation { get; init => field = Unit(value); } = Rotation.Identity;

    /// <summary>Angular velocity in the lane frame, rad/s; at most 500 in size.</summary>
    public Vector3D AngularVelocity
    {
        get;
        init
        {
            Check.Range(Check.Finite(value, nameof(AngularVelocity)).Length, 0, 500, Quantity.SpinRate, nameof(AngularVelocity));
            field = value;
        }
    }

    /// <summary>
    /// Distance down-lane that the ball flies before it touches the lane, m; 0 to 20. Up to there its centre goes straight on at the given
    /// velocity and the ball turns
    /// as a free body: fall, bounce and air are neglected.
    /// </summary>
    public double Loft { get; init => field = Check.Range(value, 0, 20, Quantity.Length, nameof(Loft)); }

    /// <summary>The hand; it says on which side the pocket lies and which way rotation and tilt are counted.</summary>
    public Hand Hand { get; init; }

    /// <summary>Velocity of the ball's centre in the lane frame, m/s.</summary>
    public Vector3D Velocity => new(VelocityX, VelocityY, 0);

    /// <summary>Speed of the ball's centre, m/s.</summary>
    public double Speed => Velocity.Length;

    /// <summary>The state in words, speeds in the units of the trade.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"centre at ({X:F3}, {Y:F3}) m, {Speed / MilesPerHour:F2} mph, {SpinAxis.From(Velocity, AngularVelocity, Hand)}, {(Hand == Hand.Right ? "right" : "left")} hand");

    private static Rotation Unit(Rotation value)
    {
        var norm = value.Norm;
        Check.That(Math.Abs(norm - 1) < 1e-6, $"Orientation is a quaternion of length {Check.Text(norm)}; a rotation has length one", nameof(Orientation));
        return value.Normalised;
    }
}
