namespace BallSim.Files.Text;

/// <summary>A kind of quantity as files write it: its name, and the units it may carry, the trade's first.</summary>
internal sealed class UnitKind
{
    private UnitKind(string name, string example, params Unit[] units)
    {
        Name = name;
        Example = example;
        Units = units;
    }

    /// <summary>The kind with its article, as it stands in a sentence: "a speed".</summary>
    public string Name { get; }

    /// <summary>A value as it would be written, for messages: "18 mph".</summary>
    public string Example { get; }

    /// <summary>The units allowed; the first is the one written by preference.</summary>
    public IReadOnlyList<Unit> Units { get; }

    /// <summary>The units allowed, as a list in a sentence.</summary>
    public string Allowed => string.Join(", ", Units.Select(u => u.Symbol));

    public static UnitKind Speed { get; } = new("a speed", "18 mph",
        new("mph", BallSim.Units.MilesPerHour), new("km/h", 1 / 3.6), new("m/s", 1), new("ft/s", BallSim.Units.Foot));

    public static UnitKind Length { get; } = new("a length", "4.5 in",
        new("in", BallSim.Units.Inch, "inch", "inches", "\""), new("ft", BallSim.Units.Foot, "foot", "feet"), new("mm", 1e-3), new("cm", 1e-2), new("m", 1));

    public static UnitKind Film { get; } = new("an oil film", "40 units",
        new("units", BallSim.Units.OilUnit, "unit"), new("um", 1e-6, "µm", "μm"), new("mm", 1e-3), new("m", 1));

    public static UnitKind Roughness { get; } = new("a roughness", "0.5 um",
        new("um", 1e-6, "µm", "μm"), new("uin", 1e-6 * BallSim.Units.Inch, "µin", "microinch"), new("mm", 1e-3), new("m", 1));

    public static UnitKind SpinRate { get; } = new("a spin rate", "350 rpm",
        new("rpm", BallSim.Units.Rpm), new("rad/s", 1), new("deg/s", BallSim.Units.Degree));

    public static UnitKind Angle { get; } = new("an angle", "45 deg",
        new("deg", BallSim.Units.Degree, "°", "degree", "degrees"), new("rad", 1));

    public static UnitKind Mass { get; } = new("a weight", "15 lb",
        new("lb", BallSim.Units.Pound, "lbs", "pound", "pounds"), new("oz", BallSim.Units.Ounce, "ounce", "ounces"), new("kg", 1), new("g", 1e-3));

    public static UnitKind Volume { get; } = new("a volume", "25 mL",
        new("mL", 1e-6), new("uL", 1e-9, "µL", "μL"), new("cm3", 1e-6, "cm³"), new("m3", 1, "m³"));

    public static UnitKind Viscosity { get; } = new("a viscosity", "0.030 Pa s",
        new("Pa s", 1, "Pa·s"), new("mPa s", 1e-3, "mPa·s"), new("cP", 1e-3));

    public static UnitKind Pressure { get; } = new("a modulus", "0.8 GPa",
        new("GPa", 1e9), new("MPa", 1e6), new("Pa", 1));

    public static UnitKind Density { get; } = new("a density", "1.2 kg/m3",
        new("kg/m3", 1, "kg/m³"), new("g/mL", 1000, "g/cm3", "g/cm³"));

    public static UnitKind Rate { get; } = new("a rate", "3 1/s", new("1/s", 1, "/s"), new("1/min", 1 / 60.0));

    public static UnitKind Damping { get; } = new("a damping of spin", "0.05 N m s", new("N m s", 1, "N·m·s"), new("mN m s", 1e-3));

    public static UnitKind Inertia { get; } = new("a moment of inertia", "0.002 kg m2", new("kg m2", 1, "kg m²", "kg·m²"), new("lb in2", BallSim.Units.Pound * BallSim.Units.Inch * BallSim.Units.Inch, "lb in²"));

    public static UnitKind Time { get; } = new("a time", "2 s", new("s", 1), new("ms", 1e-3));

    /// <summary>A temperature in degrees Celsius, which is also the number inside.</summary>
    public static UnitKind Temperature { get; } = new("a temperature", "22 C",
        new Unit("C", 1, "°C"), new Unit("F", 5.0 / 9, "°F") { Zero = -32 * 5.0 / 9 });

    private static IEnumerable<UnitKind> All =>
        [Speed, Length, Film, Roughness, SpinRate, Angle, Mass, Volume, Viscosity, Pressure, Density, Rate, Damping, Inertia, Time, Temperature];

    /// <summary>
    /// The unit of this kind that the symbol names. Letter case counts only where it must: no kind has two units that differ in case alone.
    /// </summary>
    public Unit? UnitNamed(string symbol) => Units.FirstOrDefault(u => u.IsNamed(symbol, StringComparison.Ordinal))
        ?? Units.FirstOrDefault(u => u.IsNamed(symbol, StringComparison.OrdinalIgnoreCase));

    /// <summary>Another kind that the symbol belongs to, to say what was written instead.</summary>
    public static UnitKind? Owning(string symbol) =>
        All.FirstOrDefault(k => k.Units.Any(u => u.IsNamed(symbol, StringComparison.Ordinal))) ?? All.FirstOrDefault(k => k.UnitNamed(symbol) is not null);
}
