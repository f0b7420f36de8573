using System.Text;

namespace BallSim.Plots.Pages;

/// <summary>A page that carries all it needs, once: style, the drawing script, our own script.</summary>
internal static class Document
{
    private const string DrawingScript = "plotly-";

    /// <summary>The page.</summary>
    /// <param name="title">Title, encoded.</param>
    /// <param name="body">Content, HTML.</param>
    public static string Of(string title, string body) => $"""
        <!DOCTYPE html>
        <html lang="en">
        <head>
        <meta charset="utf-8">
        <meta name="viewport" content="width=device-width, initial-scale=1">
        <title>{title}</title>
        <style>
        {Own("page.css")}</style>
        </head>
        <body>
        {body}
        <script>{Plotly()}</script>
        <script>
        {Own("page.js")}</script>
        </body>
        </html>

        """;

    private static string Own(string name) => Text(typeof(Document).Assembly, n => n.EndsWith(name, StringComparison.Ordinal));

    // The chart library's assembly carries the script that draws its charts.
    private static string Plotly() => Text(typeof(Plotly.NET.GenericChart).Assembly,
        n => n.Contains(DrawingScript, StringComparison.Ordinal) && n.EndsWith(".js", StringComparison.Ordinal));

    private static string Text(System.Reflection.Assembly assembly, Func<string, bool> wanted)
    {
        using var stream = assembly.GetManifestResourceStream(assembly.GetManifestResourceNames().Single(wanted))!;
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd();
    }
}
