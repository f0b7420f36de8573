using BallSim.Integration;
using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>The way through the air: Bo goes straight on at v0 and the ball turns as a free body about Bcm; no gravity, drag or bounce. Bo's velocity is held in the state's.</summary>
internal struct Loft<T> : IOde<State<T>>
    where T : struct, IReal<T>
{
    public Body<T> Body;
    public Quat<T> Start;

    public Vec3<T> ω;

    public void Rates(in State<T> y, out State<T> rates)
    {
        Kinematics<T>.Turned(Start, y, Body.InverseMoments, Body.d_P, out var inverse, out _);
        ω = inverse * y.Momentum;
        var turn = Quat<T>.TurnRate(y.Turn, ω);
        rates = default;
        rates.Time = 1.0;
        rates.X = y.VelocityX;
        rates.Y = y.VelocityY;
        (rates.TurnX, rates.TurnY, rates.TurnZ) = (turn.X, turn.Y, turn.Z);
        rates.Revolutions = T.Sqrt(ω.Dot(ω)) * (1 / (2 * Math.PI));
    }
}
