namespace BallSim;

/// <summary>A kind of number: its SI unit, and the trade units people forget to multiply by. Used to word argument errors.</summary>
internal sealed class Quantity
{
    private readonly (string Factor, string Word, double Size)[] trade;

    private Quantity(string unit, params (string Factor, string Word, double Size)[] trade)
    {
        Unit = unit;
        this.trade = trade;
    }

    /// <summary>The SI unit, empty for a pure number.</summary>
    public string Unit { get; }

    public static Quantity Number { get; } = new("");
    public static Quantity Angle { get; } = new("rad", ("Degree", "degrees", Units.Degree));
    public static Quantity Speed { get; } = new("m/s", ("MilesPerHour", "miles an hour", Units.MilesPerHour));
    public static Quantity SpinRate { get; } = new("rad/s", ("Rpm", "turns a minute", Units.Rpm));
    public static Quantity Mass { get; } = new("kg", ("Pound", "pounds", Units.Pound), ("Ounce", "ounces", Units.Ounce));
    public static Quantity Length { get; } = new("m", ("Inch", "inches", Units.Inch), ("Foot", "feet", Units.Foot), ("Micrometre", "micrometres", Units.Micrometre));
    public static Quantity Film { get; } = new("m", ("Micrometre", "micrometres", Units.Micrometre), ("OilUnit", "units of oil", Units.OilUnit));
    public static Quantity Volume { get; } = new("m³", ("Millilitre", "millilitres", Units.Millilitre));
    public static Quantity Density { get; } = new("kg/m³", ("GramPerMillilitre", "grams per millilitre", Units.GramPerMillilitre));
    public static Quantity Inertia { get; } = new("kg m²");
    public static Quantity Time { get; } = new("s");
    public static Quantity Boards { get; } = new("boards");
    public static Quantity Of(string unit) => new(unit);

    /// <summary>The sentence about the likely slip, or nothing: the first trade unit in which the number would have been in range.</summary>
    public string Slip(double value, double low, double high)
    {
        foreach (var (factor, word, size) in trade)
        {
            if (value * size >= low && value * size <= high)
            {
                return $"; for {word} write {Check.Text(value)} * {factor}";
            }
        }
        return "";
    }
}
