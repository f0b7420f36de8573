using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>The beginning of a run, for every driver.</summary>
internal static class FoulLine<T>
    where T : struct, IReal<T>
{
    /// <summary>The state of a ball whose Bo is at (x, y0) with velocity (vx, vy), and the orientation of its principal axes, from that of the ball and its angular velocity (lane frame). The velocity is that of Bo.</summary>
    public static void Leave(in Body<T> body, T x, T y0, T vx, T vy, Quat<T> orientation, Vec3<T> ω, out State<T> y, out Quat<T> q)
    {
        y = default;
        (y.X, y.Y) = (x, y0);
        q = (orientation * body.Axes).Normalised();
        Kinematics<T>.Turned(q, y, body.Moments, body.d_P, out var I_L, out _);
        y.Momentum = I_L * ω;
        (y.VelocityX, y.VelocityY) = (vx, vy);
    }

    /// <summary>On the lane the velocity is that of Bcm.</summary>
    public static void Land(in Body<T> body, in Quat<T> q, ref State<T> y)
    {
        Kinematics<T>.Turned(q, y, body.InverseMoments, body.d_P, out var inverse, out var r_d);
        var ωr_d = (inverse * y.Momentum).Cross(r_d);
        (y.VelocityX, y.VelocityY) = (y.VelocityX + ωr_d.X, y.VelocityY + ωr_d.Y);
    }
}
