using BallSim.Benchmarks;

switch (args)
{
    case ["ptx", var folder, .. var names]:
        PtxFiles.Write(folder, names);
        break;
    case ["disk", var file, var rows]:
        GpuReport.ToDisk(Console.Out, file, int.Parse(rows, System.Globalization.CultureInfo.InvariantCulture));
        break;
    case ["report", .. var parts]:
        GpuReport.Report(Console.Out, [.. parts.Where(p => p != "emulated")], emulated: parts.Contains("emulated"));
        break;
    default:
        Console.Error.WriteLine("report [agreement] [bare] [full] [emulated] | disk FILE ROWS | ptx FOLDER [KERNEL ...]");
        return 2;
}
return 0;
