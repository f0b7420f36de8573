using System.Runtime.CompilerServices;
using BallSim.Integration;
using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>
/// The integrated state, chosen so that it varies slowly although the ball spins: place of Bo, velocity of Bcm, an angular momentum in the lane frame, and the
/// rotation vector since the start of the step; with them the film h_B on the cover. While sliding, the velocity is the horizontal velocity of Bcm and the momentum the angular
/// momentum about Bcm; while rolling, Velocity is unused and Momentum is taken about the contact point; see README.md in this folder.
/// </summary>
internal struct State<T> : ILinear<State<T>, T>
    where T : struct, IReal<T>
{
    public T Time, X, Y, VelocityX, VelocityY;
    public T MomentumX, MomentumY, MomentumZ;
    public T TurnX, TurnY, TurnZ;
    public T CoverFilm, Revolutions, FrictionWork, DragWork;

    /// <summary>Oil that the cover has taken from the lane so far, m³. With it a state is sixteen numbers, a whole number of vectors.</summary>
    public T OilTaken;

    /// <inheritdoc/>
    public static int Leading => 12;

    public Vec3<T> Momentum
    {
        readonly get => new(MomentumX, MomentumY, MomentumZ);
        set => (MomentumX, MomentumY, MomentumZ) = (value.X, value.Y, value.Z);
    }

    public Vec3<T> Turn
    {
        readonly get => new(TurnX, TurnY, TurnZ);
        set => SetTurn(value.X, value.Y, value.Z, CoverFilm);
    }

    // In fours, as they lie.

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void SetPlace(T time, T x, T y, T velocityX) => Set(ref Time, ref X, ref Y, ref VelocityX, time, x, y, velocityX);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void SetMotion(T velocityY, T momentumX, T momentumY, T momentumZ) => Set(ref VelocityY, ref MomentumX, ref MomentumY, ref MomentumZ, velocityY, momentumX, momentumY, momentumZ);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void SetTurn(T turnX, T turnY, T turnZ, T coverFilm) => Set(ref TurnX, ref TurnY, ref TurnZ, ref CoverFilm, turnX, turnY, turnZ, coverFilm);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void SetSums(T revolutions, T frictionWork, T dragWork, T oilTaken) => Set(ref Revolutions, ref FrictionWork, ref DragWork, ref OilTaken, revolutions, frictionWork, dragWork, oilTaken);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Set(ref T first, ref T second, ref T third, ref T fourth, T a, T b, T c, T d)
    {
        if (!T.SetsFour(ref first, a, b, c, d))
        {
            (first, second, third, fourth) = (a, b, c, d);
        }
    }

    /// <summary>The oil alone, of a state that was written in fours.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void SetOil(T coverFilm, T oilTaken)
    {
        SetTurn(TurnX, TurnY, TurnZ, coverFilm);
        SetSums(Revolutions, FrictionWork, DragWork, oilTaken);
    }

    // Not inlined: a step has a dozen of these sums, and in one method they would exceed what the compiler is willing to inline.
    [MethodImpl(MethodImplOptions.NoInlining)]
    public void Add(T s, in State<T> k)
    {
        if (T.AddsWhole(ref this, s, k))
        {
            return;
        }
        Time = T.Fma(s, k.Time, Time);
        X = T.Fma(s, k.X, X);
        Y = T.Fma(s, k.Y, Y);
        VelocityX = T.Fma(s, k.VelocityX, VelocityX);
        VelocityY = T.Fma(s, k.VelocityY, VelocityY);
        MomentumX = T.Fma(s, k.MomentumX, MomentumX);
        MomentumY = T.Fma(s, k.MomentumY, MomentumY);
        MomentumZ = T.Fma(s, k.MomentumZ, MomentumZ);
        TurnX = T.Fma(s, k.TurnX, TurnX);
        TurnY = T.Fma(s, k.TurnY, TurnY);
        TurnZ = T.Fma(s, k.TurnZ, TurnZ);
        CoverFilm = T.Fma(s, k.CoverFilm, CoverFilm);
        Revolutions = T.Fma(s, k.Revolutions, Revolutions);
        FrictionWork = T.Fma(s, k.FrictionWork, FrictionWork);
        DragWork = T.Fma(s, k.DragWork, DragWork);
        OilTaken = T.Fma(s, k.OilTaken, OilTaken);
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    public void Add(T s1, in State<T> k1, T s2, in State<T> k2)
    {
        if (T.AddsWhole(ref this, s1, k1, s2, k2))
        {
            return;
        }
        Time = T.Fma(s2, k2.Time, T.Fma(s1, k1.Time, Time));
        X = T.Fma(s2, k2.X, T.Fma(s1, k1.X, X));
        Y = T.Fma(s2, k2.Y, T.Fma(s1, k1.Y, Y));
        VelocityX = T.Fma(s2, k2.VelocityX, T.Fma(s1, k1.VelocityX, VelocityX));
        VelocityY = T.Fma(s2, k2.VelocityY, T.Fma(s1, k1.VelocityY, VelocityY));
        MomentumX = T.Fma(s2, k2.MomentumX, T.Fma(s1, k1.MomentumX, MomentumX));
        MomentumY = T.Fma(s2, k2.MomentumY, T.Fma(s1, k1.MomentumY, MomentumY));
        MomentumZ = T.Fma(s2, k2.MomentumZ, T.Fma(s1, k1.MomentumZ, MomentumZ));
        TurnX = T.Fma(s2, k2.TurnX, T.Fma(s1, k1.TurnX, TurnX));
        TurnY = T.Fma(s2, k2.TurnY, T.Fma(s1, k1.TurnY, TurnY));
        TurnZ = T.Fma(s2, k2.TurnZ, T.Fma(s1, k1.TurnZ, TurnZ));
        CoverFilm = T.Fma(s2, k2.CoverFilm, T.Fma(s1, k1.CoverFilm, CoverFilm));
        Revolutions = T.Fma(s2, k2.Revolutions, T.Fma(s1, k1.Revolutions, Revolutions));
        FrictionWork = T.Fma(s2, k2.FrictionWork, T.Fma(s1, k1.FrictionWork, FrictionWork));
        DragWork = T.Fma(s2, k2.DragWork, T.Fma(s1, k1.DragWork, DragWork));
        OilTaken = T.Fma(s2, k2.OilTaken, T.Fma(s1, k1.OilTaken, OilTaken));
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    public void Add(T s1, in State<T> k1, T s2, in State<T> k2, T s3, in State<T> k3)
    {
        if (T.AddsWhole(ref this, s1, k1, s2, k2, s3, k3))
        {
            return;
        }
        Time = T.Fma(s3, k3.Time, T.Fma(s2, k2.Time, T.Fma(s1, k1.Time, Time)));
        X = T.Fma(s3, k3.X, T.Fma(s2, k2.X, T.Fma(s1, k1.X, X)));
        Y = T.Fma(s3, k3.Y, T.Fma(s2, k2.Y, T.Fma(s1, k1.Y, Y)));
        VelocityX = T.Fma(s3, k3.VelocityX, T.Fma(s2, k2.VelocityX, T.Fma(s1, k1.VelocityX, VelocityX)));
        VelocityY = T.Fma(s3, k3.VelocityY, T.Fma(s2, k2.VelocityY, T.Fma(s1, k1.VelocityY, VelocityY)));
        MomentumX = T.Fma(s3, k3.MomentumX, T.Fma(s2, k2.MomentumX, T.Fma(s1, k1.MomentumX, MomentumX)));
        MomentumY = T.Fma(s3, k3.MomentumY, T.Fma(s2, k2.MomentumY, T.Fma(s1, k1.MomentumY, MomentumY)));
        MomentumZ = T.Fma(s3, k3.MomentumZ, T.Fma(s2, k2.MomentumZ, T.Fma(s1, k1.MomentumZ, MomentumZ)));
        TurnX = T.Fma(s3, k3.TurnX, T.Fma(s2, k2.TurnX, T.Fma(s1, k1.TurnX, TurnX)));
        TurnY = T.Fma(s3, k3.TurnY, T.Fma(s2, k2.TurnY, T.Fma(s1, k1.TurnY, TurnY)));
        TurnZ = T.Fma(s3, k3.TurnZ, T.Fma(s2, k2.TurnZ, T.Fma(s1, k1.TurnZ, TurnZ)));
        CoverFilm = T.Fma(s3, k3.CoverFilm, T.Fma(s2, k2.CoverFilm, T.Fma(s1, k1.CoverFilm, CoverFilm)));
        Revolutions = T.Fma(s3, k3.Revolutions, T.Fma(s2, k2.Revolutions, T.Fma(s1, k1.Revolutions, Revolutions)));
        FrictionWork = T.Fma(s3, k3.FrictionWork, T.Fma(s2, k2.FrictionWork, T.Fma(s1, k1.FrictionWork, FrictionWork)));
        DragWork = T.Fma(s3, k3.DragWork, T.Fma(s2, k2.DragWork, T.Fma(s1, k1.DragWork, DragWork)));
        OilTaken = T.Fma(s3, k3.OilTaken, T.Fma(s2, k2.OilTaken, T.Fma(s1, k1.OilTaken, OilTaken)));
    }
}
