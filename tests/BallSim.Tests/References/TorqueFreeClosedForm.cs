using BallSim.Shots;

namespace BallSim.Tests.References;

/// <summary>
/// The closed form against the free asymmetric top: L. D. Landau and E. M. Lifshitz, Mechanics (3rd ed.), s. 37; NIST DLMF ch. 22.
/// </summary>
public class TorqueFreeClosedForm
{
    private const string File = "torque-free.json";

    public static TheoryData<string> Names => ReferenceFile.Names(File);

    [Theory]
    [MemberData(nameof(Names))]
    public void Spin_and_orientation(string name)
    {
        var c = ReferenceFile.Case(File, name);
        var inputs = c.GetProperty("inputs");
        var I = inputs.Numbers("I_body_principal");
        var spin = TorqueFreeSpin.Of(new InertiaTensor(I[0], I[1], I[2]), inputs.Vector("omega_body0"), inputs.Rotation("q0").Normalised);
        var derived = c.GetProperty("derived");
        switch (derived.GetProperty("branch").GetString())
        {
            case "max":
                Assert.True(spin.CirclesGreatestAxis);
                break;
            case "min":
                Assert.True(spin.CirclesLeastAxis);
                break;
        }
        if (derived.TryGetProperty("period_of_omega_body", out var period) && period.ValueKind == System.Text.Json.JsonValueKind.Number && spin.Period is { } got)
        {
            ReferenceFile.Near(period.GetDouble(), got, 1e-9, "period");
        }
        ReferenceFile.Near(derived.Number("kinetic_energy"), spin.Energy, 1e-12, "energy");
        foreach (var sample in c.GetProperty("samples").EnumerateArray())
        {
            var t = sample.Number("t");
            var omega = ReferenceFile.Off(sample.Vector("omega_body"), spin.AngularVelocityInBall(t));
            Assert.True(omega <= 1e-10, $"t = {t}: omega off by {omega:E2}");
            var q = ReferenceFile.Off(sample.Rotation("q"), spin.Orientation(t));
            Assert.True(q <= 1e-10, $"t = {t}: q off by {q:E2}");
        }
    }
}
