using BallSim.Sweeps;

namespace BallSim.Files;

/// <summary>A sweep as people write it: a scenario, factors over any of its numbers, a design.</summary>
public sealed record SweepFile
{
    /// <summary>What it is about; may be empty.</summary>
    public string Title { get; init; } = "";

    /// <summary>The plan.</summary>
    public required SweepPlan Plan { get; init; }

    /// <summary>A hash of all that the rows follow from: this file, the files it names, the version of the program. An interrupted sweep goes on only where it is the same.</summary>
    public required string Fingerprint { get; init; }

    /// <summary>A sweep from its file; the scenario and the files it names are read with it.</summary>
    /// <param name="path">The file, JSON, at most 4 MB.</param>
    /// <exception cref="BadFileException">The file cannot be read, or something in it is wrong; the message says where and what would be right.</exception>
    public static SweepFile Read(string path) => Json.SweepReader.Read(path);
}
