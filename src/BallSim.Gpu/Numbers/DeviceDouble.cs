using System.Runtime.CompilerServices;
using BallSim.Spatial;

namespace BallSim.Gpu;

/// <summary>One double on the card. The same operations as <see cref="Real"/>, without the processor's vectors.</summary>
internal readonly struct DeviceDouble(double value) : IDeviceReal<DeviceDouble>
{
    private readonly double value = value;

    public static DeviceDouble Sliver => new(1e-9);

    public static bool IsSingle => false;

    public static implicit operator DeviceDouble(double value) => new(value);

    public static explicit operator double(DeviceDouble a) => a.value;

    public static DeviceDouble operator +(DeviceDouble a, DeviceDouble b) => new(a.value + b.value);

    public static DeviceDouble operator -(DeviceDouble a, DeviceDouble b) => new(a.value - b.value);

    public static DeviceDouble operator *(DeviceDouble a, DeviceDouble b) => new(a.value * b.value);

    public static DeviceDouble operator /(DeviceDouble a, DeviceDouble b) => new(a.value / b.value);

    public static DeviceDouble operator -(DeviceDouble a) => new(-a.value);

    public static bool operator <(DeviceDouble a, DeviceDouble b) => a.value < b.value;

    public static bool operator >(DeviceDouble a, DeviceDouble b) => a.value > b.value;

    public static bool operator <=(DeviceDouble a, DeviceDouble b) => a.value <= b.value;

    public static bool operator >=(DeviceDouble a, DeviceDouble b) => a.value >= b.value;

    public static bool operator ==(DeviceDouble a, DeviceDouble b) => a.value == b.value;

    public static bool operator !=(DeviceDouble a, DeviceDouble b) => a.value != b.value;

    public static DeviceDouble Fma(DeviceDouble a, DeviceDouble b, DeviceDouble c) => new(Math.FusedMultiplyAdd(a.value, b.value, c.value));

    public static DeviceDouble Sqrt(DeviceDouble a) => new(Math.Sqrt(a.value));

    public static DeviceDouble Abs(DeviceDouble a) => new(Math.Abs(a.value));

    public static DeviceDouble Min(DeviceDouble a, DeviceDouble b) => new(a.value < b.value ? a.value : b.value);

    public static DeviceDouble Max(DeviceDouble a, DeviceDouble b) => new(a.value > b.value ? a.value : b.value);

    public static DeviceDouble IfLess(DeviceDouble a, DeviceDouble b, DeviceDouble then, DeviceDouble otherwise) => new(a.value < b.value ? then.value : otherwise.value);

    public static DeviceDouble Of(float a) => new(a);

    public static float Single(DeviceDouble a) => (float)a.value;

    public static int Truncate(DeviceDouble a) => (int)a.value;

    public static bool Any(DeviceDouble flag) => flag.value > 0;

    public static DeviceDouble InverseCubeRootGuess(DeviceDouble a)
    {
        var e = BitConverter.DoubleToInt64Bits(a.value) - 0x3FF0000000000000L;
        var third = (e >> 2) + (e >> 4) + (e >> 6) + (e >> 8) + (e >> 10) + (e >> 12);
        return new(BitConverter.Int64BitsToDouble(0x3FEEDC0000000000L - third));
    }

    public static DeviceDouble InverseFourthRootGuess(DeviceDouble a)
    {
        var e = BitConverter.DoubleToInt64Bits(a.value) - 0x3FF0000000000000L;
        return new(BitConverter.Int64BitsToDouble(0x3FEF060000000000L - (e >> 2)));
    }

    public static DeviceDouble InverseSixthRootGuess(DeviceDouble a)
    {
        var e = BitConverter.DoubleToInt64Bits(a.value) - 0x3FF0000000000000L;
        var sixth = (e >> 3) + (e >> 5) + (e >> 7) + (e >> 9) + (e >> 11) + (e >> 13);
        return new(BitConverter.Int64BitsToDouble(0x3FEF200000000000L - sixth));
    }

    public static DeviceDouble Coarse(DeviceDouble a) => new(BitConverter.Int64BitsToDouble(BitConverter.DoubleToInt64Bits(a.value) & -(1L << 46)));

    public static bool AddsWhole<TState>(ref TState y, DeviceDouble s, in TState k)
        where TState : struct => false;

    public static bool AddsWhole<TState>(ref TState y, DeviceDouble s1, in TState k1, DeviceDouble s2, in TState k2)
        where TState : struct => false;

    public static bool AddsWhole<TState>(ref TState y, DeviceDouble s1, in TState k1, DeviceDouble s2, in TState k2, DeviceDouble s3, in TState k3)
        where TState : struct => false;

    public static bool SetsFour(ref DeviceDouble first, DeviceDouble a, DeviceDouble b, DeviceDouble c, DeviceDouble d) => false;

    public static bool DoesFour<TWork>(DeviceDouble a, DeviceDouble b, DeviceDouble c, DeviceDouble d, DeviceDouble e, ref TWork work)
        where TWork : struct, IFourfold => false;

    public override bool Equals(object? obj) => obj is DeviceDouble other && value.Equals(other.value);

    public override int GetHashCode() => value.GetHashCode();
}
