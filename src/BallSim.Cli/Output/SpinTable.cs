using BallSim.Files;
using BallSim.Shots;
using static System.FormattableString;
using static BallSim.Units;

namespace BallSim.Cli;

/// <summary>A spin test in words and numbers.</summary>
internal static class SpinTable
{
    private const int Rows = 13;

    public static void Show(Screen screen, Workpiece piece, SpinRecord record)
    {
        var drilled = record.Ball.Marks.IsDrilled;
        screen.Say($"{piece.Ball.Name}{(drilled ? ", drilled" : ", undrilled")}: spun at {Trade.Turns(piece.Spin.SpinRate)} rpm about {Start(piece, drilled)}");
        screen.Say($"Dissipation: {record.Dissipation}{(piece.Spin.Dissipation == new SpinSheet().Dissipation ? " (assumed; fit it to your own spinner)" : "")}");
        screen.Output.WriteLine();
        var table = NameColumns.NewTable();
        foreach (var heading in (string[])["Time\n(s)", "Spin\n(rpm)", "To preferred\naxis (°)", "To pin\n(°)"])
        {
            table.AddColumn(NameColumns.Numbers(heading));
        }
        foreach (var m in record.Samples(Rows))
        {
            var toPin = Math.Min(m.AxisInBall.AngleTo(record.Ball.Marks.Pin), Math.PI - m.AxisInBall.AngleTo(record.Ball.Marks.Pin));
            NameColumns.AddRow(table, [Invariant($"{m.Time:F1}"), Trade.Turns(m.AngularVelocity.Length), Invariant($"{m.AngleToPreferredAxis / Degree:F2}"), Invariant($"{toPin / Degree:F2}")]);
        }
        screen.Show(table);
        screen.Output.WriteLine();
        screen.Say($"{record.Settle(piece.Spin.Within)}.");
    }

    private static string Start(Workpiece piece, bool drilled) => piece.Spin.Axis is { } axis
        ? Invariant($"({axis.X:0.###}, {axis.Y:0.###}, {axis.Z:0.###}) of the ball")
        : drilled ? "the grip centre" : "an axis 30° from the pin (assumed)";
}
