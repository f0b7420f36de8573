using BallSim.Motion;

namespace BallSim.Gpu;

/// <summary>The effects that act in a kernel's shots, known when it is compiled, so that what is off costs nothing.</summary>
internal interface IEffects
{
    static abstract Effects Value { get; }
}

/// <summary>A set of effects, one for each type argument: <see cref="On"/> or <see cref="Off"/>.</summary>
internal readonly struct EffectSet<TLift, TSmallMoments, TCoverOil, TFreshCover, TDips, TFineDips> : IEffects
    where TLift : struct, ISwitch
    where TSmallMoments : struct, ISwitch
    where TCoverOil : struct, ISwitch
    where TFreshCover : struct, ISwitch
    where TDips : struct, ISwitch
    where TFineDips : struct, ISwitch
{
    public static Effects Value => (Effects)(TLift.Bit * (int)Effects.Lift + TSmallMoments.Bit * (int)Effects.SmallMoments + TCoverOil.Bit * (int)Effects.CoverOil + TFreshCover.Bit * (int)Effects.FreshCover + TDips.Bit * (int)Effects.Dips + TFineDips.Bit * (int)Effects.FineDips);
}

/// <summary>A yes or no that the compiler of a kernel knows.</summary>
internal interface ISwitch
{
    static abstract int Bit { get; }
}

internal readonly struct On : ISwitch
{
    public static int Bit => 1;
}

internal readonly struct Off : ISwitch
{
    public static int Bit => 0;
}
