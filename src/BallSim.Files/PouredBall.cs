using BallSim.Balls;

namespace BallSim.Files;

/// <summary>What comes out of a drawing: the ball, and what was solved to get it.</summary>
public sealed record PouredBall
{
    internal PouredBall()
    {
    }

    /// <summary>The drawing.</summary>
    public required BallDrawing Drawing { get; init; }

    /// <summary>The build and the undrilled ball.</summary>
    public required BuildSheet Sheet { get; init; }

    /// <summary>The blend that gives the wished weight; null where none was wished for.</summary>
    public FillerBlend? Blend { get; init; }

    /// <summary>The shift of the core that gives the wished top weight; null where none was wished for.</summary>
    public CoreShift? Shift { get; init; }

    /// <summary>Static imbalance towards the point over the centre of mass, as a mass in kg.</summary>
    public double TopWeight => Sheet.TopWeight(Drawing.BalanceLever);

    /// <summary>Density of the densest part, kg/m³.</summary>
    public double GreatestDensity => Sheet.Build.Core.Select(p => p.Density)
        .Append(Sheet.Build.FillerDensity).Append(Sheet.Build.CoverThickness > 0 ? Sheet.Build.CoverDensity : 0).Max();
}
