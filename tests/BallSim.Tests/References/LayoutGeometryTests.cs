using System.Text.Json;
using BallSim.Balls;
using BallSim.Drilling;
using static BallSim.Units;

namespace BallSim.Tests.References;

/// <summary>Layouts on the sphere solved outside the project (layouts.json: trade-wide definitions, spherical trigonometry, NIST DLMF 4.42), and rows worked out by hand.</summary>
public class LayoutGeometryTests
{
    private const double Trust = 1e-12;

    private static JsonElement File { get; } = JsonDocument.Parse(
        System.IO.File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "data", "layouts.json"))).RootElement;

    public static TheoryData<string> Names => [.. File.GetProperty("cases").EnumerateArray().Select(c => c.GetProperty("name").GetString()!)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_case_agrees(string name)
    {
        var @case = File.GetProperty("cases").EnumerateArray().Single(c => c.GetProperty("name").GetString() == name);
        var inputs = @case.GetProperty("inputs");
        double Number(string key) => inputs.GetProperty(key).GetDouble();
        var axisPoint = new PositiveAxisPoint(Number("pap_over_in") * Inch, Number("pap_up_in") * Inch,
            Enum.Parse<Hand>(inputs.GetProperty("hand").GetString()!, ignoreCase: true));
        var layout = new Layout(Number("pin_to_pap_in") * Inch, Number("drilling_angle_deg") * Degree, Number("val_angle_deg") * Degree);
        var ball = Sphere(Number("circumference_in"), Direction(inputs.GetProperty("pin_dir")), Direction(inputs.GetProperty("marker_dir")));
        var drilled = ball.LayOut(layout, Grip.Fingertip, axisPoint);
        var marks = drilled.Marks;
        var measures = LayoutMeasures.Of(drilled);

        var compared = 0;
        foreach (var expected in @case.GetProperty("expected").EnumerateObject())
        {
            var key = expected.Name.Split(' ')[0];
            if (expected.Value.ValueKind == JsonValueKind.Array)
            {
                var got = key switch
                {
                    "pap_dir" => marks.PositiveAxis!.Value,
                    "grip_centre_dir" => marks.GripCentre!.Value,
                    "grip_right_dir" => marks.GripRight!.Value,
                    "grip_up_dir" => marks.GripUp!.Value,
                    // Not kept on the ball: from the marks, the foot of the axis point on the midline and the way up from there.
                    "val_midline_foot_dir" => Foot(marks),
                    "val_up_dir_at_pap" => marks.PositiveAxis!.Value.Cross(marks.GripUp!.Value.Cross(marks.PositiveAxis!.Value)).Unit,
                    _ => throw new KeyNotFoundException(key),
                };
                Assert.True((got - Direction(expected.Value)).Length < Trust, $"{key}: {got}");
            }
            else
            {
                var got = key switch
                {
                    "pin_grip_in" => measures.PinToGripCentre,
                    "marker_PAP_in" => measures.MassBiasToAxis!.Value,
                    "pin_above_midline_in" => measures.PinAboveMidline,
                    "grip_PAP_in" => measures.GripCentreToAxis,
                    "pin_to_VAL_in" => measures.PinToVerticalLine!.Value,
                    _ => throw new KeyNotFoundException(key),
                };
                Assert.Equal(expected.Value.GetDouble(), got / Inch, Trust);
            }
            compared++;
        }
        Assert.Equal(11, compared);
        Assert.Equal(layout.PinToAxis, measures.PinToAxis, Trust);
    }

    public static TheoryData<string> Degenerate => [.. File.GetProperty("degenerate").EnumerateArray().Select(c => c.GetProperty("inputs").GetRawText())];

    [Theory]
    [MemberData(nameof(Degenerate))]
    public void Every_degenerate_case_is_refused_or_defined(string inputs)
    {
        var given = JsonDocument.Parse(inputs).RootElement.EnumerateObject().Single();
        var ball = Sphere(27, Vector3D.UnitX, Vector3D.UnitY);
        var axisPoint = new PositiveAxisPoint(5 * Inch, 0.5 * Inch);
        switch (given.Name)
        {
            case "pin_to_pap_in":
                var distance = given.Value.GetDouble() * Inch;
                var refusal = Assert.ThrowsAny<ArgumentException>(() => ball.LayOut(new(distance, 1, 1), Grip.Fingertip, axisPoint));
                Assert.Contains("neither angle means anything", refusal.Message);
                break;
            case "marker_not_90_deg_from_pin":
                // Only the direction of the arc counts: a mark 70 degrees from the pin on the same arc lays out the same ball.
                var skew = Sphere(27, Vector3D.UnitX, new(Math.Cos(70 * Degree), Math.Sin(70 * Degree), 0));
                var layout = new Layout(4.5 * Inch, 50 * Degree, 40 * Degree);
                var (a, b) = (ball.LayOut(layout, Grip.Fingertip, axisPoint), skew.LayOut(layout, Grip.Fingertip, axisPoint));
                Assert.True((a.Marks.GripCentre!.Value - b.Marks.GripCentre!.Value).Length < Trust);
                break;
            case "pap_up_in":
                Assert.Contains("Up", Assert.ThrowsAny<ArgumentException>(() => new PositiveAxisPoint(5 * Inch, given.Value.GetDouble() * Inch)).Message);
                break;
            default:
                throw new KeyNotFoundException(given.Name);
        }
    }

    // Worked out by spherical trigonometry, to the digits shown: mark to axis, pin to vertical axis line, RG about the axis, in inches.
    [Theory]
    [InlineData(4.5, 50, 30, 4.213, 1.924, 2.51097)]
    [InlineData(3.375, 45, 45, 4.500, 2.250, 2.50135)]
    [InlineData(6.75, 90, 90, 6.75, 6.75, 2.515)]
    public void Worked_rows_agree(double pinToAxis, double atPin, double atAxis, double markToAxis, double pinToLine, double rg)
    {
        var ball = Ball.FromSpecification(15 * Pound, 2.48 * Inch, 0.050 * Inch, 0.015 * Inch, diameter: 27 * Inch / Math.PI);
        var measures = LayoutMeasures.Of(ball.LayOut(
            new(pinToAxis * Inch, atPin * Degree, atAxis * Degree), Grip.Fingertip, new PositiveAxisPoint(5 * Inch, 0.5 * Inch)));
        Assert.Equal(markToAxis, measures.MassBiasToAxis!.Value / Inch, 5e-4);
        Assert.Equal(pinToLine, measures.PinToVerticalLine!.Value / Inch, 5e-4);
        Assert.Equal(rg, measures.RgAboutAxis / Inch, 5e-6);
    }

    private static Ball Sphere(double circumference, Vector3D pin, Vector3D mark) => new()
    {
        Mass = 6.8,
        Radius = circumference * Inch / (2 * Math.PI),
        Inertia = new(0.03, 0.03, 0.03),
        Marks = new() { Pin = pin, MassBias = mark },
    };

    private static Vector3D Foot(BallMarks marks)
    {
        var (axis, pole) = (marks.PositiveAxis!.Value, marks.GripUp!.Value);
        return (axis - axis.Dot(pole) * pole).Unit;
    }

    private static Vector3D Direction(JsonElement e) => new(e[0].GetDouble(), e[1].GetDouble(), e[2].GetDouble());
}
