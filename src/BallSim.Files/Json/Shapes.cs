using BallSim.Balls;
using BallSim.Drilling;
using BallSim.Files.Text;
using BallSim.Friction;
using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Shots;
using static BallSim.Units;

namespace BallSim.Files.Json;

/// <summary>The tables of numbers: what each record's fields are called in a file, and in which units they come.</summary>
internal static class Shapes
{
    public static Shape<BallSheet> Ball { get; } = new(
        new("weight", UnitKind.Mass, b => b.Weight, (b, v) => b with { Weight = v }),
        new("lowRg", UnitKind.Length, b => b.LowRg, (b, v) => b with { LowRg = v }),
        new("differential", UnitKind.Length, b => b.Differential, (b, v) => b with { Differential = v }),
        new("intermediateDifferential", UnitKind.Length, b => b.IntermediateDifferential, (b, v) => b with { IntermediateDifferential = v }),
        new("diameter", UnitKind.Length, b => b.Diameter, (b, v) => b with { Diameter = v }),
        new("pinToCg", UnitKind.Length, b => b.PinToCg, (b, v) => b with { PinToCg = v }),
        new("topWeight", UnitKind.Mass, b => b.TopWeight, (b, v) => b with { TopWeight = v }),
        new("balanceLever", UnitKind.Length, b => b.BalanceLever, (b, v) => b with { BalanceLever = v }));

    /// <summary>
    /// A sheet before any field is read. Its numbers are the defaults that a file may leave out; the three that it must give are NaN.
    /// </summary>
    public static BallSheet BlankBall { get; } = new() { Name = "", Weight = double.NaN, LowRg = double.NaN, Differential = double.NaN };

    public static Shape<Cover> Cover { get; } = new(
        new("pores", UnitKind.Roughness, c => c.Pores, (c, v) => c with { Pores = v }),
        new("modulus", UnitKind.Pressure, c => c.Modulus, (c, v) => c with { Modulus = v }),
        new("poissonRatio", null, c => c.PoissonRatio, (c, v) => c with { PoissonRatio = v }),
        new("absorption", UnitKind.Rate, c => c.Absorption, (c, v) => c with { Absorption = v }));

    public static Shape<FinishSheet> Finish { get; } = new(
        new("grit", null, f => f.Grit, (f, v) => f with { Grit = v }),
        new("roughness", UnitKind.Roughness, f => f.Roughness, (f, v) => f with { Roughness = v }));

    public static Shape<Layout> Layout { get; } = new(
        new("pinToAxis", UnitKind.Length, l => l.PinToAxis, (l, v) => l with { PinToAxis = v }),
        new("angleAtPin", UnitKind.Angle, l => l.AngleAtPin, (l, v) => l with { AngleAtPin = v }),
        new("angleAtAxis", UnitKind.Angle, l => l.AngleAtAxis, (l, v) => l with { AngleAtAxis = v }));

    public static Shape<PositiveAxisPoint> Axis { get; } = new(
        new("over", UnitKind.Length, a => a.Over, (a, v) => a with { Over = v }),
        new("up", UnitKind.Length, a => a.Up, (a, v) => a with { Up = v }));

    public static Shape<Grip> Grip { get; } = new(
        new("middleSpan", UnitKind.Length, g => g.MiddleSpan, (g, v) => g with { MiddleSpan = v }),
        new("ringSpan", UnitKind.Length, g => g.RingSpan, (g, v) => g with { RingSpan = v }),
        new("bridge", UnitKind.Length, g => g.Bridge, (g, v) => g with { Bridge = v }));

    public static Shape<Bore> Bore { get; } = new(
        new("diameter", UnitKind.Length, b => b.Diameter, (b, v) => b with { Diameter = v }),
        new("depth", UnitKind.Length, b => b.Depth, (b, v) => b with { Depth = v }),
        new("forwardPitch", UnitKind.Length, b => b.ForwardPitch, (b, v) => b with { ForwardPitch = v }),
        new("lateralPitch", UnitKind.Length, b => b.LateralPitch, (b, v) => b with { LateralPitch = v }));

