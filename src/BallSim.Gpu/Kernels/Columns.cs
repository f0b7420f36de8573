using BallSim.Motion;
using BallSim.Spatial;

namespace BallSim.Gpu;

/// <summary>Every number of a part of a shot that an outcome or a next step asks for, in a fixed order, to or from where a transfer has it: the card knows no other way.</summary>
internal static class Columns<T>
    where T : unmanaged, IDeviceReal<T>, IReal<T>
{
    /// <summary>A state between two steps, where the ball has not turned yet. The work of friction and drag is in no outcome: what is not kept is not computed.</summary>
    public static void State<TTransfer>(ref TTransfer with, ref State<T> a, bool oil)
        where TTransfer : struct, ITransfer<T>
    {
        with.Four(ref a.Time, ref a.X, ref a.Y, ref a.VelocityX);
        with.Four(ref a.VelocityY, ref a.MomentumX, ref a.MomentumY, ref a.MomentumZ);
        if (oil)
        {
            var none = a.OilTaken;
            with.Four(ref a.Revolutions, ref a.CoverFilm, ref a.OilTaken, ref none);
        }
        else
        {
            with.Two(ref a.Revolutions, ref a.CoverFilm);
        }
    }

    /// <summary>Its slopes.</summary>
    public static void Slopes<TTransfer>(ref TTransfer with, ref State<T> a, bool oil)
        where TTransfer : struct, ITransfer<T>
    {
        with.Four(ref a.Time, ref a.X, ref a.Y, ref a.VelocityX);
        with.Four(ref a.VelocityY, ref a.MomentumX, ref a.MomentumY, ref a.MomentumZ);
        with.Four(ref a.TurnX, ref a.TurnY, ref a.TurnZ, ref a.Revolutions);
        if (oil)
        {
            with.Two(ref a.CoverFilm, ref a.OilTaken);
        }
    }

    public static void Each<TTransfer>(ref TTransfer with, ref Quat<T> a)
        where TTransfer : struct, ITransfer<T>
    {
        var (w, x, y, z) = (a.W, a.X, a.Y, a.Z);
        with.Four(ref w, ref x, ref y, ref z);
        a = new(w, x, y, z);
    }

    public static void Each<TTransfer>(ref TTransfer with, ref Seen<T> a)
        where TTransfer : struct, ITransfer<T>
    {
        var (x, y, z, none) = (a.ω.X, a.ω.Y, a.ω.Z, a.Pull);
        with.Four(ref x, ref y, ref z, ref a.VelocityX);
        with.Four(ref a.VelocityY, ref a.Slip, ref a.N, ref a.Fall);
        with.Two(ref a.Pull, ref none);
        a.ω = new(x, y, z);
    }

    public static void Each<TTransfer>(ref TTransfer with, ref Dip<T> a)
        where TTransfer : struct, ITransfer<T>
    {
        with.Four(ref a.Shift, ref a.Lost, ref a.PushX, ref a.PushY);
        with.Four(ref a.TurnX, ref a.TurnY, ref a.TurnZ, ref a.Work);
        with.Four(ref a.Film, ref a.WhenFresh, ref a.Slip, ref a.Scale);
        with.Four(ref a.Strip, ref a.Curve1, ref a.Curve2, ref a.Curve3);
        with.Four(ref a.Rise, ref a.Bend, ref a.Swing, ref a.Depth);
    }

    public static void Each<TTransfer>(ref TTransfer with, ref Grip<T> a)
        where TTransfer : struct, ITransfer<T>
    {
        var (x, y, z) = (a.ω.X, a.ω.Y, a.ω.Z);
        with.Four(ref x, ref y, ref z, ref a.Excess);
        with.Four(ref a.Limit, ref a.N, ref a.VelocityX, ref a.VelocityY);
        with.Two(ref a.Film, ref a.Shift);
        a.ω = new(x, y, z);
    }

    /// <summary>What a step may change of the tally.</summary>
    public static void Turned<TTransfer>(ref TTransfer with, ref Tally<T> a)
        where TTransfer : struct, ITransfer<T>
        => with.Four(ref a.Reach, ref a.BreakY, ref a.BreakTime, ref a.Turned);

    /// <summary>The rest of it.</summary>
    public static void Rolled<TTransfer>(ref TTransfer with, ref Tally<T> a)
        where TTransfer : struct, ITransfer<T>
    {
        with.Four(ref a.RollX, ref a.RollY, ref a.RollTime, ref a.Rolled);
        with.Two(ref a.SlippedAgain, ref a.Hand);
    }
}
