using BallSim.Balls;
using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Shots;
using Xunit.Abstractions;
using static BallSim.Units;

namespace BallSim.Tests.References;

/// <summary>
/// Signs that practice knows. Every one is common practice, no source: what bowlers and drillers agree on, and what a model may not contradict. Signs with a published source stand in <see cref="OrderOfEffects"/>.
/// </summary>
public class PracticeSigns(ITestOutputHelper output)
{
    private static readonly Release Usual = new()
    {
        Speed = 17.9 * MilesPerHour,
        SpinRate = 350 * Rpm,
        AxisRotation = 45 * Degree,
        AxisTilt = 13 * Degree,
        LaunchAngle = 2 * Degree,
        Board = 27,
        AxisInBall = new(1, 0.6, 0.8),
    };

    private static readonly OilMap Heavy = OilMap.Crowned(42 * Foot, 35 * Millilitre);
    private static readonly OilMap House = OilMap.Crowned(40 * Foot, 25 * Millilitre);

    private static Ball Symmetric(double differential = 0.03) => Ball.FromSpecification(15 * Pound, 2.5 * Inch, differential * Inch, cover: Cover.Reactive);

    // A lane without gutters, so that every ball gets to the pins.
    private static Shot Thrown(Ball ball, OilMap oil, Release? release = null, bool drag = true) =>
        Simulator.Throw(ball, Lane.Unbounded(oil), release ?? Usual, new() { MaxTime = 4, AirDrag = drag });

    private static PathPoint AtPins(Shot shot) => shot.AtDistance(60 * Foot);

    /// <summary>Each value beyond the one before.</summary>
    private void Rises(string what, IEnumerable<double> values, double byAtLeast = 0)
    {
        double[] all = [.. values];
        output.WriteLine($"{what}: {string.Join(", ", all.Select(v => $"{v:G4}"))}");
        Assert.All(all.Zip(all.Skip(1)), p => Assert.True(p.Second > p.First + byAtLeast, $"{what}: {p.Second} after {p.First}"));
    }

    /// <summary>Common practice, no source.</summary>
    [Fact]
    public void A_glossier_cover_skids_longer_on_heavy_oil_and_hooks_less()
    {
        Finish[] duller = [Finish.Sanded(500), Finish.Sanded(1000), Finish.Sanded(2000), Finish.Sanded(4000), Finish.Polished];
        var shots = duller.Select(f => Thrown(Symmetric() with { Finish = f }, Heavy)).ToArray();
        Rises("end of skid (ft), glossier", shots.Select(s => s.EndOfSkid!.Value.Distance / Foot), 0.1);
        Rises("place at the pins (boards to the right), glossier: less hook", shots.Select(s => -AtPins(s).Board), 0.3);
    }

    /// <summary>Common practice, no source.</summary>
    [Fact]
    public void More_pores_grip_sooner()
    {
        double[] pores = [1.2, 0.9, 0.6, 0.3, 0];
        var shots = pores.Select(p => Thrown(Symmetric() with { Cover = Cover.Reactive with { Pores = p * Micrometre } }, House)).ToArray();
        Rises("end of skid (ft), fewer pores", shots.Select(s => s.EndOfSkid!.Value.Distance / Foot), 0.1);
        Rises("start of roll (ft), fewer pores", shots.Select(s => s.StartOfRoll!.Value.Distance / Foot), 0.3);
    }

    /// <summary>Common practice, no source.</summary>
    [Fact]
    public void A_longer_pattern_hooks_less()
    {
        double[] lengths = [32, 36, 40, 44, 48];
        var shots = lengths.Select(l => Thrown(Symmetric(), OilMap.Crowned(l * Foot, l / 40 * 25 * Millilitre))).ToArray();
        Rises("breakpoint (ft), longer oil", shots.Select(s => s.Breakpoint.Distance / Foot), 0.5);
        Rises("place at the pins (boards to the right), longer oil", shots.Select(s => -AtPins(s).Board), 0.3);
    }

