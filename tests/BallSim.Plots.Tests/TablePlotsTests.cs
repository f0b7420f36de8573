using BallSim.Balls;
using BallSim.Shots;
using static BallSim.Units;

namespace BallSim.Plots.Tests;

/// <summary>Charts of tables: comparisons, sweeps, fits, and the oil.</summary>
public class TablePlotsTests
{
    private static readonly Column Across = new("pin to axis", "in", [2, 2, 4, 4]), Up = new("grit", "", [500, 1000, 500, 1000]), Result = new("entry angle", "°", [4, 4.5, double.NaN, 6]);

    [Fact]
    public void Difference_of_oil_is_after_less_before()
    {
        var (before, after) = (Lanes.OilMap.Crowned(42 * Foot, 25 * Millilitre), Lanes.OilMap.Crowned(40 * Foot, 20 * Millilitre));
        var chart = new ChartText(before.BeforeAndAfter(after));
        var difference = chart.Named("difference").Single();
        var (x, boards) = (ChartText.Numbers(difference, "x"), ChartText.Numbers(difference, "y"));
        for (var b = 0; b < boards.Length; b += 6)
        {
            for (var i = 0; i < x.Length; i += 13)
            {
                Assert.Equal((after.FilmOnBoard(x[i] * Foot, boards[b]) - before.FilmOnBoard(x[i] * Foot, boards[b])) / Micrometre, (double)difference["z"]![b]![i]!, 1e-9);
            }
        }
        Assert.Equal(chart.Named("before").Single()["zmax"], chart.Named("after").Single()["zmax"]);
        Assert.Contains("5.00 mL less", (string)chart.Layout["meta"]!["words"]!);
    }

    [Fact]
    public void Angles_of_a_comparison_stand_best_first_with_their_spread()
    {
        var rows = Comparison.Of([.. new[] { Finish.Polished, Finish.Sanded(1000) }.Select(f => new Candidate(Throws.Drilled().Ball with { Finish = f }, Throws.Oiled, Throws.Usual) { FinishName = f.Name })]);
        var best = Comparison.Ranked(rows)[0];
        var dot = new ChartText(rows.EntryAngles()).Named("best row").Single();
        Assert.Equal(best.ReAimed.Shot!.Entry.Angle / Degree, ChartText.Numbers(dot, "x").Single(), 1e-9);
        Assert.Equal(best.Spread!.Value.Angle / Degree, (double)dot["error_x"]!["array"]![0]!, 1e-9);
        Assert.Contains(best.Candidate.FinishName, (string)dot["y"]![0]!);
        Assert.Throws<ArgumentException>(() => Array.Empty<ComparisonRow>().EntryAngles());
    }

    [Fact]
    public void A_map_has_a_cell_for_each_pair_and_leaves_failed_rows_empty()
    {
        var heat = new ChartText(Result.SweepMap(Across, Up)).Traces.Single();
        Assert.Equal(["2", "4"], heat["x"]!.Select(v => (string)v!));
        Assert.Equal(["500", "1000"], heat["y"]!.Select(v => (string)v!));
        Assert.Equal(4, (double)heat["z"]![0]![0]!);
        Assert.Equal(Newtonsoft.Json.Linq.JTokenType.Null, heat["z"]![0]![1]!.Type);
        Assert.Equal(6, (double)heat["z"]![1]![1]!);
        Assert.Equal("%{text}", (string)heat["texttemplate"]!);
        Assert.Equal([["4", ""], ["4.5", "6"]], heat["text"]!.Select(row => row.Select(v => (string)v!).ToArray()).ToArray());
    }

    [Fact]
    public void What_rounding_leaves_of_a_nought_is_called_nought()
    {
        string Words(double first) => (string)new ChartText(new Column("angle", "°", [first, 90]).Curves(new Column("time", "s", [0, 1]))).Layout["meta"]!["words"]!;
        Assert.Contains("from 0° at 0 s to 90° at 1 s", Words(1.8e-16));
        Assert.Contains("from 1.8E-10° at 0 s", Words(1.8e-10));
    }

