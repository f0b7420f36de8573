using BallSim.Releases;

namespace BallSim.Tests.Releases;

public class SpinAxisTests
{
    [Theory]
    [InlineData(Hand.Right)]
    [InlineData(Hand.Left)]
    public void No_spin_has_no_angles(Hand hand) => Assert.Equal(new SpinAxis(0, 0, 0), SpinAxis.From(new(0.1, 8, 0), Vector3D.Zero, hand));

    [Fact]
    public void A_ball_at_rest_is_taken_to_face_down_the_lane() =>
        Assert.Equal(new SpinAxis(30, 0, 0), SpinAxis.From(Vector3D.Zero, new(-30, 0, 0), Hand.Right));

    [Fact]
    public void Backspin_is_a_rotation_of_half_a_turn() =>
        Assert.Equal(Math.PI, Math.Abs(SpinAxis.From(Vector3D.UnitY, new(30, 0, 0), Hand.Right).AxisRotation), 1e-15);

    [Fact]
    public void Tilt_near_upright_keeps_its_digits()
    {
        // 1e-9 rad short of upright: the cosine is one to the last bit, so an arcsine would give exactly 90 degrees.
        var tilt = SpinAxis.From(Vector3D.UnitY, new(-1e-9, 0, 1), Hand.Right).AxisTilt;
        Assert.Equal(1e-9, Math.PI / 2 - tilt, 1e-15);
    }
}
