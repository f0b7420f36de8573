using static System.FormattableString;
using static BallSim.Units;

namespace BallSim.Lanes;

/// <summary>
/// The lane: its measures, its surface, the oil on it, and the air over it. Origin at the middle of the foul line, x to the right as the bowler looks, y down-lane, z up.
/// A value; change it by <c>Lane.Regulation with { Oil = ... }</c>.
/// </summary>
public sealed record Lane
{
    private readonly double width = RegulationLane.Width;
    private readonly double length = RegulationLane.Length;
    private readonly int boards = RegulationLane.Boards;
    private readonly double roughness = 0.20 * Micrometre;
    private readonly double modulus = 10e9;
    private readonly double poissonRatio = 0.30;
    private readonly double oilViscosity = 0.030;
    private readonly double temperature = 22;
    private readonly Vector3D gravity = new(0, 0, -StandardGravity);
    private readonly double airDensity = 1.2;

    private Lane()
    {
    }

    /// <summary>41.5 in wide, 39 boards, 60 ft to the head pin, with edges and pins, level and dry.</summary>
    public static Lane Regulation { get; } = new();

    /// <summary>A plane without edges and pins, with a given coefficient of friction: for study.</summary>
    public static Lane Unbounded(FrictionMap friction) => new() { GivenFriction = friction ?? throw new ArgumentNullException(nameof(friction)), HasEdges = false, HasPins = false };

    /// <summary>A plane without edges and pins, with a film of oil: for study.</summary>
    public static Lane Unbounded(OilMap oil) => new() { Oil = oil, HasEdges = false, HasPins = false };

    /// <summary>Width between the gutters, m, 0.9 to 1.2 m; 41.5 in, and the rules allow ± 0.5 in (USBC).</summary>
    public double Width
    {
        get => width;
        init => width = Check.Range(value, 0.9, 1.2, Quantity.Length, nameof(Width));
    }

    /// <summary>
    /// Foul line to head pin, m; 60 ft, and the rules allow ± ½ in (USBC). A longer lane (to 30 m) is taken for study; a shorter one is refused.
    /// </summary>
    public double Length
    {
        get => length;
        init
        {
            if (value < RegulationLane.Length - RegulationLane.LengthTolerance)
            {
                throw new ArgumentOutOfRangeException(nameof(Length), value,
                    $"Length = {Check.Text(value)} m ends the lane before the head pin, which stands {Check.Text(RegulationLane.Length)} m (60 ft) from the foul line, "
                    + $"0.0127 m more or less{Quantity.Length.Slip(value, RegulationLane.Length - RegulationLane.LengthTolerance, LongestLane)}; "
                    + "to study a ball without pins use Lane.Unbounded");
            }
            length = Check.Range(value, RegulationLane.Length - RegulationLane.LengthTolerance, LongestLane, Quantity.Length, nameof(Length));
        }
    }

    /// <summary>Boards across, 20 to 60; 39 (the usual number, USBC).</summary>
    public int Boards
    {
        get => boards;
        init => boards = (int)Check.Range(value, 20, 60, Quantity.Number, nameof(Boards));
    }

    /// <summary>The oil.</summary>
    public OilMap Oil { get; init => field = value ?? throw new ArgumentNullException(nameof(Oil)); } = OilMap.Dry;

    /// <summary>A given coefficient of friction that replaces the law of film and slip altogether, or null.</summary>
    public FrictionMap? GivenFriction { get; init; }

    /// <summary>Average roughness Ra of the lane's surface, m, 0.01 to 5 µm; 0.20 µm, assumed (plausible: 0.1 to 0.5 µm).</summary>
    public double Roughness
    {
        get => roughness;
        init => roughness = Check.Range(value, 0.01 * Micrometre, 5 * Micrometre, Quantity.Film, nameof(Roughness));
    }

    /// <summary>Young's modulus of the lane's surface, Pa, 0.1 to 1000 GPa; 10 GPa, assumed, from memory of laminates (1 to 15 GPa).</summary>
    public double Modulus
    {
        get => modulus;
        init => modulus = Check.Range(value, 0.1e9, 1000e9, Quantity.Of("Pa"), nameof(Modulus));
    }

