using BallSim.Balls;
using BallSim.Drilling;
using BallSim.Files;
using BallSim.Plots;
using Spectre.Console;
using static System.FormattableString;
using static BallSim.Units;

namespace BallSim.Cli;

/// <summary>A ball before and after the drill.</summary>
internal static class DrillTable
{
    public static void Show(Screen screen, Workpiece piece, DrillSheet sheet)
    {
        Heading(screen, piece);
        Numbers(screen, sheet);
        screen.Output.WriteLine();
        var table = Sheet.New();
        foreach (var (name, value) in Lines(piece, sheet))
        {
            NameColumns.AddRow(table, [name, value]);
        }
        screen.Show(table);
        screen.Output.WriteLine();
        Arcs(screen, sheet.Before);
    }

    public static void Show(Screen screen, Workpiece piece, IReadOnlyList<DrillSheet> line)
    {
        Heading(screen, piece);
        var table = NameColumns.NewTable();
        foreach (var heading in (string[])["Weight\n(lb)", "drilled\n(lb)", "Low RG\n(in)", "drilled\n(in)", "Diff.\n(in)", "drilled\n(in)", "Axis\nmoved", "Top\n(oz)", "Side\n(oz)", "Finger\n(oz)"])
        {
            table.AddColumn(NameColumns.Numbers(heading));
        }
        foreach (var sheet in line)
        {
            var (b, a, balance) = (sheet.Before, sheet.Ball, StaticBalance.Of(sheet.Ball, piece.Ball.BalanceLever));
            NameColumns.AddRow(table,
            [
                Invariant($"{b.Mass / Pound:F2}"), Invariant($"{a.Mass / Pound:F2}"), Trade.Rg(b.LowRg), Trade.Rg(a.LowRg), Trade.Rg(b.Differential), Trade.Rg(a.Differential),
                sheet.PreferredAxisShift is { } moved ? Trade.Angle(moved) : Trade.None, Trade.Signed(balance.Top), Trade.Signed(balance.Side), Trade.Signed(balance.Finger),
            ]);
        }
        screen.Show(table);
        screen.Output.WriteLine();
        screen.Say("Axis moved: the preferred axis, the one of greatest inertia. Plus: top-heavy, towards the bowler's axis, towards the fingers.");
    }

    private static void Heading(Screen screen, Workpiece piece)
    {
        if (piece.Title.Length > 0)
        {
            screen.Say(piece.Title);
        }
        screen.Say($"{piece.Ball.Name}, {piece.Layout}; axis point {piece.Bowler!.Axis}.");
        screen.Output.WriteLine();
    }

    private static void Numbers(Screen screen, DrillSheet sheet)
    {
        var table = NameColumns.NewTable();
        table.AddColumn(new TableColumn(new Text("")) { NoWrap = true });
        foreach (var heading in (string[])["before", "after", "change", "%"])
        {
            table.AddColumn(NameColumns.Numbers(heading));
        }
        void Row(string name, Func<Ball, double> of, double unit, string digits)
        {
            var (before, after) = (of(sheet.Before), of(sheet.Ball));
            // Half a last digit: a symmetric ball has an intermediate differential of zero but for rounding.
            var part = Math.Abs(before) < 1e-9 ? Trade.None : Invariant($"{100 * (after / before - 1):+0.0;-0.0;0.0}");
            NameColumns.AddRow(table, [name, Number(before / unit, digits), Number(after / unit, digits), Number((after - before) / unit, $"+{digits};-{digits};{digits}"), part]);
        }
        Row("Weight (lb)", b => b.Mass, Pound, "0.000");
        Row("Low RG (in)", b => b.LowRg, Inch, "0.0000");
        Row("Intermediate RG (in)", b => b.IntermediateRg, Inch, "0.0000");
        Row("High RG (in)", b => b.HighRg, Inch, "0.0000");
        Row("Differential (in)", b => b.Differential, Inch, "0.0000");
        Row("Intermediate differential (in)", b => b.IntermediateDifferential, Inch, "0.0000");
        if (sheet.Ball.Marks.PositiveAxis is { } axis)
        {
            Row("RG about the bowler's axis (in)", b => b.RgAbout(axis), Inch, "0.0000");
        }
        screen.Show(table);
    }

