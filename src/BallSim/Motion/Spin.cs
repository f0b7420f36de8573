using BallSim.Integration;
using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>
/// A ball that spins about its centre of mass and nothing else moves it, with whatever takes energy from the spin. In the lane frame, H the
/// momentum of a round rotor of moment J inside the ball, L that of ball and rotor, z up:
/// <code>
/// I ω = L - H
/// dL/dt = -a ω - k (I ω) - p (ω - (ω·l^) l^) - c_h (ω - (ω·z) z) - c_v (ω·z) z        l^ the direction of I ω
/// dH/dt = c (ω - H/J)
/// </code>
/// In the body frame the rotor's law is the usual w_r' = w_r × ω - (c/J)(w_r - ω); here it has no cross product, and L is constant to the
/// last bit where nothing acts from outside. Sources: Bloch, Krishnaprasad, Marsden and Ratiu, Commun. Math. Phys. 175 (1996) 1; the rotor
/// after Chernousko (from memory).
/// </summary>
internal struct Spin<T> : IOde<SpinState<T>>
    where T : struct, IReal<T>
{
    public Sym3<T> I_B, InverseI_B;

    /// <summary>Coupling c of the rotor, N m s, and 1/J, in 1/(kg m²); the coupling is zero where there is no rotor.</summary>
    public T Coupling, InverseRotor;

    /// <summary>a, k, p, c_h and c_v above.</summary>
    public T Air, Slowing, Square, SupportLevel, SupportUpright;

    public Quat<T> Start;

    public Vec3<T> ω;

    public void Rates(in SpinState<T> y, out SpinState<T> rates)
    {
        T tiny = 1e-300;
        var L_ball = y.Momentum - y.Rotor;
        ω = Kinematics<T>.R_LB(Start, y.Turn).Turned(InverseI_B) * L_ball;
        var along = ω.Dot(L_ball) / (L_ball.Dot(L_ball) + tiny);
        var square = Vec3<T>.AddScaled(ω, -along, L_ball);
        var τ = -(Air * ω) - Slowing * L_ball - Square * square;
        rates.Momentum = τ - new Vec3<T>(SupportLevel * ω.X, SupportLevel * ω.Y, SupportUpright * ω.Z);
        rates.Rotor = Coupling * Vec3<T>.AddScaled(ω, -InverseRotor, y.Rotor);
        rates.Turn = Quat<T>.TurnRate(y.Turn, ω);
    }
}
