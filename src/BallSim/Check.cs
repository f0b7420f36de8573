using System.Globalization;
using System.Runtime.CompilerServices;

namespace BallSim;

/// <summary>The one place that words argument errors: name, value, range, unit, and the likely slip.</summary>
internal static class Check
{
    /// <summary>A finite number within [low, high], or an error that names the value, the range, the unit and the likely slip.</summary>
    public static double Range(double value, double low, double high, Quantity quantity, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        // Most values are right, and a sweep checks millions.
        if (value >= low && value <= high && double.IsFinite(value))
        {
            return value;
        }
        throw OutOfRange(value, low, high, quantity, Plain(name));
    }

    private static ArgumentOutOfRangeException OutOfRange(double value, double low, double high, Quantity quantity, string name)
    {
        if (!double.IsFinite(value))
        {
            return new ArgumentOutOfRangeException(name, value, $"{name} is {Text(value)}; it must be a number in {Span(low, high, quantity)}");
        }
        return new ArgumentOutOfRangeException(name, value,
            $"{name} = {Text(value)}{Space(quantity.Unit)} is out of {Span(low, high, quantity)}{quantity.Slip(value, low, high)}")
        {
            // Readers of files tell the range in the unit that the file used.
            Data = { ["low"] = low, ["high"] = high },
        };
    }

    /// <summary>All three components finite.</summary>
    public static Vector3D Finite(Vector3D value, [CallerArgumentExpression(nameof(value))] string name = "") => value.IsFinite
        ? value
        : throw new ArgumentOutOfRangeException(Plain(name), value,
            $"{Plain(name)} has a component that is not a number: ({Text(value.X)}, {Text(value.Y)}, {Text(value.Z)})");

    /// <summary>A direction as a unit vector: any length but zero is taken and scaled to one.</summary>
    public static Vector3D Direction(Vector3D value, string name)
    {
        var length = Finite(value, name).Length;
        That(length > 1e-9, $"{name} is a direction; the zero vector has none", name);
        // Once a unit vector, always the same one: what is written and read again does not creep.
        return Math.Abs(length - 1) < 1e-15 ? value : value / length;
    }

    /// <summary>A condition between several arguments; the sentence says what is wrong and what would be right.</summary>
    public static void That(bool condition, string sentence, string name)
    {
        if (!condition)
        {
            throw new ArgumentException(sentence, name);
        }
    }

    public static string Text(double value) => value.ToString("G6", CultureInfo.InvariantCulture);

    private static string Span(double low, double high, Quantity quantity) =>
        FormattableString.Invariant($"[{Text(low)}, {(double.IsPositiveInfinity(high) ? "∞" : Text(high))}]") + Space(quantity.Unit);

    private static string Space(string unit) => unit.Length == 0 ? "" : " " + unit;

    // "this.Speed" and "release.Speed" read better as "Speed"; "value" in an init accessor is never passed.
    private static string Plain(string name) => name[(name.LastIndexOf('.') + 1)..];
}
