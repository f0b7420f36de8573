using System.Text.Json;
using BallSim.Files.Text;

namespace BallSim.Files.Json;

/// <summary>The numbers of a record as a file knows them: one table serves reading and writing, so that they cannot drift apart.</summary>
internal sealed class Shape<T>(params Property<T>[] properties)
{
    /// <summary>All the numbers.</summary>
    public IReadOnlyList<Property<T>> Properties => properties;

    /// <summary>The names of all fields.</summary>
    public IEnumerable<string> Names => properties.Select(p => p.Name);

    /// <summary>The record with every field that the file gives, each checked by the record itself.</summary>
    /// <param name="members">The fields.</param>
    /// <param name="start">The record that holds where the file gives nothing.</param>
    /// <param name="needed">Fields that the file must give.</param>
    public T Read(FieldSet members, T start, params ReadOnlySpan<string> needed)
    {
        foreach (var name in needed)
        {
            var kind = properties.First(p => p.Name == name).Kind;
            members.Required(name, kind is null ? "20" : $"\"{kind.Example}\"");
        }
        foreach (var property in properties)
        {
            if (members.Optional(property.Name) is { } field)
            {
                var current = start;
                double value = members.Number(field, property.Name, property.Kind);
                start = field.Built(() => property.With(current, value), property.Kind);
            }
        }
        return start;
    }

    /// <summary>Every number of the record.</summary>
    public void Write(Utf8JsonWriter writer, T record) => Write(writer, record, _ => true);

    /// <summary>Every number of the record that differs from the standard's.</summary>
    public void Write(Utf8JsonWriter writer, T record, T standard) => Write(writer, record, p => p.Value(record) != p.Value(standard));

    private void Write(Utf8JsonWriter writer, T record, Func<Property<T>, bool> counts)
    {
        foreach (var property in properties.Where(counts))
        {
            if (property.Value(record) is not { } value)
            {
                continue;
            }
            if (property.Kind is null)
            {
                writer.WriteNumber(property.Name, value);
            }
            else
            {
                writer.WriteString(property.Name, UnitText.Of(value, property.Kind));
            }
        }
    }
}
