using System.Runtime.CompilerServices;

namespace BallSim.Spatial;

/// <summary>Moves structs that consist of numbers alone between one shot and a lane: TMany is TOne with T in place of Real.</summary>
internal static class LaneCopy<T>
    where T : struct, ILanes<T>, IReal<T>
{
    public static void Set<TMany, TOne>(ref TMany many, int lane, in TOne one)
        where TMany : struct
        where TOne : struct => Set(ref many, lane, one, Unsafe.SizeOf<TOne>() / sizeof(double));

    /// <summary>The first so many numbers only.</summary>
    public static void Set<TMany, TOne>(ref TMany many, int lane, in TOne one, int count)
        where TMany : struct
        where TOne : struct
    {
        ref var from = ref Unsafe.As<TOne, double>(ref Unsafe.AsRef(in one));
        ref var to = ref Unsafe.As<TMany, T>(ref many);
        for (var i = 0; i < count; i++)
        {
            T.SetLane(ref Unsafe.Add(ref to, i), lane, Unsafe.Add(ref from, i));
        }
    }

    public static void Get<TMany, TOne>(in TMany many, int lane, out TOne one)
        where TMany : struct
        where TOne : struct
    {
        one = default;
        ref var to = ref Unsafe.As<TOne, double>(ref one);
        ref var from = ref Unsafe.As<TMany, T>(ref Unsafe.AsRef(in many));
        for (var i = 0; i < Unsafe.SizeOf<TOne>() / sizeof(double); i++)
        {
            Unsafe.Add(ref to, i) = T.Lane(Unsafe.Add(ref from, i), lane);
        }
    }

    /// <summary>Takes the new numbers in the lanes whose flag is set.</summary>
    public static void Take<TMany>(ref TMany old, in TMany fresh, T flag)
        where TMany : struct
    {
        ref var to = ref Unsafe.As<TMany, T>(ref old);
        ref var from = ref Unsafe.As<TMany, T>(ref Unsafe.AsRef(in fresh));
        T zero = 0.0;
        for (var i = 0; i < Unsafe.SizeOf<TMany>() / Unsafe.SizeOf<T>(); i++)
        {
            Unsafe.Add(ref to, i) = T.IfLess(zero, flag, Unsafe.Add(ref from, i), Unsafe.Add(ref to, i));
        }
    }
}
