using System.Runtime.CompilerServices;
using BallSim.Spatial;

namespace BallSim.Gpu;

/// <summary>One float on the card, for plain steps and most of what happens between them.</summary>
internal readonly struct DeviceSingle(float value) : IDeviceReal<DeviceSingle>
{
    private readonly float value = value;

    public static DeviceSingle Sliver => new(1e-5f);

    public static bool IsSingle => true;

    public static implicit operator DeviceSingle(double value) => new((float)value);

    public static explicit operator double(DeviceSingle a) => a.value;

    public static DeviceSingle operator +(DeviceSingle a, DeviceSingle b) => new(a.value + b.value);

    public static DeviceSingle operator -(DeviceSingle a, DeviceSingle b) => new(a.value - b.value);

    public static DeviceSingle operator *(DeviceSingle a, DeviceSingle b) => new(a.value * b.value);

    public static DeviceSingle operator /(DeviceSingle a, DeviceSingle b) => new(a.value / b.value);

    public static DeviceSingle operator -(DeviceSingle a) => new(-a.value);

    public static bool operator <(DeviceSingle a, DeviceSingle b) => a.value < b.value;

    public static bool operator >(DeviceSingle a, DeviceSingle b) => a.value > b.value;

    public static bool operator <=(DeviceSingle a, DeviceSingle b) => a.value <= b.value;

    public static bool operator >=(DeviceSingle a, DeviceSingle b) => a.value >= b.value;

    public static bool operator ==(DeviceSingle a, DeviceSingle b) => a.value == b.value;

    public static bool operator !=(DeviceSingle a, DeviceSingle b) => a.value != b.value;

    public static DeviceSingle Fma(DeviceSingle a, DeviceSingle b, DeviceSingle c) => new(MathF.FusedMultiplyAdd(a.value, b.value, c.value));

    public static DeviceSingle Sqrt(DeviceSingle a) => new(MathF.Sqrt(a.value));

    public static DeviceSingle Abs(DeviceSingle a) => new(MathF.Abs(a.value));

    public static DeviceSingle Min(DeviceSingle a, DeviceSingle b) => new(a.value < b.value ? a.value : b.value);

    public static DeviceSingle Max(DeviceSingle a, DeviceSingle b) => new(a.value > b.value ? a.value : b.value);

    public static DeviceSingle IfLess(DeviceSingle a, DeviceSingle b, DeviceSingle then, DeviceSingle otherwise) => new(a.value < b.value ? then.value : otherwise.value);

    public static DeviceSingle Of(float a) => new(a);

    public static float Single(DeviceSingle a) => a.value;

    public static int Truncate(DeviceSingle a) => (int)a.value;

    public static bool Any(DeviceSingle flag) => flag.value > 0;

    public static DeviceSingle InverseCubeRootGuess(DeviceSingle a)
    {
        var e = BitConverter.SingleToInt32Bits(a.value) - 0x3F800000;
        var third = (e >> 2) + (e >> 4) + (e >> 6) + (e >> 8) + (e >> 10) + (e >> 12);
        return new(BitConverter.Int32BitsToSingle(0x3F76E000 - third));
    }

    public static DeviceSingle InverseFourthRootGuess(DeviceSingle a)
    {
        var e = BitConverter.SingleToInt32Bits(a.value) - 0x3F800000;
        return new(BitConverter.Int32BitsToSingle(0x3F783000 - (e >> 2)));
    }

    public static DeviceSingle InverseSixthRootGuess(DeviceSingle a)
    {
        var e = BitConverter.SingleToInt32Bits(a.value) - 0x3F800000;
        var sixth = (e >> 3) + (e >> 5) + (e >> 7) + (e >> 9) + (e >> 11) + (e >> 13);
        return new(BitConverter.Int32BitsToSingle(0x3F790000 - sixth));
    }

    public static DeviceSingle Coarse(DeviceSingle a) => new(BitConverter.Int32BitsToSingle(BitConverter.SingleToInt32Bits(a.value) & -(1 << 17)));

    public static bool AddsWhole<TState>(ref TState y, DeviceSingle s, in TState k)
        where TState : struct => false;

    public static bool AddsWhole<TState>(ref TState y, DeviceSingle s1, in TState k1, DeviceSingle s2, in TState k2)
        where TState : struct => false;

    public static bool AddsWhole<TState>(ref TState y, DeviceSingle s1, in TState k1, DeviceSingle s2, in TState k2, DeviceSingle s3, in TState k3)
        where TState : struct => false;

    public static bool SetsFour(ref DeviceSingle first, DeviceSingle a, DeviceSingle b, DeviceSingle c, DeviceSingle d) => false;

    public static bool DoesFour<TWork>(DeviceSingle a, DeviceSingle b, DeviceSingle c, DeviceSingle d, DeviceSingle e, ref TWork work)
        where TWork : struct, IFourfold => false;

    public override bool Equals(object? obj) => obj is DeviceSingle other && value.Equals(other.value);

    public override int GetHashCode() => value.GetHashCode();
}
