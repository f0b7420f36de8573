using BallSim.Files;
using BallSim.Shots;
using static System.FormattableString;
using static BallSim.Units;

namespace BallSim.Cli;

/// <summary>Numbers as a driller reads them; a dash for what does not exist.</summary>
internal static class Trade
{
    public const string None = "-";

    public static string Angle(double rad) => Invariant($"{rad / Degree:F1}°");

    public static string Move(double rad) => Invariant($"{rad / Degree:+0.0;-0.0;0.0}°");

    /// <summary>An offset from the pocket in inches, and to which side.</summary>
    public static string Offset(double metres)
    {
        var text = Invariant($"{Math.Abs(metres) / Inch:F1}");
        return text == "0.0" ? text : text + (metres > 0 ? " right" : " left");
    }

    public static string Board(double board) => Invariant($"{board:F1}");

    public static string Feet(double? metres) => metres is { } m ? Invariant($"{m / Foot:F0}") : None;

    public static string Miles(double metresPerSecond) => Invariant($"{metresPerSecond / MilesPerHour:F1}");

    public static string Turns(double radPerSecond) => Invariant($"{radPerSecond / Rpm:F0}");

    /// <summary>A radius of gyration or a differential in inches, as makers print it.</summary>
    public static string Rg(double metres) => Invariant($"{metres / Inch:F3}");

    public static string Ounces(double kilograms) => Invariant($"{kilograms / Ounce:F2}");

    public static string Signed(double kilograms) => Invariant($"{kilograms / Ounce:+0.00;-0.00;0.00}");

    public static string Arc(double? metres) => metres is { } m ? Invariant($"{m / Inch:F2}") : None;

    /// <summary>A volume of oil in microlitres.</summary>
    public static string Oil(double cubicMetres) => Invariant($"{cubicMetres / Microlitre:F0}");

    public static string Seconds(double seconds) => Invariant($"{seconds:F1} s");

    /// <summary>A direction in the drawing, and how far it leans from the drawing's axis z.</summary>
    public static string Direction(Vector3D d) =>
        Invariant($"({d.X:0.000}, {d.Y:0.000}, {d.Z:0.000}) in the drawing, {d.AngleTo(Vector3D.UnitZ) / Degree:F1}° from its z").Replace("-0.000", "0.000");

    /// <summary>Where the ball turns back, or that it does not.</summary>
    public static string Breakpoint(Breakpoint b) => b.IsEnd ? "none" : Invariant($"{b.Board:F1} at {b.Distance / Foot:F0}");

    /// <summary>The offset of a shot, with a star where the head pin is missed; or what became of the ball.</summary>
    public static string OffsetOf(Shot shot) => shot.StopReason switch
    {
        StopReason.HeadPin => Offset(shot.Entry.Offset),
        StopReason.PassedHeadPin => "* " + Offset(shot.Entry.Offset),
        StopReason.Gutter => "gutter",
        _ => "unfinished",
    };

    /// <summary>What the star means.</summary>
    public const string StarNote = "* misses the head pin; told at the pins' line.";
}
