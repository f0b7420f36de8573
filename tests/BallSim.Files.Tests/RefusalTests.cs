using BallSim.Balls;
using BallSim.Drilling;
using BallSim.Lanes;
using BallSim.Releases;
using static BallSim.Units;

namespace BallSim.Files.Tests;

/// <summary>Ten slips that people make, and the exact sentence each of them gets, in code and in a scenario.</summary>
public sealed class RefusalTests : IDisposable
{
    private readonly ScenarioText text = new();

    public void Dispose() => text.Dispose();

    private static string Refused(Func<object> slip) => Assert.ThrowsAny<ArgumentException>(slip).Message.Split(" (Parameter")[0].Split('\n')[0];

    private string Refused(string old, string @new) => text.Complaint(() => Scenario.Read(text.With(old, @new)));

    private static readonly Release Usual = new() { Speed = 8 };

    [Fact]
    public void One_not_a_number()
    {
        Assert.Equal("Speed is NaN; it must be a number in [0.5, 17.5] m/s", Refused(() => new Release { Speed = double.NaN }));
        Assert.Equal("s.json: releases[0].speed: \"NaN mph\" is not a number with a unit; a speed is wanted, such as \"18 mph\"", Refused("18.5 mph", "NaN mph"));
        Assert.Equal("s.json: line 7, column 44: is not JSON: 'N' is an invalid start of a value.", Refused("29", "NaN"));
    }

    [Fact]
    public void Two_45_for_45_degrees()
    {
        Assert.Equal("AxisRotation = 45 rad is out of [-3.14159, 3.14159] rad; for degrees write 45 * Degree", Refused(() => Usual with { AxisRotation = 45 }));
        Assert.Equal("s.json: releases[0].axisRotation: 45 has no unit; an angle is written as text with its unit, such as \"45 deg\" (allowed: deg, rad)",
            Refused("\"55 deg\"", "45"));
        Assert.Equal("s.json: releases[0].axisRotation: \"45 rad\" is out of [-3.142, 3.142] rad; did you mean \"45 deg\"?", Refused("55 deg", "45 rad"));
    }

    [Fact]
    public void Three_18_for_18_miles_an_hour()
    {
        Assert.Equal("Speed = 18 m/s is out of [0.5, 17.5] m/s; for miles an hour write 18 * MilesPerHour", Refused(() => new Release { Speed = 18 }));
        Assert.Equal("s.json: releases[0].speed: 18 has no unit; a speed is written as text with its unit, such as \"18 mph\" (allowed: mph, km/h, m/s, ft/s)",
            Refused("\"18.5 mph\"", "18"));
        Assert.Equal("s.json: releases[0].speed: \"18\" has no unit; a speed carries one, such as \"18 mph\" (allowed: mph, km/h, m/s, ft/s)", Refused("18.5 mph", "18"));
        Assert.Equal("s.json: releases[0].speed: \"18 m/s\" is out of [0.5, 17.5] m/s; did you mean \"18 mph\"?", Refused("18.5 mph", "18 m/s"));
        Assert.Equal("s.json: releases[0].speed: \"60 mph\" is out of [1.118, 39.15] mph; did you mean \"60 km/h\"?", Refused("18.5 mph", "60 mph"));
    }

    [Fact]
    public void Four_negative_oil()
    {
        Assert.Equal("film = -1E-06 m is out of [0, 0.0005] m", Refused(() => OilMap.Even(40 * Foot, -1 * Micrometre)));
        Assert.Equal("s.json: lanes[0].oil.volume: \"-25 mL\" is out of [0, 1000] mL", Refused("25 mL", "-25 mL"));
        var oil = Oil(film: "-1");
        Assert.Equal("oil.csv: line 3, board 1: -1 um is out of range; expected 0 to 500 um", text.Complaint(() => OilMapCsv.Read(text.File("oil.csv", oil))));
    }

    [Fact]
    public void Five_a_board_is_missing()
    {
        var oil = Oil().Replace(",board 17", "");
        text.File("oil.csv", oil);
        const string sentence = "oil.csv: line 2: has no column for board 17; expected boards 1 to 39 without a gap";
        Assert.Equal(sentence, text.Complaint(() => OilMapCsv.Read(Path.Combine(text.Folder, "oil.csv"))));
        Assert.Equal(sentence, Refused("\"shape\": \"crowned\", \"length\": \"40 ft\", \"volume\": \"25 mL\"", "\"file\": \"oil.csv\""));
    }

