using static BallSim.Units;

namespace BallSim.Lanes;

/// <summary>
/// A lane held against the rules for its measures and its surface. Advice, not a certificate: rules differ by federation and change, and the limits were read in texts that quote them.
/// </summary>
/// <remarks>
/// Crown and depression at a distance: how far the surface rises over, or lies under, the straight line between the lane's edges there. Cross tilt: how much higher one edge lies than the other. The
/// texts read give the limit, not how it is measured: these definitions are assumed. Taken at every quarter of a foot and at every half board of the smooth surface.
/// </remarks>
public sealed record LaneCheck
{
    private const double Limit = 0.040 * Inch;
    private const string Source = "USBC, seen as quoted by another text";

    // A quarter of a foot, half a board.
    private const int Stations = 240;
    private const int Across = 78;

    private LaneCheck(Lane lane, IReadOnlyList<LaneCheckLine> lines) => (Lane, Lines) = (lane, lines);

    /// <summary>What a reader must know about any such check.</summary>
    public const string Advice = "Advice, not a certificate: rules differ by federation and change; ask yours.";

    /// <summary>The lane that was checked.</summary>
    public Lane Lane { get; }

    /// <summary>A line for each limit.</summary>
    public IReadOnlyList<LaneCheckLine> Lines { get; }

    /// <summary>The lines that fail.</summary>
    public IEnumerable<LaneCheckLine> Failures => Lines.Where(l => !l.Passes);

    /// <summary>Checks a lane.</summary>
    public static LaneCheck Of(Lane lane)
    {
        ArgumentNullException.ThrowIfNull(lane);
        (double Value, double? At) crown = (0, null), depression = (0, null), tilt = (0, null);
        void Greater(ref (double Value, double? At) most, double value, double y)
        {
            // What rounding makes of a plane has no place on the lane.
            if (value > most.Value + 1e-12)
            {
                most = (value, y);
            }
        }
        var half = lane.Width / 2;
        for (var k = 0; k <= Stations; k++)
        {
            var y = lane.Length * k / Stations;
            var (left, right) = (lane.Topography.HeightAt(-half, y), lane.Topography.HeightAt(half, y));
            Greater(ref tilt, Math.Abs(right - left), y);
            for (var i = 1; i < Across; i++)
            {
                var share = i / (double)Across;
                var rise = lane.Topography.HeightAt(-half + share * lane.Width, y) - (left + share * (right - left));
                Greater(ref crown, rise, y);
                Greater(ref depression, -rise, y);
            }
        }
        return new(lane,
        [
            new("foul line to head pin", lane.Length, RegulationLane.Length - RegulationLane.LengthTolerance, RegulationLane.Length + RegulationLane.LengthTolerance, null, Source),
            new("width", lane.Width, RegulationLane.Width - RegulationLane.WidthTolerance, RegulationLane.Width + RegulationLane.WidthTolerance, null, Source),
            new("crown", crown.Value, null, Limit, crown.At, Source),
            new("depression", depression.Value, null, Limit, depression.At, Source),
            new("cross tilt", tilt.Value, null, Limit, lane.Topography.IsMeasured ? tilt.At : null, Source),
        ]);
    }

    /// <summary>The check as plain text, a line for each limit, and the caution.</summary>
    public override string ToString() => string.Join(Environment.NewLine, [.. Lines.Select(l => l.ToString()), Advice]);
}
