namespace BallSim.Fitting;

/// <summary>A number that a fit may find. The first eight belong to ball and lane, and all shots have them in common; the others belong to the single release.</summary>
public enum FitParameter
{
    /// <summary>µ_d, friction of the dry contact, a number; on a lane of given friction the greatest coefficient of its map.</summary>
    Dry,

    /// <summary>µ_0, floor of the friction in oil, a number; on a lane of given friction the least coefficient of its map.</summary>
    Floor,

    /// <summary>c_s, multiplier of the roughness part of the film scale h_s, a number. Only h_s shows in a path, so that it cannot be told from <see cref="Pores"/>.</summary>
    FilmScale,

    /// <summary>h_p, oil swallowed by the pores of the cover, m.</summary>
    Pores,

    /// <summary>Viscosity of the oil at 22 °C, Pa s.</summary>
    Viscosity,

    /// <summary>Drag coefficient of the air, a number.</summary>
    DragCoefficient,

    /// <summary>Slope of the lane across, dh/dx, a number; positive: the right side is higher. It adds to a measured surface.</summary>
    CrossSlope,

    /// <summary>Slope of the lane along, dh/dy, a number; positive: the pins are higher. It adds to a measured surface.</summary>
    LengthSlope,

    /// <summary>Board of the ball's centre at the foul line.</summary>
    Board,

    /// <summary>Launch angle, rad.</summary>
    LaunchAngle,

    /// <summary>Speed at the foul line, m/s.</summary>
    Speed,

    /// <summary>Spin rate at the foul line, rad/s.</summary>
    SpinRate,

    /// <summary>Axis rotation at the foul line, rad.</summary>
    AxisRotation,

    /// <summary>Axis tilt at the foul line, rad.</summary>
    AxisTilt,

    /// <summary>Turn of the ball about its axis at the release, rad.</summary>
    RollPhase,

    /// <summary>What the clock of the track shows when the ball passes the foul line, s.</summary>
    ClockOffset,
}
