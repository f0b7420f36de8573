using System.Globalization;

namespace BallSim.Files.Json;

/// <summary>Ranges that a file's own records keep, told as the library tells its own.</summary>
internal static class Within
{
    /// <summary>A number within [low, high], in SI.</summary>
    public static double Range(double value, double low, double high, string name) => value >= low && value <= high ? value
        : throw new ArgumentOutOfRangeException(name, value, string.Create(CultureInfo.InvariantCulture, $"{name} = {value:G6} is out of [{low:G6}, {high:G6}]"))
        {
            Data = { ["low"] = low, ["high"] = high },
        };

    /// <summary>A size of a piece of a core: more than nothing, less than a ball.</summary>
    public static double Size(double value, string name) => Range(value, 0.01 * Units.Inch, 9 * Units.Inch, name);

    /// <summary>A whole number; its range is checked where it goes.</summary>
    public static int Whole(double value, string name) => value == Math.Truncate(value) && Math.Abs(value) <= int.MaxValue ? (int)value
        : throw new ArgumentException($"{name} is a count; write a whole number", name);

    /// <summary>A whole number from zero to a hundred.</summary>
    public static int Count(double value, string name) => value == Math.Truncate(value) ? (int)Range(value, 0, 100, name)
        : throw new ArgumentException($"{name} is a count; write a whole number", name);

    /// <summary>Something the library builds from half the value: a range in its complaint is doubled.</summary>
    public static T Half<T>(Func<T> construction)
    {
        try
        {
            return construction();
        }
        catch (ArgumentException e) when (e.Data["low"] is double low && e.Data["high"] is double high)
        {
            (e.Data["low"], e.Data["high"]) = (2 * low, 2 * high);
            throw;
        }
    }
}
