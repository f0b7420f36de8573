using BallSim.Balls;
using BallSim.Drilling;
using static BallSim.Units;

namespace BallSim.Tests.Drilling;

/// <summary>The table of the rules says of every line where its number comes from, and what is still to be done.</summary>
public class RuleNotesTests
{
    private static Ball Plain => Ball.FromSpecification(15 * Pound, 2.48 * Inch, 0.050 * Inch, 0.015 * Inch, finish: Finish.Sanded(2000));

    private static Ball Drilled => Plain.Drill(new(4.5 * Inch, 50 * Degree, 40 * Degree), Grip.Fingertip, new(5 * Inch, 0.5 * Inch));

    private static BallMeasurements Whole => new()
    {
        ApprovedAfter2020 = false, Circumference = 26.8 * Inch, Roundness = 0.005 * Inch, Hardness = 74, Roughness = 1 * Micrometre, LaboratoryFriction = 0.25, PinToLowAxis = 0.5 * Inch, MarkToHighAxis = 0.75 * Inch,
        ComponentDensity = 2600, TopWeight = 1.5 * Ounce, SideWeight = -0.5 * Ounce, FingerWeight = 0, GrippingHoles = 3, BalanceHoles = 0, VentsPerHole = 1, VentWidth = 0.125 * Inch,
    };

    private static void Notes(RulesCheck check, params (string What, string Note)[] expected)
    {
        foreach (var (what, note) in expected)
        {
            Assert.Equal((what, note), (what, check.Lines.Single(l => l.What == what).Note));
        }
    }

    [Fact]
    public void An_undrilled_ball_of_which_nothing_was_measured()
    {
        var check = RulesCheck.Of(Plain);
        Notes(check, ("circumference", ""), ("roundness", "to be measured"), ("hardness", "to be measured"), ("surface roughness Ra", "of the finish, sanded at 2000"), ("laboratory friction", "to be measured"),
            ("lowest radius of gyration", ""), ("pin to the low-RG axis", ""), ("mark to the high-RG axis", ""), ("densest component", "to be measured"), ("static balance, top", "to be weighed"),
            ("gripping holes", "counted on the ball"), ("balance holes", "not drilled"), ("vents in one hole", "not drilled"), ("widest vent", "not drilled"));
        // What is not drilled has none of them.
        Assert.All((string[])["gripping holes", "balance holes", "vents in one hole", "widest vent"], what => Assert.Equal(0, check.Lines.Single(l => l.What == what).Measured));
    }

    [Fact]
    public void A_ball_of_which_all_was_measured()
    {
        foreach (var ball in (Ball[])[Plain, Drilled])
        {
            Notes(RulesCheck.Of(ball, Whole), ("circumference", "measured"), ("diameter", "measured"), ("roundness", "measured"), ("hardness", "measured"), ("surface roughness Ra", "measured"), ("laboratory friction", "measured"),
                ("pin to the low-RG axis", "measured"), ("mark to the high-RG axis", "measured"), ("densest component", "measured"), ("static balance, top", "given"), ("static balance, side", "given, to the other side"),
                ("static balance, finger/thumb", "given"), ("gripping holes", "given"), ("balance holes", "given"));
        }
        Notes(RulesCheck.Of(Drilled, Whole), ("vents in one hole", "measured"), ("widest vent", "measured"));
    }

    [Fact]
    public void A_drilled_ball_of_which_nothing_was_measured()
    {
        var check = RulesCheck.Of(Drilled);
        Notes(check, ("lowest radius of gyration", "as drilled; the limit is for the undrilled ball"), ("pin to the low-RG axis", "axes of the undrilled ball to be measured"),
            ("mark to the high-RG axis", "axes of the undrilled ball to be measured"), ("balance holes", "to be counted"), ("vents in one hole", "to be measured"), ("widest vent", "to be measured"));
        Assert.All((string[])["pin to the low-RG axis", "mark to the high-RG axis", "balance holes", "vents in one hole", "widest vent"], what => Assert.Null(check.Lines.Single(l => l.What == what).Measured));
        Assert.Equal(3, check.Lines.Single(l => l.What == "gripping holes").Measured);
    }

