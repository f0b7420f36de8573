// Feeds one reader what AFL++ makes up: BallSim.Fuzz READER. With FILE... after the name it reads those once and says what came of each. See .ci/fuzz.
using BallSim.Fuzz;
using SharpFuzz;

if (args.Length == 0 || !Readers.All.TryGetValue(args[0], out var read))
{
    Console.Error.WriteLine($"usage: BallSim.Fuzz READER [FILE...], READER one of {string.Join(", ", Readers.All.Keys)}");
    return 2;
}
if (args.Length > 1)
{
    foreach (var file in args.Skip(1))
    {
        Console.WriteLine($"{file}: {Readers.Told(args[0], File.ReadAllBytes(file))}");
    }
    return 0;
}
Fuzzer.OutOfProcess.Run(stream =>
{
    using var bytes = new MemoryStream();
    stream.CopyTo(bytes);
    Readers.Told(args[0], bytes.ToArray());
});
return 0;
