using BallSim.Benchmarks;
using BenchmarkDotNet.Running;

if (args is ["accuracy", ..])
{
    if (!args.Contains("peer"))
    {
        Accuracy.Report(Console.Out);
        Accuracy.ReportFull(Console.Out);
    }
    Accuracy.ReportRk4(Console.Out);
}
else if (args is ["sizes"])
{
    Sizes.Report(Console.Out);
}
else if (args is ["peers", "export", var folder])
{
    Peers.Export(folder);
}
else if (args is ["peers"])
{
    Peers.Measure(Console.Out);
}
else if (args is ["ensembles"])
{
    EnsembleReport.Report(Console.Out);
}
else if (args is ["soak", ..])
{
    int Whole(int at, int standard) => args.Length > at ? int.Parse(args[at], System.Globalization.CultureInfo.InvariantCulture) : standard;
    Environment.ExitCode = Soak.Report(Console.Out, Whole(1, 1_000_000), Whole(2, 1)) ? 0 : 1;
}
else if (args is ["coverage", ..])
{
    // Replications, and the noise in mm where it is to be one alone.
    double[] numbers = [.. args.Skip(1).Select(a => double.Parse(a, System.Globalization.CultureInfo.InvariantCulture))];
    Coverage.Report(Console.Out, numbers.Length > 0 ? (int)numbers[0] : 1000, numbers.Length > 1 ? [1e-3 * numbers[1]] : [0.005, 0.015]);
}
else
{
    BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
}
