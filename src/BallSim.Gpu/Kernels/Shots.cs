using BallSim.Integration;
using BallSim.Motion;
using BallSim.Spatial;
using ILGPU;
using ILGPU.Runtime;

namespace BallSim.Gpu;

/// <summary>
/// Shots between two kernels, in the card's memory. Each pair of numbers has a column, in tiles of two shots: four numbers, the least that a card brings. Where few of many shots are wanted, as after the first round, half of what is brought is
/// asked for; where a warp's shots lie side by side, all of it. Where in a tile a pair stands the compiler knows. In doubles, whatever the numbers of the plain steps.
/// </summary>
internal readonly struct Shots(ArrayView<Pair> pairs, ArrayView<Counts> counts, ArrayView<int> setups, ArrayView<int> whys)
{
    internal const int Tile = 2;

    // Where the parts of a shot begin, in the order in which Each goes through them, each with an even number, and how many pairs there are.
    private const int AtTurned = 32, AtPace = 36, AtTally = 40, AtSeen = 50, AtDip = 60, AtGrip = 80, AtPasses = 90, Pairs = 48;

    private readonly ArrayView<Pair> pairs = pairs;
    private readonly ArrayView<Counts> counts = counts;
    private readonly ArrayView<int> setups = setups, whys = whys;

    /// <summary>How many pairs so many shots need.</summary>
    public static long Room(int shots) => (long)(shots + Tile - 1) / Tile * Tile * Pairs;

    /// <summary>The setup that a shot is thrown with.</summary>
    public int SetupOf(int shot) => setups[shot];

    public void KeepSetup(int shot, int setup) => setups[shot] = setup;

    /// <summary>Why a shot left its plain steps.</summary>
    public Why WhyOf(int shot) => (Why)whys[shot];

    /// <summary>Where in its next step the demand of rolling passes the limit of grip, as a look has found.</summary>
    public Between PassesOf(int shot)
    {
        var reading = new Reading<DeviceDouble>(Of(shot));
        DeviceDouble low = default, atLow = default, high = default, atHigh = default, likely = default;
        Passes(ref reading, ref low, ref atLow, ref high, ref atHigh, ref likely);
        return new((double)low, (double)atLow, (double)high, (double)atHigh, (double)likely);
    }

    public void Keep(int shot, in Between passes)
    {
        var writing = new Writing<DeviceDouble>(Of(shot));
        DeviceDouble low = passes.Low, atLow = passes.AtLow, high = passes.High, atHigh = passes.AtHigh, likely = passes.Likely;
        Passes(ref writing, ref low, ref atLow, ref high, ref atHigh, ref likely);
    }

    public void Keep(int shot, Why why) => whys[shot] = (int)why;

    /// <summary>All of a shot; what is not used is not read.</summary>
    public Moving<T> Read<T, TEffects>(int shot)
        where T : unmanaged, IDeviceReal<T>, IReal<T>
        where TEffects : struct, IEffects
    {
        Moving<T> moving = default;
        var reading = new Reading<T>(Of(shot));
        Each<T, Reading<T>>(ref reading, ref moving, sliding: true, dips: HasDips<TEffects>(), rolling: true);
        var own = counts.AsAligned(Counts.Alignment)[shot];
        (moving.Steps, moving.Rejected, moving.Transitions, moving.Phase, moving.Ended) = (own.Steps, own.Rejected, own.Transitions, own.Phase, own.Ended);
        return moving;
    }

    /// <summary>Keeps a shot; what was last seen of the contact while sliding, and while rolling, only where it has changed; of one that has ended, where neither is asked for, not what a next step would begin with.</summary>
    public void Keep<T, TEffects>(int shot, Moving<T> moving, bool sliding, bool rolling)
        where T : unmanaged, IDeviceReal<T>, IReal<T>
        where TEffects : struct, IEffects
    {
        var writing = new Writing<T>(Of(shot));
        Each<T, Writing<T>>(ref writing, ref moving, sliding, sliding && HasDips<TEffects>(), rolling);
        counts.AsAligned(Counts.Alignment)[shot] = new(moving.Steps, moving.Rejected, moving.Transitions, moving.Phase, moving.Ended);
    }

    private static bool HasDips<TEffects>()
        where TEffects : struct, IEffects => (TEffects.Value & Effects.Dips) != 0;

    private static void Passes<TTransfer>(ref TTransfer with, ref DeviceDouble low, ref DeviceDouble atLow, ref DeviceDouble high, ref DeviceDouble atHigh, ref DeviceDouble likely)
        where TTransfer : struct, ITransfer<DeviceDouble>
    {
        with.To(AtPasses);
        with.Two(ref low, ref atLow);
        with.Two(ref high, ref atHigh);
        var none = likely;
        with.Two(ref likely, ref none);
    }

    // The pairs of a shot, a tile apart.
    private ArrayView<Pair> Of(int shot)
    {
        var first = (long)(shot / Tile) * (Pairs * Tile) + shot % Tile;
        return pairs.SubView(first, pairs.Length - first);
    }

    private static void Each<T, TTransfer>(ref TTransfer with, ref Moving<T> m, bool sliding, bool dips, bool rolling)
        where T : unmanaged, IDeviceReal<T>, IReal<T>
        where TTransfer : struct, ITransfer<T>
    {
        with.To(0);
        Columns<T>.Each(ref with, ref m.y);
        if (sliding || rolling)
        {
            Columns<T>.Each(ref with, ref m.K1);
            with.To(AtPace);
            with.Two(ref m.dt, ref m.lastNorm);
            with.Two(ref m.rowEnd, ref m.Stiff);
        }
        with.To(AtTurned);
        Columns<T>.Each(ref with, ref m.q);
        with.To(AtTally);
        Columns<T>.Each(ref with, ref m.Tally);
        if (sliding)
        {
            with.To(AtSeen);
            Columns<T>.Each(ref with, ref m.Seen);
        }
        if (dips)
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
}
