using System.Text.Json;
using System.Text.Json.Serialization;

namespace BallSim.Files.Json;

/// <summary>One of the library's values in System.Text.Json, written and read as the files of this library write and read it: the same names, the same units, the same complaints, which arrive as a <see cref="JsonException"/>.</summary>
internal abstract class PartConverter<T>(Action<Utf8JsonWriter, T> write, Func<Field, T> read) : JsonConverter<T>
{
    public override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        using var document = JsonDocument.ParseValue(ref reader);
        try
        {
            return read(new Field(typeof(T).Name, "", document.RootElement.Clone()));
        }
        catch (Exception e) when (e is BadFileException or InvalidOperationException or ArgumentException)
        {
            throw new JsonException(e is ArgumentException wrong ? Worded.Sentence(wrong) : e.Message, e);
        }
    }

    public override void Write(Utf8JsonWriter writer, T value, JsonSerializerOptions options) => write(writer, value);
}
