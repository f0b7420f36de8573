using BallSim.Motion;
using BallSim.Spatial;

namespace BallSim.Gpu;

/// <summary>Numbers of a shot from one number type to another, field by field: the card knows no other way.</summary>
internal static class Converted<TFrom, TTo>
    where TFrom : unmanaged, IDeviceReal<TFrom>, IScalar<TFrom>, IReal<TFrom>
    where TTo : unmanaged, IDeviceReal<TTo>, IScalar<TTo>, IReal<TTo>
{
    public static TTo Of(TFrom a) => (double)a;

    public static Vec3<TTo> Of(Vec3<TFrom> a) => new(Of(a.X), Of(a.Y), Of(a.Z));

    public static Quat<TTo> Of(Quat<TFrom> a) => new(Of(a.W), Of(a.X), Of(a.Y), Of(a.Z));

    public static State<TTo> Of(in State<TFrom> a)
    {
        State<TTo> to = default;
        (to.Time, to.X, to.Y) = (Of(a.Time), Of(a.X), Of(a.Y));
        (to.VelocityX, to.VelocityY) = (Of(a.VelocityX), Of(a.VelocityY));
        (to.MomentumX, to.MomentumY, to.MomentumZ) = (Of(a.MomentumX), Of(a.MomentumY), Of(a.MomentumZ));
        (to.TurnX, to.TurnY, to.TurnZ) = (Of(a.TurnX), Of(a.TurnY), Of(a.TurnZ));
        (to.CoverFilm, to.Revolutions) = (Of(a.CoverFilm), Of(a.Revolutions));
        (to.FrictionWork, to.DragWork, to.OilTaken) = (Of(a.FrictionWork), Of(a.DragWork), Of(a.OilTaken));
        return to;
    }

    public static Seen<TTo> Of(in Seen<TFrom> a)
    {
        Seen<TTo> to = default;
        to.ω = Of(a.ω);
        (to.VelocityX, to.VelocityY, to.Slip, to.N) = (Of(a.VelocityX), Of(a.VelocityY), Of(a.Slip), Of(a.N));
        (to.Fall, to.Pull) = (Of(a.Fall), Of(a.Pull));
        return to;
    }

    public static Dip<TTo> Of(in Dip<TFrom> a)
    {
        Dip<TTo> to = default;
        (to.Shift, to.Lost) = (Of(a.Shift), Of(a.Lost));
        (to.PushX, to.PushY, to.TurnX, to.TurnY, to.TurnZ, to.Work) = (Of(a.PushX), Of(a.PushY), Of(a.TurnX), Of(a.TurnY), Of(a.TurnZ), Of(a.Work));
        (to.Film, to.WhenFresh, to.Slip, to.Scale, to.Strip) = (Of(a.Film), Of(a.WhenFresh), Of(a.Slip), Of(a.Scale), Of(a.Strip));
        (to.Curve1, to.Curve2, to.Curve3) = (Of(a.Curve1), Of(a.Curve2), Of(a.Curve3));
        (to.Rise, to.Bend, to.Swing, to.Depth) = (Of(a.Rise), Of(a.Bend), Of(a.Swing), Of(a.Depth));
        return to;
    }

    public static Grip<TTo> Of(in Grip<TFrom> a)
    {
        Grip<TTo> to = default;
        to.ω = Of(a.ω);
        (to.Excess, to.Limit, to.N, to.VelocityX, to.VelocityY) = (Of(a.Excess), Of(a.Limit), Of(a.N), Of(a.VelocityX), Of(a.VelocityY));
        (to.Film, to.Shift) = (Of(a.Film), Of(a.Shift));
        return to;
    }

    public static Tally<TTo> Of(in Tally<TFrom> a)
    {
        Tally<TTo> to = default;
        (to.Hand, to.Reach, to.BreakY, to.BreakTime, to.Turned) = (Of(a.Hand), Of(a.Reach), Of(a.BreakY), Of(a.BreakTime), Of(a.Turned));
        (to.RollX, to.RollY, to.RollTime, to.Rolled, to.SlippedAgain) = (Of(a.RollX), Of(a.RollY), Of(a.RollTime), Of(a.Rolled), Of(a.SlippedAgain));
        return to;
    }

    public static Moving<TTo> Of(in Moving<TFrom> a)
    {
        Moving<TTo> to = default;
        (to.y, to.K1, to.q) = (Of(a.y), Of(a.K1), Of(a.q));
        (to.dt, to.lastNorm, to.rowEnd) = (Of(a.dt), Of(a.lastNorm), Of(a.rowEnd));
        (to.Seen, to.Dip, to.Grip, to.Tally) = (Of(a.Seen), Of(a.Dip), Of(a.Grip), Of(a.Tally));
        (to.Steps, to.Rejected, to.Transitions) = (a.Steps, a.Rejected, a.Transitions);
        (to.Phase, to.Stiff, to.Ended) = (a.Phase, Of(a.Stiff), a.Ended);
        return to;
    }
}
