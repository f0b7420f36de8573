using System.Globalization;
using BallSim.Balls;
using BallSim.Drilling;
using BallSim.Ensembles;
using BallSim.Fitting;
using BallSim.Friction;
using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Shots;
using BallSim.Sweeps;
using static BallSim.Units;

namespace BallSim.Tests;

public class PrintingTests
{
    [Fact]
    public void Values_with_a_member_of_their_own_type_print_and_come_to_an_end()
    {
        Assert.Equal("(1, -2.5, 0)", new Vector3D(1, -2.5, 0).ToString());
        Assert.Equal("(1, 0, 0, 0)", Rotation.Identity.ToString());
    }

    public static TheoryData<object, string> InTradeUnits => new()
    {
        { Cover.Reactive, "reactive, pores 0.6 µm, 0.8 GPa, drinks 1 of its oil a second" },
        { new Scatter(), "± 0.2 mph, launch 0.25°, board 0.5, 10 rpm, rotation 3°, tilt 1.5°" },
        { new LayoutTolerances(), "± core 0.25 in, mark 0.375 in, pin to axis 0.0625 in, angles 2 deg and 2 deg, balance 0.25 oz, depth 0.0625 in" },
        { new TrackNoise { Speed = 0.1 * MilesPerHour, SpinRate = 5 * Rpm }, "± 5 mm across, 4 ms, 0.1 mph, heading 0.2°, 5 rpm, rotation 3°, tilt 3°" },
        { new TrackedPoint { Distance = 40 * Foot, X = -3 * Inch, Heading = 2 * Degree }, "40.0 ft, -3.00 in across, 2.00° heading" },
        { new MoveRule(), "moves when the mean of 4 entries lies 2 in off the pocket" },
        { new OilZone(2 * Foot, 8 * Foot, 11, 30, 4.5 * Micrometre), "2 to 8 ft, boards 11 to 30: 4.5 µm" },
        { Topography.Flat, "flat" },
        { Topography.Tilted(0.001, -0.0005), "cross slope 1 mm/m, length slope -0.5 mm/m" },
        { SimulatorOptions.Default, "path within 1E-6 m; drag, oil on the cover, fresh cover" },
        { new EnsembleOptions { Threads = 2, Precision = Precision.Single }, "side by side in floats on 2 threads; path within 1E-4 m; drag, oil on the cover, fresh cover" },
        { FrictionMap.Constant(0.12), "friction 0.12" },
        { FrictionMap.Smoothstep(0.04, 0.2, 8, 11), "friction 0.04 to 0.2" },
        { new BallMarks { MassBias = Vector3D.UnitY, Hand = Hand.Left }, "pin, mass bias; left-handed" },
        { Build, "8.550 in across, cover 0.75 in of 1.20 g/mL, filler 0.90 g/mL, core of 1 part" },
        { Build.Core[0], "sphere about (0, 0, 0) m, 1.90 g/mL" },
        { FrictionCalibration.Default, "dry 0.2, floor 0.02, shear at most 0.08, film scale 1, gap 0.25 µm, entrainment at 14.54 mph, picks up 0.5" },
        { BallRules.Default.Circumference, "circumference 26.704 to 27.002 in (USBC Equipment Specifications and Certifications Manual)" },
        { BallRules.Default.StaticBalance[0], "over 10 lb since 2020-08-01: 3 oz top to bottom, 3 oz side to side" },
        { new InertiaTensor(0.028, 0.03, 0.029, 1e-4), "(0.028, 0.03, 0.029; xy 0.0001, xz 0, yz 0) kg m²" },
        {
            new MetricVerdict { Metric = ShotMetric.BreakpointDistance, Designed = 40 * Foot, Measured = 42.5 * Foot, Low = 1 * Foot, High = 4 * Foot, ShotToShot = 1, FromFit = 0, Tolerance = 2 * Foot, Shots = 5 },
            "breakpoint distance: designed 40.00 ft, measured 42.50 ft, difference +1.00 to +4.00 ft, tolerance 2.00 ft: cannot tell"
        },
        { new TestPlan(ShotMetric.EntryAngle, -0.25 * Degree, 0.5 * Degree, 86), "entry angle: difference -0.25°, scatter 0.50°: 86 shots of each ball" },
        { new TestPlan(ShotMetric.EntrySpeed, 0, 0.2 * MilesPerHour, TestDesign.MostShots), "entry speed: difference 0.00 mph, scatter 0.20 mph: more shots than is reasonable" },
        { new ToleranceEffect("core", 0.25 * Inch, "± 0.25 in", 0.003 * Inch, 0.2 * Ounce, -0.4, 0.1 * Degree), "core ± 0.25 in: RG +0.0030 in, balance 0.20 oz, board -0.40, +0.10°" },
        { new BowlerDay(2, 40, 1, 12.3 * Microlitre, null, null), "bowler 2: 40 shots, 1 move, 12.3 µL of oil; no entry to compare" },
        { new EntrySpread(0.5 * Degree, 1.25 * Inch), "± 0.50°, ± 1.25 in" },
        { SpinTestOptions.Default, "within 1E-010 of itself, at most 500000 steps" },
        { new MarkingArc("grip centre", 3 * Inch, 2.5 * Inch, Hand.Left), "grip centre: 3.00 in from the pin, 2.50 in from the mass bias, left of the line" },
        { new GyroSample(0.1, new(400 * Rpm, 0, -20 * Rpm)), "0.100 s: 400.0, 0.0, -20.0 rpm" },
        { new FitResidual("7", 12, 40 * Foot, FitQuantity.Lateral, -12 * Millimetre, -2.4, 0.3), "shot 7 at 40.0 ft: Lateral off by -12.0 mm (-2.4 standard deviations, weight 0.30)" },
        { new ResidualBand(30 * Foot, 40 * Foot, FitQuantity.Time, 90, 0.001, 0.004), "30 to 40 ft: Time off by +1.0 ms in the mean, 4.0 ms root mean square, of 90" },
        { new MetricTolerance(ShotMetric.EntrySpeed, 0.25 * MilesPerHour), "entry speed within 0.25 mph" },
        { new ShotEnds("3", StopReason.HeadPin, StopReason.Gutter), "shot 3: designed HeadPin, measured Gutter" },
        { new FreeParameter(FitParameter.AxisTilt) { Prior = new(2 * Degree), Low = 0, High = 30 * Degree }, "AxisTilt from 0 to 30°, known to ± 2°, for each shot" },
        { new Prior(0.02, 0.2), "0.2 ± 0.02" },
        { Metric.EntryAngle, "entry_angle_deg" },
        { Design.LatinHypercube(100, 3), "LatinHypercube of 100 rows, seed 3" },
        { Design.Factorial, "every combination" },
        { new SweepRow(4, [1.5, 2], null, "too wide"), "row 4: 1.5, 2: too wide" },
        { new BallMeasurements { Circumference = 26.9 * Inch, TopWeight = 2.5 * Ounce, VentsPerHole = 1 }, "2020-08-01; circumference 26.9 in; top weight 2.5 oz; vents in a hole 1" },
        { new ReleaseColumns { Board = [1], Speed = [8] }, "board, speed" },
        { new OutcomeColumns { Angle = new double[1], StopReason = new StopReason[1] }, "StopReason, Angle" },
        { new RepeatabilityOptions(), "2000 throws from seed 1, 95 % intervals; 5 to 7.6 cm from the middle, 4 to 6°" },
        {
            new PathPoint { Time = 1.5, Phase = ShotPhase.Sliding, Y = 30 * Foot, Board = 12, VelocityY = 17 * MilesPerHour, AngularVelocity = new(-400 * Rpm, 0, 0), SlipY = 2 * MilesPerHour },
            "1.500 s, 30.0 ft, board 12.0: Sliding, 17.0 mph, 400 rpm, rotation 0.0°, tilt 0.0°, slip 2.0 mph"
        },
    };

