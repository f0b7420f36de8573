using BallSim.Balls;
using BallSim.Drilling;
using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Shots;
using static BallSim.Units;

namespace BallSim.Tests.Shots;

public class LayoutTolerancesTests
{
    private static readonly Ball Undrilled = Ball.FromSpecification(15 * Pound, 2.48 * Inch, 0.050 * Inch, 0.015 * Inch, finish: Finish.Polished, cover: Cover.Urethane);
    private static readonly Layout Layout = new(4.5 * Inch, 50 * Degree, 40 * Degree);
    private static readonly PositiveAxisPoint AxisPoint = new(5 * Inch, 0.5 * Inch);
    private static readonly Lane Oiled = Lane.Regulation with { Oil = OilMap.Crowned(length: 42 * Foot, volume: 25 * Millilitre) };

    private static readonly Release Release = new()
    {
        Speed = 18.5 * MilesPerHour,
        SpinRate = 350 * Rpm,
        AxisRotation = 60 * Degree,
        AxisTilt = 12 * Degree,
        Board = 26,
        LaunchAngle = 3 * Degree,
    };

    // The layout alone, so that closed forms of the layout hold.
    private static ToleranceStudy Study(LayoutTolerances tolerances) => tolerances.Study(Undrilled, Layout, Grip.Fingertip, AxisPoint, Oiled, Release, drill: LaidOut);

    private static Ball LaidOut(Ball ball, Layout layout, Grip grip) => ball.LayOut(layout, grip, AxisPoint);

    private static ToleranceEffect Of(ToleranceStudy study, string source) => study.Effects.Single(e => e.Source == source);

    [Fact]
    public void Effects_on_the_radius_of_gyration_have_the_signs_and_sizes_of_the_layout_formula()
    {
        // Spherical trigonometry: RG² about the axis = RGx² cos² a + RGy² sin² a cos² D + RGz² sin² a sin² D; its derivatives.
        var t = LayoutTolerances.Default;
        var study = Study(t);
        var (a, d) = (Layout.PinToAxis / Undrilled.Radius, Layout.AngleAtPin);
        double Square(double rg) => rg * rg;
        var across = Square(Undrilled.HighRg) * Square(Math.Cos(d)) + Square(Undrilled.IntermediateRg) * Square(Math.Sin(d));
        var byPin = Math.Sin(2 * a) * (across - Square(Undrilled.LowRg)) / (2 * study.Rg) * t.PinToAxis / Undrilled.Radius;
        var byAngle = -Square(Math.Sin(a)) * Math.Sin(2 * d) * (Square(Undrilled.HighRg) - Square(Undrilled.IntermediateRg)) / (2 * study.Rg) * t.AngleAtPin;
        // Second differences of these smooth functions are below a per cent over such small steps.
        Assert.Equal(byPin, Of(study, "pin to axis").OnRg, 0.01 * Math.Abs(byPin));
        Assert.Equal(byAngle, Of(study, "angle at the pin").OnRg, 0.01 * Math.Abs(byAngle));
        // The angle at the axis and the balance turn nothing about the axis; a mark that is off by some arc is an error of the angle at the
        // pin.
        Assert.Equal(0, Of(study, "angle at the axis").OnRg, 1e-15);
        Assert.Equal(0, Of(study, "balance, top").OnRg, 1e-15);
        var mark = Of(study, "mark around the pin").OnRg / (t.Mark / Undrilled.Radius);
        Assert.Equal(Of(study, "angle at the pin").OnRg / t.AngleAtPin, mark, 0.01 * Math.Abs(mark));
        // A pin that lies off the core's axis towards the mark, a quarter turn away from the angle at the pin, is a shorter or longer way
        // to the axis.
        Assert.NotEqual(0, Of(study, "core tilt, pin towards the mark").OnRg);
    }

    [Fact]
    public void A_core_tilt_along_the_arc_to_the_axis_is_an_error_of_that_arc()
    {
        // With D = 0 the axis point lies on the arc to the mark: a pin too far towards the mark by e is, for the tensor, a pin-to-axis
        // distance too long by e.
        var t = LayoutTolerances.Default with { CoreTilt = Inch / 16, PinToAxis = Inch / 16 };
        var study = t.Study(Undrilled, Layout with { AngleAtPin = 0 }, Grip.Fingertip, AxisPoint, Oiled, Release, drill: LaidOut);
        var (tilt, arc) = (Of(study, "core tilt, pin towards the mark").OnRg, Of(study, "pin to axis").OnRg);
        Assert.Equal(arc, tilt, 1e-3 * Math.Abs(arc));
        Assert.Equal(0, Of(study, "core tilt, pin across").OnRg, 1e-12);
    }

    [Fact]
    public void The_table_is_sorted_and_sums_by_squares()
    {
        var study = Study(LayoutTolerances.Default);
        Assert.Equal(10, study.Effects.Count);
        Assert.Equal(0.25 * Ounce, Of(study, "balance, side").OnBalance, 1e-12);
        Assert.Equal(0, Of(study, "hole depth").OnBalance);
        Assert.Equal(study.Effects.OrderByDescending(e => Math.Abs(e.OnBoard)), study.Effects);
        Assert.Equal(study.BoardSpread * study.BoardSpread, study.Effects.Sum(e => e.OnBoard * e.OnBoard), 1e-15);
        Assert.Equal(study.Effects[0], study.DominantOnBoard);
        Assert.Equal(study.Effects.Max(e => Math.Abs(e.OnAngle)), Math.Abs(study.DominantOnAngle.OnAngle));
        Assert.Equal(13, study.ToString().TrimEnd().Split('\n').Length);
        // Twice the tolerance, twice the effect, but for curvature.
        var twice = Study(LayoutTolerances.Default with { StaticBalance = 0.5 * Ounce });
        Assert.Equal(2, Of(twice, "balance, side").OnBoard / Of(study, "balance, side").OnBoard, 0.2);
    }

