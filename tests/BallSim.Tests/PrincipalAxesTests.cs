namespace BallSim.Tests;

public class PrincipalAxesTests
{
    [Fact]
    public void A_diagonal_tensor_keeps_its_axes_and_sorts_its_moments_exactly()
    {
        var p = new InertiaTensor(0.03, 0.01, 0.02).Principal;
        Assert.Equal(new PrincipalAxes(0.01, 0.02, 0.03, Vector3D.UnitY, Vector3D.UnitZ, Vector3D.UnitX), p);
    }

    [Fact]
    public void A_known_matrix_gives_its_known_eigenvalues()
    {
        // Tridiagonal (2, -1): eigenvalues 2 - √2, 2, 2 + √2, a textbook result; the greatest axis is (1, -√2, 1)/2.
        var p = new InertiaTensor(2, 2, 2, -1, 0, -1).Principal;
        Assert.Equal(2 - Math.Sqrt(2), p.LeastMoment, 1e-15);
        Assert.Equal(2, p.MiddleMoment, 1e-15);
        Assert.Equal(2 + Math.Sqrt(2), p.GreatestMoment, 1e-15);
        Assert.True((p.Greatest - new Vector3D(-0.5, Math.Sqrt(0.5), -0.5)).Length < 1e-15);
    }

    [Theory]
    [InlineData(0.0273, 0.0282, 0.0279, -1.4e-4, -1.4e-4, 1.5e-5)]
    [InlineData(0.02, 0.02, 0.02, 0, 0, 0)]
    [InlineData(0.02, 0.02, 0.02, 1e-9, 1e-12, 3e-10)]
    [InlineData(1, 1, 1, 0.9, 0.9, 0.9)]
    public void Axes_are_orthonormal_and_carry_their_moments(double xx, double yy, double zz, double xy, double xz, double yz)
    {
        var tensor = new InertiaTensor(xx, yy, zz, xy, xz, yz);
        var p = tensor.Principal;
        Assert.True(p.LeastMoment <= p.MiddleMoment && p.MiddleMoment <= p.GreatestMoment);
        foreach (var (moment, axis) in new[] { (p.LeastMoment, p.Least), (p.MiddleMoment, p.Middle), (p.GreatestMoment, p.Greatest) })
        {
            Assert.Equal(1, axis.Length, 1e-15);
            Assert.True((tensor.Apply(axis) - moment * axis).Length < 1e-15 * xx * 4);
        }
        Assert.Equal(0, p.Least.Dot(p.Greatest), 1e-15);
        Assert.Equal(0, p.Least.Dot(p.Middle), 1e-15);
    }
}
