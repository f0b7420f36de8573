using BallSim.Benchmarks;

switch (args)
{
    case ["ptx", var folder]:
        PtxFiles.Write(folder);
        break;
    case ["disk", var file, var rows]:
        GpuReport.ToDisk(Console.Out, file, int.Parse(rows, System.Globalization.CultureInfo.InvariantCulture));
        break;
    case ["times"]:
        GpuReport.Times(Console.Out);
        break;
    case ["report", ..]:
        GpuReport.Report(Console.Out, emulated: args.Contains("emulated"));
        break;
    default:
        Console.Error.WriteLine("report [emulated] | disk FILE ROWS | ptx FOLDER");
        return 2;
}
return 0;
