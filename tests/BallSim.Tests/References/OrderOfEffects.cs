using BallSim.Balls;
using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Shots;
using static BallSim.Units;

namespace BallSim.Tests.References;

/// <summary>Which way a change works, and which of two works more: what may be asserted as a sign although no number is published that the
/// model could be held to.</summary>
public class OrderOfEffects
{
    private static readonly Release Strong = new()
    {
        Speed = 17.9 * MilesPerHour,
        SpinRate = 350 * Rpm,
        AxisRotation = 45 * Degree,
        AxisTilt = 13 * Degree,
        LaunchAngle = 2 * Degree,
        Board = 27,
        AxisInBall = new(0.6, 0.3, 0.7),
    };

    private static Ball Of(double rg, Finish? finish = null) =>
        Ball.FromSpecification(15 * Pound, rg, 0.03 * Inch, finish: finish ?? Finish.Sanded(2000), cover: Cover.Reactive);

    // Place and heading where the head pin stands, on a lane without gutters so that every ball gets there.
    private static PathPoint AtPins(Ball ball, OilMap oil) => Simulator.Throw(ball, Lane.Unbounded(oil), Strong, new() { MaxTime = 4 }).AtDistance(60 * Foot);

    /// <summary>
    /// Hook falls with the length of the oil: common practice, no source. The volume goes with the
    /// length: spread thinner over more length the same oil
    /// lets the ball grip more where it lies, and beyond 46 ft the two cancel.
    /// </summary>
    [Fact]
    public void Hook_falls_with_the_length_of_the_oil()
    {
        double[] lengths = [30, 34, 38, 42, 46, 50];
        // Right to left: the farther it hooks the smaller its x. The angle of a ball that has rolled before the pins hardly depends on the
        // oil (its rolling velocity does not), so it is no sign.
        var ends = lengths.Select(l => AtPins(Of(2.5 * Inch), OilMap.Crowned(l * Foot, l / 40 * 25 * Millilitre))).ToArray();
        foreach (var (shorter, longer) in ends.Zip(ends.Skip(1)))
        {
            Assert.True(longer.X > shorter.X + 0.01, $"hooks to x = {shorter.X:F3} m, and on longer oil to {longer.X:F3} m");
        }
    }

    /// <summary>
    /// A change of friction moves the entry more than a change of the radius of gyration within the rules: S. Banerjee and J. McPhee,
    /// Procedia Engineering 72 (2014), doi
    /// 10.1016/j.proeng.2014.06.075. The radius goes over its whole legal range (2.46 to 2.80 in less the differential); the friction over
    /// what a bowler can do to it at the shop, from
    /// polished to sanded at 500, both of them legal.
    /// </summary>
    [Fact]
    public void Friction_moves_the_entry_more_than_a_legal_radius_of_gyration()
    {
        var oil = OilMap.Crowned(40 * Foot, 25 * Millilitre);
        var byRadius = Math.Abs(AtPins(Of(2.46 * Inch), oil).X - AtPins(Of(2.77 * Inch), oil).X);
        var byFriction = Math.Abs(AtPins(Of(2.6 * Inch, Finish.Polished), oil).X - AtPins(Of(2.6 * Inch, Finish.Sanded(500)), oil).X);
        Assert.True(byFriction > byRadius, $"friction moves the ball by {byFriction / Inch:F1} in, the radius of gyration by {byRadius / Inch:F1} in");
    }

    /// <summary>A rougher cover grips sooner and hooks more (common practice, no source: "a glossy cover loses its grip on heavy oil; a
    /// more porous cover grips sooner").</summary>
    [Fact]
    public void Roughness_and_pores_bring_the_hook_forward()
    {
        var oil = OilMap.Crowned(40 * Foot, 25 * Millilitre);
        double Roll(Ball ball) => Simulator.Throw(ball, Lane.Unbounded(oil), Strong).StartOfRoll!.Value.Distance;
        var rough = Of(2.5 * Inch, Finish.Sanded(500));
        var glossy = Of(2.5 * Inch, Finish.Polished);
        Assert.True(Roll(rough) < Roll(glossy));
        Assert.True(Roll(glossy) < Roll(glossy with { Cover = Cover.Plastic }));
        Assert.True(AtPins(rough, oil).X < AtPins(glossy, oil).X);
    }
}
