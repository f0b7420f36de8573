using System.Globalization;
using System.Net;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Plotly.NET;

namespace BallSim.Plots.Pages;

/// <summary>A chart on a page: its data as a block that the page's script reads, its title and its sentence as text that anybody reads.</summary>
/// <param name="Id">Name of the chart on its page.</param>
/// <param name="Title">Title, encoded for HTML.</param>
/// <param name="Words">What it shows, in words, encoded for HTML.</param>
/// <param name="Data">Data, layout and settings.</param>
internal sealed record Drawing(string Id, string Title, string Words, string Data)
{
    /// <summary>A chart ready for a page. Texts of the chart are encoded once for the chart library already.</summary>
    public static Drawing Of(GenericChart chart, string id)
    {
        // By way of the text alone: functions and lists of the chart library's own language do not cross into a notebook's kernel.
        var text = GenericChart.toJson(chart);
        var whole = JsonNode.Parse(text)!;
        var layout = whole["layout"]!;
        var title = WebUtility.HtmlDecode((string?)layout["title"]?["text"] ?? "BallSim");
        var words = (string?)layout["meta"]?["words"] ?? title;
            return new(id, WebUtility.HtmlEncode(title), WebUtility.HtmlEncode(WebUtility.HtmlDecode(words)), Text(whole));
    }

    private static string Text(JsonNode whole)
    {
        using var stream = new MemoryStream();
        using (var writer = new Utf8JsonWriter(stream, new JsonWriterOptions { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
        {
            Write(writer, whole);
        }
        // A closing tag inside a text would end the block.
        return Encoding.UTF8.GetString(stream.ToArray()).Replace("<", "\\u003c");
    }

    // Seven digits are finer than any screen and make the page half as large.
    private static void Write(Utf8JsonWriter writer, JsonNode? node)
    {
        switch (node)
        {
            case JsonObject members:
                writer.WriteStartObject();
                foreach (var (name, value) in members)
                {
                    writer.WritePropertyName(name);
                    Write(writer, value);
                }
                writer.WriteEndObject();
                break;
            case JsonArray items:
                writer.WriteStartArray();
                foreach (var item in items)
                {
                    Write(writer, item);
                }
                writer.WriteEndArray();
                break;
            case JsonValue value when value.GetValueKind() == JsonValueKind.Number:
                writer.WriteRawValue(value.GetValue<double>().ToString("G7", CultureInfo.InvariantCulture));
                break;
            case null:
                writer.WriteNullValue();
                break;
            default:
                node.WriteTo(writer);
                break;
        }
    }

    /// <summary>The figure; the sentence stands under it as caption, or folded away where a page has many.</summary>
    public string Html(bool caption)
    {
        var words = caption ? Words : $"<details><summary>In words</summary>{Words}</details>";
        return $"""
            <figure id="{Id}" aria-labelledby="{Id}-title">
            <div class="chart" data-chart="{Id}-data" role="img" aria-label="{Title}" aria-describedby="{Id}-words"></div>
            <figcaption><span id="{Id}-title" class="title">{Title}.</span> <span id="{Id}-words">{words}</span></figcaption>
            <script type="application/json" id="{Id}-data">{Data}</script>
            </figure>
            """;
    }
}
