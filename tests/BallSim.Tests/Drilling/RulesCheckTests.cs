using BallSim.Balls;
using BallSim.Drilling;
using static BallSim.Units;

namespace BallSim.Tests.Drilling;

/// <summary>
/// The published limits (sources at each property of <see cref="BallRules"/>), at, inside and outside their values.
/// </summary>
public class RulesCheckTests
{
    private static readonly Ball Legal = Ball.FromSpecification(15 * Pound, 2.48 * Inch, 0.050 * Inch, 0.015 * Inch, finish: Finish.Sanded(2000));

    private static readonly BallMeasurements Everything = new()
    {
        ApprovedAfter2020 = true,
        Roundness = 0.005 * Inch,
        Hardness = 74,
        LaboratoryFriction = 0.25,
        ComponentDensity = 2600,
        TopWeight = 1.5 * Ounce,
        SideWeight = -2.9 * Ounce,
        FingerWeight = 0.5 * Ounce,
        GrippingHoles = 3,
        BalanceHoles = 0,
        VentsPerHole = 1,
        VentWidth = 0.125 * Inch,
    };

    private static RuleVerdict Verdict(RulesCheck check, string what) => check.Lines.Single(l => l.What == what).Verdict;

    [Fact]
    public void A_legal_ball_fully_measured_passes_every_line_that_concerns_it()
    {
        var check = RulesCheck.Of(Legal, Everything);
        Assert.Empty(check.Failures);
        Assert.Empty(check.Unknown);
        Assert.Equal(["hardness", "intermediate differential"], check.Lines.Where(l => l.Verdict == RuleVerdict.NotApplicable).Select(l => l.What));
    }

    [Fact]
    public void What_nobody_measured_is_not_known()
    {
        var unknown = RulesCheck.Of(Legal).Unknown.Select(l => l.What);
        Assert.Equal(["roundness", "hardness", "hardness (approved after 2020)", "laboratory friction", "densest component",
            "static balance, top", "static balance, side", "static balance, finger/thumb"], unknown);
    }

    // Each row: a measurement just inside and just outside its limit, as the source at the property of BallRules prints it.
    public static TheoryData<string, double, double> Edges => new()
    {
        { "circumference", 26.704 * Inch, 26.703 * Inch },
        { "circumference", 27.002 * Inch, 27.003 * Inch },
        { "diameter", 8.595 * Math.PI * Inch, 8.596 * Math.PI * Inch },
        { "roundness", 0.010 * Inch, 0.0101 * Inch },
        { "hardness (approved after 2020)", 73, 72.9 },
        { "surface roughness Ra", 1.27e-6, 1.28e-6 },
        { "laboratory friction", 0.320, 0.321 },
        { "pin to the low-RG axis", 1 * Inch, 1.01 * Inch },
        { "mark to the high-RG axis", 1.5 * Inch, 1.51 * Inch },
        { "densest component", 3800, 3801 },
        { "static balance, top", 3 * Ounce, 3.01 * Ounce },
        { "static balance, side", -3 * Ounce, -3.01 * Ounce },
        { "static balance, finger/thumb", 3 * Ounce, 3.01 * Ounce },
        { "gripping holes", 5, 6 },
        { "balance holes", 0, 1 },
        { "vents in one hole", 1, 2 },
        { "widest vent", 0.25 * Inch, 0.251 * Inch },
    };

    [Theory]
    [MemberData(nameof(Edges))]
    public void Every_measured_limit_bites_where_it_should(string what, double inside, double outside)
    {
        BallMeasurements With(double v) => what switch
        {
            "circumference" or "diameter" => Everything with { Circumference = v },
            "roundness" => Everything with { Roundness = v },
            "hardness (approved after 2020)" => Everything with { Hardness = v },
            "surface roughness Ra" => Everything with { Roughness = v },
            "laboratory friction" => Everything with { LaboratoryFriction = v },
            "pin to the low-RG axis" => Everything with { PinToLowAxis = v },
            "mark to the high-RG axis" => Everything with { MarkToHighAxis = v },
            "densest component" => Everything with { ComponentDensity = v },
            "static balance, top" => Everything with { TopWeight = v },
            "static balance, side" => Everything with { SideWeight = v },
            "static balance, finger/thumb" => Everything with { FingerWeight = v },
            "gripping holes" => Everything with { GrippingHoles = (int)v },
            "balance holes" => Everything with { BalanceHoles = (int)v },
            "vents in one hole" => Everything with { VentsPerHole = (int)v },
            _ => Everything with { VentWidth = v },
        };
        Assert.Equal(RuleVerdict.Pass, Verdict(RulesCheck.Of(Legal, With(inside)), what));
        Assert.Equal(RuleVerdict.Fail, Verdict(RulesCheck.Of(Legal, With(outside)), what));
    }

    [Theory]
    [InlineData(2.460, 0.050, "lowest radius of gyration", true)]
    [InlineData(2.459, 0.050, "lowest radius of gyration", false)]
    [InlineData(2.750, 0.050, "highest radius of gyration", true)]
    [InlineData(2.750, 0.051, "highest radius of gyration", false)]
    [InlineData(2.480, 0.060, "total differential", true)]
    [InlineData(2.480, 0.061, "total differential", false)]
    public void Radii_of_gyration_are_checked(double low, double differential, string what, bool passes) => Assert.Equal(
        passes ? RuleVerdict.Pass : RuleVerdict.Fail, Verdict(RulesCheck.Of(Ball.FromSpecification(15 * Pound, low * Inch, differential * Inch)), what));