    [Fact]
    public void What_does_not_concern_a_ball_says_why()
    {
        var light = RulesCheck.Of(Ball.FromSpecification(12 * Pound, 2.6 * Inch, 0.03 * Inch), Whole);
        Notes(light, ("circumference", "limited from 13 lb on"), ("diameter", "limited from 13 lb on"));
        Assert.Equal(RuleVerdict.NotApplicable, light.Lines.Single(l => l.What == "diameter").Verdict);
        // A ball of exactly that weight is sized, and a symmetric one has no mark to be out of place.
        var just = RulesCheck.Of(Ball.FromSpecification(13 * Pound, 2.6 * Inch, 0.03 * Inch));
        Assert.Equal(RuleVerdict.Pass, just.Lines.Single(l => l.What == "diameter").Verdict);
        Notes(just, ("mark to the high-RG axis", "no mass-bias mark"));
        Assert.Equal(RuleVerdict.NotApplicable, just.Lines.Single(l => l.What == "mark to the high-RG axis").Verdict);
        Notes(RulesCheck.Of(Plain, new() { Day = new(2020, 7, 31) }), ("balance holes", "no limit on file for the time before 2020-08-01"));
        Notes(RulesCheck.Of(Plain, new() { Hardness = 72.5 }), ("hardness (approved after 2020)", "fails if the ball was approved after 2020"));
        Notes(RulesCheck.Of(Plain, new() { Hardness = 71 }), ("hardness (approved after 2020)", "measured"));
        var without = RulesCheck.Of(Plain, Whole, BallRules.Default with { StaticBalance = [] }).Lines.Single(l => l.What == "static balance, top");
        Assert.Equal((RuleVerdict.NotApplicable, "none set"), (without.Verdict, without.Limit.Text));
        Assert.Throws<ArgumentNullException>(() => RulesCheck.Of(null!));
    }

    [Fact]
    public void The_columns_of_the_table_stand_under_one_another()
    {
        var rows = RulesCheck.Of(Drilled, Whole).ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        var check = RulesCheck.Of(Drilled, Whole);
        var (limit, verdict) = (rows[0].IndexOf("limit", StringComparison.Ordinal), rows[0].IndexOf("verdict", StringComparison.Ordinal));
        foreach (var (line, row) in check.Lines.Zip(rows.Skip(1)))
        {
            Assert.StartsWith(line.What, row);
            Assert.Equal(line.Limit.Text, row[limit..(limit + line.Limit.Text.Length)]);
            Assert.Equal(line.VerdictText, row[verdict..(verdict + line.VerdictText.Length)]);
        }
    }

    [Fact]
    public void Lines_and_limits_print_their_parts()
    {
        var limit = new RuleLimit("thickness", null, 0.5 * Inch, "in", Inch, 3, "a source", "2012", "seen");
        Assert.Equal("thickness at most 0.500 in (a source, 2012)", limit.ToString());
        Assert.Equal("thickness at most 0.500 in (a source)", (limit with { Date = "" }).ToString());
        Assert.Equal("thickness: 0.600 in, limit at most 0.500 in: FAIL (a source, 2012, seen; odd)", new RuleLine("thickness", 0.6 * Inch, limit, RuleVerdict.Fail, "odd").ToString());
        Assert.Equal("thickness: -, limit at most 0.500 in: not known (a source, seen)", new RuleLine("thickness", null, limit with { Date = "" }, RuleVerdict.NotKnown, "").ToString());
        Assert.Equal("3", (limit with { Unit = "", UnitSize = 1, Digits = 0 }).Number(3));
        Assert.True(limit.Keeps(0.5 * Inch) && !limit.Keeps(0.5000001 * Inch) && limit.IsSet && !(limit with { AtMost = null }).IsSet);
        Assert.Equal("bottom 1.50 oz, side -0.25 oz, thumb 0.50 oz", new StaticBalance(-1.5 * Ounce, -0.25 * Ounce, -0.5 * Ounce).ToString());
        Assert.Equal("top 1.50 oz, side +0.25 oz, finger 0.50 oz", new StaticBalance(1.5 * Ounce, 0.25 * Ounce, 0.5 * Ounce).ToString());
        Assert.Equal("top 0.00 oz, side 0.00 oz, finger 0.00 oz", new StaticBalance(0, 0, 0).ToString());
        var late = new StaticBalanceRule(8 * Pound, true, null, new(2020, 8, 1), 2 * Ounce, 0.75 * Ounce, "", "");
        Assert.Equal("from 8 lb until 2020-08-01: 2 oz top to bottom, 0.75 oz side to side", late.ToString());
        // A class holds its own lower end, or not; a rule ends on the day before its last.
        Assert.True(late.AppliesTo(8 * Pound, new(2020, 7, 31)) && !late.AppliesTo(8 * Pound, new(2020, 8, 1)) && !late.AppliesTo(7.99 * Pound, new(2000, 1, 1)));
        Assert.False((late with { IncludesOver = false }).AppliesTo(8 * Pound, new(2000, 1, 1)));
    }
}
