using BallSim.Balls;
using BallSim.Drilling;
using BallSim.Files.Text;
using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Shots;
using static BallSim.Units;

namespace BallSim.Files.Json;

/// <summary>The parts of a scenario, each from its JSON object.</summary>
internal static class PartReader
{
    public static IEnumerable<string> LayoutFields => ["name", .. Shapes.Layout.Names];

    public static IEnumerable<string> ReleaseFields => ["name", .. Shapes.Release.Names, "axis"];

    private static IEnumerable<string> BallFields => ["name", .. Shapes.Ball.Names, "cover", "density"];

    public static Bowler Bowler(Field field)
    {
        var members = field.Members("name", "hand", "axis", "grip", "scatter");
        var hand = members.Required("hand", "\"right\"").Word("right", "left") == "right" ? Hand.Right : Hand.Left;
        return new Bowler
        {
            Name = members.Optional("name")?.Text() ?? "",
            Axis = Axis(members.Required("axis", Examples.Axis), hand),
            Grip = members.Optional("grip") is { } grip ? Grip(grip) : Drilling.Grip.Fingertip,
            Scatter = members.Optional("scatter") is { } scatter ? Shapes.Scatter.Read(scatter.Members(Shapes.Scatter.Names), new Scatter()) : new Scatter(),
        };
    }

    /// <summary>A ball in the scenario, or the file it is in.</summary>
    public static BallSheet Ball(Field field)
    {
        if (DrawingReader.IsMeant(field))
        {
            return OwnBall(field);
        }
        var members = field.Members([.. BallFields, "file"]);
        if (members.Optional("file") is not { } file)
        {
            return OwnBall(field);
        }
        members.Refuse("the ball is described in the file", BallFields.Skip(1));
        var sheet = ScenarioReader.BallFile(Beside(file));
        var name = members.Optional("name")?.Text() ?? sheet.Name;
        var drawing = sheet.Drawing is { } drawn ? drawn with { File = file.Text(), Name = name } : null;
        return sheet with { File = file.Text(), Name = name, Drawing = drawing };
    }

    /// <summary>A ball that stands here, in a scenario or in a file of its own.</summary>
    public static BallSheet OwnBall(Field field)
    {
        if (DrawingReader.IsMeant(field))
        {
            return BallSheet.Of(DrawingReader.Own(field));
        }
        var members = field.Members(BallFields);
        var sheet = Shapes.Ball.Read(members, Shapes.BlankBall, "weight", "lowRg", "differential") with { Name = Name(members) };
        if (members.Optional("cover") is { } cover)
        {
            sheet = sheet with { Cover = Cover(cover) };
        }
        if (members.Optional("density") is { } density)
        {
            sheet = sheet with { Density = Density(density) };
        }
        members.Built(sheet.Built);
        return sheet;
    }

    public static Named<Layout> Layout(Field field)
    {
        var members = field.Members(LayoutFields);
        return new(Name(members), Shapes.Layout.Read(members, default, "pinToAxis", "angleAtPin", "angleAtAxis"));
    }

    public static FinishSheet Finish(Field field)
    {
        var members = field.Members(["name", .. Shapes.Finish.Names, "polished"]);
        string[] ways = ["grit", "roughness", "polished"];
        if (ways.Count(w => members.Optional(w) is not null) != 1)
        {
            throw field.Wrong("give exactly one of \"grit\": 2000, \"roughness\": \"0.5 um\" or \"polished\": true");
        }
        if (members.Optional("polished") is { } polished && !polished.Flag())
        {
            throw polished.Wrong("false says nothing about the surface; give \"grit\" or \"roughness\" instead");
        }
        var sheet = Shapes.Finish.Read(members, new FinishSheet { Name = Name(members) });
        members.Built(sheet.Built);
        return sheet;
    }

    /// <summary>
    /// A release; it names an axis point only where it differs from the bowler's usual one, and the hand is always the bowler's.
    /// </summary>
    public static Named<Release> Release(Field field, Hand hand)
    {
        var members = field.Members(ReleaseFields);
        var release = Shapes.Release.Read(members, Shapes.BlankRelease, "speed");
        return new(Name(members), members.Optional("axis") is { } axis ? release with { Axis = Axis(axis, hand) } : release);
    }

    public static LaneSheet Lane(Field field)
    {
        var members = field.Members(["name", .. Shapes.Lane.Names, "topography", "oil"]);
        var lane = Shapes.Lane.Read(members, Lanes.Lane.Regulation);
        string? surface = null;
        if (members.Optional("topography") is { } topography)
        {
            members.Refuse("the surface is measured in the file", "crossSlope", "lengthSlope");
            var file = topography.Members("file").Required("file", "\"surface.csv\"");
            surface = file.Text();
            lane = lane with { Topography = TopographyCsv.Read(Beside(file)) };
        }
        var oil = Oil(members.Required("oil", Examples.Oil));
        return new LaneSheet(Name(members), lane, oil) { TopographyFile = surface };
    }

