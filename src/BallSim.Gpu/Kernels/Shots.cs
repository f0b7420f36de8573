using BallSim.Integration;
using BallSim.Motion;
using BallSim.Spatial;
using ILGPU;

namespace BallSim.Gpu;

/// <summary>
/// Shots between two kernels, in the card's memory. Each number of them has a column, in tiles of a few shots, so that where in a tile a number stands the compiler knows. The wider a tile, the more of what a warp asks for lies side by side,
/// if its shots do; the narrower, the less is brought in vain where a warp's shots are some of many, as they are after the first round: the least that a card brings is four numbers. In doubles, whatever the numbers of the plain steps.
/// </summary>
internal readonly struct Shots(ArrayView<double> numbers, ArrayView<int> wholes)
{
    internal const int Tile = 2;

    // How many numbers a shot has, and where parts of it begin, in the order in which Each goes through them; how many whole ones.
    private const int Numbers = 94, Wholes = 7, AtTurned = 32, AtPace = 36, AtTally = 40, AtSeen = 50, AtDip = 59, AtGrip = 79, AtPasses = 89;

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

    /// <summary>Where in its next step the demand of rolling passes the limit of grip, as a look has found.</summary>
    public Between PassesOf(int shot)
    {
        var own = Of(numbers, shot, Numbers);
        return new(own[AtPasses * Tile], own[(AtPasses + 1) * Tile], own[(AtPasses + 2) * Tile], own[(AtPasses + 3) * Tile], own[(AtPasses + 4) * Tile]);
    }

    public void Keep(int shot, in Between passes)
    {
        var own = Of(numbers, shot, Numbers);
        (own[AtPasses * Tile], own[(AtPasses + 1) * Tile], own[(AtPasses + 2) * Tile]) = (passes.Low, passes.AtLow, passes.High);
        (own[(AtPasses + 3) * Tile], own[(AtPasses + 4) * Tile]) = (passes.AtHigh, passes.Likely);
    }

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

    /// <summary>Room for the numbers of so many shots that a block keeps to itself, see <see cref="Spread{TEffects}"/>.</summary>
    public const int MostOfBlock = 32, RoomOfBlock = MostOfBlock * Numbers;

    /// <summary>Keeps a shot that is to slide: its numbers in the block's own room.</summary>
    public void KeepIn<T, TEffects>(ArrayView<double> room, int place, int shot, Moving<T> moving)
        where T : unmanaged, IDeviceReal<T>, IReal<T>
        where TEffects : struct, IEffects
    {
        Write<T, TEffects>(room, place, moving, sliding: true, rolling: false);
        KeepWholes(shot, moving);
    }

    /// <summary>Writes what the threads of a block have kept in its room, side by side: a number here and one there takes as long as four in a row.</summary>
    /// <param name="room">Of the block.</param>
    /// <param name="first">Its first shot.</param>
    /// <param name="count">Its shots; of one that has not been kept comes what happens to be there.</param>
    public void Spread<TEffects>(ArrayView<double> room, int first, int count)
        where TEffects : struct, IEffects
    {
        var used = (HasDips<TEffects>() ? AtGrip : AtDip) * Tile;
        var tiles = (count + Tile - 1) / Tile;
        var to = numbers.SubView((long)(first / Tile) * (Numbers * Tile), tiles * (Numbers * Tile));
        for (var k = ILGPU.Group.IdxX; k < tiles * used; k += ILGPU.Group.DimX)
        {
            var at = k / used * (Numbers * Tile) + k % used;
            to[at] = room[at];
        }
    }

    /// <summary>Keeps a shot; what was last seen of the contact while sliding, and while rolling, only where it has changed; of one that has ended, where neither is asked for, not what a next step would begin with.</summary>
    public void Keep<T, TEffects>(int shot, Moving<T> moving, bool sliding, bool rolling)
        where T : unmanaged, IDeviceReal<T>, IReal<T>
        where TEffects : struct, IEffects
    {
        Write<T, TEffects>(numbers, shot, moving, sliding, rolling);
        KeepWholes(shot, moving);
    }

    private static void Write<T, TEffects>(ArrayView<double> all, int shot, Moving<T> moving, bool sliding, bool rolling)
        where T : unmanaged, IDeviceReal<T>, IReal<T>
        where TEffects : struct, IEffects
    {
        var writing = new Writing<T>(Of(all, shot, Numbers));
        Each<T, Writing<T>>(ref writing, ref moving, sliding, sliding && HasDips<TEffects>(), rolling);
    }

    private void KeepWholes<T>(int shot, in Moving<T> moving)
        where T : unmanaged, IDeviceReal<T>, IReal<T>
    {
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
        if (sliding || rolling)
        {
            Columns<T>.Each(ref with, ref m.K1);
            with.To(AtPace);
            (m.dt, m.lastNorm, m.rowEnd, m.Stiff) = (with.Next(m.dt), with.Next(m.lastNorm), with.Next(m.rowEnd), with.Next(m.Stiff));
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
