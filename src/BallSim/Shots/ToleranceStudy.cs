using System.Text;
using BallSim.Drilling;
using static System.FormattableString;
using static BallSim.Units;

namespace BallSim.Shots;

/// <summary>
/// What the errors of making, laying out and balancing a ball do to it and to a shot, source by source, and all together.
/// </summary>
public sealed record ToleranceStudy
{
    internal ToleranceStudy(double rg, StaticBalance balance, double board, double angle, IEnumerable<ToleranceEffect> effects)
    {
        (Rg, Balance, Board, Angle) = (rg, balance, board, angle);
        Effects = [.. effects.OrderByDescending(e => Math.Abs(e.OnBoard))];
    }

    /// <summary>Radius of gyration about the positive axis without errors, m.</summary>
    public double Rg { get; }

    /// <summary>Static balance without errors.</summary>
    public StaticBalance Balance { get; }

    /// <summary>Entry board without errors.</summary>
    public double Board { get; }

    /// <summary>Entry angle without errors, rad.</summary>
    public double Angle { get; }

    /// <summary>The effects, the largest on the entry board first.</summary>
    public IReadOnlyList<ToleranceEffect> Effects { get; }

    /// <summary>All together on the radius of gyration, m: the root of the summed squares, for independent errors.</summary>
    public double RgSpread => Together(e => e.OnRg);

    /// <summary>All together on the static balance, kg.</summary>
    public double BalanceSpread => Together(e => e.OnBalance);

    /// <summary>All together on the entry board, in boards.</summary>
    public double BoardSpread => Together(e => e.OnBoard);

    /// <summary>All together on the entry angle, rad.</summary>
    public double AngleSpread => Together(e => e.OnAngle);

    /// <summary>What moves the entry board most.</summary>
    public ToleranceEffect DominantOnBoard => Effects[0];

    /// <summary>What changes the entry angle most.</summary>
    public ToleranceEffect DominantOnAngle => Effects.MaxBy(e => Math.Abs(e.OnAngle));

    /// <summary>What changes the radius of gyration about the positive axis most.</summary>
    public ToleranceEffect DominantOnRg => Effects.MaxBy(e => Math.Abs(e.OnRg));

    /// <summary>What changes the static balance most.</summary>
    public ToleranceEffect DominantOnBalance => Effects.MaxBy(e => e.OnBalance);

    /// <summary>The table, the largest effect on the entry board first, with its share of the summed squares.</summary>
    public override string ToString()
    {
        var text = new StringBuilder();
        var width = Effects.Max(e => e.Source.Length);
        text.AppendLine($"{"source".PadRight(width)}  {"tolerance",10}  {"RG, in",10}  {"balance, oz",11}  {"board",8}  {"angle, deg",10}  {"share",6}");
        foreach (var e in Effects)
        {
            text.AppendLine(Invariant(
                $"{e.Source.PadRight(width)}  {e.ToleranceText,10}  {e.OnRg / Inch,10:+0.00000;-0.00000;0.00000}") + Invariant(
                $"  {e.OnBalance / Ounce,11:0.000}  {e.OnBoard,8:+0.000;-0.000;0.000}  {e.OnAngle / Degree,10:+0.0000;-0.0000;0.0000}  {Share(e),6:P0}"));
        }
        text.AppendLine(Invariant($"{"all together".PadRight(width)}  {"",10}  {RgSpread / Inch,10:0.00000}")
            + Invariant($"  {BalanceSpread / Ounce,11:0.000}  {BoardSpread,8:0.000}  {AngleSpread / Degree,10:0.0000}"));
        return text.AppendLine(Invariant($"without errors: RG {Rg / Inch:F4} in, balance {Balance}, board {Board:F2}, {Angle / Degree:F3} deg")).ToString();
    }

    private double Share(ToleranceEffect e) => BoardSpread > 0 ? e.OnBoard * e.OnBoard / (BoardSpread * BoardSpread) : 0;

    private double Together(Func<ToleranceEffect, double> effect) => Math.Sqrt(Effects.Sum(e => effect(e) * effect(e)));
}