    private static void Arcs(Screen screen, Ball ball)
    {
        var table = NameColumns.NewTable();
        table.AddColumn(new TableColumn(new Text("Arcs to tape (in)")) { NoWrap = true });
        var marked = ball.Marks.MassBias is not null;
        foreach (var heading in marked ? (string[])["from pin", "from mark", "side of pin to mark"] : ["from pin"])
        {
            table.AddColumn(NameColumns.Numbers(heading));
        }
        foreach (var arc in MarkingSheet.Of(ball).Arcs)
        {
            string[] cells = [arc.Name, TapeReading.Of(arc.FromPin), arc.FromMassBias is { } m ? TapeReading.Of(m) : Trade.None, arc.Side?.ToString().ToLowerInvariant() ?? Trade.None];
            NameColumns.AddRow(table, cells.Take(marked ? 4 : 2));
        }
        screen.Show(table);
        screen.Output.WriteLine();
        screen.Say("To the nearest 1/32 in on the surface; "
            + (marked ? "the side is that of the line from pin to mark, going that way and seen from outside." : "the pin alone leaves the place on its circle open: use the layout above."));
    }

    private static string Number(double value, string format) => value.ToString(format, System.Globalization.CultureInfo.InvariantCulture);

    private static IEnumerable<(string Name, string Value)> Lines(Workpiece piece, DrillSheet sheet)
    {
        var ball = sheet.Ball;
        var axes = ball.Inertia.Principal;
        yield return ("Preferred axis", sheet.PreferredAxisShift is { } angle
            ? Invariant($"moved {angle / Degree:F1}°, {ball.Radius * angle / Inch:F2} in on the surface")
            : "the undrilled ball, symmetric about its pin, had none; now there is one");
        yield return ("", Where(ball, axes.Greatest));
        yield return ("Low-RG axis", Invariant($"{Line(axes.Least, ball.Marks.Pin) / Degree:F1}°, {ball.Radius * Line(axes.Least, ball.Marks.Pin) / Inch:F2} in from the pin"));
        yield return ("Centre of mass", Invariant($"moved {sheet.CentreOfMassShift.Length / Millimetre:F2} mm, now {ball.CentreOfMass.Length / Millimetre:F2} mm off the centre"));
        var balance = StaticBalance.Of(ball, piece.Ball.BalanceLever);
        yield return ("Static balance", Invariant($"{(balance.Top < 0 ? "bottom" : "top")} {Math.Abs(balance.Top) / Ounce:F2} oz, side {Side(balance.Side)}, {(balance.Finger < 0 ? "thumb" : "finger")} {Math.Abs(balance.Finger) / Ounce:F2} oz"));
        yield return ("Removed", Invariant($"{sheet.Removed.Mass / Ounce:F2} oz; drilled out of: {sheet.DrilledOutOf}"));
        if (sheet.ThinnestWall is { } wall)
        {
            yield return ("Thinnest wall", Invariant($"{wall / Inch:F3} in between two holes"));
        }
        foreach (var (hole, bore) in sheet.Holes.Select(h => (h, Bore(piece.Bowler!.Grip, h.Name))))
        {
            yield return ($"Hole: {hole.Name}", bore.ToString());
        }
        var m = LayoutMeasures.Of(sheet.Before);
        yield return ("Layout", Invariant($"pin to grip centre {m.PinToGripCentre / Inch:F2} in; pin {Math.Abs(m.PinAboveMidline) / Inch:F2} in {(m.PinAboveMidline < 0 ? "below" : "above")} the midline"));
        yield return ("", Invariant($"pin to the bowler's axis {m.PinToAxis / Inch:F2} in; mark to the axis {Trade.Arc(m.MassBiasToAxis)}{(m.MassBiasToAxis is null ? "" : " in")}"));
        if (m.PinToVerticalLine is { } buffer)
        {
            yield return ("", Invariant($"pin to the vertical line through the axis {buffer / Inch:F2} in"));
        }
    }

    private static string Side(double side) => Invariant($"{Math.Abs(side) / Ounce:F2} oz {(side < 0 ? "away from" : "towards")} the axis");

    private static Bore Bore(Grip grip, string hole) => hole.StartsWith("thumb", StringComparison.Ordinal) ? grip.Thumb
        : hole.StartsWith("middle", StringComparison.Ordinal) ? grip.Middle : grip.Ring;

    // From a mark to the nearer end of a line through the ball, rad.
    private static double Line(Vector3D line, Vector3D mark) => Math.Min(line.AngleTo(mark), Math.PI - line.AngleTo(mark));

    private static string Where(Ball ball, Vector3D axis)
    {
        double Arc(Vector3D mark) => ball.Radius * Line(axis, mark) / Inch;
        var text = Invariant($"it lies {Arc(ball.Marks.Pin):F2} in from the pin");
        return ball.Marks.PositiveAxis is { } positive ? text + Invariant($", {Arc(positive):F2} in from the bowler's axis") : text;
    }
}