    [Fact]
    public void It_agrees_with_a_Monte_Carlo_within_its_sampling_error()
    {
        // The same errors drawn at random, all at once, through whole shots: nothing linear, no sum of squares.
        var t = LayoutTolerances.Default;
        var study = Study(t);
        var random = new Random(20240611);
        double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        const int Draws = 400;
        // A hundredth of a millimetre is far below the spread, which is millimetres.
        var coarse = new SimulatorOptions { Tolerance = 1e-5 };
        var sizes = t.Sources.Select(s => s.Size).ToArray();
        var (rg, board, angle) = (new double[Draws], new double[Draws], new double[Draws]);
        for (var i = 0; i < Draws; i++)
        {
            var made = t.Made(Undrilled, Layout, Grip.Fingertip, LaidOut, [.. sizes.Select(s => s * Normal())]);
            var entry = Simulator.Throw(made, Oiled, Release, coarse).Entry;
            (rg[i], board[i], angle[i]) = (made.RgAbout(made.Marks.PositiveAxis!.Value), entry.Board, entry.Angle);
        }
        // A standard deviation of a normal sample scatters by 1/√(2n): three of those.
        var sampling = 3 / Math.Sqrt(2.0 * Draws);
        Assert.Equal(1, Deviation(rg) / study.RgSpread, sampling);
        Assert.Equal(1, Deviation(board) / study.BoardSpread, sampling);
        Assert.Equal(1, Deviation(angle) / study.AngleSpread, sampling);
    }

    [Fact]
    public void A_left_hander_s_mirror_image_gives_the_mirrored_effects()
    {
        var right = Study(LayoutTolerances.Default);
        var left = LayoutTolerances.Default.Study(Undrilled, Layout, Grip.Fingertip, AxisPoint with { Hand = Hand.Left }, Oiled, Release with { Board = 40 - Release.Board },
            drill: (b, l, g) => b.LayOut(l, g, AxisPoint with { Hand = Hand.Left }));
        // Paths are good to a micrometre, which is 4e-5 boards.
        const double Path = 1.5e-4;
        foreach (var effect in right.Effects)
        {
            // What lies across the ball, or turns about it, changes sides with the hand, and so do the boards; what lies along the mirror
            // does not.
            Assert.Equal(Math.Abs(effect.OnBoard), Math.Abs(Of(left, effect.Source).OnBoard), Path);
        }
        Assert.Equal(right.AngleSpread, left.AngleSpread, 1e-3 * right.AngleSpread);
        Assert.Equal(-Of(right, "balance, finger").OnBoard, Of(left, "balance, finger").OnBoard, Path);
    }

    [Fact]
    public void A_shot_that_misses_is_refused_with_its_reason()
    {
        var wide = Release with { Board = 5, LaunchAngle = 6 * Degree };
        var refusal = Assert.Throws<ArgumentException>(() => LayoutTolerances.Default.Study(Undrilled, Layout, Grip.Fingertip, AxisPoint, Oiled, wide));
        Assert.Contains("no error", refusal.Message);
        Assert.Contains("gutter", refusal.Message);
        var unfinished = Assert.Throws<ArgumentException>(() => LayoutTolerances.Default.Study(
            Undrilled, Layout, Grip.Fingertip, AxisPoint, Oiled, Release, drill: (ball, _, _) => ball));
        Assert.Contains("must lay the ball out", unfinished.Message);
    }

    [Fact]
    public void Deeper_holes_take_their_mass_from_their_bottoms()
    {
        var ball = Ball.FromSpecification(15 * Pound, 2.48 * Inch, 0.050 * Inch, 0.015 * Inch, pinToCg: 3 * Inch, topWeight: 2.5 * Ounce, finish: Finish.Polished, cover: Cover.Urethane);
        var t = LayoutTolerances.Default;
        var study = t.Study(ball, Layout, Grip.Fingertip, AxisPoint, Oiled, Release with { Board = 24 });
        // By hand: a disc of the mean density at the bottom of each hole, its arm from the centre, over the lever of the scale.
        var marks = ball.Drill(Layout, Grip.Fingertip, AxisPoint).Marks;
        var density = ball.Mass / (4 * Math.PI / 3 * Math.Pow(ball.Radius, 3));
        Vector3D Moment(Bore bore, Vector3D? at) => density * Math.PI / 4 * bore.Diameter * bore.Diameter * t.HoleDepth * (ball.Radius - bore.Depth) * at!.Value;
        var grip = Grip.Fingertip;
        var expected = (Moment(grip.Thumb, marks.Thumb) + Moment(grip.Middle, marks.MiddleFinger) + Moment(grip.Ring, marks.RingFinger)).Length / t.BalanceLever;
        Assert.Equal(expected, Of(study, "hole depth").OnBalance, 0.05 * expected);
        Assert.True(study.BalanceSpread > study.DominantOnBalance.OnBalance);
        Assert.Contains("balance, oz", study.ToString());
    }

    private static double Deviation(double[] values)
    {
        var mean = values.Average();
        return Math.Sqrt(values.Sum(v => (v - mean) * (v - mean)) / (values.Length - 1));
    }
}