    public static Shape<Release> Release { get; } = new(
        new("board", null, r => r.Board, (r, v) => r with { Board = v }),
        new("launchAngle", UnitKind.Angle, r => r.LaunchAngle, (r, v) => r with { LaunchAngle = v }),
        new("speed", UnitKind.Speed, r => r.Speed, (r, v) => r with { Speed = v }),
        new("spinRate", UnitKind.SpinRate, r => r.SpinRate, (r, v) => r with { SpinRate = v }),
        new("axisRotation", UnitKind.Angle, r => r.AxisRotation, (r, v) => r with { AxisRotation = v }),
        new("axisTilt", UnitKind.Angle, r => r.AxisTilt, (r, v) => r with { AxisTilt = v }),
        new("loft", UnitKind.Length, r => r.Loft, (r, v) => r with { Loft = v }),
        new("rollPhase", UnitKind.Angle, r => r.RollPhase, (r, v) => r with { RollPhase = v }));

    /// <summary>A release before any field is read; the speed, which a file must give, is a placeholder within range.</summary>
    public static Release BlankRelease { get; } = new() { Speed = 8 };

    public static Shape<Scatter> Scatter { get; } = new(
        new("speed", UnitKind.Speed, s => s.Speed, (s, v) => s with { Speed = v }),
        new("launchAngle", UnitKind.Angle, s => s.LaunchAngle, (s, v) => s with { LaunchAngle = v }),
        new("board", null, s => s.Board, (s, v) => s with { Board = v }),
        new("spinRate", UnitKind.SpinRate, s => s.SpinRate, (s, v) => s with { SpinRate = v }),
        new("axisRotation", UnitKind.Angle, s => s.AxisRotation, (s, v) => s with { AxisRotation = v }),
        new("axisTilt", UnitKind.Angle, s => s.AxisTilt, (s, v) => s with { AxisTilt = v }));

    public static Shape<Lane> Lane { get; } = new(
        new("width", UnitKind.Length, l => l.Width, (l, v) => l with { Width = v }),
        new("length", UnitKind.Length, l => l.Length, (l, v) => l with { Length = v }),
        new("roughness", UnitKind.Roughness, l => l.Roughness, (l, v) => l with { Roughness = v }),
        new("modulus", UnitKind.Pressure, l => l.Modulus, (l, v) => l with { Modulus = v }),
        new("poissonRatio", null, l => l.PoissonRatio, (l, v) => l with { PoissonRatio = v }),
        new("oilViscosity", UnitKind.Viscosity, l => l.OilViscosity, (l, v) => l with { OilViscosity = v }),
        new("temperature", UnitKind.Temperature, l => l.Temperature, (l, v) => l with { Temperature = v }),
        new("airDensity", UnitKind.Density, l => l.AirDensity, (l, v) => l with { AirDensity = v }),
        new("boards", null, l => l.Boards, (l, v) => l with { Boards = Within.Whole(v, "boards") }),
        new("crossSlope", null, l => l.Topography.CrossSlope, (l, v) => l with { Topography = Topography.Tilted(v, l.Topography.LengthSlope) }),
        new("lengthSlope", null, l => l.Topography.LengthSlope, (l, v) => l with { Topography = Topography.Tilted(l.Topography.CrossSlope, v) }));

