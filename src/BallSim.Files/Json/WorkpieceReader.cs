using System.Globalization;
using BallSim.Drilling;
using BallSim.Files.Text;
using BallSim.Shots;

namespace BallSim.Files.Json;

/// <summary>From JSON to a ball on the bench.</summary>
internal static class WorkpieceReader
{
    private const string BallExample = """{ "file": "build.json" }""";

    public static Workpiece Read(Field root)
    {
        // A file of a ball alone has its name and weight, or its filler, at the top.
        if (DrawingReader.IsMeant(root) || HasMember(root, "lowRg"))
        {
            return new() { Ball = PartReader.OwnBall(root) };
        }
        if (HasMember(root, "balls"))
        {
            throw root.Wrong("is a scenario with lists of balls and layouts; for the bench write one ball with its layout and bowler: "
                + """{ "ball": { "file": "ball.json" }, "layout": {...}, "bowler": {...} }""");
        }
        var members = root.Members("title", "ball", "bowler", "layout", "measured", "spin");
        var piece = new Workpiece
        {
            Title = members.Optional("title")?.Text() ?? "",
            Ball = PartReader.Ball(members.Required("ball", BallExample)),
            Measured = members.Optional("measured") is { } measured ? Measured(measured) : new(),
            Spin = members.Optional("spin") is { } spin ? Spin(spin) : new(),
        };
        var (layout, bowler) = (members.Optional("layout"), members.Optional("bowler"));
        if (layout is null && bowler is null)
        {
            return piece;
        }
        var layoutField = members.Required("layout", """{ "pinToAxis": "4 in", "angleAtPin": "50 deg", "angleAtAxis": "40 deg" }""");
        var bowlerField = members.Required("bowler", Examples.Bowler);
        piece = piece with
        {
            Bowler = PartReader.Bowler(bowlerField),
            Layout = Shapes.Layout.Read(layoutField.Members(["name", .. Shapes.Layout.Names]), default, "pinToAxis", "angleAtPin", "angleAtAxis"),
        };
        try
        {
            piece.Drilled();
        }
        catch (ArgumentException e)
        {
            throw (e.ParamName == "layout" ? layoutField : bowlerField).Wrong(Worded.Sentence(e));
        }
        return piece;
    }

    private static bool HasMember(Field root, string name) =>
        root.Value.ValueKind == System.Text.Json.JsonValueKind.Object && root.Value.TryGetProperty(name, out _);

    private static BallMeasurements Measured(Field field)
    {
        var members = field.Members([.. BenchShapes.Measured.Names, "day", "approvedAfter2020"]);
        var measured = BenchShapes.Measured.Read(members, new());
        if (members.Optional("day") is { } day)
        {
            measured = measured with
            {
                Day = DateOnly.TryParseExact(day.Text(), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date)
                    ? date : throw day.Wrong($"{day.Written} is not a day; write it as \"2026-01-31\""),
            };
        }
        return members.Optional("approvedAfter2020") is { } flag ? measured with { ApprovedAfter2020 = flag.Flag() } : measured;
    }

    private static SpinSheet Spin(Field field)
    {
        var members = field.Members([.. BenchShapes.Spin.Names, "axis", "dissipation"]);
        var spin = BenchShapes.Spin.Read(members, new());
        if (members.Optional("axis") is { } axis)
        {
            spin = spin with { Axis = DrawingReader.Direction(axis) };
        }
        if (members.Optional("dissipation") is not { } dissipation)
        {
            return spin;
        }
        if (dissipation.Value.ValueKind == System.Text.Json.JsonValueKind.String)
        {
            dissipation.Word("none");
            return spin with { Dissipation = SpinDissipation.None };
        }
        var parts = dissipation.Members(BenchShapes.Dissipation.Names);
        var read = BenchShapes.Dissipation.Read(parts, SpinDissipation.None);
        if (read.RotorCoupling > 0)
        {
            parts.Required("rotorMoment", "\"0.002 kg m2\"");
        }
        return spin with { Dissipation = read };
    }
}
