using BallSim.Friction;
using BallSim.Lanes;
using BallSim.Spatial;
using static BallSim.Units;

namespace BallSim.Tests.Friction;

/// <summary>A surface under one shot, under several, and with derivatives: one and the same surface.</summary>
public class SurfaceTests
{
    private static readonly OilMap Oil = OilMap.Crowned(40 * Foot, 25 * Millilitre);
    private static readonly PiecewiseBicubic Heights = Hilly();
    private static readonly Contact Contact = new(6.80, 0.1085, 0.5e-6, 0.4e-6, 0.8e9, 0.40, 0.20e-6, 10e9, 0.30, 0.03);

    private static PiecewiseBicubic Hilly()
    {
        var heights = new double[4, 5];
        for (var k = 0; k < 4; k++)
        {
            for (var i = 0; i < 5; i++)
            {
                heights[k, i] = 1e-3 * Math.Sin(1 + 2.3 * k + 1.7 * i * i);
            }
        }
        return Topography.FromHeights([0, 5, 11, 18], [1, 10, 20, 30, 39], heights).Heights!;
    }

    private static readonly (double X, double Y)[] Places = [(0.31, 0.4), (0.05, 2.9), (-0.12, 5.5), (-0.4, 7.7), (0.2, 9.9), (0.02, 11.6), (0.44, 12.1), (-0.3, 17.2)];

    private static Doubles8 Each(Func<(double X, double Y), double> of)
    {
        Doubles8 lanes = 0.0;
        for (var lane = 0; lane < Places.Length; lane++)
        {
            Doubles8.SetLane(ref lanes, lane, of(Places[lane]));
        }
        return lanes;
    }

    [Fact]
    public void Many_lanes_read_what_one_reads()
    {
        var law = Contact.Law<Real>(FrictionCalibration.Default);
        var many = new FilmOfLanes<Doubles8>(Oil.Map);
        var given = FrictionMap.Smoothstep(0.04, 0.2, 8, 12);
        var manyGiven = new GivenOfLanes<Doubles8>(given.Map);
        var one = new FilmSurface<Real, MapOfReal>(law, new(Oil.Map));
        var oneGiven = new GivenSurface<Real, MapOfReal>(new(given.Map));
        var (x, y) = (Each(p => p.X), Each(p => p.Y));
        for (var lane = 0; lane < Places.Length; lane++)
        {
            many.SetLane(lane, one);
            manyGiven.SetLane(lane, oneGiven);
        }
        var (end, endGiven) = (many.Enter(y), manyGiven.Enter(y));
        var (film, mu) = (many.Value(x, y), manyGiven.Value(x, y));
        var friction = many.Friction(film, Each(p => p.Y));
        var inContact = many.FilmInContact(film);
        for (var lane = 0; lane < Places.Length; lane++)
        {
            var (px, py) = Places[lane];
            Assert.Equal((double)one.Enter(py), Doubles8.Lane(end, lane));
            Assert.Equal((double)oneGiven.Enter(py), Doubles8.Lane(endGiven, lane));
            Assert.Equal((double)one.Value(px, py), Doubles8.Lane(film, lane));
            Assert.Equal((double)oneGiven.Value(px, py), Doubles8.Lane(mu, lane));
            Assert.Equal((double)one.Friction(one.Value(px, py), py), Doubles8.Lane(friction, lane));
            Assert.Equal((double)one.FilmInContact(one.Value(px, py)), Doubles8.Lane(inContact, lane));
            // A lane that comes to a new row by itself.
            Assert.Equal((double)one.Enter(py + 3), many.Enter(lane, py + 3));
            Assert.Equal((double)oneGiven.Enter(py + 3), manyGiven.Enter(lane, py + 3));
        }
        Assert.Equal(0, Doubles8.Lane(manyGiven.FilmInContact(film), 0));
        many.Slopes(x, y, out var across, out var along);
        Assert.Equal(0, Doubles8.Lane(across, 3) + Doubles8.Lane(along, 3));
        Assert.False(FilmOfLanes<Doubles8>.HasSlopes || GivenOfLanes<Doubles8>.HasSlopes || FilmSurface<Real, MapOfReal>.HasSlopes || GivenSurface<Real, MapOfReal>.HasSlopes);
    }