    [Fact]
    public void Six_an_impossible_inertia()
    {
        Assert.Equal("Inertia breaks the triangle inequality: the greatest principal moment 0.07 kg m² exceeds the sum of the other two, 0.03 + 0.03; no body has such moments",
            Refused(() => new Ball { Mass = 7, Radius = 0.1085, Inertia = new(0.03, 0.07, 0.03) }));
        Assert.Equal("s.json: balls[0].intermediateDifferential: \"0.06 in\": intermediateDifferential = 0.06 in is larger than differential = 0.05 in: "
            + "the intermediate radius of gyration would be the lowest", Refused("0.015 in", "0.06 in"));
    }

    [Fact]
    public void Seven_the_pin_half_a_circumference_from_the_axis()
    {
        var ball = Ball.FromSpecification(15 * Pound, 2.48 * Inch, 0.05 * Inch);
        var half = Math.PI * 8.55 / 2 * Inch;
        Assert.Equal("PinToAxis = 0.34113 m must be above zero and below half the circumference of this ball, 0.34113 m: "
            + "at either end the arc has no direction and neither angle means anything",
            Refused(() => ball.Drill(new Layout(half, 0.5, 0.5), Grip.Fingertip, new PositiveAxisPoint(5 * Inch, 0))));
        Assert.Equal("s.json: layouts[0].pinToAxis: \"13.431 in\" on \"First\": PinToAxis = 0.341147 m must be above zero and below half the circumference of this ball, 0.34113 m: "
            + "at either end the arc has no direction and neither angle means anything", Refused("\"4 in\"", "\"13.431 in\""));
    }

    [Fact]
    public void Eight_a_lane_that_ends_before_the_pins()
    {
        Assert.Equal("Length = 18 m ends the lane before the head pin, which stands 18.288 m (60 ft) from the foul line, 0.0127 m more or less; to study a ball without pins use Lane.Unbounded",
            Refused(() => Lane.Regulation with { Length = 18 }));
        Assert.Equal("s.json: lanes[0].length: \"59 ft\": Length = 17.9832 m ends the lane before the head pin, which stands 18.288 m (60 ft) from the foul line, 0.0127 m more or less; "
            + "to study a ball without pins use Lane.Unbounded", Refused("\"name\": \"Fresh\"", "\"name\": \"Fresh\", \"length\": \"59 ft\""));
    }

    [Fact]
    public void Nine_a_field_that_nobody_knows()
    {
        Assert.Equal("s.json: layouts[0].angleAtPim: is an unknown field; did you mean \"angleAtPin\"? (known here: name, pinToAxis, angleAtPin, angleAtAxis)",
            Refused("angleAtPin", "angleAtPim"));
        Assert.Equal("s.json: colour: is an unknown field (known here: title, bowler, balls, layouts, finishes, releases, lanes, friction, options)",
            Refused("\"title\"", "\"colour\": \"red\", \"title\""));
    }

    [Fact]
    public void Ten_a_unit_of_the_wrong_kind()
    {
        Assert.Equal("s.json: releases[0].speed: \"350 rpm\" is a spin rate; here a speed is wanted (allowed: mph, km/h, m/s, ft/s)", Refused("18.5 mph", "350 rpm"));
        Assert.Equal("s.json: lanes[0].oil.volume: \"25 um\" is an oil film; here a volume is wanted (allowed: mL, uL, cm3, m3)", Refused("25 mL", "25 um"));
        Assert.Equal("s.json: releases[0].board: \"29 in\" is not a number; a plain number without a unit is wanted", Refused("\"board\": 29", "\"board\": \"29 in\""));
        Assert.Equal("s.json: finishes[0].grit: \"2000\" is text; a plain number is wanted, without quotes", Refused("2000", "\"2000\""));
    }

    private static string Oil(string film = "5")
    {
        var boards = string.Join(',', Enumerable.Range(1, 39).Select(b => $"board {b}"));
        string Line(string distance) => distance + "," + string.Join(',', Enumerable.Repeat(film, 39));
        return $"# film [um]\ndistance [ft],{boards}\n{Line("0")}\n{Line("40")}\n";
    }
}
