// The tests are run by dotnet test; by itself the program prints the golden set, so that a process with other settings, or whoever renews tests/data/golden.txt, can have it.
using BallSim.Tests.Regression;

if (args is not ["golden"])
{
    Console.Error.WriteLine("usage: BallSim.Tests golden; the tests themselves are run by dotnet test");
    return 2;
}
foreach (var line in GoldenSet.Lines())
{
    Console.WriteLine(line);
}
return 0;