    public static Shape<OilSheet> Oil { get; } = new(
        new("length", UnitKind.Length, o => o.Length, (o, v) => o with { Length = v }),
        new("film", UnitKind.Film, o => o.Film, (o, v) => o with { Film = v }),
        new("volume", UnitKind.Volume, o => o.Volume, (o, v) => o with { Volume = v }),
        new("fullTo", UnitKind.Length, o => o.FullTo, (o, v) => o with { FullTo = v }),
        new("endFilm", UnitKind.Film, o => o.EndFilm, (o, v) => o with { EndFilm = v }),
        new("endFraction", null, o => o.EndFraction, (o, v) => o with { EndFraction = v }),
        new("fullFrom", null, o => o.FullFrom, (o, v) => o with { FullFrom = v }),
        new("fullUpTo", null, o => o.FullUpTo, (o, v) => o with { FullUpTo = v }),
        new("edgeFraction", null, o => o.EdgeFraction, (o, v) => o with { EdgeFraction = v }),
        new("runout", UnitKind.Length, o => o.Runout, (o, v) => o with { Runout = v }));

    public static Shape<FrictionCalibration> Friction { get; } = new(
        new("dry", null, f => f.Dry, (f, v) => f with { Dry = v }),
        new("floor", null, f => f.Floor, (f, v) => f with { Floor = v }),
        new("viscousCeiling", null, f => f.ViscousCeiling, (f, v) => f with { ViscousCeiling = v }),
        new("filmScale", null, f => f.FilmScale, (f, v) => f with { FilmScale = v }),
        new("gapFloor", UnitKind.Film, f => f.GapFloor, (f, v) => f with { GapFloor = v }),
        new("entrainmentSpeed", UnitKind.Speed, f => f.EntrainmentSpeed, (f, v) => f with { EntrainmentSpeed = v }),
        new("pickUp", null, f => f.PickUp, (f, v) => f with { PickUp = v }));

    public static Shape<SimulatorOptions> Options { get; } = new(
        new("tolerance", UnitKind.Length, o => o.Tolerance, (o, v) => o with { Tolerance = v }),
        new("maxTime", UnitKind.Time, o => o.MaxTime, (o, v) => o with { MaxTime = v }),
        new("dragCoefficient", null, o => o.DragCoefficient, (o, v) => o with { DragCoefficient = v }),
        new("liftCoefficient", null, o => o.LiftCoefficient, (o, v) => o with { LiftCoefficient = v }),
        new("rollingResistanceCoefficient", null, o => o.RollingResistanceCoefficient, (o, v) => o with { RollingResistanceCoefficient = v }),
        new("maxSteps", null, o => o.MaxSteps, (o, v) => o with { MaxSteps = Within.Whole(v, "maxSteps") }),
        new("maxTransitions", null, o => o.MaxTransitions, (o, v) => o with { MaxTransitions = Within.Whole(v, "maxTransitions") }));

    /// <summary>The switches of the small forces, and of the oil on the cover.</summary>
    public static (string Name, Func<SimulatorOptions, bool> Value, Func<SimulatorOptions, bool, SimulatorOptions> With)[] Forces { get; } =
    [
        ("airDrag", o => o.AirDrag, (o, on) => o with { AirDrag = on }),
        ("magnusForce", o => o.MagnusForce, (o, on) => o with { MagnusForce = on }),
        ("rollingResistance", o => o.RollingResistance, (o, on) => o with { RollingResistance = on }),
        ("pivotingFriction", o => o.PivotingFriction, (o, on) => o with { PivotingFriction = on }),
        ("coverOil", o => o.CoverOil, (o, on) => o with { CoverOil = on }),
        ("freshCover", o => o.FreshCover, (o, on) => o with { FreshCover = on }),
    ];

    /// <summary>Which of the oil's fields each shape knows; the first ones, in Needed, it cannot do without.</summary>
    public static (OilShape Shape, string Word, string[] Needed, string[] Known)[] OilShapes { get; } =
    [
        (OilShape.Dry, "dry", [], []),
        (OilShape.Even, "even", ["length", "film"], ["runout"]),
        (OilShape.Tapered, "tapered", ["length", "film", "endFilm"], ["fullTo", "runout"]),
        (OilShape.Crowned, "crowned", ["length", "volume"], ["fullTo", "endFraction", "fullFrom", "fullUpTo", "edgeFraction", "runout"]),
    ];
}
