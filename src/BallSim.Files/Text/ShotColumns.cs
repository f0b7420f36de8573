using BallSim.Shots;
using static BallSim.Units;

namespace BallSim.Files.Text;

/// <summary>What a shot and a comparison tell machines, in units of the trade.</summary>
internal static class ShotColumns
{
    public static Column<Candidate>[] Names { get; } =
    [
        new("ball", c => c.BallName),
        new("layout", c => c.LayoutName),
        new("finish", c => c.FinishName),
        new("release", c => c.ReleaseName),
        new("lane", c => c.LaneName),
        new("cover", c => c.Ball.Cover.Name),
    ];

    public static Column<Shot>[] Numbers { get; } =
    [
        new("end", s => s.StopSentence),
        new("touches_head_pin", s => s.StopReason == StopReason.HeadPin),
        new("entry_angle_deg", s => At(s, e => e.Angle / Degree)),
        new("entry_board", s => At(s, e => e.Board)),
        new("entry_board_at_pin_line", s => At(s, e => e.BoardAtPinLine)),
        new("offset_from_pocket_in", s => At(s, e => e.Offset / Inch)),
        new("entry_speed_mph", s => At(s, e => e.Speed / MilesPerHour)),
        new("entry_spin_rpm", s => At(s, e => e.SpinRate / Rpm)),
        new("entry_axis_rotation_deg", s => At(s, e => e.AxisRotation / Degree)),
        new("entry_axis_tilt_deg", s => At(s, e => e.AxisTilt / Degree)),
        new("transit_time_s", s => At(s, e => e.Time)),
        new("revolutions", s => At(s, e => e.Revolutions)),
        new("breakpoint_board", s => s.Breakpoint.Board),
        new("breakpoint_ft", s => s.Breakpoint.Distance / Foot),
        new("breakpoint_is_end", s => s.Breakpoint.IsEnd),
        new("end_of_skid_ft", s => s.EndOfSkid?.Distance / Foot),
        new("start_of_roll_ft", s => s.StartOfRoll?.Distance / Foot),
        new("slipped_again", s => (double)s.SlippedAgain),
        new("flare_in", s => s.Track.Flare / Inch),
        new("flare_per_turn_in", s => s.Track.FlarePerRevolution / Inch),
        new("oil_taken_up_uL", s => s.OilTakenUp / Microlitre),
    ];

    public static Column<ComparisonRow>[] Comparison { get; } =
    [
        .. Names.Select(c => new Column<ComparisonRow>(c.Name, row => c.Value(row.Candidate))),
        new("board", row => row.Candidate.Release.Board),
        new("launch_angle_deg", row => row.Candidate.Release.LaunchAngle / Degree),
        .. Numbers.Select(c => new Column<ComparisonRow>($"same_line_{c.Name}", row => c.Value(row.SameLine))),
        new("reaimed_launch_angle_deg", row => row.ReAimed.IsFound ? row.ReAimed.Release.LaunchAngle / Degree : null),
        new("line_move_deg", row => row.LineMove / Degree),
        new("reaimed_failure", row => row.ReAimed.IsFound ? null : row.ReAimed.Reason),
        .. Numbers.Select(c => new Column<ComparisonRow>($"reaimed_{c.Name}", row => row.ReAimed.Shot is { } shot ? c.Value(shot) : null)),
        new("entry_angle_scatter_deg", row => row.Spread?.Angle / Degree),
        new("offset_scatter_in", row => row.Spread?.Offset / Inch),
        new("distance_from_band_deg", row => row.DistanceFromBand / Degree),
        new("track_warning", row => row.TrackWarnings.Count > 0 ? string.Join("; ", row.TrackWarnings) : null),
        new("within_scatter_of_best", row => row.IsWithinScatter),
    ];

    private static object? At(Shot shot, Func<Entry, double> value) => shot.ReachedPins ? value(shot.Entry) : null;
}
