using System.Text.Json;
using BallSim.Balls;
using BallSim.Releases;
using static BallSim.Units;

namespace BallSim.Tests.References;

/// <summary>
/// The releases of full-model.json (Newton-Euler, solved outside the project): their velocities and spins at the foul line, and spin rate, axis
/// rotation and tilt read back at the head pin.
/// </summary>
public class FullModelReleaseTests
{
    private static JsonElement File { get; } = JsonDocument.Parse(
        System.IO.File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "data", "full-model.json"))).RootElement;

    public static TheoryData<string> Names => [.. File.GetProperty("cases").EnumerateArray().Select(c => c.GetProperty("name").GetString()!)];

    private static JsonElement Case(string name) => File.GetProperty("cases").EnumerateArray().Single(c => c.GetProperty("name").GetString() == name);

    [Theory]
    [MemberData(nameof(Names))]
    public void The_release_gives_the_state_at_the_foul_line(string name)
    {
        var inputs = Case(name).GetProperty("inputs");
        var r = inputs.GetProperty("release");
        double Number(string key) => r.GetProperty(key).GetDouble();
        var left = inputs.GetProperty("hand").GetInt32() < 0;
        // The file names the axis in the right-hander's body; the left-handed case is its mirror image, and a body is mirrored in its z axis.
        var axis = Vector(r.GetProperty("pap_body"));
        axis = left ? axis with { Z = -axis.Z } : axis;
        var ball = new Ball
        {
            Mass = inputs.GetProperty("m").GetDouble(),
            Radius = inputs.GetProperty("R").GetDouble(),
            Inertia = Tensor(inputs.GetProperty("I_com_body")),
            CentreOfMass = Vector(inputs.GetProperty("d_body")),
            Marks = new() { PositiveAxis = axis, Hand = left ? Hand.Left : Hand.Right },
        };
        var release = new Release
        {
            Speed = Number("speed"),
            SpinRate = Number("rpm") * Rpm,
            LaunchAngle = Number("launch_angle_deg") * Degree,
            AxisRotation = Number("axis_rotation_deg") * Degree,
            AxisTilt = Number("axis_tilt_deg") * Degree,
            Loft = inputs.GetProperty("loft").GetDouble(),
        };
        var state = release.StartAt(inputs.GetProperty("c0")[0].GetDouble(), ball);
        var v0 = inputs.GetProperty("v0");
        var ω0 = Vector(inputs.GetProperty("omega0"));
        Assert.Equal(v0[0].GetDouble(), state.VelocityX, 1e-12);
        Assert.Equal(v0[1].GetDouble(), state.VelocityY, 1e-12);
        Assert.True((state.AngularVelocity - ω0).Length < 1e-12);
        // The positive axis point is on +ω for the right hand and on -ω for the left: in the library's orientation and in the file's.
        var q0 = inputs.GetProperty("q0");
        Rotation given = new(q0[0].GetDouble(), q0[1].GetDouble(), q0[2].GetDouble(), q0[3].GetDouble());
        var onAxis = (left ? -1 : 1) * ω0.Unit;
        Assert.True((state.Orientation.Apply(axis) - onAxis).Length < 1e-12);
        Assert.True((given.Apply(axis) - onAxis).Length < 1e-12);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Spin_at_the_head_pin_is_read_back(string name)
    {
        var @case = Case(name);
        var (contact, metrics) = (@case.GetProperty("contact"), @case.GetProperty("metrics"));
        var hand = @case.GetProperty("inputs").GetProperty("hand").GetInt32() < 0 ? Hand.Left : Hand.Right;
        var spin = SpinAxis.From(Vector(contact.GetProperty("v_c")), Vector(contact.GetProperty("omega_lane")), hand);
        Assert.Equal(metrics.GetProperty("spin_rate").GetDouble(), spin.SpinRate, 1e-12);
        Assert.Equal(metrics.GetProperty("axis_rotation").GetDouble(), spin.AxisRotation, 1e-12);
        Assert.Equal(metrics.GetProperty("axis_tilt").GetDouble(), spin.AxisTilt, 1e-12);
    }

    private static Vector3D Vector(JsonElement e) => new(e[0].GetDouble(), e[1].GetDouble(), e[2].GetDouble());

    private static InertiaTensor Tensor(JsonElement e) => new(
        e[0][0].GetDouble(), e[1][1].GetDouble(), e[2][2].GetDouble(), e[0][1].GetDouble(), e[0][2].GetDouble(), e[1][2].GetDouble());
}
