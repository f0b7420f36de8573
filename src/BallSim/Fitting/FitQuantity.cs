namespace BallSim.Fitting;

/// <summary>What is measured at a station.</summary>
public enum FitQuantity
{
    /// <summary>Place across, m.</summary>
    Lateral,

    /// <summary>Time, s.</summary>
    Time,

    /// <summary>Speed, m/s.</summary>
    Speed,

    /// <summary>Direction of travel, rad.</summary>
    Heading,

    /// <summary>Spin rate, rad/s.</summary>
    SpinRate,

    /// <summary>Axis rotation, rad.</summary>
    AxisRotation,

    /// <summary>Axis tilt, rad.</summary>
    AxisTilt,
}
