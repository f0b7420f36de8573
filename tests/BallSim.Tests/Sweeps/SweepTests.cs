using BallSim.Balls;
using BallSim.Drilling;
using BallSim.Ensembles;
using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Shots;
using BallSim.Sweeps;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;
using static BallSim.Units;
using Outcome = BallSim.Ensembles.Outcome;

namespace BallSim.Tests.Sweeps;

/// <summary>Rows of a plan: each by itself, in the order of the design, failures among them.</summary>
public class SweepTests
{
    internal static readonly Ball Undrilled = Ball.FromSpecification(15 * Pound, 2.48 * Inch, 0.050 * Inch, 0.015 * Inch, pinToCg: 3 * Inch, topWeight: 2.5 * Ounce);
    internal static readonly Ball Drilled = Undrilled.Drill(new Layout(4.5 * Inch, 50 * Degree, 40 * Degree), Grip.Fingertip, new PositiveAxisPoint(5 * Inch, 0.5 * Inch)) with { Finish = Finish.Polished, Cover = Cover.Urethane };
    internal static readonly Lane House = Lane.Regulation with { Oil = OilMap.Crowned(42 * Foot, 25 * Millilitre) };
    internal static readonly Release Line = new() { Speed = 18 * MilesPerHour, SpinRate = 350 * Rpm, AxisRotation = 60 * Degree, AxisTilt = 12 * Degree, Board = 24, LaunchAngle = 3 * Degree };

    private static SweepPlan Plan(Design design) => new()
    {
        Design = design,
        Factors = [Factor.Range("speed", 16 * MilesPerHour, 20 * MilesPerHour, 3).In("mph", MilesPerHour), Factor.Range("board", 10, 60, 4), Factor.Choice("finish", "polished", "sanded")],
        Build = v => new(v[2] == 0 ? Drilled : Drilled with { Finish = Finish.Sanded(1000) }, House, Line with { Speed = v[0], Board = v[1] }),
    };

    [Property(MaxTest = 6)]
    public Property A_row_is_the_same_in_any_block() => Prop.ForAll(Gen.Elements(Design.LowDiscrepancy(60, 4), Design.LatinHypercube(60, 4), Design.Random(60, 4), Design.Factorial)
        .Zip(Gen.Choose(0, 20)).Zip(Gen.Choose(1, 3)).ToArbitrary(), drawn =>
    {
        var ((design, from), count) = drawn;
        var plan = Plan(design);
        var whole = Sweep.Rows(plan).ToArray();
        Assert.Equal(plan.Rows, whole.Length);
        var part = Sweep.Block(plan with { Options = new() { Threads = 1, SideBySide = false } }, from, count);
        Assert.All(part, row =>
        {
            Assert.Equal(whole[row.Row].Values, row.Values);
            Assert.Equal(whole[row.Row].Outcome, row.Outcome);
            Assert.Equal(whole[row.Row].Failure, row.Failure);
        });
    });

    [Fact]
    public void A_release_off_the_lane_is_a_row_with_its_reason()
    {
        var rows = Sweep.Rows(Plan(Design.Factorial)).ToArray();
        Assert.Equal(24, rows.Length);
        Assert.All(rows, row => Assert.Equal(row.Values[1] > 39.5, row.Outcome is null));
        Assert.All(rows.Where(r => r.Failure is not null), row => Assert.Matches(@"^Board = (60|43\.3333) boards is out of \[0\.5, 39\.5\] boards$", row.Failure!));
        Assert.Equal(12, rows.Count(r => r.Failure is null));
    }

    [Fact]
    public void A_layout_that_is_none_is_a_row_with_its_reason()
    {
        var plan = new SweepPlan
        {
            Design = Design.Factorial,
            Factors = [Factor.Values("pin_to_axis", 4 * Inch, 13.49 * Inch)],
            Build = v => new(Undrilled.LayOut(new Layout(v[0], 1, 1), Grip.Fingertip, new PositiveAxisPoint(5 * Inch, 0)), House, Line),
        };
        var rows = Sweep.Rows(plan).ToArray();
        Assert.NotNull(rows[0].Outcome);
        Assert.Contains("half the circumference", rows[1].Failure, StringComparison.Ordinal);
    }

    [Fact]
    public void A_row_is_the_throw_it_describes()
    {
        var plan = Plan(Design.Factorial);
        var row = Sweep.Rows(plan).First(r => r.Values[1] < 30 && r.Values[2] == 0);
        var shot = Simulator.Throw(Drilled, House, Line with { Speed = row.Values[0], Board = row.Values[1] }, plan.Options.Shot);
        Assert.Equal(shot.StopReason, row.Outcome!.Value.StopReason);
        Assert.Equal(shot.End.X, row.Outcome.Value.X, 1e-12);
        Assert.Equal(16.0, plan.Factors[0].Shown(row.Values[0]));
        Assert.Equal("polished", plan.Factors[2].Shown(row.Values[2]));
        if (shot.ReachedPins)
        {
            Assert.Equal(shot.Entry.Angle / Degree, Metric.EntryAngle.Value(row.Outcome.Value), 1e-9);
        }
    }

    [Fact]
    public void The_window_counts_for_either_hand()
    {
        var window = new PocketWindow { From = 0.05, To = 0.076, LeastAngle = 3 * Degree, GreatestAngle = 6 * Degree };
        Outcome At(double x, double pocket, double angle, StopReason reason = StopReason.HeadPin) => new() { StopReason = reason, X = x, Offset = x - pocket, Angle = angle * Degree };
        Assert.True(window.Holds(At(0.06, 0.0676, 4)));
        Assert.True(window.Holds(At(-0.06, -0.0676, 4)));
        Assert.False(window.Holds(At(-0.06, 0.0676, 4)));
        Assert.False(window.Holds(At(0.08, 0.0676, 4)));
        Assert.False(window.Holds(At(0.06, 0.0676, 6.1)));
        Assert.False(window.Holds(At(0.06, 0.0676, 4, StopReason.Gutter)));
    }

    [Fact]
    public void It_stops_when_asked()
    {
        using var source = new CancellationTokenSource();
        source.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(() => Sweep.Rows(Plan(Design.Random(5000, 1)), cancellation: source.Token).Count());
    }
}
