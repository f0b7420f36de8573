namespace BallSim.Gpu.Tests;

/// <summary>Progress as it is told, from any thread.</summary>
internal sealed class Told(Action<int>? also = null) : IProgress<int>
{
    private readonly List<int> values = [];

    public IReadOnlyList<int> Values
    {
        get
        {
            lock (values)
            {
                return [.. values];
            }
        }
    }

    public void Report(int value)
    {
        lock (values)
        {
            values.Add(value);
        }
        also?.Invoke(value);
    }
}
