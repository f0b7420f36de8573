using System.Collections.Immutable;
using BallSim.Balls;
using BallSim.Drilling;
using BallSim.Lanes;
using BallSim.Plots;
using BallSim.Releases;
using BallSim.Shots;
using Plotly.NET;
using Layout = BallSim.Drilling.Layout;
using static BallSim.Units;

namespace BallSim.Pages.Tests;

/// <summary>One chart of every kind. The name begins with the method that makes it; a test holds the list to the methods there are.</summary>
internal static class Gallery
{
    private static readonly PositiveAxisPoint Axis = new(over: 5 * Inch, up: 0.5 * Inch);

    private static readonly Ball Undrilled = Ball.FromSpecification(weight: 15 * Pound, lowRg: 2.48 * Inch, differential: 0.050 * Inch, intermediateDifferential: 0.015 * Inch, pinToCg: 3 * Inch, topWeight: 2.5 * Ounce)
        with { Finish = Finish.Polished, Cover = Cover.Urethane };

    private static readonly Lane House = Lane.Regulation with { Oil = OilMap.Crowned(length: 42 * Foot, volume: 25 * Millilitre) };

    private static readonly Release Usual = new()
    {
        Board = 24, LaunchAngle = 3 * Degree, Speed = 18 * MilesPerHour, SpinRate = 350 * Rpm, AxisRotation = 60 * Degree, AxisTilt = 12 * Degree, Loft = 1 * Foot,
    };

    public static DrillSheet Sheet(double pinToAxis, double angleAtPin, double angleAtAxis, Hand hand = Hand.Right) =>
        DrillSheet.Of(Undrilled, new Layout(pinToAxis * Inch, angleAtPin * Degree, angleAtAxis * Degree), Grip.Fingertip, Axis with { Hand = hand });

    public static Shot Shot(Finish? finish = null) => Simulator.Throw(Sheet(4.5, 50, 40).Ball with { Finish = finish ?? Finish.Polished }, House, Usual);

    public static IReadOnlyList<ComparisonRow> Rows()
    {
        var candidates = from layout in new[] { (Name: "Strong", Sheet: Sheet(3.375, 45, 35)), (Name: "Mild", Sheet: Sheet(5.5, 75, 60)) }
                         from finish in new[] { (Name: "2000 grit", Finish: Finish.Sanded(2000)), (Name: "Polished", Finish: Finish.Polished) }
                         select new Candidate(layout.Sheet.Ball with { Finish = finish.Finish, Cover = Cover.Reactive }, House, Usual)
                         {
                             BallName = "Oakapple", LayoutName = layout.Name, FinishName = finish.Name, ReleaseName = "Usual", LaneName = "House",
                         };
        return Comparison.Of([.. candidates]);
    }

    public static ImmutableSortedDictionary<string, Func<GenericChart>> Charts { get; } = new Dictionary<string, Func<GenericChart>>
    {
        ["LaneView"] = () => Shot().LaneView(),
        ["LaneView of several shots"] = () => new[] { Shot(), Shot(Finish.Sanded(2000)), Shot(Finish.Sanded(500)) }.LaneView(["polished", "2000 grit", "500 grit"]),
        ["MotionCurves"] = () => Shot().MotionCurves(),
        ["MotionCurves of several shots"] = () => new[] { Shot(), Shot(Finish.Sanded(2000)) }.MotionCurves(["polished", "2000 grit"]),
        ["BallView"] = () => Sheet(4.5, 50, 40).Ball.BallView(),
        ["BallView with its track"] = () => Shot().BallView(),
        ["PolhodeView"] = () => Undrilled.PolhodeView(),
        ["AxisMigration"] = () => SpinTest.Run(Sheet(4.5, 50, 40).Ball, 600 * Rpm * Sheet(4.5, 50, 40).Ball.Marks.GripCentre!.Value, new SpinDissipation { SquareToMomentum = 0.05 }, 60).AxisMigration(),
        ["LayoutView"] = () => Sheet(4.5, 50, 40).LayoutView(),
        ["LayoutView left-handed"] = () => Sheet(3.375, 65, 30, Hand.Left).LayoutView(),
        ["OilView"] = () => House.Oil.OilView(),
        ["BeforeAndAfter"] = () => House.Oil.BeforeAndAfter(Worn()),
        ["EntryAngles"] = () => Rows().EntryAngles(),
        ["SweepMap"] = () => Sweep()[3].SweepMap(Sweep()[0], Sweep()[1]),
        ["ParallelAxes"] = () => Sweep().ParallelAxes(),
        ["Residuals"] = Residuals,
        ["Curves"] = Curves,
        ["Agreement"] = Agreement,
    }.ToImmutableSortedDictionary(StringComparer.Ordinal);

