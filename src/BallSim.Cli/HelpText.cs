using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;

namespace BallSim.Cli;

/// <summary>What --help says beyond the list of options: examples first, then the exit codes.</summary>
internal static class HelpText
{
    private const string Examples = """
        Examples:
          ballsim compare                            the demo: layouts and finishes on two lanes
          ballsim init house                         writes the demo's files into the folder house, to edit
          ballsim compare house/scenario.json        compares what the file describes
          ballsim compare --html page.html           the demo as a page to open and print
          ballsim shot house/scenario.json --layout Strong --csv path.csv
          ballsim lane house/scenario.json --wear 60 --out worn.csv
          ballsim sweep house/sweep.json             thousands of throws into a table
          ballsim sweep house/sweep.json --shard 2 --of 8 --resume    one machine's part; then:
          ballsim sweep house/sweep.json --engine auto       on the graphics card, where there is one
          ballsim gather house/sweep.shards          the table of all parts
          ballsim fit tracks.csv house/scenario.json      friction and releases from tracked shots
          ballsim verdict tracks.csv house/scenario.json  does the ball do what it was designed to do?
          ballsim verdict tracks.csv house/scenario.json --html page.html
          ballsim gyro record.csv                    ratios of inertia from a gyroscope in the ball
          ballsim build house/build.json             a ball from core, filler and cover
          ballsim build house/build.json --weights   the line from 6 to 16 lb with that core
          ballsim drill house/bench.json             before and after the drill, and the arcs to mark
          ballsim rules house/bench.json             against the rules: advice, 0 even where a limit fails
          ballsim spin house/bench.json              to the preferred axis, or why not

        """;

    private const string ExitCodes = """
        Exit codes:
          0    fine
          1    wrong input: a file or a value in it
          2    wrong command line
          3    the computation could not be finished
          70   an error inside ballsim
          130  cancelled
        """;

    /// <summary>Puts the text behind the help of a root command.</summary>
    public static void AddTo(RootCommand root)
    {
        var help = root.Options.OfType<HelpOption>().Single();
        help.Action = new WithExamples((HelpAction)help.Action!);
    }

    private sealed class WithExamples(HelpAction inner) : SynchronousCommandLineAction
    {
        public override bool ClearsParseErrors => true;

        public override int Invoke(ParseResult parsed)
        {
            inner.Invoke(parsed);
            var output = parsed.InvocationConfiguration.Output;
            if (parsed.CommandResult.Command is RootCommand)
            {
                output.WriteLine(Examples);
            }
            output.WriteLine(ExitCodes);
            return ExitCode.Fine;
        }
    }
}
