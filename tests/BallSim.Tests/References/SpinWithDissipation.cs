using System.Collections.Concurrent;
using System.Text.Json;
using BallSim.Balls;
using BallSim.Shots;

namespace BallSim.Tests.References;

/// <summary>
/// Free spin with five dissipation models: A. Bloch, P. S. Krishnaprasad, J. E. Marsden, T. S. Ratiu, Commun. Math. Phys. 175 (1996) 1;
/// rotor after Chernousko (from memory). Every case of the file, told apart by its family; then the invariants that each family has, on the
/// computed spin itself.
/// </summary>
public class SpinWithDissipation
{
    private const string File = "spin-dissipation.json";

    public static TheoryData<string> Names => ReferenceFile.Names(File);

    [Theory]
    [MemberData(nameof(Names))]
    public void Spin_momentum_energy_and_angle(string name)
    {
        var c = ReferenceFile.Case(File, name);
        var run = Run(c);
        foreach (var sample in c.GetProperty("samples").EnumerateArray())
        {
            var m = run.At(sample.Number("t"));
            Within(ReferenceFile.Off(sample.Vector("omega_body"), m.AngularVelocityInBall), 1e-7, "omega", m);
            Within(ReferenceFile.Off(sample.Rotation("q"), m.Orientation), 1e-7, "q", m);
            Within(ReferenceFile.Off(sample.Vector("L_lane"), m.Momentum), 1e-9, "L", m);
            Within(sample.Number("energy") - m.Energy, 1e-8, "energy", m);
            // Of the axis as a line.
            var angle = sample.Number("angle_omega_to_max_axis_deg");
            Within(Math.Min(angle, 180 - angle) * Units.Degree - m.AngleToPreferredAxis, 1e-7, "angle", m);
            if (sample.TryGetProperty("omega_rotor_body", out _))
            {
                Within(ReferenceFile.Off(sample.Vector("omega_rotor_body"), m.RotorAngularVelocityInBall!.Value), 1e-7, "rotor", m);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Invariants_of_the_family(string name)
    {
        var c = ReferenceFile.Case(File, name);
        var run = Run(c);
        var start = run.Start;
        var L0 = start.Momentum.Length;
        var k = run.Dissipation.Slowing;
        var energy = double.PositiveInfinity;
        foreach (var m in run.Samples(400))
        {
            Assert.True(m.Energy <= energy * (1 + 1e-12), $"energy rises at {m.Time} s");
            energy = m.Energy;
            switch (Family(c))
            {
                case 1:
                    Within((m.Momentum - start.Momentum).Length / L0, 1e-14, "total momentum", m);
                    break;
                case 2:
                    Within(m.Momentum.Length / L0 - 1, 1e-10, "size of the momentum", m);
                    break;
                case 4:
                    Within(m.Energy / m.Momentum.Dot(m.Momentum) / (start.Energy / (L0 * L0)) - 1, 1e-10, "2E/L²", m);
                    // The same curve at another pace.
                    var free = TorqueFreeSpin.Of(run.Ball, start.AngularVelocityInBall).AngularVelocityInBall((1 - Math.Exp(-k * m.Time)) / k);
                    Within(ReferenceFile.Off(Math.Exp(-k * m.Time) * free, m.AngularVelocityInBall), 1e-7, "free spin, slowed", m);
                    break;
                case 5 when run.Dissipation.SupportUpright == 0:
                    Within((m.Momentum.Z - start.Momentum.Z) / L0, 1e-14, "upright momentum", m);
                    break;
            }
        }
    }

    // Both tests look at the same runs.
    private static readonly ConcurrentDictionary<string, SpinRecord> Runs = new();

    private static SpinRecord Run(JsonElement c) => Runs.GetOrAdd(c.GetProperty("name").GetString()!, _ => Computed(c));

    private static SpinRecord Computed(JsonElement c)
    {
        var inputs = c.GetProperty("inputs");
        var I = inputs.Numbers("I_principal");
        // Any mass and radius will do that can carry the inertia.
        var ball = new Ball { Mass = 50, Radius = 0.2, Inertia = new(I[0], I[1], I[2]) };
        var p = inputs.GetProperty("parameters");
        var dissipation = Family(c) switch
        {
            1 => new SpinDissipation { RotorCoupling = p.Number("c"), RotorMoment = p.Number("J") },
            2 => new SpinDissipation { SquareToMomentum = p.Number("c") },
            3 => new SpinDissipation { Air = p.Number("c") },
            4 => new SpinDissipation { Slowing = p.Number("k") },
            5 => new SpinDissipation { SupportLevel = p.Number("ch"), SupportUpright = p.Number("cv") },
            var family => throw new NotSupportedException($"family F{family}"),
        };
        var end = c.GetProperty("samples").EnumerateArray().Last().Number("t");
        return SpinTest.Run(ball, inputs.Vector("omega_body0"), dissipation, end, inputs.Rotation("q0").Normalised,
            new() { Tolerance = 5e-14, MaxSteps = 5_000_000 });
    }

    // "F1a: F1 viscous rotor ...": the digit after the F.
    private static int Family(JsonElement c) => c.GetProperty("name").GetString()![1] - '0';

    private static void Within(double off, double tolerance, string what, SpinMoment m) =>
        Assert.True(Math.Abs(off) <= tolerance, $"t = {m.Time}: {what} off by {off:E2} > {tolerance:E0}");
}
