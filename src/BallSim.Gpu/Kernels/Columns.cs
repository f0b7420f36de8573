using BallSim.Motion;
using BallSim.Spatial;

namespace BallSim.Gpu;

/// <summary>Every number of a part of a shot, in a fixed order, to or from where a transfer has it: the card knows no other way.</summary>
internal static class Columns<T>
    where T : unmanaged, IDeviceReal<T>, IReal<T>
{
    public static void Each<TTransfer>(ref TTransfer with, ref State<T> a)
        where TTransfer : struct, ITransfer<T>
    {
        (a.Time, a.X, a.Y) = (with.Next(a.Time), with.Next(a.X), with.Next(a.Y));
        (a.VelocityX, a.VelocityY) = (with.Next(a.VelocityX), with.Next(a.VelocityY));
        (a.MomentumX, a.MomentumY, a.MomentumZ) = (with.Next(a.MomentumX), with.Next(a.MomentumY), with.Next(a.MomentumZ));
        (a.TurnX, a.TurnY, a.TurnZ) = (with.Next(a.TurnX), with.Next(a.TurnY), with.Next(a.TurnZ));
        (a.CoverFilm, a.Revolutions) = (with.Next(a.CoverFilm), with.Next(a.Revolutions));
        (a.FrictionWork, a.DragWork, a.OilTaken) = (with.Next(a.FrictionWork), with.Next(a.DragWork), with.Next(a.OilTaken));
    }

    public static void Each<TTransfer>(ref TTransfer with, ref Quat<T> a)
        where TTransfer : struct, ITransfer<T> => a = new(with.Next(a.W), with.Next(a.X), with.Next(a.Y), with.Next(a.Z));

    public static void Each<TTransfer>(ref TTransfer with, ref Vec3<T> a)
        where TTransfer : struct, ITransfer<T> => a = new(with.Next(a.X), with.Next(a.Y), with.Next(a.Z));

    public static void Each<TTransfer>(ref TTransfer with, ref Seen<T> a)
        where TTransfer : struct, ITransfer<T>
    {
        Each(ref with, ref a.ω);
        (a.VelocityX, a.VelocityY, a.Slip, a.N) = (with.Next(a.VelocityX), with.Next(a.VelocityY), with.Next(a.Slip), with.Next(a.N));
        (a.Fall, a.Pull) = (with.Next(a.Fall), with.Next(a.Pull));
    }

    public static void Each<TTransfer>(ref TTransfer with, ref Dip<T> a)
        where TTransfer : struct, ITransfer<T>
    {
        (a.Shift, a.Lost) = (with.Next(a.Shift), with.Next(a.Lost));
        (a.PushX, a.PushY) = (with.Next(a.PushX), with.Next(a.PushY));
        (a.TurnX, a.TurnY, a.TurnZ, a.Work) = (with.Next(a.TurnX), with.Next(a.TurnY), with.Next(a.TurnZ), with.Next(a.Work));
        (a.Film, a.WhenFresh, a.Slip, a.Scale, a.Strip) = (with.Next(a.Film), with.Next(a.WhenFresh), with.Next(a.Slip), with.Next(a.Scale), with.Next(a.Strip));
        (a.Curve1, a.Curve2, a.Curve3) = (with.Next(a.Curve1), with.Next(a.Curve2), with.Next(a.Curve3));
        (a.Rise, a.Bend, a.Swing, a.Depth) = (with.Next(a.Rise), with.Next(a.Bend), with.Next(a.Swing), with.Next(a.Depth));
    }

    public static void Each<TTransfer>(ref TTransfer with, ref Grip<T> a)
        where TTransfer : struct, ITransfer<T>
    {
        Each(ref with, ref a.ω);
        (a.Excess, a.Limit, a.N, a.VelocityX, a.VelocityY) = (with.Next(a.Excess), with.Next(a.Limit), with.Next(a.N), with.Next(a.VelocityX), with.Next(a.VelocityY));
        (a.Film, a.Shift) = (with.Next(a.Film), with.Next(a.Shift));
    }

    public static void Each<TTransfer>(ref TTransfer with, ref Tally<T> a)
        where TTransfer : struct, ITransfer<T>
    {
        (a.Hand, a.Reach, a.BreakY, a.BreakTime, a.Turned) = (with.Next(a.Hand), with.Next(a.Reach), with.Next(a.BreakY), with.Next(a.BreakTime), with.Next(a.Turned));
        (a.RollX, a.RollY, a.RollTime, a.Rolled, a.SlippedAgain) = (with.Next(a.RollX), with.Next(a.RollY), with.Next(a.RollTime), with.Next(a.Rolled), with.Next(a.SlippedAgain));
    }
}