    /// <summary>The oil with a strip worn off and carried down: made up, to have something to show.</summary>
    private static OilMap Worn()
    {
        double[] stations = [.. Enumerable.Range(0, 51).Select(i => i * Foot)], boards = [.. Enumerable.Range(1, 39).Select(b => (double)b)];
        var films = new double[stations.Length, boards.Length];
        for (var k = 0; k < stations.Length; k++)
        {
            for (var i = 0; i < boards.Length; i++)
            {
                var track = Math.Exp(-Math.Pow((boards[i] - (22 - 12 * Math.Sin(Math.PI * k / 75))) / 1.5, 2));
                films[k, i] = Math.Max(0, House.Oil.FilmOnBoard(stations[k], boards[i]) * (1 - 0.3 * track) + (k is > 40 and < 50 ? 0.3e-6 * track : 0));
            }
        }
        return OilMap.FromTable(stations, boards, films);
    }

    /// <summary>Entry angle over launch angle and roughness, made up by a formula: the charts are tested here, not the throws.</summary>
    private static Column[] Sweep()
    {
        var rows = (from pin in new[] { 2.0, 3, 4, 5, 6 } from grit in new[] { 500.0, 1000, 2000, 4000 } from rotation in new[] { 45.0, 60 } select (pin, grit, rotation)).ToArray();
        return
        [
            new("pin to axis", "in", [.. rows.Select(r => r.pin)]), new("grit", "", [.. rows.Select(r => r.grit)]), new("axis rotation", "°", [.. rows.Select(r => r.rotation)]),
            new("entry angle", "°", [.. rows.Select(r => 3 + r.rotation / 40 - Math.Abs(r.pin - 3.5) / 4 + Math.Log10(r.grit) / 9)]),
        ];
    }

    private static GenericChart Residuals()
    {
        var rows = (from shot in new[] { "first", "second", "third" } from at in Enumerable.Range(1, 14) select (shot, at: 4.0 * at)).ToArray();
        return new Column("residual", "in", [.. rows.Select((r, i) => 0.25 * Math.Sin(1.7 * i + r.at))]).Residuals(
            new("distance", "ft", [.. rows.Select(r => r.at)]), [.. rows.Select(r => r.shot)], new("standard deviation", "in", [.. rows.Select(r => 0.15 + r.at / 400)]));
    }

    private static GenericChart Curves()
    {
        var rows = (from name in new[] { "polished", "sanded" } from x in Enumerable.Range(0, 21) select (name, x: 3.0 * x)).ToArray();
        return new Column("speed", "mph", [.. rows.Select(r => 15 + (r.name == "polished" ? 3 : 2.5) * Math.Exp(-r.x / 40))]).Curves(new("distance", "ft", [.. rows.Select(r => r.x)]), [.. rows.Select(r => r.name)]);
    }

    private static GenericChart Agreement() => new Column("computed", "", [1.18, 8.6, 6.3]).Agreement(
        new("printed", "", [1.2, 8.6, 6.1]), new("half the last digit", "", [0.05, 0.05, 0.05]), ["time until it rolls, s", "distance until it rolls, m", "speed then, m/s (made wrong)"]);
}