    /// <summary>Poisson's ratio of the lane's surface, a number in [0, 0.5]; 0.30, assumed.</summary>
    public double PoissonRatio
    {
        get => poissonRatio;
        init => poissonRatio = Check.Range(value, 0, 0.5, Quantity.Number, nameof(PoissonRatio));
    }

    /// <summary>Viscosity of the oil at 22 °C, Pa s, 0.001 to 1 Pa s; 0.030. Published range 0.012 to 0.081 Pa s at 70 °F, market mean 0.0347 (USBC release of 21 Nov 2007).</summary>
    public double OilViscosity
    {
        get => oilViscosity;
        init => oilViscosity = Check.Range(value, 0.001, 1, Quantity.Of("Pa s"), nameof(OilViscosity));
    }

    /// <summary>Temperature of lane and oil, °C, 0 to 50 °C; 22 °C.</summary>
    public double Temperature
    {
        get => temperature;
        init => temperature = Check.Range(value, 0, 50, Quantity.Of("°C"), nameof(Temperature));
    }

    /// <summary>Viscosity of the oil at the lane's temperature, Pa s: that at 22 °C times exp(-0.045 (T - 22)); the rate 0.045 for each degree is assumed.</summary>
    public double Viscosity => OilViscosity * Math.Exp(-0.045 * (Temperature - 22));

    /// <summary>Slopes of the surface; level.</summary>
    public Topography Topography { get; init => field = value ?? throw new ArgumentNullException(nameof(Topography)); } = Topography.Flat;

    /// <summary>Gravity in the lane frame, m/s²; (0, 0, -9.80665). A plane inclined as a whole is treated exactly this way. It must press the ball onto the lane (z below zero).</summary>
    public Vector3D Gravity
    {
        get => gravity;
        init
        {
            Check.Finite(value, nameof(Gravity));
            Check.That(value.Z < 0, $"Gravity.Z = {Check.Text(value.Z)} m/s² does not press the ball onto the lane; z points up, so it must be below zero", nameof(Gravity));
            gravity = value;
        }
    }

    /// <summary>Density of the air, kg/m³, 0 to 2; 1.2 (sea level, 20 °C).</summary>
    public double AirDensity
    {
        get => airDensity;
        init => airDensity = Check.Range(value, 0, 2, Quantity.Of("kg/m³"), nameof(AirDensity));
    }

    /// <summary>The lane has edges, and gutters beyond them.</summary>
    public bool HasEdges { get; private init; } = true;

    /// <summary>The head pin stands at (0, <see cref="Length"/>).</summary>
    public bool HasPins { get; private init; } = true;

    /// <summary>Width of a board, m.</summary>
    public double BoardWidth => Width / Boards;

    /// <summary>The continuous board at a place: 1 at the centre of the rightmost board, 20 in the middle of 39, growing to the left.</summary>
    /// <param name="x">Across, m, positive to the right of the lane's middle.</param>
    public double BoardAt(double x) => (Width / 2 - x) / BoardWidth + 0.5;

    /// <summary>The place of a continuous board, m, positive to the right of the lane's middle: W/2 - (b - ½) W/39.</summary>
    /// <param name="board">Board, counted from the right for both hands.</param>
    public double PlaceOf(double board) => Width / 2 - (board - 0.5) * BoardWidth;

    /// <summary>
    /// The pocket, m: 2.5 boards to the right of the head pin for a right-hander (board 17.5), to the left for a left-hander (board 22.5). Source: USBC study; other publications say 6.0 to
    /// 6.5 cm, this is 6.76 cm.
    /// </summary>
    public double Pocket(Hand hand) => (hand == Hand.Right ? 2.5 : -2.5) * BoardWidth;

    /// <summary>Measures and oil in the units of the trade.</summary>
    public override string ToString() => Invariant($"lane {Length / Foot:F2} ft by {Width / Inch:F1} in{(HasEdges ? "" : ", unbounded")}, ")
        + (GivenFriction is null ? $"oil {Oil}" : "friction given");

    private const double LongestLane = 30;
}
