namespace BallSim.Spatial;

/// <summary>A number type with several lanes, which run as many shots side by side.</summary>
internal interface ILanes<T> : IReal<T>
    where T : struct, ILanes<T>
{
    static abstract int Count { get; }

    /// <summary>The value in one lane.</summary>
    static abstract double Lane(in T a, int lane);

    static abstract void SetLane(ref T a, int lane, double value);

    /// <summary>One bit for each lane in which the number is greater than zero, the lowest for lane 0.</summary>
    static abstract uint Mask(T a);

    /// <summary>In one pass: each sum of a stage is read and written once.</summary>
    static bool IReal<T>.SumsWhole<TState>(ref TState y, in TState start, in TState k, int count, int numbers, in T h, double c1, double c2, double c3, double c4, double c5)
    {
        LaneCopy<T>.Sum(ref y, start, k, count, numbers, h, c1, c2, c3, c4, c5);
        return true;
    }
}
