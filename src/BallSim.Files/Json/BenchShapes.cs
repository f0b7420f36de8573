using BallSim.Drilling;
using BallSim.Files.Text;
using BallSim.Shots;

namespace BallSim.Files.Json;

/// <summary>The tables of numbers of a ball on the bench: what was measured, and how it is spun.</summary>
internal static class BenchShapes
{
    public static Shape<BallMeasurements> Measured { get; } = new(
        new("circumference", UnitKind.Length, m => m.Circumference, (m, v) => m with { Circumference = v }),
        new("roundness", UnitKind.Length, m => m.Roundness, (m, v) => m with { Roundness = v }),
        new("hardness", null, m => m.Hardness, (m, v) => m with { Hardness = v }),
        new("roughness", UnitKind.Roughness, m => m.Roughness, (m, v) => m with { Roughness = v }),
        new("laboratoryFriction", null, m => m.LaboratoryFriction, (m, v) => m with { LaboratoryFriction = v }),
        new("pinToLowAxis", UnitKind.Length, m => m.PinToLowAxis, (m, v) => m with { PinToLowAxis = v }),
        new("markToHighAxis", UnitKind.Length, m => m.MarkToHighAxis, (m, v) => m with { MarkToHighAxis = v }),
        new("componentDensity", UnitKind.Density, m => m.ComponentDensity, (m, v) => m with { ComponentDensity = v }),
        new("topWeight", UnitKind.Mass, m => m.TopWeight, (m, v) => m with { TopWeight = v }),
        new("sideWeight", UnitKind.Mass, m => m.SideWeight, (m, v) => m with { SideWeight = v }),
        new("fingerWeight", UnitKind.Mass, m => m.FingerWeight, (m, v) => m with { FingerWeight = v }),
        new("grippingHoles", null, m => m.GrippingHoles, (m, v) => m with { GrippingHoles = Within.Count(v, "grippingHoles") }),
        new("balanceHoles", null, m => m.BalanceHoles, (m, v) => m with { BalanceHoles = Within.Count(v, "balanceHoles") }),
        new("ventsPerHole", null, m => m.VentsPerHole, (m, v) => m with { VentsPerHole = Within.Count(v, "ventsPerHole") }),
        new("ventWidth", UnitKind.Length, m => m.VentWidth, (m, v) => m with { VentWidth = v }));

    public static Shape<SpinSheet> Spin { get; } = new(
        new("spinRate", UnitKind.SpinRate, s => s.SpinRate, (s, v) => s with { SpinRate = Within.Range(v, 1 * Units.Rpm, 500, "spinRate") }),
        new("duration", UnitKind.Time, s => s.Duration, (s, v) => s with { Duration = Within.Range(v, 1, 600, "duration") }),
        new("within", UnitKind.Angle, s => s.Within, (s, v) => s with { Within = Within.Range(v, 0.01 * Units.Degree, Math.PI / 2, "within") }));

    public static Shape<SpinDissipation> Dissipation { get; } = new(
        new("squareToMomentum", UnitKind.Damping, d => d.SquareToMomentum, (d, v) => d with { SquareToMomentum = v }),
        new("rotorCoupling", UnitKind.Damping, d => d.RotorCoupling, (d, v) => d with { RotorCoupling = v }),
        new("rotorMoment", UnitKind.Inertia, d => d.RotorMoment, (d, v) => d with { RotorMoment = v }),
        new("supportLevel", UnitKind.Damping, d => d.SupportLevel, (d, v) => d with { SupportLevel = v }),
        new("supportUpright", UnitKind.Damping, d => d.SupportUpright, (d, v) => d with { SupportUpright = v }),
        new("air", UnitKind.Damping, d => d.Air, (d, v) => d with { Air = v }),
        new("slowing", UnitKind.Rate, d => d.Slowing, (d, v) => d with { Slowing = v }));
}
