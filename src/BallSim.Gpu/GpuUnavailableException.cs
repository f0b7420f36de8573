namespace BallSim.Gpu;

/// <summary>There is no card that could compute; the message says why.</summary>
public sealed class GpuUnavailableException : Exception
{
    /// <inheritdoc/>
    public GpuUnavailableException()
        : this("no card can be used")
    {
    }

    /// <inheritdoc/>
    public GpuUnavailableException(string message)
        : base(message)
    {
    }

    /// <inheritdoc/>
    public GpuUnavailableException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
