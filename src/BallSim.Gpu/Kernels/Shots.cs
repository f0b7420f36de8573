using BallSim.Motion;
using BallSim.Spatial;
using ILGPU;

namespace BallSim.Gpu;

/// <summary>
/// Shots between two kernels, in the card's memory. Each number of them has a column, in tiles of as many shots as a warp has threads: what one warp reads lies side by side, and where in a tile a number stands the compiler knows.
/// In doubles, whatever the numbers of the plain steps.
/// </summary>
internal readonly struct Shots(ArrayView<double> numbers, ArrayView<int> wholes)
{
    internal const int Tile = 32;

    // How many numbers a shot has, and where parts of it begin, in the order in which Each goes through them; how many whole ones.
    private const int Numbers = 89, Wholes = 7, AtSeen = 50, AtDip = 59, AtGrip = 79;

    // The columns of whole numbers.
    private const int AtSteps = 0, AtRejected = 1, AtTransitions = 2, AtPhase = 3, AtEnded = 4, AtSetup = 5, AtWhy = 6;

    private readonly ArrayView<double> numbers = numbers;
    private readonly ArrayView<int> wholes = wholes;

    /// <summary>How many doubles and whole numbers so many shots need.</summary>
    public static (long Numbers, long Wholes) Room(int shots)
    {
        var all = (long)(shots + Tile - 1) / Tile * Tile;
        return (all * Numbers, all * Wholes);
    }

    /// <summary>The setup that a shot is thrown with.</summary>
    public int SetupOf(int shot) => Of(wholes, shot, Wholes)[AtSetup * Tile];

    public void KeepSetup(int shot, int setup) => Of(wholes, shot, Wholes)[AtSetup * Tile] = setup;

    /// <summary>Why a shot left its plain steps.</summary>
    public Why WhyOf(int shot) => (Why)Of(wholes, shot, Wholes)[AtWhy * Tile];

    public Phase PhaseOf(int shot) => (Phase)Of(wholes, shot, Wholes)[AtPhase * Tile];

    public void Keep(int shot, Why why) => Of(wholes, shot, Wholes)[AtWhy * Tile] = (int)why;

    /// <summary>All of a shot; what is not used is not read.</summary>
    public Moving<T> Read<T, TEffects>(int shot)
        where T : unmanaged, IDeviceReal<T>, IReal<T>
        where TEffects : struct, IEffects
    {
        Moving<T> moving = default;
        var reading = new Reading<T>(Of(numbers, shot, Numbers));
        Each<T, Reading<T>>(ref reading, ref moving, sliding: true, dips: HasDips<TEffects>(), rolling: true);
        var own = Of(wholes, shot, Wholes);
        (moving.Steps, moving.Rejected, moving.Transitions) = (own[AtSteps * Tile], own[AtRejected * Tile], own[AtTransitions * Tile]);
        (moving.Phase, moving.Ended) = ((Phase)own[AtPhase * Tile], (Ending)own[AtEnded * Tile]);
        return moving;
    }

    /// <summary>Keeps a shot; what was last seen of the contact while sliding, and while rolling, only where it has changed.</summary>
    public void Keep<T, TEffects>(int shot, Moving<T> moving, bool sliding, bool rolling)
        where T : unmanaged, IDeviceReal<T>, IReal<T>
        where TEffects : struct, IEffects
    {
        var writing = new Writing<T>(Of(numbers, shot, Numbers));
        Each<T, Writing<T>>(ref writing, ref moving, sliding, sliding && HasDips<TEffects>(), rolling);
        var own = Of(wholes, shot, Wholes);
        (own[AtSteps * Tile], own[AtRejected * Tile], own[AtTransitions * Tile]) = (moving.Steps, moving.Rejected, moving.Transitions);
        (own[AtPhase * Tile], own[AtEnded * Tile]) = ((int)moving.Phase, (int)moving.Ended);
    }

    private static bool HasDips<TEffects>()
        where TEffects : struct, IEffects => (TEffects.Value & Effects.Dips) != 0;

    // The numbers of a shot, a tile apart.
    private static ArrayView<TItem> Of<TItem>(ArrayView<TItem> all, int shot, int columns)
        where TItem : unmanaged
    {
        var first = (long)(shot / Tile) * (columns * Tile) + shot % Tile;
        return all.SubView(first, all.Length - first);
    }

    private static void Each<T, TTransfer>(ref TTransfer with, ref Moving<T> m, bool sliding, bool dips, bool rolling)
        where T : unmanaged, IDeviceReal<T>, IReal<T>
        where TTransfer : struct, ITransfer<T>
    {
        with.To(0);
        Columns<T>.Each(ref with, ref m.y);
        Columns<T>.Each(ref with, ref m.K1);
        Columns<T>.Each(ref with, ref m.q);
        (m.dt, m.lastNorm, m.rowEnd, m.Stiff) = (with.Next(m.dt), with.Next(m.lastNorm), with.Next(m.rowEnd), with.Next(m.Stiff));
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
