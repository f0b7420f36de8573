using BallSim.Shots;

namespace BallSim.Tests.Shots;

public class TorqueFreeSpinTests
{
    // Moments and spin for which I₃ (I₃ - I₂) ω₃² = I₁ (I₂ - I₁) ω₁² exactly in real numbers: the separatrix.
    private static readonly InertiaTensor Body = new(0.02, 0.03, 0.045);

    private static Vector3D OnSeparatrix(double w1) => new(w1, 0, w1 * Math.Sqrt(0.02 * 0.01 / (0.045 * 0.015)));

    [Fact]
    public void On_the_separatrix_the_spin_ends_at_the_middle_axis()
    {
        var spin = TorqueFreeSpin.Of(Body, OnSeparatrix(12));
        Assert.False(spin.CirclesGreatestAxis || spin.CirclesLeastAxis || spin.IsSteady);
        Assert.Null(spin.Period);
        // |ω₂| at the end follows from the energy alone: 2E = I₂ ω₂².
        var end = spin.AngularVelocityInBall(30);
        Assert.Equal(Math.Sqrt(2 * spin.Energy / 0.03), Math.Abs(end.Y), 1e-10);
        Assert.Equal(0, end.X, 1e-12);
        var curve = spin.Polhode(201);
        Assert.True(Math.Abs(curve[0].Y) > 0.999999 && curve[0].Y * curve[^1].Y < 0);
    }

    [Fact]
    public void Principal_axes_are_steady_and_the_middle_one_is_unstable()
    {
        foreach (var axis in (Vector3D[])[Vector3D.UnitX, Vector3D.UnitY, Vector3D.UnitZ])
        {
            var spin = TorqueFreeSpin.Of(Body, 20 * axis);
            Assert.True(spin.IsSteady);
            Assert.Equal(20 * axis, spin.AngularVelocityInBall(7));
        }
        // A spin that starts next to an axis, one part in ten thousand off, stays there or turns over.
        double Farthest(Vector3D axis)
        {
            var spin = TorqueFreeSpin.Of(Body, 20 * (axis + 1e-4 * new Vector3D(1, 1, 1)));
            return spin.Polhode(400).Max(p => p.AngleTo(axis));
        }
        Assert.True(Farthest(Vector3D.UnitX) < 1e-3);
        Assert.True(Farthest(Vector3D.UnitZ) < 1e-3);
        Assert.True(Farthest(Vector3D.UnitY) > 3);
    }

    [Fact]
    public void An_axisymmetric_body_precesses_at_the_textbook_rate()
    {
        // L. D. Landau and E. M. Lifshitz, Mechanics, s. 36: in the body the spin goes round the symmetry axis at (1 - I_s/I_t) ω_s.
        var spin = TorqueFreeSpin.Of(new InertiaTensor(0.02, 0.03, 0.03), new(10, 6, 0));
        Assert.Equal(2 * Math.PI / (10 * (1 - 2.0 / 3)), spin.Period!.Value, 1e-12);
        Assert.True(spin.CirclesLeastAxis);
    }

    [Fact]
    public void Nonsense_is_refused()
    {
        Assert.Contains("positive definite", Assert.Throws<ArgumentException>(() => TorqueFreeSpin.Of(new InertiaTensor(0, 1, 1), new(1, 0, 0))).Message);
        Assert.Contains("angularVelocity", Assert.Throws<ArgumentOutOfRangeException>(() => TorqueFreeSpin.Of(Body, Vector3D.Zero)).Message);
    }
}