    public static SimulatorOptions Options(Field? options, Field? friction)
    {
        var read = SimulatorOptions.Default;
        if (options is { } given)
        {
            var members = given.Members([.. Shapes.Options.Names, .. Shapes.Forces.Select(f => f.Name)]);
            read = Shapes.Options.Read(members, read);
            foreach (var (name, _, with) in Shapes.Forces)
            {
                read = members.Optional(name) is { } flag ? with(read, flag.Flag()) : read;
            }
        }
        return friction is { } field ? read with { Friction = Shapes.Friction.Read(field.Members(Shapes.Friction.Names), read.Friction) } : read;
    }

    public static OilSheet Oil(Field field)
    {
        if (field.Value.ValueKind == System.Text.Json.JsonValueKind.String)
        {
            field.Word("dry");
            return new OilSheet { Shape = OilShape.Dry };
        }
        var members = field.Members(["shape", "file", "unitFilm", .. Shapes.Oil.Names]);
        if (members.Optional("file") is { } file)
        {
            members.Refuse("the oil is described in the file", ["shape", .. Shapes.Oil.Names]);
            var csv = new OilMapCsvOptions();
            if (members.Optional("unitFilm") is { } unit)
            {
                var film = unit.Quantity(UnitKind.Roughness);
                csv = unit.Built(() => csv with { UnitFilm = film });
            }
            return new OilSheet { Shape = OilShape.File, File = file.Text(), UnitFilm = csv.UnitFilm, Table = OilMapCsv.Read(Beside(file), csv) };
        }
        members.Refuse("it says what a unit of oil is in a file", "unitFilm");
        var word = members.Required("shape", "\"crowned\"").Word([.. Shapes.OilShapes.Select(s => s.Word)]);
        var (shape, _, needed, known) = Shapes.OilShapes.First(s => s.Word == word);
        members.Refuse($"{word} oil knows {string.Join(", ", needed.Concat(known))}", Shapes.Oil.Names.Except(needed).Except(known));
        var sheet = Shapes.Oil.Read(members, new OilSheet { Shape = shape }, needed);
        members.Built(sheet.Built);
        return sheet;
    }

    /// <summary>A cover material by its name or its numbers.</summary>
    public static Cover Cover(Field field)
    {
        Cover[] known = [Balls.Cover.Plastic, Balls.Cover.Urethane, Balls.Cover.Reactive];
        if (field.Value.ValueKind == System.Text.Json.JsonValueKind.String)
        {
            var word = field.Word([.. known.Select(c => c.Name)]);
            return known.First(c => c.Name == word);
        }
        var members = field.Members(["name", .. Shapes.Cover.Names]);
        return Shapes.Cover.Read(members, Balls.Cover.Plastic with { Name = Name(members) });
    }

    // One density throughout as a text, or a cover's with its thickness.
    public static DensitySheet Density(Field field)
    {
        if (field.Value.ValueKind != System.Text.Json.JsonValueKind.Object)
        {
            var density = field.Quantity(UnitKind.Density);
            return field.Built(() =>
            {
                var sheet = new DensitySheet { Density = density };
                sheet.Built();
                return sheet;
            }, UnitKind.Density);
        }
        return DrawingShapes.Density.Read(field.Members(DrawingShapes.Density.Names), new() { Density = 1200 }, "density");
    }

    public static Grip Grip(Field field)
    {
        if (field.Value.ValueKind == System.Text.Json.JsonValueKind.String)
        {
            return field.Word("fingertip", "conventional") == "fingertip" ? Drilling.Grip.Fingertip : Drilling.Grip.Conventional;
        }
        var members = field.Members([.. Shapes.Grip.Names, "thumb", "middle", "ring", "thumbless"]);
        var grip = Shapes.Grip.Read(members, Drilling.Grip.Fingertip, "middleSpan", "ringSpan");
        return grip with
        {
            Thumb = Bore(members.Optional("thumb"), grip.Thumb),
            Middle = Bore(members.Optional("middle"), grip.Middle),
            Ring = Bore(members.Optional("ring"), grip.Ring),
            Thumbless = members.Optional("thumbless")?.Flag() ?? false,
        };
    }

    private static Bore Bore(Field? field, Bore standard) => field is { } given ? Shapes.Bore.Read(given.Members(Shapes.Bore.Names), standard) : standard;

    private static PositiveAxisPoint Axis(Field field, Hand hand) =>
        Shapes.Axis.Read(field.Members(Shapes.Axis.Names), new PositiveAxisPoint(5 * Inch, 0, hand), "over", "up");

    private static string Name(FieldSet members) => members.Required("name", "\"First\"").Text();

    /// <summary>The full path of a file that a field names, beside the file it stands in or below.</summary>
    public static string Beside(Field file) => Companion.Of(file.File, file.Text(), out var sentence) ?? throw file.Wrong($"{file.Written} {sentence}");
}
