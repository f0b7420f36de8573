using BallSim.Balls;
using BallSim.Lanes;
using static BallSim.Units;

namespace BallSim.Plots.Tests;

public class LanePlotsTests
{
    [Fact]
    public void A_path_is_the_shots_own_in_feet_and_boards()
    {
        var shot = Throws.On(Throws.Oiled);
        var paths = new ChartText(shot.LaneView()).Named("path").ToArray();
        Assert.Equal(2, paths.Length);
        foreach (var path in paths)
        {
            var (x, y) = (ChartText.Numbers(path, "x"), ChartText.Numbers(path, "y"));
            Assert.Equal(0, x[0], 1e-12);
            Assert.Equal(26, y[0], 1e-9);
            for (var i = 1; i < x.Length - 1; i += 20)
            {
                Assert.Equal(shot.AtDistance(x[i] * Foot).Board, y[i], 1e-6);
            }
            Assert.Equal(shot.Entry.Distance / Foot, x[^1], 1e-9);
            Assert.Equal(shot.Entry.Board, y[^1], 1e-9);
        }
    }

    [Fact]
    public void Marked_places_stand_where_the_shot_says()
    {
        var shot = Throws.On(Throws.Oiled, loft: 1 * Foot);
        var chart = new ChartText(shot.LaneView());
        void At(string word, double distance, double board)
        {
            var marks = chart.Named(word).ToArray();
            Assert.Equal(2, marks.Length);
            Assert.All(marks, m => Assert.Equal(distance / Foot, ChartText.Numbers(m, "x")[0], 1e-9));
            Assert.All(marks, m => Assert.Equal(board, ChartText.Numbers(m, "y")[0], 1e-9));
        }
        At("breakpoint", shot.Breakpoint.Distance, shot.Breakpoint.Board);
        At("end of skid", shot.EndOfSkid!.Value.Distance, shot.EndOfSkid.Value.Board);
        At("starts to roll", shot.StartOfRoll!.Value.Distance, shot.StartOfRoll.Value.Board);
        At("lands", shot.PhaseChanges[0].Distance, shot.PhaseChanges[0].Board);
        At("pocket", shot.Lane.Length, 17.5);
    }

    [Fact]
    public void The_shading_is_the_film_in_micrometres()
    {
        var heat = new ChartText(Throws.On(Throws.Oiled).LaneView()).Named("film").First();
        var (x, boards) = (ChartText.Numbers(heat, "x"), ChartText.Numbers(heat, "y"));
        Assert.Equal(39, boards.Length);
        for (var b = 0; b < boards.Length; b += 7)
        {
            for (var i = 0; i < x.Length; i += 11)
            {
                Assert.Equal(Throws.Oiled.Oil.FilmAt(Throws.Oiled.PlaceOf(boards[b]), x[i] * Foot) / Micrometre, (double)heat["z"]![b]![i]!, 1e-9);
            }
        }
    }

    [Fact]
    public void One_panel_has_true_proportions()
    {
        // One board across is as long on the screen as W/39 along: the ratio of the axes is the width of a board in feet.
        var axis = new ChartText(Throws.On(Throws.Oiled).LaneView()).Layout["yaxis2"]!;
        Assert.Equal("x", (string?)axis["scaleanchor"]);
        Assert.Equal(41.5 / 39 / 12, (double)axis["scaleratio"]!, 1e-12);
    }

    [Fact]
    public void Shots_differ_in_stroke_as_well_as_in_colour()
    {
        var shots = Enumerable.Range(1, 8).Select(i => Throws.On(Throws.Oiled, Finish.Sanded(500 * i))).ToArray();
        string[] names = [.. shots.Select(s => s.Ball.Finish.Name)];
        var chart = new ChartText(shots.LaneView(names));
        var looks = names.Select(n => chart.Named(n).First()["line"]!).Select(l => ((string?)l["color"], (string?)l["dash"])).ToArray();
        Assert.Equal(8, looks.Distinct().Count());
        Assert.Equal(6, looks.Take(6).Select(l => l.Item2).Distinct().Count());
    }

    [Fact]
    public void A_dry_lane_and_a_plane_for_study_can_be_drawn()
    {
        Assert.Empty(new ChartText(Throws.On(Lane.Regulation).LaneView()).Named("film"));
        var plane = Throws.On(Lane.Unbounded(FrictionMap.Constant(0.1)), loft: 0);
        Assert.NotEmpty(new ChartText(plane.LaneView()).Named("friction"));
    }

    [Fact]
    public void Names_must_be_as_many_as_shots()
    {
        var shot = Throws.On(Throws.Oiled);
        var e = Assert.Throws<ArgumentException>(() => new[] { shot }.LaneView(["one", "two"]));
        Assert.Contains("2 names for 1 shots", e.Message);
        Assert.Throws<ArgumentException>(() => Array.Empty<BallSim.Shots.Shot>().LaneView());
    }
}
