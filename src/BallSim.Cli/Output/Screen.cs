using Spectre.Console;
using Spectre.Console.Rendering;

namespace BallSim.Cli;

/// <summary>Where the command writes: results to one side, everything else to the other, and how wide a line may be.</summary>
internal sealed class Screen(TextWriter output, TextWriter error, int width)
{
    // Wide enough for every table here: whoever reads a file or a pipe breaks lines himself.
    private const int WidthWithoutTerminal = 200;

    public TextWriter Output => output;

    public TextWriter Error => error;

    /// <summary>Columns of the terminal, or a generous number when there is none.</summary>
    public static int WidthOfTerminal()
    {
        if (Console.IsOutputRedirected)
        {
            return WidthWithoutTerminal;
        }
        try
        {
            return Console.WindowWidth is > 0 and var columns ? columns : WidthWithoutTerminal;
        }
        catch (IOException)
        {
            return WidthWithoutTerminal;
        }
    }

    /// <summary>A table as plain text: no colour, no control codes, no blanks at the ends of lines.</summary>
    public void Show(IRenderable content)
    {
        using var text = new StringWriter();
        var console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Ansi = AnsiSupport.No,
            ColorSystem = ColorSystemSupport.NoColors,
            Interactive = InteractionSupport.No,
            Out = new AnsiConsoleOutput(text),
        });
        console.Profile.Width = width;
        console.Profile.Capabilities.Unicode = true;
        console.Write(content);
        // The border leaves blank lines above and below.
        foreach (var line in text.ToString().TrimEnd().Split('\n').Select(l => l.TrimEnd()).SkipWhile(l => l.Length == 0))
        {
            output.WriteLine(line);
        }
    }

    /// <summary>A paragraph, broken at blanks to fit the width; the lines after the first are indented like its text.</summary>
    public void Say(string paragraph, string first = "")
    {
        int room = Math.Min(width, 110) - first.Length;
        var line = new System.Text.StringBuilder();
        var lead = first;
        foreach (var word in paragraph.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (line.Length > 0 && line.Length + 1 + word.Length > room)
            {
                output.WriteLine(lead + line);
                line.Clear();
                lead = new string(' ', first.Length);
            }
            line.Append(line.Length > 0 ? " " : "").Append(word);
        }
        output.WriteLine((lead + line).TrimEnd());
    }
}