    [Fact]
    public void A_lane_reads_its_own_row_until_it_enters_the_next()
    {
        var map = new MapOfLanes<Doubles8>(Oil.Map);
        map.Enter(Each(_ => 0.0));
        // The row of the foul line, read beyond its end.
        Assert.Equal(Oil.Map.At(0.2, 12.1, 0), Doubles8.Lane(map.At(0.2, 12.1), 5));
        map.Enter(5, 12.1);
        Assert.Equal(Oil.Map.At(0.2, 12.1), Doubles8.Lane(map.At(0.2, 12.1), 5));
        Assert.Equal(Oil.Map.At(0.2, 12.1, 0), Doubles8.Lane(map.At(0.2, 12.1), 4));
    }

    [Fact]
    public void Lanes_that_roam_read_the_rows_they_are_in()
    {
        var map = new MapOfLanes<Doubles8>(Oil.Map);
        map.Enter(Each(_ => 0.0));
        map.Roam();
        // Each lane up and down over all rows and beyond the outer ones, and across, out of step with the others.
        for (var i = 0; i < 200; i++)
        {
            var (x, y) = (default(Doubles8), default(Doubles8));
            for (var lane = 0; lane < 8; lane++)
            {
                Doubles8.SetLane(ref x, lane, 0.7 * Math.Sin(0.17 * i + lane));
                Doubles8.SetLane(ref y, lane, 9 + 12 * Math.Sin(0.37 * i + 2 * lane));
            }
            var film = map.At(x, y);
            for (var lane = 0; lane < 8; lane++)
            {
                Assert.Equal(Oil.Map.At(Doubles8.Lane(x, lane), Doubles8.Lane(y, lane)), Doubles8.Lane(film, lane));
            }
        }

        // One of them enters a row and reads no other.
        map.Enter(5, 0);
        var last = map.At(0.2, 12.1);
        Assert.Equal(Oil.Map.At(0.2, 12.1, 0), Doubles8.Lane(last, 5));
        Assert.Equal(Oil.Map.At(0.2, 12.1), Doubles8.Lane(last, 4));
    }

    [Fact]
    public void Lanes_that_wander_across_read_the_columns_they_are_in()
    {
        var map = new MapOfLanes<Doubles8>(Oil.Map);
        map.Enter(Each(_ => 3.0));
        // Each lane to and fro over all columns and beyond the outer ones, out of step with the others.
        for (var i = 0; i < 200; i++)
        {
            var x = default(Doubles8);
            for (var lane = 0; lane < 8; lane++)
            {
                Doubles8.SetLane(ref x, lane, 0.7 * Math.Sin(0.37 * i + lane));
            }
            var film = map.At(x, 3.1);
            for (var lane = 0; lane < 8; lane++)
            {
                Assert.Equal(Oil.Map.At(Doubles8.Lane(x, lane), 3.1), Doubles8.Lane(film, lane));
            }
        }
    }

