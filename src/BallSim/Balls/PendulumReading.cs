using static BallSim.Units;

namespace BallSim.Balls;

/// <summary>One reading of a torsion pendulum: the ball clamped with an axis through its centre along the wire.</summary>
public readonly record struct PendulumReading
{
    /// <summary>A reading.</summary>
    /// <param name="axis">The axis of turning in the ball frame; any length but zero.</param>
    /// <param name="period">Period of one whole swing, s; 0.01 to 1000.</param>
    public PendulumReading(Vector3D axis, double period)
    {
        Axis = Check.Direction(axis, nameof(axis));
        Period = Check.Range(period, 0.01, 1000, Quantity.Time);
    }

    /// <summary>The axis of turning, a unit vector in the ball frame.</summary>
    public Vector3D Axis { get; }

    /// <summary>Period of one whole swing, s.</summary>
    public double Period { get; }

    /// <summary>The period in seconds and the axis.</summary>
    public override string ToString() => $"{Check.Text(Period / Second)} s about {Axis}";
}
