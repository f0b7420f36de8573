using BallSim.Lanes;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using static BallSim.Units;

namespace BallSim.Files.Tests;

public sealed class OilMapCsvTests : IDisposable
{
    private const string Name = "house.csv";
    private readonly string folder = Directory.CreateTempSubdirectory("ballsim").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    private static string Header(params int[] boards) => "distance [ft]," + string.Join(',', boards.Select(b => $"board {b}"));

    private static readonly int[] all = [.. Enumerable.Range(1, 39)];

    private static string Line(string distance, string film, int boards = 39) => distance + "," + string.Join(',', Enumerable.Repeat(film, boards));

    private static string Text(params string[] lines) => string.Join('\n', lines);

    private static OilMap Read(string text, OilMapCsvOptions? options = null) => OilMapCsv.Read(new StringReader(text), Name, options);

    private static readonly string whole = Text("# film [um]", Header(all), Line("0", "10"), Line("8", "10"), Line("40", "2.5"), Line("41", "0"), Line("42", "0"));

    [Fact]
    public void A_file_is_read_in_its_units()
    {
        var oil = Read(whole);
        Assert.Equal(10e-6, oil.FilmOnBoard(4 * Foot, 20), 1e-20);
        Assert.Equal(2.5e-6, oil.FilmOnBoard(40 * Foot, 3), 1e-20);
        Assert.Equal(41 * Foot, oil.Length);
        var metric = Read(whole.Replace("[ft]", "[m]").Replace("40,", "14,").Replace("41,", "15,").Replace("42,", "16,"));
        Assert.Equal(2.5e-6, metric.FilmOnBoard(14, 3), 1e-20);
        Assert.Equal(15, metric.Length);
    }

    [Fact]
    public void A_unit_of_oil_is_what_the_options_say()
    {
        var text = whole.Replace("[um]", "[units]");
        Assert.Equal(10 * OilUnit, Read(text).FilmOnBoard(0, 20), 1e-20);
        Assert.Equal(10 * 0.4e-6, Read(text, new() { UnitFilm = 0.4 * Micrometre }).FilmOnBoard(0, 20), 1e-20);
        Assert.Contains("for micrometres write 0.4 * Micrometre", Assert.Throws<ArgumentOutOfRangeException>(() => new OilMapCsvOptions { UnitFilm = 0.4 }).Message);
    }

    [Fact]
    public void The_options_name_the_unit_where_the_file_does_not()
    {
        var silent = whole.Replace("# film [um]\n", "");
        Assert.Equal(10e-6, Read(silent, new() { FilmUnit = "um" }).FilmOnBoard(0, 20), 1e-20);
        // What the file states goes first.
        Assert.Equal(10e-6, Read(whole, new() { FilmUnit = "units" }).FilmOnBoard(0, 20), 1e-20);
    }

    [Fact]
    public void Boards_may_be_bare_numbers_and_run_either_way()
    {
        var films = string.Join(',', all.Select(b => (40 - b).ToString()));
        var turned = Text("# film [um]", "distance [ft]," + string.Join(',', all.Reverse()), "0," + films, "", "# a remark, with a \" in it", "60," + films);
        Assert.Equal(3e-6, Read(turned).FilmOnBoard(0, 3), 1e-20);
        Assert.Equal(37e-6, Read(turned).FilmOnBoard(0, 37), 1e-20);
    }

    public static TheoryData<string, string> Bad() => new()
    {
        { "", "house.csv: is empty; expected" },
        { "# film [um]\n", "house.csv: is empty; expected" },
        { Text("# film [um]", Header(all)), "has 0 station(s) below its header; expected at least two" },
        { Text("# film [um]", Header([.. all.Where(b => b != 7)]), Line("0", "1", 38)), "house.csv: line 2: has no column for board 7; expected boards 1 to 39 without a gap" },
        { Text("# film [um]", Header([.. all.Select(b => b == 8 ? 7 : b)]), Line("0", "1")), "line 2, column 9: board 7 stands twice" },
        { Text("# film [um]", Header([2, 1, .. all.Skip(2)]), Line("0", "1")), "line 2, column 2: board 2 is out of order; expected board 1" },
        { Text("# film [um]", Header([.. all.Take(38), 40]), Line("0", "1")), "line 2, column 40: \"board 40\" is not a board; expected \"board 1\" to \"board 39\"" },
        { Text("# film [um]", Header(all), Line("0", "1"), Line("8", "-0.5")), "house.csv: line 4, board 1: -0.5 um is out of range; expected 0 to 500 um" },
        { Text("# film [um]", Header(all), Line("0", "1"), Line("8", "501")), "line 4, board 1: 501 um is out of range; expected 0 to 500 um (is the unit right?)" },
        { Text("# film [um]", Header(all), Line("0", "1"), Line("8", "oil")), "line 4, board 1: \"oil\" is not a number; expected a film in um" },
        { Text("# film [um]", Header(all), Line("0", "1"), Line("8", "")), "line 4, board 1: \"\" is not a number" },
        { Text("# film [um]", Header(all), Line("0", "NaN"), Line("8", "1")), "line 3, board 1: \"NaN\" is not a number" },
        { Text("# film [um]", Header(all), Line("0", "1"), Line("8 ft", "1")), "line 4, distance: \"8 ft\" is not a number; expected a distance in ft" },
        { Text("# film [um]", Header(all), Line("0", "1"), Line("8", "1"), Line("7.5", "1")), "line 5, distance: 7.5 ft is less than the station before it; expected more than 8 ft" },
        { Text("# film [um]", Header(all), Line("0", "1"), Line("8", "1"), Line("8", "1")), "line 5, distance: 8 ft stands twice" },
        { Text("# film [um]", Header(all), Line("0", "1"), Line("1219", "1")), "line 4, distance: 1219 ft is out of range; expected 0 to 98.4252 ft (is the unit right?)" },
        { Text("# film [um]", Header(all), Line("0", "1"), Line("8", "1", 38)), "line 4: has 39 fields; expected 40" },
        { Text("# film [um]", Header(all), Line("0", "1"), Line("8", "1,5")), "line 4: has 79 fields; expected 40" },
        { Text("# film [gallons]", Header(all), Line("0", "1")), "line 1: \"gallons\" is not a unit of film; expected one of units, um, mm, m" },
        { Text("# film [um]", "# film [mm]", Header(all)), "line 2: \"# film [mm]\" states the film's unit again" },
        { Text("# film [um]", Header(all).Replace("[ft]", "[lb]"), Line("0", "1")), "line 2, column 1: \"lb\" is not a unit of distance; expected one of in, ft" },
        { Text("# film [um]", Header(all).Replace(" [ft]", ""), Line("0", "1")), "line 2, column 1: \"distance\" is not the distance and its unit" },
        { Text("# film [um]", Header(all).Replace(',', ';')), "line 2: separates its columns by semicolons" },
        { Text(Header(all), Line("0", "1")), "line 1: stands without a unit of film; expected a line \"# film [um]\"" },
        { Text("# film [um]", Header(all), "0,1\"2,3"), "line 3: \"0,1\"2,3\" has a misplaced quotation mark" },
        { Text("# film [um]", Header(all), new string('7', 2000)), "line 3: has a field of more than 1000 characters" },
    };

