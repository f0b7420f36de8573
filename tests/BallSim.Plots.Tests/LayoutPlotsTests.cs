using BallSim.Drilling;
using static BallSim.Units;

namespace BallSim.Plots.Tests;

public class LayoutPlotsTests
{
    private static (double X, double Y) At(ChartText chart, string name)
    {
        var mark = chart.Named(name).Single(t => (string?)t["mode"] == "markers");
        return (ChartText.Numbers(mark, "x")[0], ChartText.Numbers(mark, "y")[0]);
    }

    [Theory]
    [InlineData(Hand.Right, 1)]
    [InlineData(Hand.Left, -1)]
    public void Distances_from_the_grip_centre_are_true_and_the_axis_point_is_on_the_bowlers_side(Hand hand, int side)
    {
        var sheet = Throws.Sheet(hand);
        var (chart, measures) = (new ChartText(sheet.LayoutView()), LayoutMeasures.Of(sheet.Before));
        var axis = At(chart, "positive axis point");
        Assert.Equal(measures.GripCentreToAxis / Inch, double.Hypot(axis.X, axis.Y), 1e-9);
        Assert.True(side * axis.X > 4.5);
        Assert.InRange(axis.Y, 0.3, 1.2);
        var pin = At(chart, "pin");
        Assert.Equal(measures.PinToGripCentre / Inch, double.Hypot(pin.X, pin.Y), 1e-9);
        Assert.Equal((0, 0), At(chart, "grip centre"));
    }

    [Fact]
    public void Holes_are_as_wide_as_drilled_fingers_up_the_ring_finger_on_the_axis_side()
    {
        var holes = new ChartText(Throws.Sheet().LayoutView()).Named("holes").ToArray();
        Assert.Equal(3, holes.Length);
        foreach (var (hole, up, side) in new[] { (holes.Single(h => ((string)h["text"]!).StartsWith("thumb", StringComparison.Ordinal)), -1, 0), (holes.Single(h => ((string)h["text"]!).StartsWith("middle", StringComparison.Ordinal)), 1, -1), (holes.Single(h => ((string)h["text"]!).StartsWith("ring", StringComparison.Ordinal)), 1, 1) })
        {
            var (x, y) = (ChartText.Numbers(hole, "x"), ChartText.Numbers(hole, "y"));
            Assert.InRange(x.Max() - x.Min(), 0.95, 1.15);
            Assert.InRange(y.Max() - y.Min(), 0.95, 1.15);
            var (middle, height) = ((x.Min() + x.Max()) / 2, (y.Min() + y.Max()) / 2);
            Assert.True(up * height > 1.5);
            Assert.True(side == 0 ? Math.Abs(middle) < 0.005 : side * middle > 0.3);
        }
    }

    [Fact]
    public void The_table_is_the_marking_sheet_to_a_thirty_second()
    {
        var sheet = Throws.Sheet();
        var cells = new ChartText(sheet.LayoutView()).Traces.Single(t => (string?)t["type"] == "table")["cells"]!["values"]!;
        var arcs = MarkingSheet.Of(sheet.Before).Arcs;
        for (var i = 0; i < arcs.Count; i++)
        {
            var read = ((string)cells[1]![i]!).Split(' ', '/').Select(double.Parse).ToArray();
            var inches = read.Length switch { 1 => read[0], 2 => read[0] / read[1], _ => read[0] + read[1] / read[2] };
            Assert.Equal(arcs[i].FromPin / Inch, inches, 1.0 / 64 + 1e-9);
        }
    }

    [Fact]
    public void The_table_has_the_height_of_its_rows()
    {
        var sheet = Throws.Sheet();
        var chart = new ChartText(sheet.LayoutView());
        var table = chart.Traces.Single(t => (string?)t["type"] == "table");
        // Measured on screenshots: a browser makes the headings 31 pixels high, and its legend pushes the rest together by up to a twentieth. No row is cut then, and less than one is left over.
        var (margin, rows) = (chart.Layout["margin"]!, 31 + MarkingSheet.Of(sheet.Before).Arcs.Count * 26);
        var room = (double)table["domain"]!["y"]![1]! * ((double)chart.Layout["height"]! - (double)margin["t"]! - (double)margin["b"]!);
        Assert.InRange(room, rows / 0.95, rows / 0.95 + 25.9);
    }

    [Fact]
    public void A_ball_without_a_grip_has_no_sheet()
    {
        var plain = DrillSheet.Of(Throws.Sheet().Before with { Marks = new() }, [new Hole("test", Vector3D.UnitZ, Vector3D.UnitZ, 1 * Inch, 2 * Inch)]);
        Assert.Contains("no grip", Assert.Throws<ArgumentException>(() => plain.LayoutView()).Message);
    }
}
