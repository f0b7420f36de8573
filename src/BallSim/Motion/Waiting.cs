namespace BallSim.Motion;

/// <summary>The shots at hand by what they wait for: lanes of one kind or the other, or what comes between.</summary>
internal sealed class Waiting
{
    /// <summary>A step down-lane, m, that is too short for the numbers of the lanes: there it would be undone.</summary>
    public required double Shortest { get; init; }

    /// <summary>That slide; that slide with so little slip that the fresh cover is asked for at every stage (<see cref="Slide{T,TSurface}.IsLate"/>), which all lanes would have to follow; and that roll.</summary>
    public Stack<int> Sliding { get; } = new();

    public Stack<int> Late { get; } = new();

    public Stack<int> Rolling { get; } = new();

    /// <summary>Whose slip has come to its end, as a lane saw it.</summary>
    public Stack<int> Sticking { get; } = new();

    /// <summary>That roll, and whose demand may pass the limit of grip in the next step.</summary>
    public Stack<int> Slipping { get; } = new();

    /// <summary>Whose slip has just begun.</summary>
    public Stack<int> Stiff { get; } = new();
}
