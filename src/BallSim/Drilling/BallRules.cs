using static BallSim.Units;

namespace BallSim.Drilling;

/// <summary>
/// The limits a ball is checked against, each a setting with its source. The values here are those of the US governing body and of the
/// international bodies as far as they could be read, most of them quoted by another text: change by <c>with</c> what your federation rules
/// otherwise.
/// </summary>
public sealed record BallRules
{
    private const string Manual = "USBC Equipment Specifications and Certifications Manual";
    private const string Quoted = "seen (quoted)";

    /// <summary>
    /// The day on which balance holes were banned and the static balance of heavier balls became 3 oz in every direction.
    /// </summary>
    public static DateOnly BalanceReform { get; } = new(2020, 8, 1);

    /// <summary>The limits as described at each property.</summary>
    public static BallRules Default { get; } = new();

    /// <summary>Weight from which circumference and diameter are limited, kg: 13 lb.</summary>
    public double SizedFrom { get; init => field = Check.Range(value, 0, 100, Quantity.Mass, nameof(SizedFrom)); } = 13 * Pound;

    /// <summary>Circumference of balls of 13 lb and more: 26.704 to 27.002 in.</summary>
    public RuleLimit Circumference { get; init; } = RuleLimit.Inches("circumference", 26.704, 27.002, Manual, "", Quoted);

    /// <summary>Diameter, of the same balls: 8.500 to 8.595 in, which is the circumference over π.</summary>
    public RuleLimit Diameter { get; init; } = RuleLimit.Inches("diameter", 8.500, 8.595, Manual, "", "seen, computed");

    /// <summary>Roundness: at most 0.010 in.</summary>
    public RuleLimit Roundness { get; init; } = RuleLimit.Inches("roundness", null, 0.010, Manual, "", Quoted);

    /// <summary>Weight: at most 16.00 lb, no minimum.</summary>
    public RuleLimit Weight { get; init; } = new("weight", null, 16.00 * Pound, "lb", Pound, 2, Manual, "", Quoted);

    /// <summary>Hardness of a cover approved up to 2020: at least 72 on the Shore D scale.</summary>
    public RuleLimit Hardness { get; init; } = new("hardness", 72, null, "Shore D", 1, 0, "USBC releases", "2020", Quoted);

    /// <summary>Hardness of a cover approved after 2020: at least 73 on the Shore D scale.</summary>
    public RuleLimit HardnessOfNewBalls { get; init; } = new("hardness (approved after 2020)", 73, null, "Shore D", 1, 0, "USBC releases", "2020", Quoted);

    /// <summary>Average surface roughness Ra: at most 50 microinch, 1.27 µm.</summary>
    public RuleLimit Roughness { get; init; } = new("surface roughness Ra", null, 50e-6 * Inch, "µm", Micrometre, 2, "USBC release", "2009", Quoted);

    /// <summary>Friction coefficient in the laboratory test of the governing body: at most 0.320.</summary>
    public RuleLimit LaboratoryFriction { get; init; } = new("laboratory friction", null, 0.320, "", 1, 3, "USBC manual", "2012", Quoted);

    /// <summary>
    /// Radius of gyration: 2.460 to 2.800 in. Applied to the lowest and to the highest of a ball, the strictest reading (assumed).
    /// </summary>
    public RuleLimit Rg { get; init; } = RuleLimit.Inches("radius of gyration", 2.460, 2.800, "USBC releases; USBC manual", "2009/2010; 2012", Quoted);

    /// <summary>Total differential: at most 0.060 in. A lower limit was proposed in 2018.</summary>
    public RuleLimit Differential { get; init; } = RuleLimit.Inches("total differential", null, 0.060, "USBC release", "in force 2005", Quoted);

    /// <summary>Intermediate differential: no separate limit was found, so that none is set.</summary>
    public RuleLimit IntermediateDifferential { get; init; } = RuleLimit.Inches("intermediate differential", null, null, "none found", "", "off");

    /// <summary>Arc from the pin to the axis of lowest radius of gyration: at most 1 in.</summary>
    public RuleLimit PinToLowAxis { get; init; } = RuleLimit.Inches("pin to the low-RG axis", null, 1, "USBC release", "2012", Quoted);

    /// <summary>Arc from the mass-bias mark to the axis of highest radius of gyration: at most 1.5 in.</summary>
    public RuleLimit MarkToHighAxis { get; init; } = RuleLimit.Inches("mark to the high-RG axis", null, 1.5, "USBC release", "2012", Quoted);

    /// <summary>Density of any component: at most 3.80 g/mL.</summary>
    public RuleLimit ComponentDensity { get; init; } = new("densest component", null, 3800, "g/mL", 1000, 2, "USBC manual", "", Quoted);

    /// <summary>Gripping holes: at most 5.</summary>
    public RuleLimit GrippingHoles { get; init; } = new("gripping holes", null, 5, "", 1, 0, "WTBA 11.12", "", "seen");

    /// <summary>Balance holes: none since 1 August 2020. No limit of the time before is on file.</summary>
    public RuleLimit BalanceHoles { get; init; } = new("balance holes", null, 0, "", 1, 0, "WTBA 11.12", "since 2020-08-01", "seen");

    /// <summary>Vents: at most one for each hole.</summary>
    public RuleLimit VentsPerHole { get; init; } = new("vents in one hole", null, 1, "", 1, 0, "WTBA 11.12", "", "seen");

    /// <summary>Width of a vent: at most 1/4 in.</summary>
    public RuleLimit VentWidth { get; init; } = RuleLimit.Inches("widest vent", null, 0.25, "WTBA 11.12", "", "seen");

    /// <summary>
    /// Static balance by class of weight and date, the heaviest class first; the first that applies is used. Over 10 lb: 3 oz in every
    /// direction since 1 August 2020, before 3 oz top/bottom and 1 oz side and finger/thumb. From 8 to 10 lb: 2 oz and 3/4 oz. Below 8 lb:
    /// 3/4 oz (from memory).
    /// </summary>
    public IReadOnlyList<StaticBalanceRule> StaticBalance { get; init; } =
    [
        new(10 * Pound, false, BalanceReform, null, 3 * Ounce, 3 * Ounce, "WTBA 11.13.2 / USBC", "seen"),
        new(10 * Pound, false, null, BalanceReform, 3 * Ounce, 1 * Ounce, "WTBA 11.13.2 / USBC", "seen"),
        new(8 * Pound, true, null, null, 2 * Ounce, 0.75 * Ounce, "ABC/USBC", "seen"),
        new(0, true, null, null, 0.75 * Ounce, 0.75 * Ounce, "ABC/USBC", "from memory"),
    ];

    /// <summary>Since when each rule of static balance holds; the limits are members.</summary>
    public override string ToString() => string.Join("; ", StaticBalance);
}
