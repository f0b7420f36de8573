namespace BallSim.Drilling;

/// <summary>
/// What was measured on a ball, and when, for the rules check; everything optional. What is given here goes before what the ball itself
/// says.
/// </summary>
public sealed record BallMeasurements
{
    /// <summary>The day whose rules apply; the day of the last change known, 1 August 2020, unless given.</summary>
    public DateOnly Day { get; init; } = BallRules.BalanceReform;

    /// <summary>
    /// True if the ball was approved after 2020, false if before; null: not known, and then both hardness limits are looked at.
    /// </summary>
    public bool? ApprovedAfter2020 { get; init; }

    /// <summary>Circumference, m; 0.1 to 2.</summary>
    public double? Circumference { get; init => field = In(value, 0.1, 2, Quantity.Length, nameof(Circumference)); }

    /// <summary>Greatest less smallest diameter, m; 0 to 0.01.</summary>
    public double? Roundness { get; init => field = In(value, 0, 0.01, Quantity.Length, nameof(Roundness)); }

    /// <summary>Hardness on the Shore D scale, 0 to 100.</summary>
    public double? Hardness { get; init => field = In(value, 0, 100, Quantity.Of("Shore D"), nameof(Hardness)); }

    /// <summary>Average roughness Ra, m; 0 to 50 µm. Without it that of the ball's finish is taken.</summary>
    public double? Roughness { get; init => field = In(value, 0, 50e-6, Quantity.Film, nameof(Roughness)); }

    /// <summary>Friction coefficient of the laboratory test, a number, 0 to 1.</summary>
    public double? LaboratoryFriction { get; init => field = In(value, 0, 1, Quantity.Number, nameof(LaboratoryFriction)); }

    /// <summary>Arc from the pin to the axis of lowest radius of gyration of the undrilled ball, m; 0 to 0.2.</summary>
    public double? PinToLowAxis { get; init => field = In(value, 0, 0.2, Quantity.Length, nameof(PinToLowAxis)); }

    /// <summary>Arc from the mass-bias mark to the axis of highest radius of gyration of the undrilled ball, m; 0 to 0.2.</summary>
    public double? MarkToHighAxis { get; init => field = In(value, 0, 0.2, Quantity.Length, nameof(MarkToHighAxis)); }

    /// <summary>Density of the densest component, kg/m³; 100 to 25 000.</summary>
    public double? ComponentDensity { get; init => field = In(value, 100, 25_000, Quantity.Of("kg/m³"), nameof(ComponentDensity)); }

    /// <summary>Static imbalance of the drilled ball between top and bottom, kg (write ounces as <c>1.5 * Ounce</c>), any sign.</summary>
    public double? TopWeight { get; init => field = In(value, -0.5, 0.5, Quantity.Mass, nameof(TopWeight)); }

    /// <summary>Static imbalance of the drilled ball between the sides, kg, any sign.</summary>
    public double? SideWeight { get; init => field = In(value, -0.5, 0.5, Quantity.Mass, nameof(SideWeight)); }

    /// <summary>Static imbalance of the drilled ball between finger and thumb half, kg, any sign.</summary>
    public double? FingerWeight { get; init => field = In(value, -0.5, 0.5, Quantity.Mass, nameof(FingerWeight)); }

    /// <summary>Number of gripping holes; without it the finger and thumb holes marked on the ball are counted.</summary>
    public int? GrippingHoles { get; init => field = (int?)In(value, 0, 100, Quantity.Number, nameof(GrippingHoles)); }

    /// <summary>Number of balance holes.</summary>
    public int? BalanceHoles { get; init => field = (int?)In(value, 0, 100, Quantity.Number, nameof(BalanceHoles)); }

    /// <summary>Most vents in one hole.</summary>
    public int? VentsPerHole { get; init => field = (int?)In(value, 0, 100, Quantity.Number, nameof(VentsPerHole)); }

    /// <summary>Width of the widest vent, m; 0 to 0.1.</summary>
    public double? VentWidth { get; init => field = In(value, 0, 0.1, Quantity.Length, nameof(VentWidth)); }

    private static double? In(double? value, double low, double high, Quantity quantity, string name) =>
        value is { } v ? Check.Range(v, low, high, quantity, name) : null;

    /// <summary>What was measured, in the units of the trade.</summary>
    public override string ToString() => $"{Day:yyyy-MM-dd}" + string.Concat(Texts().Where(t => t.Value is not null).Select(t => FormattableString.Invariant($"; {t.Name} {t.Value / t.Size:0.####}{t.Unit}")));

    private (string Name, double? Value, double Size, string Unit)[] Texts() =>
    [
        ("circumference", Circumference, Units.Inch, " in"), ("roundness", Roundness, Units.Inch, " in"), ("hardness", Hardness, 1, " Shore D"), ("Ra", Roughness, Units.Micrometre, " µm"), ("laboratory friction", LaboratoryFriction, 1, ""),
        ("pin to low axis", PinToLowAxis, Units.Inch, " in"), ("mark to high axis", MarkToHighAxis, Units.Inch, " in"), ("densest component", ComponentDensity, 1000, " g/mL"),
        ("top weight", TopWeight, Units.Ounce, " oz"), ("side weight", SideWeight, Units.Ounce, " oz"), ("finger weight", FingerWeight, Units.Ounce, " oz"),
        ("gripping holes", GrippingHoles, 1, ""), ("balance holes", BalanceHoles, 1, ""), ("vents in a hole", VentsPerHole, 1, ""), ("widest vent", VentWidth, Units.Inch, " in"),
    ];
}