    [Fact]
    public void Weight_and_its_class()
    {
        Ball Of(double pounds) => Ball.FromSpecification(pounds * Pound, 2.55 * Inch, 0.03 * Inch, diameter: 8.40 * Inch);
        Assert.Equal(RuleVerdict.Pass, Verdict(RulesCheck.Of(Of(16)), "weight"));
        Assert.Equal(RuleVerdict.Fail, Verdict(RulesCheck.Of(Of(16.01)), "weight"));
        // Circumference and diameter are limited from 13 lb on.
        Assert.Equal(RuleVerdict.Fail, Verdict(RulesCheck.Of(Of(13)), "circumference"));
        Assert.Equal(RuleVerdict.NotApplicable, Verdict(RulesCheck.Of(Of(12.9)), "diameter"));
    }

    [Theory]
    [InlineData(15, 2020, 8, 1, 3, 3)]
    [InlineData(15, 2020, 7, 31, 3, 1)]
    [InlineData(10, 2024, 1, 1, 2, 0.75)]
    [InlineData(8, 2024, 1, 1, 2, 0.75)]
    [InlineData(7.9, 2024, 1, 1, 0.75, 0.75)]
    public void Static_balance_goes_by_weight_and_day(double pounds, int year, int month, int day, double top, double sides)
    {
        var ball = Ball.FromSpecification(pounds * Pound, 2.6 * Inch, 0.03 * Inch);
        var check = RulesCheck.Of(ball, new() { Day = new(year, month, day) });
        Assert.Equal(top * Ounce, check.Lines.Single(l => l.What == "static balance, top").Limit.AtMost!.Value, 1e-15);
        Assert.Equal(sides * Ounce, check.Lines.Single(l => l.What == "static balance, side").Limit.AtMost!.Value, 1e-15);
        Assert.Equal(sides * Ounce, check.Lines.Single(l => l.What == "static balance, finger/thumb").Limit.AtMost!.Value, 1e-15);
    }

    [Fact]
    public void Dates_settle_hardness_and_balance_holes()
    {
        var soft = new BallMeasurements { Hardness = 72.5, BalanceHoles = 1 };
        Assert.Equal(RuleVerdict.NotKnown, Verdict(RulesCheck.Of(Legal, soft), "hardness (approved after 2020)"));
        Assert.Equal(RuleVerdict.Pass, Verdict(RulesCheck.Of(Legal, soft with { ApprovedAfter2020 = false }), "hardness"));
        Assert.Equal(RuleVerdict.Fail, Verdict(RulesCheck.Of(Legal, soft with { ApprovedAfter2020 = true }), "hardness (approved after 2020)"));
        Assert.Equal(RuleVerdict.Fail, Verdict(RulesCheck.Of(Legal, soft with { Hardness = 71 }), "hardness (approved after 2020)"));
        Assert.Equal(RuleVerdict.Fail, Verdict(RulesCheck.Of(Legal, soft), "balance holes"));
        Assert.Equal(RuleVerdict.NotKnown, Verdict(RulesCheck.Of(Legal, soft with { Day = new(2019, 5, 1) }), "balance holes"));
    }

    [Fact]
    public void A_drilled_ball_is_told_apart()
    {
        var drilled = Legal.Drill(new(4.5 * Inch, 50 * Degree, 40 * Degree), Grip.Fingertip, new PositiveAxisPoint(5 * Inch, 0.5 * Inch));
        var check = RulesCheck.Of(drilled);
        Assert.Equal(3, check.Lines.Single(l => l.What == "gripping holes").Measured);
        Assert.Equal(RuleVerdict.NotKnown, Verdict(check, "pin to the low-RG axis"));
        Assert.Equal(RuleVerdict.NotKnown, Verdict(check, "widest vent"));
        Assert.Contains("undrilled", check.Lines.Single(l => l.What == "total differential").Note);
        // Marks beside the axes of an undrilled ball are measured on it.
        var skew = Legal with { Marks = new() { Pin = new(Math.Cos(0.3), 0, Math.Sin(0.3)), MassBias = Vector3D.UnitY } };
        Assert.Equal(0.3 * skew.Radius, RulesCheck.Of(skew).Lines.Single(l => l.What == "pin to the low-RG axis").Measured!.Value, 1e-12);
        Assert.Equal(RuleVerdict.Fail, Verdict(RulesCheck.Of(skew), "pin to the low-RG axis"));
    }

    [Fact]
    public void Limits_are_settings()
    {
        var ours = BallRules.Default with
        {
            IntermediateDifferential = BallRules.Default.IntermediateDifferential with { AtMost = 0.010 * Inch, Source = "club rule" },
            Differential = BallRules.Default.Differential with { AtLeast = 0.055 * Inch },
        };
        var check = RulesCheck.Of(Legal, rules: ours);
        Assert.Equal(["total differential", "intermediate differential"], check.Failures.Select(l => l.What));
        Assert.Contains("club rule", check.ToString());
    }

    [Fact]
    public void The_table_says_what_it_is()
    {
        var text = RulesCheck.Of(Legal, Everything).ToString();
        Assert.Contains("Advice, not an approval", text);
        Assert.Contains("rules differ by federation", text);
        Assert.Contains("WTBA 11.13.2 / USBC, since 2020-08-01, seen", text);
        Assert.Contains("26.704 to 27.002 in", text);
        Assert.Equal(RulesCheck.Of(Legal).Lines.Count + 2, text.TrimEnd().Split('\n').Length);
    }

    [Fact]
    public void Slips_in_measurements_are_named()
    {
        var slip = Assert.Throws<ArgumentOutOfRangeException>(() => new BallMeasurements { TopWeight = 1.5 });
        Assert.Contains("for ounces write 1.5 * Ounce", slip.Message);
    }
}
