using System.Runtime.CompilerServices;

namespace BallSim.Spatial;

/// <summary>The sixteen coefficients of a bicubic.</summary>
[InlineArray(16)]
internal struct Sixteen<T>
{
    private T first;
}
