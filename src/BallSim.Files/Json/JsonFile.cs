using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using BallSim.Files.Text;

namespace BallSim.Files.Json;

/// <summary>A JSON file opened within limits, and written so that a crash leaves the old file or the new one, never half of one.</summary>
internal static class JsonFile
{
    /// <summary>Largest file read, in bytes; a scenario of hundreds of entries takes a hundredth of it.</summary>
    public const int LargestSize = 4 * 1024 * 1024;

    /// <summary>Deepest nesting read; scenarios need five.</summary>
    public const int DeepestNesting = 32;

    /// <summary>The whole file as one field. Comments and trailing commas are read over, as people who edit by hand leave them.</summary>
    public static Field Opened(string path) => Parsed(BoundedFile.Bytes(path, LargestSize), path);

    /// <summary>The whole text as one field; <paramref name="name"/> stands for the file in messages.</summary>
    public static Field Parsed(ReadOnlyMemory<byte> utf8, string name)
    {
        utf8 = utf8[^TextFile.Utf8Of(utf8.Span, name).Length..];
        try
        {
            var options = new JsonDocumentOptions { MaxDepth = DeepestNesting, AllowTrailingCommas = true, CommentHandling = JsonCommentHandling.Skip };
            using var document = JsonDocument.Parse(utf8, options);
            var root = new Field(name, "", document.RootElement.Clone());
            if (utf8.Span.IndexOf("\\u"u8) >= 0)
            {
                CheckTexts(root);
            }
            return root;
        }
        catch (JsonException e)
        {
            var place = $"line {(e.LineNumber ?? 0) + 1}, column {(e.BytePositionInLine ?? 0) + 1}";
            if (e.Message.Contains("depth", StringComparison.Ordinal))
            {
                throw BadFile.At(name, place, $"is nested more than {DeepestNesting} deep; a scenario needs no more than five levels");
            }
            int end = e.Message.IndexOf(" LineNumber:", StringComparison.Ordinal);
            throw BadFile.At(name, place, $"is not JSON: {(end < 0 ? e.Message : e.Message[..end])}");
        }
    }

    // Half a character, written as an escape, is JSON but no text; it shows only where the text is asked for.
    private static void CheckTexts(Field field)
    {
        try
        {
            switch (field.Value.ValueKind)
            {
                case JsonValueKind.String:
                    field.Value.GetString();
                    break;
                case JsonValueKind.Array:
                    foreach (var item in field.Value.EnumerateArray())
                    {
                        CheckTexts(field with { Value = item });
                    }
                    break;
                case JsonValueKind.Object:
                    foreach (var property in field.Value.EnumerateObject())
                    {
                        CheckTexts(new(field.File, field.Path.Length == 0 ? property.Name : $"{field.Path}.{property.Name}", property.Value));
                    }
                    break;
            }
        }
        catch (InvalidOperationException)
        {
            throw field.Wrong("holds half a character, as \\ud800 without its other half");
        }
    }

    /// <summary>Written to a temporary file in the same folder, flushed, and renamed over the target.</summary>
    public static void Write(string path, Action<Utf8JsonWriter> content) => BoundedFile.Replace(path, stream => Write(stream, content));

    /// <summary>Written as text.</summary>
    public static void Write(TextWriter text, Action<Utf8JsonWriter> content)
    {
        using var stream = new MemoryStream();
        Write(stream, content);
        text.Write(Encoding.UTF8.GetString(stream.GetBuffer(), 0, (int)stream.Length));
    }

    private static void Write(Stream stream, Action<Utf8JsonWriter> content)
    {
        var options = new JsonWriterOptions { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, NewLine = "\n" };
        using (var writer = new Utf8JsonWriter(stream, options))
        {
            content(writer);
        }
        stream.WriteByte((byte)'\n');
    }
}