    /// <summary>
    /// Common practice, no source: at a fixed release more hook is more entry angle only while the ball still slides at the pins. Once it has rolled, more hook moves its place and no longer its angle; for a ball of equal
    /// moments without the air that is exact, for its rolling velocity does not depend on the friction (v + (k/R)² ω × R n is conserved).
    /// </summary>
    [Fact]
    public void More_hook_is_more_angle_only_while_the_ball_slides_at_the_pins()
    {
        // Without a differential all moments are equal.
        var ball = Symmetric(0);
        Finish[] duller = [Finish.Polished, Finish.Sanded(4000), Finish.Sanded(2000), Finish.Sanded(1000), Finish.Sanded(500)];
        var sliding = duller.Select(f => AtPins(Thrown(ball with { Finish = f }, OilMap.Crowned(58 * Foot, 70 * Millilitre), drag: false))).ToArray();
        Assert.All(sliding, p => Assert.Equal(ShotPhase.Sliding, p.Phase));
        Rises("hook of balls that still slide (boards)", sliding.Select(p => p.Board), 0.1);
        Rises("their angle (deg)", sliding.Select(p => -p.Heading / Degree), 0.01);

        var rolling = duller.Select(f => AtPins(Thrown(ball with { Finish = f }, OilMap.Crowned(36 * Foot, 20 * Millilitre), drag: false))).ToArray();
        Assert.All(rolling, p => Assert.Equal(ShotPhase.Rolling, p.Phase));
        Rises("hook of balls that have rolled (boards)", rolling.Select(p => p.Board), 0.3);
        output.WriteLine($"their angle (deg): {string.Join(", ", rolling.Select(p => $"{-p.Heading / Degree:F9}"))}");
        Assert.All(rolling, p => Assert.Equal(rolling[0].Heading, p.Heading, 1e-9));
        Assert.True(-rolling[0].Heading > -sliding[^1].Heading);
    }

    /// <summary>Common practice, no source: a ball that rolls too early has spent its hook on the way; the line that still brings it to the pocket is a flatter one at the pins. Of equal
    /// moments: a ball of unequal ones wobbles by a few tenths of a degree, which is more than a small step of the finish makes.</summary>
    [Fact]
    public void Re_aimed_a_ball_that_rolls_too_early_enters_at_a_smaller_angle()
    {
        Finish[] duller = [Finish.Sanded(4000), Finish.Sanded(2000), Finish.Sanded(1000), Finish.Sanded(500)];
        var shots = duller.Select(f => Aim.AtPocket(Symmetric(0) with { Finish = f }, Lane.Regulation with { Oil = House }, Usual with { Board = 25 }).Shot!).ToArray();
        Assert.All(shots, s => Assert.Equal(0, s.End.SlipSpeed, 0.02));
        Rises("start of roll before the pins (ft), duller", shots.Select(s => 60 - s.StartOfRoll!.Value.Distance / Foot), 0.5);
        Rises("entry angle (deg, against), duller", shots.Select(s => -s.Entry.Angle / Degree));
    }

    /// <summary>Common practice, no source.</summary>
    [Fact]
    public void More_differential_flares_more()
    {
        double[] differentials = [0, 0.014, 0.03, 0.045, 0.059];
        // The pin 5 in from the axis, where the axis does not come round within one shot.
        var axis = 5 / 6.75 * 90 * Degree;
        var tracks = differentials.Select(d => OnTheLane(Symmetric(d), new(Math.Cos(axis), 0, Math.Sin(axis)))).ToArray();
        Rises("flare (in), more differential", tracks.Select(t => t.Flare / Inch), 0.3);
        Rises("flare in a turn (in), more differential", tracks.Select(t => t.FlarePerRevolution / Inch), 0.03);
    }

    /// <summary>
    /// Common practice, no source: the flare of a symmetric ball is greatest with the pin about 3 3/8 in from the axis (half of the quarter circumference of 27 in) and least at 0 and 6 3/4 in.
    /// </summary>
    [Fact]
    public void A_symmetric_ball_flares_most_with_the_pin_half_way_and_least_at_the_ends()
    {
        double[] arcs = [0, 0.75, 1.5, 2.25, 3, 3.375, 3.75, 4.5, 5.25, 6, 6.75];
        foreach (var differential in (double[])[0.02, 0.05])
        {
            var tracks = arcs.Select(arc => arc / 6.75 * 90 * Degree).Select(a => OnTheLane(Symmetric(differential), new(Math.Cos(a), 0, Math.Sin(a)))).ToArray();
            foreach (var (what, flares) in new[] { ("flare", tracks.Select(t => t.Flare / Inch).ToArray()), ("flare in a turn", tracks.Select(t => t.FlarePerRevolution / Inch).ToArray()) })
            {
                output.WriteLine($"differential {differential} in, {what}: {string.Join(", ", arcs.Zip(flares, (a, f) => $"{a} in: {f:F2}"))}");
                Assert.InRange(arcs[Array.IndexOf(flares, flares.Max())], 2.25, 4.5);
                Assert.All(flares[1..^1], f => Assert.True(f > flares[0] && f > flares[^1]));
                Assert.All(new[] { flares[0], flares[^1] }, f => Assert.True(f < 0.5 * flares.Max()));
            }
        }
    }

    private static Track OnTheLane(Ball ball, Vector3D axis)
    {
        var shot = Simulator.Throw(ball, Lane.Regulation with { Oil = House }, Usual with { Board = 25, AxisInBall = axis });
        Assert.True(shot.ReachedPins);
        return shot.Track;
    }
}