    [Theory]
    [MemberData(nameof(Bad))]
    public void What_cannot_be_used_is_refused_with_its_place(string text, string message) =>
        Assert.Contains(message, Assert.Throws<BadFileException>(() => Read(text)).Message);

    [Fact]
    public void A_file_that_is_not_there_is_named() =>
        Assert.Contains("missing.csv: does not exist", Assert.Throws<BadFileException>(() => OilMapCsv.Read(Path.Combine(folder, "missing.csv"))).Message);

    [Property(MaxTest = 50)]
    public Property What_is_written_is_read_back_to_the_last_digit() => Prop.ForAll(
        (from rows in Gen.Choose(2, 6)
         from steps in Gen.Choose(1, 3000).ArrayOf(rows)
         from films in Gen.Choose(0, 1_000_000_000).ArrayOf(rows * 39)
         from unit in Gen.Elements("um", "units", "mm", "m")
         select (Steps: steps, Films: films, Unit: unit)).ToArbitrary(),
        made =>
        {
            double sum = 0;
            double[] stations = [.. made.Steps.Select(s => sum += s / 997.0)];
            var films = new double[stations.Length, 39];
            for (var n = 0; n < made.Films.Length; n++)
            {
                films[n / 39, n % 39] = made.Films[n] * 1e-9 * 60e-6;
            }
            var oil = OilMap.FromTable(stations, [.. all.Select(b => (double)b)], films);
            var text = new StringWriter();
            OilMapCsv.Write(text, oil, new() { FilmUnit = made.Unit });
            var back = Read(text.ToString());
            return back.Stations.Count == stations.Length
                && stations.Zip(back.Stations).All(s => Close(s.First, s.Second) && all.All(b => Close(oil.FilmOnBoard(s.First, b), back.FilmOnBoard(s.Second, b))))
                && Close(oil.Volume, back.Volume, 1e-13);
        });

    private static bool Close(double a, double b, double relative = 4.5e-16) => Math.Abs(a - b) <= relative * Math.Abs(a);

    [Fact]
    public void A_described_map_survives_the_file()
    {
        var path = Path.Combine(folder, "crowned.csv");
        var oil = OilMap.Crowned(40 * Foot, 25 * Millilitre);
        File.WriteAllText(path, "what was there before");
        OilMapCsv.Write(path, oil);
        var back = OilMapCsv.Read(path);
        Assert.Equal(25 * Millilitre, back.Volume, 1e-12 * 25 * Millilitre);
        Assert.Equal(oil.Length, back.Length, 1e-14);
        Assert.Equal(oil.FilmAt(0.123, 11.77), back.FilmAt(0.123, 11.77), 1e-12 * oil.FilmAt(0, 0));
        // Nothing but the file stays behind.
        Assert.Equal([path], Directory.GetFiles(folder));
    }

    [Fact]
    public void A_dry_lane_survives_the_file()
    {
        var path = Path.Combine(folder, "dry.csv");
        OilMapCsv.Write(path, OilMap.Dry);
        Assert.Equal("dry", OilMapCsv.Read(path).ToString());
    }

    [Fact]
    public void Writing_into_nothing_or_in_no_unit_is_refused()
    {
        Assert.Contains("cannot be written", Assert.Throws<BadFileException>(() => OilMapCsv.Write(Path.Combine(folder, "no", "such.csv"), OilMap.Dry)).Message);
        Assert.Contains("\"pint\" is not a unit of film; allowed: units, um, mm, m",
            Assert.Throws<ArgumentException>(() => OilMapCsv.Write(new StringWriter(), OilMap.Dry, new() { FilmUnit = "pint" })).Message);
    }
}
