namespace BallSim.Plots;

/// <summary>A kind of marked place on a path: its word in the legend and the symbol that tells it from the others without colour.</summary>
internal sealed record Place(string Word, string Symbol)
{
    public static Place Landing { get; } = new("lands", "triangle-right");
    public static Place EndOfSkid { get; } = new("end of skid", "diamond");
    public static Place Breakpoint { get; } = new("breakpoint", "triangle-down");
    public static Place Roll { get; } = new("starts to roll", "circle");
    public static Place Slip { get; } = new("slips again", "x");
}
