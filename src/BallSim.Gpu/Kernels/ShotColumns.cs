using BallSim.Motion;
using BallSim.Spatial;

namespace BallSim.Gpu;

/// <summary>Where in a shot its parts stand.</summary>
internal static class ShotColumns
{
    /// <summary>Shots whose units lie side by side; bytes of a unit, and what its place is a multiple of.</summary>
    public const int Tile = 2, UnitBytes = 16;

    /// <summary>Numbers of a shot.</summary>
    public const int Numbers = AtGrip + 12;

    // Where its parts begin, each with a number that four divide.
    private const int AtSlopes = 12, AtPace = 28, AtOrientation = 32, AtTurned = 36, AtRolled = 40, AtSeen = 48, AtDip = 60, AtGrip = 80;

    /// <summary>How many units so many shots need in doubles; in floats it is half as many.</summary>
    public static long Room(int shots) => (long)(shots + Tile - 1) / Tile * Tile * (Numbers / Doubles.Numbers);

    public static void Each<T, TTransfer, TEffects>(ref TTransfer with, ref Moving<T> m, bool sliding, bool rolling, bool changed)
        where T : unmanaged, IDeviceReal<T>, IReal<T>
        where TTransfer : struct, ITransfer<T>
        where TEffects : struct, IEffects
    {
        with.To(0);
        Columns<T>.State(ref with, ref m.y, Has<TEffects>(Effects.CoverOil));
        if (sliding || rolling)
        {
            with.To(AtSlopes);
            Columns<T>.Slopes(ref with, ref m.K1, Has<TEffects>(Effects.CoverOil));
            with.To(AtPace);
            with.Four(ref m.dt, ref m.lastNorm, ref m.rowEnd, ref m.Stiff);
        }
        with.To(AtOrientation);
        Columns<T>.Each(ref with, ref m.q);
        with.To(AtTurned);
        Columns<T>.Turned(ref with, ref m.Tally);
        if (changed)
        {
            with.To(AtRolled);
            Columns<T>.Rolled(ref with, ref m.Tally);
        }
        if (sliding)
        {
            with.To(AtSeen);
            Columns<T>.Each(ref with, ref m.Seen);
        }
        if (sliding && Has<TEffects>(Effects.Dips))
        {
            with.To(AtDip);
            Columns<T>.Each(ref with, ref m.Dip);
        }
        if (rolling)
        {
            with.To(AtGrip);
            Columns<T>.Each(ref with, ref m.Grip);
        }
    }

    private static bool Has<TEffects>(Effects effects)
        where TEffects : struct, IEffects => (TEffects.Value & effects) != 0;
}
