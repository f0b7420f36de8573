using BallSim.Ensembles;
using BallSim.Shots;
using static BallSim.Units;

namespace BallSim.Sweeps;

/// <summary>A number read from an outcome, in the units of the trade.</summary>
/// <param name="Name">The name of its column, the unit in it.</param>
/// <param name="Value">How it is read; NaN where the outcome has none.</param>
public sealed record Metric(string Name, Func<Outcome, double> Value)
{
    /// <summary>Entry angle, degrees; NaN where the pins were not reached.</summary>
    public static Metric EntryAngle { get; } = AtPins("entry_angle_deg", o => o.Angle / Degree);

    /// <summary>Entry board: that of the centre where the ball touches the head pin or passes it; NaN where the pins were not reached.</summary>
    public static Metric EntryBoard { get; } = AtPins("entry_board", o => o.Board);

    /// <summary>Across from the pocket, inches, positive to the right; NaN where the pins were not reached.</summary>
    public static Metric PocketOffset { get; } = AtPins("offset_from_pocket_in", o => o.Offset / Inch);

    /// <summary>Board of the breakpoint.</summary>
    public static Metric BreakpointBoard { get; } = new("breakpoint_board", o => o.BreakpointBoard);

    /// <summary>Distance of the breakpoint, feet.</summary>
    public static Metric BreakpointDistance { get; } = new("breakpoint_ft", o => o.BreakpointDistance / Foot);

    /// <summary>Distance of the first start of roll, feet; NaN for a ball that did not roll.</summary>
    public static Metric StartOfRoll { get; } = new("start_of_roll_ft", o => o.RollDistance / Foot);

    /// <summary>All that an outcome holds, as the columns of a sweep.</summary>
    public static IReadOnlyList<Metric> All { get; } =
    [
        new("touches_head_pin", o => o.StopReason == StopReason.HeadPin ? 1 : 0),
        EntryAngle,
        EntryBoard,
        AtPins("entry_board_at_pin_line", o => o.BoardAtPinLine),
        PocketOffset,
        AtPins("entry_speed_mph", o => o.Speed / MilesPerHour),
        AtPins("entry_slip_mph", o => o.SlipSpeed / MilesPerHour),
        AtPins("entry_spin_rpm", o => o.SpinRate / Rpm),
        AtPins("entry_axis_rotation_deg", o => o.AxisRotation / Degree),
        AtPins("entry_axis_tilt_deg", o => o.AxisTilt / Degree),
        AtPins("transit_time_s", o => o.Time),
        new("end_ft", o => o.Distance / Foot),
        new("end_board", o => o.Board),
        new("revolutions", o => o.Revolutions),
        new("axis_migration_deg", o => o.AxisMigration / Degree),
        BreakpointBoard,
        BreakpointDistance,
        StartOfRoll,
        new("start_of_roll_board", o => o.RollBoard),
        new("start_of_roll_s", o => o.RollTime),
        new("slipped_again", o => o.SlippedAgain),
        new("oil_taken_up_uL", o => o.OilTakenUp / Microlitre),
        InWindow("in_pocket", new()),
    ];

    /// <summary>One where the ball hit a window at the pocket, nought where it did not.</summary>
    /// <param name="name">The name of its column.</param>
    /// <param name="window">The window.</param>
    public static Metric InWindow(string name, PocketWindow window)
    {
        ArgumentNullException.ThrowIfNull(window);
        return new(name, o => window.Holds(o) ? 1 : 0);
    }

    private static Metric AtPins(string name, Func<Outcome, double> value) => new(name, o => o.ReachedPins ? value(o) : double.NaN);

    /// <summary>The name.</summary>
    public override string ToString() => Name;
}
