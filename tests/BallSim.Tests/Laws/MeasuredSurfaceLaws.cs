using BallSim.Lanes;
using BallSim.Shots;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using static BallSim.Tests.Laws.Along;

namespace BallSim.Tests.Laws;

/// <summary>A lane whose slope varies from place to place: the force -m g ∇h at the centre of mass has a potential.</summary>
[Properties(Arbitrary = [typeof(Worlds)], MaxTest = 30)]
public class MeasuredSurfaceLaws
{
    private static readonly double[] Stations = [0, 3, 7, 12, 18];
    private static readonly double[] Boards = [1, 10, 20, 30, 39];

    private static Topography Plane(double across, double along)
    {
        var heights = new double[Stations.Length, Boards.Length];
        for (var k = 0; k < Stations.Length; k++)
        {
            for (var i = 0; i < Boards.Length; i++)
            {
                heights[k, i] = across * RegulationLane.PlaceOf(Boards[i]) + along * Stations[k];
            }
        }
        return Topography.FromHeights(Stations, Boards, heights);
    }

    private static Topography Hilly(double[] metres)
    {
        var heights = new double[Stations.Length, Boards.Length];
        Buffer.BlockCopy(metres, 0, heights, 0, metres.Length * sizeof(double));
        return Topography.FromHeights(Stations, Boards, heights);
    }

    [Property]
    public Property A_table_of_a_plane_is_the_tilted_lane() => Prop.ForAll(
        Worlds.Throwings(), (from across in Worlds.Between(-0.02, 0.02) from along in Worlds.Between(-0.01, 0.01) select (Across: across, Along: along)).ToArbitrary(),
        (t, slope) =>
        {
            var lane = Lane.Unbounded(FrictionMap.Smoothstep(0.05, 0.2, 6, 12));
            SimulatorOptions options = new() { Tolerance = 1e-9, MaxTime = 1.5, MaxSteps = 2_000_000 };
            var tilted = Simulator.Throw(t.Ball, lane with { Topography = Topography.Tilted(slope.Across, slope.Along) }, t.Start, options).End;
            var tabled = Simulator.Throw(t.Ball, lane with { Topography = Plane(slope.Across, slope.Along) }, t.Start, options).End;
            Near(new Vector3D(tilted.X, tilted.Y, 0), new(tabled.X, tabled.Y, 0), 1e-8, "place");
            Near(Velocity(tilted), Velocity(tabled), 1e-8, "velocity");
            Near(tilted.Energy, tabled.Energy, 1e-9 * tilted.Energy, "energy");
        });

    [Property]
    public Property Energy_closes_over_hills() => Prop.ForAll(
        Worlds.Throwings(), Gen.ArrayOf(Worlds.Between(-2e-3, 2e-3), 25).ToArbitrary(),
        (t, heights) =>
        {
            var lane = t.Lane with { Topography = Hilly(heights) };
            var shot = Simulator.Throw(t.Ball, lane, t.Start, new() { Tolerance = 1e-9, MaxTime = 1.5, MaxSteps = 2_000_000 });
            foreach (var p in Points(shot))
            {
                // Slopes have kinks at the table's lines, which steps meet along the lane but not across it.
                Near(shot.Start.Energy + p.FrictionWork + p.DragWork, p.Energy, 1e-8 * shot.Start.Energy, $"energy at {p.Time} s ({p.Phase})");
            }
            // The hills are felt: the same throw on the level lane ends elsewhere.
            var level = Simulator.Throw(t.Ball, t.Lane, t.Start, new() { MaxTime = 1.5, MaxSteps = 2_000_000 });
            Assert.NotEqual(level.End.X, shot.End.X);
        });
}
