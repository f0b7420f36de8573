namespace BallSim.Plots;

/// <summary>The names of the two axes that a trace is drawn on.</summary>
internal readonly record struct Axes(string X, string Y);
