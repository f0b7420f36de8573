using System.Globalization;
using System.Text.Json;
using BallSim.Files.Text;

namespace BallSim.Files.Json;

/// <summary>
/// One value in a JSON file, with the file and the path of fields that leads to it, so that every complaint can say where.
/// </summary>
/// <param name="File">The file, as the user named it.</param>
/// <param name="Path">The path of fields, "releases[0].speed"; empty for the whole file.</param>
/// <param name="Value">The value there.</param>
internal readonly record struct Field(string File, string Path, JsonElement Value)
{
    /// <summary>The complaint about this field, to be thrown.</summary>
    public BadFileException Wrong(string sentence) => BadFile.At(File, Path, sentence);

    /// <summary>The value as the file writes it, shortened for a message.</summary>
    public string Written
    {
        get
        {
            var text = Value.ValueKind switch
            {
                JsonValueKind.Object => "an object {...}",
                JsonValueKind.Array => "a list [...]",
                _ => Value.GetRawText(),
            };
            return text.Length <= 60 ? text : text[..57] + "...";
        }
    }

    /// <summary>A number with its unit as text, in SI.</summary>
    public double Quantity(UnitKind kind)
    {
        if (Value.ValueKind == JsonValueKind.Number)
        {
            throw Wrong($"{Written} has no unit; {kind.Name} is written as text with its unit, "
                + $"such as \"{Written} {kind.Units[0].Symbol}\" (allowed: {kind.Allowed})");
        }
        if (Value.ValueKind != JsonValueKind.String)
        {
            throw Wrong($"{Written} is not {kind.Name}, such as \"{kind.Example}\" (allowed: {kind.Allowed})");
        }
        return UnitText.TryParse(Value.GetString()!, kind, out var si, out var sentence) ? si : throw Wrong($"{Written} {sentence}");
    }

    /// <summary>A pure number.</summary>
    public double Number()
    {
        if (Value.ValueKind == JsonValueKind.String && double.TryParse(Value.GetString(), NumberStyles.Float, CultureInfo.InvariantCulture, out var number)
            && double.IsFinite(number))
        {
            throw Wrong($"{Written} is text; a plain number is wanted, without quotes");
        }
        return Value.ValueKind == JsonValueKind.Number && Value.TryGetDouble(out number) && double.IsFinite(number)
            ? number
            : throw Wrong($"{Written} is not a number; a plain number without a unit is wanted");
    }

    /// <summary>A text of 1 to 80 characters on one line.</summary>
    public string Text()
    {
        var text = Value.ValueKind == JsonValueKind.String ? Value.GetString()!.Trim() : throw Wrong($"{Written} is not text; write it in quotes");
        return text.Length is > 0 and <= 80 && !text.Any(char.IsControl)
            ? text
            : throw Wrong($"{Written} must be a text of 1 to 80 characters on one line");
    }

    /// <summary>True or false.</summary>
    public bool Flag() => Value.ValueKind switch
    {
        JsonValueKind.True => true,
        JsonValueKind.False => false,
        _ => throw Wrong($"{Written} must be true or false, without quotes"),
    };

    /// <summary>One of a few words; returns the word as listed.</summary>
    public string Word(params string[] allowed)
    {
        var list = string.Join(", ", allowed.Select(a => $"\"{a}\""));
        var text = Value.ValueKind == JsonValueKind.String ? Value.GetString()!.Trim() : throw Wrong($"{Written} must be one of {list}");
        return allowed.FirstOrDefault(a => string.Equals(a, text, StringComparison.OrdinalIgnoreCase))
            ?? throw Wrong($"{Written} must be one of {list}{Nearest.Question(text, allowed)}");
    }

    /// <summary>The members of an object, every one of them known; a member given twice, or a name nobody reads, is refused.</summary>
    public FieldSet Members(params IEnumerable<string> known)
    {
        if (Value.ValueKind != JsonValueKind.Object)
        {
            throw Wrong($"{Written} must be an object {{...}} with fields among: {string.Join(", ", known)}");
        }
        var members = new Dictionary<string, Field>(StringComparer.Ordinal);
        foreach (var property in Value.EnumerateObject())
        {
            var path = Path.Length == 0 ? property.Name : $"{Path}.{property.Name}";
            var field = new Field(File, path, property.Value);
            if (!known.Contains(property.Name, StringComparer.Ordinal))
            {
                throw field.Wrong($"is an unknown field{Nearest.Question(property.Name, known)} (known here: {string.Join(", ", known)})");
            }
            if (!members.TryAdd(property.Name, field))
            {
                throw field.Wrong("is given twice; keep one");
            }
        }
        return new FieldSet(this, members);
    }

    /// <summary>The items of a list; a single object counts as a list of one.</summary>
    public IReadOnlyList<Field> Items(int limit)
    {
        if (Value.ValueKind == JsonValueKind.Object)
        {
            return [this];
        }
        if (Value.ValueKind != JsonValueKind.Array)
        {
            throw Wrong($"{Written} must be a list [...] or a single object {{...}}");
        }
        int count = Value.GetArrayLength();
        if (count == 0 || count > limit)
        {
            throw Wrong(count == 0 ? "is an empty list; give at least one item, or leave the field out" : $"has {count} items; at most {limit} are allowed");
        }
        var items = new List<Field>(count);
        foreach (var item in Value.EnumerateArray())
        {
            items.Add(new Field(File, $"{Path}[{items.Count}]", item));
        }
        return items;
    }

    /// <summary>
    /// Something the library builds from this one value: its complaint gets file and path in front, and the range in the unit that was
    /// written.
    /// </summary>
    public T Built<T>(Func<T> construction, UnitKind? kind = null)
    {
        try
        {
            return construction();
        }
        catch (ArgumentException e)
        {
            throw Refused(e, kind);
        }
    }

    /// <summary>The library's complaint about this value, in the words of a file.</summary>
    public BadFileException Refused(ArgumentException e, UnitKind? kind)
    {
        if (e.Data["low"] is double low && e.Data["high"] is double high)
        {
            return Wrong($"{Written} is out of {Worded.Range(Written.Trim('"'), kind, low, high)}");
        }
        bool isPlain = Value.ValueKind is not (JsonValueKind.Object or JsonValueKind.Array);
        return Wrong(isPlain ? $"{Written}: {Worded.Sentence(e)}" : Worded.Sentence(e));
    }
}