    private static BallBuild Build { get; } = new() { Radius = 8.55 / 2 * Inch, CoverThickness = 0.75 * Inch, CoverDensity = 1200, FillerDensity = 900, Core = [new(Solid.Sphere(1 * Inch), 1900)] };

    [Fact]
    public void A_day_prints_its_games_bowlers_and_lane()
    {
        var bowler = new DayBowler { Name = "A", Ball = Ball.FromSpecification(15 * Pound, 2.5 * Inch, 0.04 * Inch), Release = new() { Speed = 18 * MilesPerHour } };
        Assert.Equal($"A: {bowler.Release}; {bowler.Ball}", bowler.ToString());
        Assert.Equal($"1 game of 2 bowlers, 30 shots from seed 7; {Lane.Regulation}", new DayPlan { Lane = Lane.Regulation, Bowlers = [bowler, bowler], Games = 1, Seed = 7 }.ToString());
    }

    [Theory, MemberData(nameof(InTradeUnits))]
    public void What_one_puts_in_prints_in_the_units_of_the_trade_whatever_the_culture(object value, string expected)
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            // A comma for decimals.
            CultureInfo.CurrentCulture = new CultureInfo("") { NumberFormat = { NumberDecimalSeparator = ",", NegativeSign = "~" } };
            Assert.Equal(expected, value.ToString());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void A_throw_prints_its_three_parts()
    {
        var (ball, lane, release) = (Ball.FromSpecification(15 * Pound, 2.5 * Inch, 0.04 * Inch), Lane.Regulation, new Release { Speed = 18 * MilesPerHour });
        Assert.Equal($"{release}; {ball}; {lane}", new Throw(ball, lane, release).ToString());
    }
}
