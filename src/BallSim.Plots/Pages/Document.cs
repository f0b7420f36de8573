using System.Net;
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

    /// <summary>The head of a page: title, who throws, and links to its sections.</summary>
    /// <param name="title">As it is.</param>
    /// <param name="bowler">As it is; empty: left out.</param>
    /// <param name="sections">Their ids and names.</param>
    public static string Header(string title, string bowler, IEnumerable<(string Id, string Name)> sections) => $"""
        <header>
        <div class="boards" aria-hidden="true"></div>
        <div class="column">
        <h1>{Encoded(title)}</h1>
        {(bowler.Length > 0 ? $"<p>{Encoded(bowler)}</p>" : "")}
        <nav aria-label="On this page"><ul>
        {string.Concat(sections.Select(s => $"<li><a href=\"#{s.Id}\">{s.Name}</a></li>"))}
        </ul></nav>
        </div>
        </header>
        <main>

        """;

    /// <summary>Text as HTML shows it.</summary>
    public static string Encoded(string text) => WebUtility.HtmlEncode(text);

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