    [Fact]
    public void Rows_are_entered_at_their_knots_and_a_hair_before()
    {
        // A step that ends on a knot may end a rounding error short of it: it enters the row that begins there.
        var knot = 8 * Foot;
        foreach (var y in (double[])[knot - 1e-10, knot, knot + 1e-10])
        {
            Assert.Equal(Oil.Map.EndOf(Oil.Map.RowOf(knot)), (double)new MapOfReal(Oil.Map).Enter(y));
            Assert.Equal(Oil.Map.EndOf(Oil.Map.RowOf(knot)), (double)new MapOfDual(Oil.Map, 0.0, 1.0).Enter(y));
        }
        Assert.Equal(knot, (double)new MapOfReal(Oil.Map).Enter(knot - 1e-6));
        foreach (var y in (double[])[5 - 1e-10, 5, 5 + 1e-10])
        {
            Assert.Equal(11, (double)new SlopesOfReal(Heights).Enter(y));
            Assert.Equal(11, (double)new SlopesOfDual(Heights).Enter(y));
        }
        Assert.Equal(5, (double)new SlopesOfDual(Heights).Enter(5 - 1e-6));

        // And it reads that row from there on.
        var (dual, lanes) = (new MapOfDual(Oil.Map, 0.0, 1.0), new MapOfLanes<Doubles8>(Oil.Map));
        dual.Enter(knot - 1e-10);
        lanes.Enter(Each(_ => knot - 1e-10));
        lanes.Enter(3, 9 * Foot - 1e-10);
        Assert.Equal(Oil.Map.At(0.2, 12.1, Oil.Map.RowOf(knot)), (double)dual.At(0.2, 12.1));
        Assert.Equal(Oil.Map.At(0.2, 12.1, Oil.Map.RowOf(knot)), Doubles8.Lane(lanes.At(0.2, 12.1), 2));
        Assert.Equal(Oil.Map.At(0.2, 12.1, Oil.Map.RowOf(9 * Foot)), Doubles8.Lane(lanes.At(0.2, 12.1), 3));
        Assert.NotEqual(Oil.Map.RowOf(0), Oil.Map.RowOf(knot));
    }

    [Fact]
    public void Slopes_are_those_of_the_heights()
    {
        var slopes = new SlopesOfReal(Heights);
        foreach (var (x, y) in Places)
        {
            const double d = 1e-6;
            slopes.Roam();
            slopes.At(x, y, out var across, out var along);
            Assert.Equal((Heights.At(x + d, y) - Heights.At(x - d, y)) / (2 * d), (double)across, 1e-8);
            Assert.Equal((Heights.At(x, y + d) - Heights.At(x, y - d)) / (2 * d), (double)along, 1e-8);

            // With derivatives: the same values, and the derivatives of the values.
            var dual = new SlopesOfDual(Heights);
            dual.At(Dual.Variable(x, 0), Dual.Variable(y, 1), out var dAcross, out var dAlong);
            Assert.Equal((double)across, (double)dAcross, 1e-15);
            Assert.Equal((double)along, (double)dAlong, 1e-15);
            (double Across, double Along) At(double u, double v)
            {
                slopes.At(u, v, out var a, out var b);
                return (a, b);
            }
            Assert.Equal((At(x + d, y).Across - At(x - d, y).Across) / (2 * d), dAcross.Partial(0), 1e-6);
            Assert.Equal((At(x, y + d).Across - At(x, y - d).Across) / (2 * d), dAcross.Partial(1), 1e-6);
            Assert.Equal((At(x + d, y).Along - At(x - d, y).Along) / (2 * d), dAlong.Partial(0), 1e-6);
            Assert.Equal((At(x, y + d).Along - At(x, y - d).Along) / (2 * d), dAlong.Partial(1), 1e-6);
        }
    }

    [Fact]
    public void Slopes_keep_to_the_row_that_was_entered()
    {
        var (real, dual) = (new SlopesOfReal(Heights), new SlopesOfDual(Heights));
        real.Enter(0);
        dual.Enter(0);
        real.At(0.1, 8, out var across, out var along);
        dual.At(0.1, 8, out var dAcross, out var dAlong);
        Heights.Slopes(0.1, 8, Heights.RowOf(0), out var perX, out var perY);
        Assert.Equal((perX, perY), ((double)across, (double)along));
        Assert.Equal(perX, (double)dAcross, 1e-15);
        Assert.Equal(perY, (double)dAlong, 1e-15);
        real.Roam();
        dual.Roam();
        real.At(0.1, 8, out across, out _);
        dual.At(0.1, 8, out dAcross, out _);
        Heights.Slopes(0.1, 8, Heights.RowOf(8), out perX, out _);
        Assert.Equal(perX, (double)across);
        Assert.Equal(perX, (double)dAcross, 1e-15);
    }

