namespace BallSim.Tests.Spatial;

/// <summary>The public vector and rotation.</summary>
public class RotationTests
{
    public static TheoryData<double, double, double, double> Rotations
    {
        get
        {
            // About axes in all octants by angles up to and around half a turn, where the four branches of the quaternion of a matrix meet.
            var data = new TheoryData<double, double, double, double>();
            foreach (var angle in new[] { 0, 1e-8, 1, 2, Math.PI - 1e-9, Math.PI, 4, 6 })
            {
                foreach (var (x, y, z) in new[] { (1.0, 0.0, 0.0), (0, 1, 0), (0, 0, 1), (1, 1, 1), (-1, 0.2, 0.1), (0.1, -1, 0.3), (0.2, 0.1, 1) })
                {
                    data.Add(angle, x, y, z);
                }
            }
            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Rotations))]
    public void Between_frames_is_the_rotation_that_takes_one_to_the_other(double angle, double x, double y, double z)
    {
        var turn = Rotation.About(new(x, y, z), angle);
        var start = Rotation.About(new(0.3, -2, 1), 0.7);
        var (a, b) = (start.Apply(Vector3D.UnitX), start.Apply(Vector3D.UnitY));
        var found = Rotation.Between(a, b, turn.Apply(a), turn.Apply(b));
        var v = new Vector3D(0.3, -1.1, 0.7);
        Assert.True((found.Apply(v) - turn.Apply(v)).Length < 1e-15 * 8);
        Assert.Equal(1, Math.Sqrt(found.W * found.W + found.X * found.X + found.Y * found.Y + found.Z * found.Z), 1e-15);
    }

    [Fact]
    public void About_an_axis_is_right_handed()
    {
        Assert.True((Rotation.About(Vector3D.UnitZ, Math.PI / 2).Apply(Vector3D.UnitX) - Vector3D.UnitY).Length < 1e-15);
        Assert.True((Rotation.About(3 * Vector3D.UnitX, Math.PI / 2).Apply(Vector3D.UnitY) - Vector3D.UnitZ).Length < 1e-15);
    }

    [Fact]
    public void A_product_is_first_the_right_then_the_left_and_an_inverse_undoes()
    {
        var (a, b, v) = (Rotation.About(new(1, 2, 3), 0.4), Rotation.About(new(-1, 0, 2), 2.4), new Vector3D(0.3, -1.1, 0.7));
        Assert.True(((a * b).Apply(v) - a.Apply(b.Apply(v))).Length < 1e-15);
        Assert.True((a.Inverse.Apply(a.Apply(v)) - v).Length < 1e-15);
    }

    [Fact]
    public void Products_of_vectors()
    {
        var (a, b) = (new Vector3D(1, 2, 3), new Vector3D(-2, 0.5, 4));
        Assert.Equal(new Vector3D(6.5, -10, 4.5), a.Cross(b));
        Assert.Equal(11, a.Dot(b));
        Assert.Equal(Math.Sqrt(14), a.Length);
        Assert.Equal(1e-9, Vector3D.UnitX.AngleTo(new(1, 1e-9, 0)), 1e-24);
        Assert.Equal(Math.PI - 1e-9, Vector3D.UnitX.AngleTo(new(-1, 1e-9, 0)), 1e-15);
    }
}
