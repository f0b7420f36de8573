using System.Security.Cryptography;
using System.Text;
using BallSim.Files.Text;

namespace BallSim.Files.Json;

/// <summary>A hash of all that a sweep's rows follow from: the plan, the scenario, the files that name one another, and the version of the program.</summary>
internal static class SweepFingerprint
{
    private const int LargestCompanion = 256 * 1024 * 1024;

    public static string Of(string plan, string? scenarioPath, Scenario scenario)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        hash.AppendData(Encoding.UTF8.GetBytes($"BallSim {typeof(Units).Assembly.GetName().Version}\n"));
        var owner = scenarioPath ?? plan;
        foreach (var file in Files(plan, scenarioPath, owner, scenario))
        {
            var content = BoundedFile.Bytes(file, LargestCompanion);
            // The length first, so that no two lists of files run into the same bytes.
            hash.AppendData(BitConverter.GetBytes(content.LongLength));
            hash.AppendData(content);
        }
        return Convert.ToHexStringLower(hash.GetHashAndReset());
    }

    private static IEnumerable<string> Files(string plan, string? scenarioPath, string owner, Scenario scenario)
    {
        yield return plan;
        if (scenarioPath is not null)
        {
            yield return scenarioPath;
        }
        foreach (var ball in scenario.Balls)
        {
            var own = ball.File is { } file ? Beside(owner, file) : owner;
            if (ball.File is not null)
            {
                yield return own;
            }
            foreach (var mesh in (ball.Drawing?.Cores ?? []).Where(c => c.File is not null))
            {
                yield return Beside(own, mesh.File!);
            }
        }
        foreach (var lane in scenario.Lanes)
        {
            foreach (var file in new[] { lane.Oil.File, lane.TopographyFile }.OfType<string>())
            {
                yield return Beside(owner, file);
            }
        }
    }

    private static string Beside(string owner, string file) => Path.Combine(Path.GetDirectoryName(owner) ?? "", file);
}
