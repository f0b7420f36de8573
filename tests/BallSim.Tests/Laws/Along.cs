using BallSim.Balls;
using BallSim.Shots;

namespace BallSim.Tests.Laws;

/// <summary>What a law is read from: points along a shot, and quantities of mechanics formed from the public numbers alone.</summary>
internal static class Along
{
    /// <summary>Points at equal times, both ends included, and one just before and after every change of phase.</summary>
    public static IEnumerable<PathPoint> Points(Shot shot, int count = 120) =>
        Enumerable.Range(0, count + 1).Select(i => shot.Duration * i / count)
            .Concat(shot.PhaseChanges.SelectMany(c => new[] { c.Time - 1e-7, c.Time + 1e-7 }))
            .Select(t => Math.Clamp(t, 0, shot.Duration)).Order().Select(shot.At);

    public static Vector3D Velocity(PathPoint p) => new(p.VelocityX, p.VelocityY, 0);

    /// <summary>ω × R n: the velocity of the top of the ball against its centre.</summary>
    public static Vector3D Turning(PathPoint p, double radius) => p.AngularVelocity.Cross(radius * Vector3D.UnitZ);

    /// <summary>Angular momentum about the centre of mass, lane frame.</summary>
    public static Vector3D Momentum(PathPoint p, Ball ball) =>
        p.Orientation.Apply(ball.Inertia.Apply(p.Orientation.Inverse.Apply(p.AngularVelocity)));

    /// <summary>From the contact point to the centre of mass.</summary>
    public static Vector3D Arm(PathPoint p, Ball ball) => ball.Radius * Vector3D.UnitZ + p.Orientation.Apply(ball.CentreOfMass);

    /// <summary>Kinetic energy less m g · G, on a lane with the given gravity.</summary>
    public static double Energy(PathPoint p, Ball ball, Vector3D gravity)
    {
        var r_d = p.Orientation.Apply(ball.CentreOfMass);
        var v_G = Velocity(p) + p.AngularVelocity.Cross(r_d);
        return 0.5 * ball.Mass * v_G.Dot(v_G) + 0.5 * p.AngularVelocity.Dot(Momentum(p, ball)) - ball.Mass * gravity.Dot(new Vector3D(p.X, p.Y, ball.Radius) + r_d);
    }

    public static void Near(double expected, double actual, double within, string what) =>
        Assert.True(Math.Abs(expected - actual) <= within, $"{what}: expected {expected:R}, got {actual:R}, off by {Math.Abs(expected - actual):E2} > {within:E1}");

    public static void Near(Vector3D expected, Vector3D actual, double within, string what) =>
        Assert.True((expected - actual).Length <= within, $"{what}: expected {expected}, got {actual}, off by {(expected - actual).Length:E2} > {within:E1}");
}
