using System.Text.Json;
using BallSim.Balls;
using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Shots;

namespace BallSim.Tests.References;

/// <summary>The solved cases under tests/data: every case of a file becomes a test, whatever their number. Sources: tests/data/SOURCES.md and in each file.</summary>
internal static class ReferenceFile
{
    public static IEnumerable<JsonElement> Cases(string file)
    {
        var document = JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "data", file)));
        return document.RootElement.GetProperty("cases").EnumerateArray();
    }

    /// <summary>Names for [MemberData]; the case is found again by <see cref="Case"/>.</summary>
    public static TheoryData<string> Names(string file, Func<JsonElement, bool>? wanted = null)
    {
        var data = new TheoryData<string>();
        foreach (var c in Cases(file).Where(c => wanted is null || wanted(c)))
        {
            data.Add(c.GetProperty("name").GetString()!);
        }
        return data;
    }

    public static JsonElement Case(string file, string name) => Cases(file).Single(c => c.GetProperty("name").GetString() == name);

    public static double Number(this JsonElement e, string name) => e.GetProperty(name).GetDouble();

    public static double[] Numbers(this JsonElement e, string name) => [.. e.GetProperty(name).EnumerateArray().Select(x => x.GetDouble())];

    public static Vector3D Vector(this JsonElement e, string name)
    {
        var v = e.Numbers(name);
        return new(v[0], v[1], v.Length > 2 ? v[2] : 0);
    }

    public static Rotation Rotation(this JsonElement e, string name)
    {
        var q = e.Numbers(name);
        return new(q[0], q[1], q[2], q[3]);
    }

    public static InertiaTensor Tensor(this JsonElement e, string name)
    {
        var rows = e.GetProperty(name).EnumerateArray().Select(r => r.EnumerateArray().Select(x => x.GetDouble()).ToArray()).ToArray();
        return new(rows[0][0], rows[1][1], rows[2][2], rows[0][1], rows[0][2], rows[1][2]);
    }

    public static Ball Ball(this JsonElement inputs, InertiaTensor inertia) => new()
    {
        Mass = inputs.Number("m"),
        Radius = inputs.Number("R"),
        Inertia = inertia,
        CentreOfMass = inputs.TryGetProperty("d_body", out _) ? inputs.Vector("d_body") : Vector3D.Zero,
    };

    public static InitialState Start(this JsonElement inputs, string omega = "omega0")
    {
        var c = inputs.TryGetProperty("c0", out _) ? inputs.Vector("c0") : Vector3D.Zero;
        var v = inputs.Vector("v0");
        return new()
        {
            X = c.X,
            Y = c.Y,
            VelocityX = v.X,
            VelocityY = v.Y,
            Orientation = inputs.TryGetProperty("q0", out _) ? inputs.Rotation("q0") : BallSim.Rotation.Identity,
            AngularVelocity = inputs.Vector(omega),
        };
    }

    /// <summary>The friction of a case: a constant, or a smooth step down-lane.</summary>
    public static FrictionMap Friction(this JsonElement inputs)
    {
        var f = inputs.GetProperty("friction");
        return f.GetProperty("kind").GetString() switch
        {
            "constant" => FrictionMap.Constant(f.Number("mu")),
            "smoothstep" => FrictionMap.Smoothstep(f.Number("mu1"), f.Number("mu2"), f.Number("y1"), f.Number("y2")),
            var kind => throw new NotSupportedException($"friction of kind {kind}"),
        };
    }

    /// <summary>Reference cases know gravity and friction only; the tolerance is tightened far below theirs.</summary>
    public static SimulatorOptions Tight(double maxTime, double tolerance = 1e-12) => new()
    {
        Tolerance = tolerance,
        AirDrag = false,
        MaxTime = maxTime,
        MaxSteps = 10_000_000,
    };

    public static double Off(Vector3D a, Vector3D b) => Math.Max(Math.Abs(a.X - b.X), Math.Max(Math.Abs(a.Y - b.Y), Math.Abs(a.Z - b.Z)));

    /// <summary>Largest difference of the components, q and -q being the same.</summary>
    public static double Off(Rotation a, Rotation b)
    {
        double Of(int sign) => Math.Max(Math.Max(Math.Abs(a.W - sign * b.W), Math.Abs(a.X - sign * b.X)), Math.Max(Math.Abs(a.Y - sign * b.Y), Math.Abs(a.Z - sign * b.Z)));
        return Math.Min(Of(1), Of(-1));
    }

    public static void Near(double expected, double actual, double within, string what) =>
        Assert.True(Math.Abs(expected - actual) <= within, $"{what}: expected {expected:R}, got {actual:R}, off by {Math.Abs(expected - actual):E2} > {within:E0}");

    /// <summary>Place, velocity, orientation and spin of one sample.</summary>
    public static void Matches(JsonElement sample, PathPoint point, double within, double spinWithin, string orientation = "q")
    {
        var at = $"t = {point.Time:R}";
        var c = sample.Vector("c");
        Near(c.X, point.X, within, $"{at} c.x");
        Near(c.Y, point.Y, within, $"{at} c.y");
        var v = sample.Vector("v_c");
        Near(v.X, point.VelocityX, within, $"{at} v.x");
        Near(v.Y, point.VelocityY, within, $"{at} v.y");
        var omega = Off(sample.Vector("omega_lane"), point.AngularVelocity);
        Assert.True(omega <= spinWithin, $"{at} omega off by {omega:E2} > {spinWithin:E0}");
        if (sample.TryGetProperty(orientation, out _))
        {
            var q = Off(sample.Rotation(orientation), point.Orientation);
            Assert.True(q <= within, $"{at} q off by {q:E2} > {within:E0}");
        }
    }
}
