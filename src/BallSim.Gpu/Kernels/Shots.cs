using BallSim.Integration;
using BallSim.Motion;
using BallSim.Spatial;
using ILGPU;
using ILGPU.Runtime;

namespace BallSim.Gpu;

/// <summary>
/// Shots between two kernels, in the card's memory: in the numbers of the plain steps, in tiles of two shots, whose units lie side by side, the least that a card brings. Where few of many shots are wanted, as after the first round, half of
/// what is brought is asked for; where a warp's shots lie side by side, all of it. Where in a tile a unit stands the compiler knows.
/// </summary>
internal readonly struct Shots<TUnit>(ArrayView<TUnit> units, ArrayView<Counts> counts, ArrayView<int> setups, ArrayView<int> whys)
    where TUnit : unmanaged, IUnit<TUnit>
{
    private readonly ArrayView<TUnit> units = units;
    private readonly ArrayView<Counts> counts = counts;
    private readonly ArrayView<int> setups = setups, whys = whys;

    /// <summary>The setup that a shot is thrown with.</summary>
    public int SetupOf(int shot) => setups[shot];

    public void KeepSetup(int shot, int setup) => setups[shot] = setup;

    /// <summary>Why a shot left its plain steps.</summary>
    public Why WhyOf(int shot) => (Why)whys[shot];

    public void Keep(int shot, Why why) => whys[shot] = (int)why;

    /// <summary>All of a shot; what is not used is not read.</summary>
    public Moving<T> Read<T, TEffects>(int shot)
        where T : unmanaged, IDeviceReal<T>, IReal<T>
        where TEffects : struct, IEffects
    {
        Moving<T> moving = default;
        var reading = new Reading<T, TUnit>(Of(shot));
        ShotColumns.Each<T, Reading<T, TUnit>, TEffects>(ref reading, ref moving, sliding: true, rolling: true, changed: true);
        var own = counts.AsAligned(Counts.Alignment)[shot];
        (moving.Steps, moving.Rejected, moving.Transitions, moving.Phase, moving.Ended) = (own.Steps, own.Rejected, own.Transitions, own.Phase, own.Ended);
        return moving;
    }

    /// <summary>
    /// Keeps a shot; what was last seen of the contact while sliding, and while rolling, only where it has changed; of one that has ended, where neither is asked for, not what a next step would begin with; what the tally tells of the phases,
    /// where they have changed.
    /// </summary>
    public void Keep<T, TEffects>(int shot, Moving<T> moving, bool sliding, bool rolling, bool changed)
        where T : unmanaged, IDeviceReal<T>, IReal<T>
        where TEffects : struct, IEffects
    {
        var writing = new Writing<T, TUnit>(Of(shot));
        ShotColumns.Each<T, Writing<T, TUnit>, TEffects>(ref writing, ref moving, sliding, rolling, changed);
        counts.AsAligned(Counts.Alignment)[shot] = new(moving.Steps, moving.Rejected, moving.Transitions, moving.Phase, moving.Ended);
    }

    // The units of a shot, a tile apart.
    private ArrayView<TUnit> Of(int shot)
    {
        var first = (long)(shot / ShotColumns.Tile) * (ShotColumns.Numbers / TUnit.Numbers * ShotColumns.Tile) + shot % ShotColumns.Tile;
        return units.SubView(first, units.Length - first);
    }
}
