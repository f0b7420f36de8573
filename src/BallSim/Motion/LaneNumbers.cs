using System.Collections.Concurrent;
using System.Runtime.CompilerServices;
using BallSim.Friction;
using BallSim.Integration;
using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>The numbers of shots side by side, in one piece of memory.</summary>
internal struct LaneNumbers<T, TSurface>
    where T : struct, ILanes<T>, IReal<T>
    where TSurface : struct, ISurface<T>
{
    public Slide<T, TSurface> Slide;
    public Roll<T, TSurface> Roll;

    /// <summary>It starts from the state that the lanes are in.</summary>
    public Step<State<T>> Step;

    /// <summary>What is estimated of its error.</summary>
    public State<T> Error;

    public Bounds<T> Bounds;
    public Control<T> Control;
    public Grip<T> Grip;
    public Tally<T> Tally;
    public Quat<T> Orientation;
    public T Dt, LastNorm, RowEnd, Steps, MostSteps;

    private static readonly ConcurrentBag<LaneNumbers<T, TSurface>[]> free = [];

    /// <summary>
    /// All zero, and on the lines of the cache, where they stay: vectors across two lines cost lanes a tenth of their speed, and where memory comes to lie is for the runtime to say. Who has no more use for them gives them back.
    /// </summary>
    public static LaneNumbers<T, TSurface>[] Rent() => free.TryTake(out var numbers) ? numbers : OnLines();

    /// <summary>See <see cref="Rent"/>.</summary>
    public static void GiveBack(LaneNumbers<T, TSurface>[] numbers)
    {
        if (numbers[0].Askew == 0)
        {
            numbers[0] = default;
            free.Add(numbers);
        }
    }

    // Asks until they lie well, and keeps what does not as long as it asks, lest it be given the same place again. What is put between moves the next ones by another distance each time, so that they come past every place between two
    // lines; it is as large as they are, since small memory is taken from elsewhere.
    private static LaneNumbers<T, TSurface>[] OnLines()
    {
        const int MostTries = 64;
        List<Array> askew = [];
        for (var tries = 1; ; tries++)
        {
            var numbers = GC.AllocateArray<LaneNumbers<T, TSurface>>(1, pinned: true);
            if (numbers[0].Askew == 0 || tries == MostTries)
            {
                GC.KeepAlive(askew);
                return numbers;
            }
            askew.Add(numbers);
            askew.Add(GC.AllocateUninitializedArray<byte>(Unsafe.SizeOf<LaneNumbers<T, TSurface>>() + 8 * tries, pinned: true));
        }
    }

    /// <summary>How far the numbers lie beyond the lines of the cache, bytes; 0 if all of them begin on one.</summary>
    public int Askew => Beyond(ref Slide.Body) | Beyond(ref Slide.Seen) | Beyond(ref Roll.Body) | Beyond(ref Roll.ω) | Beyond(ref Step) | Beyond(ref Bounds) | Beyond(ref Control) | Beyond(ref Grip) | Beyond(ref Tally) | Beyond(ref Orientation) | Beyond(ref Dt);

    private static int Beyond<TMany>(ref TMany many) => (int)Unsafe.ByteOffset(ref Unsafe.NullRef<T>(), ref Unsafe.As<TMany, T>(ref many)) & (Unsafe.SizeOf<T>() - 1);
}
