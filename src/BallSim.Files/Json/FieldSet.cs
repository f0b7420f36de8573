using BallSim.Files.Text;

namespace BallSim.Files.Json;

/// <summary>The members of one JSON object, all of known names.</summary>
internal sealed class FieldSet(Field owner, IReadOnlyDictionary<string, Field> members)
{
    private readonly Dictionary<string, UnitKind?> kinds = [];

    /// <summary>The object itself.</summary>
    public Field Owner => owner;

    /// <summary>The member, or null where the file leaves it out.</summary>
    public Field? Optional(string name) => members.TryGetValue(name, out var field) ? field : null;

    /// <summary>The member, or an error that shows what to write.</summary>
    public Field Required(string name, string example) => Optional(name)
        ?? throw owner.Wrong($"the field \"{name}\" is missing; write for example \"{name}\": {example}");

    /// <summary>The number in a member, in SI; its kind of unit is kept for complaints that come later.</summary>
    public double Number(Field field, string name, UnitKind? kind)
    {
        kinds[name] = kind;
        return kind is null ? field.Number() : field.Quantity(kind);
    }

    /// <summary>Members that only make sense in another case.</summary>
    public void Refuse(string because, params IEnumerable<string> names)
    {
        foreach (var name in names)
        {
            if (Optional(name) is { } field)
            {
                throw field.Wrong($"has no meaning here: {because}");
            }
        }
    }

    /// <summary>
    /// Something the library builds from several members and checks as a whole: a complaint about one of them is told at that member, in
    /// the unit it was written in.
    /// </summary>
    public T Built<T>(Func<T> construction)
    {
        try
        {
            return construction();
        }
        catch (ArgumentException e)
        {
            var name = members.Keys.FirstOrDefault(k => string.Equals(k, e.ParamName, StringComparison.OrdinalIgnoreCase));
            throw name is null ? owner.Wrong(Worded.Sentence(e)) : members[name].Refused(e, kinds.GetValueOrDefault(name));
        }
    }
}
