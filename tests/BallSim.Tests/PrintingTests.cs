namespace BallSim.Tests;

public class PrintingTests
{
    [Fact]
    public void Values_with_a_member_of_their_own_type_print_and_come_to_an_end()
    {
        Assert.Equal("(1, -2.5, 0)", new Vector3D(1, -2.5, 0).ToString());
        Assert.Equal("(1, 0, 0, 0)", Rotation.Identity.ToString());
    }
}
