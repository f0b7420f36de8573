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
        for (var left = count; left > 0; left--)
        {
            T.SetLane(ref to, lane, from);
            from = ref Unsafe.Add(ref from, 1);
            to = ref Unsafe.Add(ref to, 1);
        }
    }

    /// <summary>The first so many numbers in all lanes.</summary>
    public static void Spread<TMany, TOne>(ref TMany many, in TOne one, int count)
        where TMany : struct
        where TOne : struct
    {
        ref var from = ref Unsafe.As<TOne, double>(ref Unsafe.AsRef(in one));
        ref var to = ref Unsafe.As<TMany, T>(ref many);
        for (var i = 0; i < count; i++)
        {
            Unsafe.Add(ref to, i) = Unsafe.Add(ref from, i);
        }
    }

    public static void Get<TMany, TOne>(in TMany many, int lane, ref TOne one)
        where TMany : struct
        where TOne : struct => Get(many, lane, ref one, Unsafe.SizeOf<TOne>() / sizeof(double));

    /// <summary>The first so many numbers only.</summary>
    public static void Get<TMany, TOne>(in TMany many, int lane, ref TOne one, int count)
        where TMany : struct
        where TOne : struct
    {
        ref var to = ref Unsafe.As<TOne, double>(ref one);
        ref var from = ref Unsafe.As<TMany, T>(ref Unsafe.AsRef(in many));
        for (var left = count; left > 0; left--)
        {
            to = T.Lane(from, lane);
            from = ref Unsafe.Add(ref from, 1);
            to = ref Unsafe.Add(ref to, 1);
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

    /// <summary>As <see cref="IReal{T}.SumsWhole{TState}"/>.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public static void Sum<TState>(ref TState y, in TState start, in TState k, int count, int numbers, in T h, double c1, double c2, double c3, double c4, double c5)
        where TState : struct
    {
        ref var to = ref Unsafe.As<TState, T>(ref y);
        ref var from = ref Unsafe.As<TState, T>(ref Unsafe.AsRef(in start));
        ref var k1 = ref Unsafe.As<TState, T>(ref Unsafe.AsRef(in k));
        var n = Unsafe.SizeOf<TState>() / Unsafe.SizeOf<T>();
        // In bytes: an index would be turned into them at every turn.
        nint size = Math.Min(numbers, n) * Unsafe.SizeOf<T>();
        // Here, and not where the call is: numbers go in registers, vectors by way of the stack.
        T s1 = h * c1, s2 = h * c2, s3 = h * c3, s4 = h * c4, s5 = h * c5;
        ref var k2 = ref Unsafe.Add(ref k1, n);
        ref var k3 = ref Unsafe.Add(ref k2, n);
        ref var k4 = ref Unsafe.Add(ref k3, n);
        ref var k5 = ref Unsafe.Add(ref k4, n);
        switch (count)
        {
            case 1:
                for (nint i = 0; i < size; i += Unsafe.SizeOf<T>())
                {
                    At(ref to, i) = T.Fma(s1, At(ref k1, i), At(ref from, i));
                }
                break;
            case 2:
                for (nint i = 0; i < size; i += Unsafe.SizeOf<T>())
                {
                    At(ref to, i) = T.Fma(s2, At(ref k2, i), T.Fma(s1, At(ref k1, i), At(ref from, i)));
                }
                break;
            case 3:
                for (nint i = 0; i < size; i += Unsafe.SizeOf<T>())
                {
                    At(ref to, i) = T.Fma(s3, At(ref k3, i), T.Fma(s2, At(ref k2, i), T.Fma(s1, At(ref k1, i), At(ref from, i))));
                }
                break;
            case 4:
                for (nint i = 0; i < size; i += Unsafe.SizeOf<T>())
                {
                    At(ref to, i) = T.Fma(s4, At(ref k4, i), T.Fma(s3, At(ref k3, i), T.Fma(s2, At(ref k2, i), T.Fma(s1, At(ref k1, i), At(ref from, i)))));
                }
                break;
            default:
                for (nint i = 0; i < size; i += Unsafe.SizeOf<T>())
                {
                    At(ref to, i) = T.Fma(s5, At(ref k5, i), T.Fma(s4, At(ref k4, i), T.Fma(s3, At(ref k3, i), T.Fma(s2, At(ref k2, i), T.Fma(s1, At(ref k1, i), At(ref from, i))))));
                }
                break;
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static ref T At(ref T first, nint bytes) => ref Unsafe.AddByteOffset(ref first, bytes);
}
