// The tests are run by dotnet test; by itself the program prints the golden set, so that a process with other settings, or whoever renews tests/data/golden.txt, can have it, and counts for .ci/mutants what tests notice.
using System.Globalization;
using BallSim.Tests.Mutants;
using BallSim.Tests.Regression;

switch (args)
{
    case ["golden"]:
        foreach (var line in GoldenSet.Lines())
        {
            Console.WriteLine(line);
        }
        return 0;
    case ["mutants", var report, var folder, var sample, var seed, var minutes, var least, .. var worker]:
        return MutantRun.Of(report, folder, int.Parse(sample, CultureInfo.InvariantCulture), int.Parse(seed, CultureInfo.InvariantCulture), double.Parse(minutes, CultureInfo.InvariantCulture), double.Parse(least, CultureInfo.InvariantCulture), worker);
    case ["mutants-worker", .. var names]:
        return MutantWorker.Serve([.. names.Where(n => n[0] != '-')], [.. names.Where(n => n[0] == '-').Select(n => n[1..])]);
    default:
        Console.Error.WriteLine("usage: BallSim.Tests golden; the tests themselves are run by dotnet test");
        return 2;
}