    [Fact]
    public void Side_by_side_a_row_with_a_hole_has_no_line()
    {
        var lines = new ChartText(new[] { Across, Up, Result }.ParallelAxes()).Traces.Single();
        Assert.Equal([2.0, 2, 4], lines["dimensions"]![0]!["values"]!.Select(v => (double)v));
        Assert.Equal([4.0, 4.5, 6], lines["line"]!["color"]!.Select(v => (double)v));
    }

    [Fact]
    public void Residuals_go_by_shot_over_their_band()
    {
        var chart = new ChartText(new Column("residual", "in", [0.1, -0.2, 0.3]).Residuals(new("distance", "ft", [10, 20, 10]), ["a", "a", "b"], new("sigma", "in", [0.15, 0.1, 0.25])));
        Assert.Equal([0.1, -0.2], ChartText.Numbers(chart.Named("a").Single(), "y"));
        Assert.Equal([0.3], ChartText.Numbers(chart.Named("b").Single(), "y"));
        // Two at 10 ft: the mean of their sigmas.
        Assert.Equal([0.2, 0.1, -0.1, -0.2], ChartText.Numbers(chart.Named("± one standard deviation").Single(), "y"), (a, b) => Math.Abs(a - b) < 1e-12);
        Assert.Contains("33 % of them lie within", (string)chart.Layout["meta"]!["words"]!);
    }

    [Fact]
    public void Curves_go_by_name_and_decades_leave_out_what_has_no_logarithm()
    {
        var chart = new ChartText(Result.Curves(Up, ["a", "b", "a", "b"]));
        Assert.Equal(["a", "b"], chart.Traces.Select(t => (string)t["name"]!));
        Assert.Equal([4.5, 6.0], ChartText.Numbers(chart.Named("b").Single(), "y"));
        Assert.Equal([500.0], ChartText.Numbers(chart.Named("a").Single(), "x"));
        var decades = new ChartText(new Column("error", "m", [1e-3, 0, 1e-6]).Curves(new("tolerance", "m", [1e-2, 1e-4, 1e-5]), logarithmic: true));
        Assert.Equal([1e-3, 1e-6], ChartText.Numbers(decades.Traces.Single(), "y"));
        Assert.Equal("log", (string)decades.Layout["yaxis"]!["type"]!);
        Assert.Throws<ArgumentException>(() => Result.Curves(Up, ["a"]));
        Assert.Throws<ArgumentException>(() => new Column("error", "m", [0.0, -1]).Curves(new("tolerance", "m", [1.0, 1]), logarithmic: true));
    }

    [Fact]
    public void Agreement_tells_within_from_outside()
    {
        Column computed = new("computed", "", [1.04, 2.2]), expected = new("printed", "", [1.0, 2.0]), allowed = new("rounding", "", [0.05, 0.05]);
        var chart = new ChartText(computed.Agreement(expected, allowed, ["time, s", "speed, m/s"]));
        Assert.Equal(0.8, ChartText.Numbers(chart.Named("within").Single(), "x").Single(), 1e-9);
        Assert.Equal(4.0, ChartText.Numbers(chart.Named("outside").Single(), "x").Single(), 1e-9);
        Assert.Contains("1 of them within", (string)chart.Layout["meta"]!["words"]!);
        Assert.Throws<ArgumentException>(() => computed.Agreement(expected, new("rounding", "", [0.05, 0]), ["a", "b"]));
    }

    [Fact]
    public void Columns_of_one_table_have_as_many_rows()
    {
        var shorter = new Column("grit", "", [500]);
        Assert.Contains("column \"grit\" has 1 rows", Assert.Throws<ArgumentException>(() => Result.SweepMap(Across, shorter)).Message);
        Assert.Contains("holds no number", Assert.Throws<ArgumentException>(() => new Column("angle", "", [double.NaN]).SweepMap(shorter, shorter)).Message);
        Assert.Contains("at least two axes", Assert.Throws<ArgumentException>(() => new[] { Result }.ParallelAxes()).Message);
        Assert.Contains("name the shot of each", Assert.Throws<ArgumentException>(() => Result.Residuals(Across, ["one"])).Message);
    }
}
