namespace BallSim.Files.Json;

/// <summary>From JSON to a drawing of a ball.</summary>
internal static class DrawingReader
{
    // Far more pieces than anyone pours.
    private const int MostPieces = 50;
    private const int MostPoints = 500;

    /// <summary>The fields of a drawing, its name first.</summary>
    public static IEnumerable<string> Fields => ["name", .. DrawingShapes.Whole.Names, "cover", "filler", "cores", "turn"];

    /// <summary>True where an object with these fields is meant as a drawing and not as a specification.</summary>
    public static bool IsMeant(Field field) => field.Value.ValueKind == System.Text.Json.JsonValueKind.Object
        && field.Value.EnumerateObject().Any(p => p.Name is "filler" or "cores" or "core");

    /// <summary>A drawing that stands here, in a scenario or in a file of its own; both wishes are tried.</summary>
    public static BallDrawing Own(Field field)
    {
        var members = field.Members(Fields);
        var drawing = DrawingShapes.Whole.Read(members, DrawingShapes.Blank) with { Name = members.Required("name", "\"First\"").Text() };
        var coverField = members.Required("cover", """{ "thickness": "0.75 in", "density": "1.18 g/mL", "material": "reactive" }""");
        var cover = coverField.Members([.. DrawingShapes.Cover.Names, "material"]);
        drawing = DrawingShapes.Cover.Read(cover, drawing, "thickness", "density");
        if (cover.Optional("material") is { } material)
        {
            drawing = drawing with { Material = PartReader.Cover(material) };
        }
        var fillerField = members.Required("filler", """{ "weight": "15 lb", "light": "0.6 g/mL", "dense": "1.6 g/mL" }""");
        var filler = fillerField.Members(DrawingShapes.Filler.Names);
        drawing = Filled(fillerField, filler, DrawingShapes.Filler.Read(filler, drawing));
        if (members.Optional("cores") is { } cores)
        {
            drawing = drawing with { Cores = [.. cores.Items(MostPieces).Select(Piece)] };
        }
        drawing = drawing with { Turns = Turns(members) };
        try
        {
            drawing.Poured();
        }
        catch (ArgumentException e)
        {
            var place = e.ParamName is "weight" or "light" or "dense" ? filler : members;
            place.Built<int>(() => throw e);
        }
        return drawing;
    }

    // Either a density, or a weight that a blend has to give; the densities to blend from may stand beside a density for the line of weights.
    private static BallDrawing Filled(Field field, FieldSet members, BallDrawing drawing)
    {
        if ((drawing.FillerDensity is null) == (drawing.Weight is null))
        {
            throw field.Wrong("give either \"density\": \"0.95 g/mL\", or the weight the ball shall have: \"weight\": \"15 lb\" with \"light\" and \"dense\"");
        }
        if (drawing.Weight is not null || drawing.LightFiller is not null || drawing.DenseFiller is not null)
        {
            members.Required("light", "\"0.6 g/mL\"");
            members.Required("dense", "\"1.6 g/mL\"");
        }
        return drawing;
    }

    private static CoreSheet Piece(Field field)
    {
        var members = field.Members(["form", .. DrawingShapes.Core.Names, "outline", "file", "unit", "turn", "place"]);
        var word = members.Required("form", "\"ellipsoid\"").Word([.. DrawingShapes.Forms.Select(f => f.Word)]);
        var (form, _, needed) = DrawingShapes.Forms.First(f => f.Word == word);
        var sizes = form switch { CoreForm.Turned => "outline", CoreForm.Mesh => "file, unit", _ => string.Join(", ", needed) };
        members.Refuse($"{word} knows {sizes}", DrawingShapes.Core.Names.Except([.. needed, "density"]));
        members.Refuse($"{word} knows {sizes}", form switch { CoreForm.Turned => ["file", "unit"], CoreForm.Mesh => ["outline"], _ => ["outline", "file", "unit"] });
        var piece = DrawingShapes.Core.Read(members, new() { Form = form, Density = double.NaN }, ["density", .. needed]);
        if (form == CoreForm.Turned)
        {
            var outline = members.Required("outline", """[{ "along": "-2 in", "off": "0 in" }, { "along": "0 in", "off": "1.5 in" }, { "along": "2 in", "off": "0 in" }]""");
            piece = piece with { Outline = [.. outline.Items(MostPoints).Select(Point)] };
        }
        if (form == CoreForm.Mesh)
        {
            var (file, unit) = (members.Required("file", "\"core.stl\""), members.Required("unit", "\"mm\""));
            var unitWord = unit.Word([.. DrawingShapes.MeshUnits.Select(u => u.Word)]);
            var size = DrawingShapes.MeshUnits.First(u => u.Word == unitWord).Size;
            piece = piece with { File = file.Text(), FileUnit = size, Mesh = Stl.Read(PartReader.Beside(file), size) };
        }
        piece = piece with
        {
            Turns = Turns(members),
            Place = members.Optional("place") is { } place ? DrawingShapes.Place.Read(place.Members(DrawingShapes.Place.Names), Vector3D.Zero) : Vector3D.Zero,
        };
        members.Built(piece.Built);
        return piece;
    }

    private static OutlinePoint Point(Field field)
    {
        var members = field.Members([.. DrawingShapes.Point.Names, "through"]);
        var point = DrawingShapes.Point.Read(members, default, "along", "off");
        if (members.Optional("through") is not { } through)
        {
            return point;
        }
        var third = DrawingShapes.Point.Read(through.Members(DrawingShapes.Point.Names), default, "along", "off");
        return point with { Through = (third.Along, third.Off) };
    }

    private static IReadOnlyList<CoreTurn> Turns(FieldSet members) =>
        members.Optional("turn") is { } turn ? [.. turn.Items(MostPieces).Select(Turn)] : [];

    private static CoreTurn Turn(Field field)
    {
        var members = field.Members(["about", .. DrawingShapes.Turn.Names]);
        return DrawingShapes.Turn.Read(members, new(Direction(members.Required("about", "\"x\"")), 0), "by");
    }

    /// <summary>An axis by its letter, or a direction by three plain numbers.</summary>
    public static Vector3D Direction(Field field)
    {
        if (field.Value.ValueKind == System.Text.Json.JsonValueKind.String)
        {
            return field.Word("x", "y", "z") switch { "x" => Vector3D.UnitX, "y" => Vector3D.UnitY, _ => Vector3D.UnitZ };
        }
        var direction = DrawingShapes.Direction.Read(field.Members(DrawingShapes.Direction.Names), Vector3D.Zero);
        return direction.Length > 1e-9 ? direction : throw field.Wrong("has no direction; give at least one of x, y, z a number other than zero");
    }
}
