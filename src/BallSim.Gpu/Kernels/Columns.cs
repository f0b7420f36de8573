using BallSim.Motion;
using BallSim.Spatial;

namespace BallSim.Gpu;

/// <summary>Every number of a part of a shot, in a fixed order and two by two, to or from where a transfer has it: the card knows no other way.</summary>
internal static class Columns<T>
    where T : unmanaged, IDeviceReal<T>, IReal<T>
{
    public static void Each<TTransfer>(ref TTransfer with, ref State<T> a)
        where TTransfer : struct, ITransfer<T>
    {
        with.Two(ref a.Time, ref a.X);
        with.Two(ref a.Y, ref a.VelocityX);
        with.Two(ref a.VelocityY, ref a.MomentumX);
        with.Two(ref a.MomentumY, ref a.MomentumZ);
        with.Two(ref a.TurnX, ref a.TurnY);
        with.Two(ref a.TurnZ, ref a.CoverFilm);
        with.Two(ref a.Revolutions, ref a.FrictionWork);
        with.Two(ref a.DragWork, ref a.OilTaken);
    }

    public static void Each<TTransfer>(ref TTransfer with, ref Quat<T> a)
        where TTransfer : struct, ITransfer<T>
    {
        var (w, x, y, z) = (a.W, a.X, a.Y, a.Z);
        with.Two(ref w, ref x);
        with.Two(ref y, ref z);
        a = new(w, x, y, z);
    }

    public static void Each<TTransfer>(ref TTransfer with, ref Seen<T> a)
        where TTransfer : struct, ITransfer<T>
    {
        var (x, y, z, none) = (a.ω.X, a.ω.Y, a.ω.Z, a.Pull);
        with.Two(ref x, ref y);
        with.Two(ref z, ref a.VelocityX);
        with.Two(ref a.VelocityY, ref a.Slip);
        with.Two(ref a.N, ref a.Fall);
        with.Two(ref a.Pull, ref none);
        a.ω = new(x, y, z);
    }

    public static void Each<TTransfer>(ref TTransfer with, ref Dip<T> a)
        where TTransfer : struct, ITransfer<T>
    {
        with.Two(ref a.Shift, ref a.Lost);
        with.Two(ref a.PushX, ref a.PushY);
        with.Two(ref a.TurnX, ref a.TurnY);
        with.Two(ref a.TurnZ, ref a.Work);
        with.Two(ref a.Film, ref a.WhenFresh);
        with.Two(ref a.Slip, ref a.Scale);
        with.Two(ref a.Strip, ref a.Curve1);
        with.Two(ref a.Curve2, ref a.Curve3);
        with.Two(ref a.Rise, ref a.Bend);
        with.Two(ref a.Swing, ref a.Depth);
    }

    public static void Each<TTransfer>(ref TTransfer with, ref Grip<T> a)
        where TTransfer : struct, ITransfer<T>
    {
        var (x, y, z) = (a.ω.X, a.ω.Y, a.ω.Z);
        with.Two(ref x, ref y);
        with.Two(ref z, ref a.Excess);
        with.Two(ref a.Limit, ref a.N);
        with.Two(ref a.VelocityX, ref a.VelocityY);
        with.Two(ref a.Film, ref a.Shift);
        a.ω = new(x, y, z);
    }

    public static void Each<TTransfer>(ref TTransfer with, ref Tally<T> a)
        where TTransfer : struct, ITransfer<T>
    {
        with.Two(ref a.Hand, ref a.Reach);
        with.Two(ref a.BreakY, ref a.BreakTime);
        with.Two(ref a.Turned, ref a.RollX);
        with.Two(ref a.RollY, ref a.RollTime);
        with.Two(ref a.Rolled, ref a.SlippedAgain);
    }
}