    [Fact]
    public void A_map_with_derivatives_is_the_map_and_its_slopes_and_what_a_fit_moves()
    {
        var plain = new MapOfDual(Oil.Map, 0.0, 1.0);
        var moved = new MapOfDual(Oil.Map, Dual.Variable(1e-6, 2), Dual.Variable(1.5, 3));
        foreach (var (x, y) in Places)
        {
            var (u, v) = (Dual.Variable(x, 0), Dual.Variable(y, 1));
            var value = plain.At(u, v);
            Oil.Map.Slopes(x, y, Oil.Map.RowOf(y), out var perX, out var perY);
            Assert.Equal((Oil.Map.At(x, y), perX, perY), ((double)value, value.Partial(0), value.Partial(1)));
            var (film, shifted) = ((double)value, moved.At(u, v));
            Assert.Equal(1e-6 + 1.5 * film, (double)shifted, 1e-18);
            Assert.Equal(1.5 * perX, shifted.Partial(0), 1e-15);
            Assert.Equal(1, shifted.Partial(2), 1e-15);
            Assert.Equal(film, shifted.Partial(3), 1e-18);
        }
        // As the map of plain numbers: to its row until it roams.
        plain.Enter(0);
        Assert.Equal(Oil.Map.At(0.2, 12.1, 0), (double)plain.At(0.2, 12.1));
        plain.Roam();
        Assert.Equal(Oil.Map.At(0.2, 12.1), (double)plain.At(0.2, 12.1));
    }

    [Fact]
    public void A_sloped_surface_is_its_surface_and_its_slopes()
    {
        var film = new FilmSurface<Real, MapOfReal>(Contact.Law<Real>(FrictionCalibration.Default), new(Oil.Map));
        var sloped = new SlopedSurface<Real, FilmSurface<Real, MapOfReal>, SlopesOfReal>(film, new(Heights));
        Assert.True(SlopedSurface<Real, FilmSurface<Real, MapOfReal>, SlopesOfReal>.HasSlopes);
        // It ends its rows where either does.
        Assert.Equal(8 * Foot, (double)sloped.Enter(0));
        Assert.Equal(9 * Foot, (double)sloped.Enter(8 * Foot));
        Assert.Equal(5, (double)sloped.Enter(4.9));
        sloped.Roam();
        foreach (var (x, y) in Places)
        {
            sloped.Slopes(x, y, out var across, out var along);
            new SlopesOfReal(Heights).At(x, y, out var a, out var b);
            Assert.Equal(((double)a, (double)b), ((double)across, (double)along));
            Assert.Equal(Oil.FilmAt(x, y), (double)sloped.Value(x, y));
            Assert.Equal((double)film.Friction(sloped.Value(x, y), 2), (double)sloped.Friction(sloped.Value(x, y), 2));
            Assert.Equal((double)film.FilmInContact(sloped.Value(x, y)), (double)sloped.FilmInContact(sloped.Value(x, y)));
        }
        Assert.Equal(0, (double)film.FilmInContact(-1e-6));
    }

    [Fact]
    public void Calibrations_are_kept_within_their_ranges()
    {
        static void Kept(Func<double, FrictionCalibration> with, Func<FrictionCalibration, double> of, double low, double high)
        {
            Assert.Equal(low, of(with(low)));
            Assert.Equal(high, of(with(high)));
            Assert.Throws<ArgumentOutOfRangeException>(() => with(low - 1e-3 * (high - low)));
            Assert.Throws<ArgumentOutOfRangeException>(() => with(high * 1.001));
        }
        var k = FrictionCalibration.Default;
        Kept(v => k with { Dry = v }, f => f.Dry, 0.01, 1);
        Kept(v => k with { Floor = v }, f => f.Floor, 0, 0.5);
        Kept(v => k with { ViscousCeiling = v }, f => f.ViscousCeiling, 0.001, 0.5);
        Kept(v => k with { FilmScale = v }, f => f.FilmScale, 0.05, 20);
        Kept(v => k with { GapFloor = v }, f => f.GapFloor, 0.01e-6, 10e-6);
        Kept(v => k with { EntrainmentSpeed = v }, f => f.EntrainmentSpeed, 0.1, 20);
        Kept(v => k with { PickUp = v }, f => f.PickUp, 0, 1);
        // Equal is not below.
        Assert.Throws<ArgumentException>(() => Contact.Law<Real>(k with { Dry = 0.5, Floor = 0.25, ViscousCeiling = 0.25 }));
    }
}
