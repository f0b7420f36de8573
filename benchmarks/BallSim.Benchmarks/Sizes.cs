using BallSim.Balls;
using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Shots;
using static BallSim.Units;

namespace BallSim.Benchmarks;

/// <summary>
/// How much each number of the model moves the ball at the pins, to keep a sense of proportion: one change at a time, in boards, on a heavy pattern and on one of 25 mL. Beside the heavy ones stand the sizes that the
/// model was specified with, which a change of the physics may move but should not surprise.
/// </summary>
internal static class Sizes
{
    private static readonly Release Release = new()
    {
        Speed = 8,
        SpinRate = 350 * Rpm,
        AxisRotation = 45 * Degree,
        AxisTilt = 13 * Degree,
        LaunchAngle = 2 * Degree,
        Board = 20,
        AxisInBall = Vector3D.UnitX,
    };

    // A wiped cover on every turn, as if the ball flared without end; no gutters, so that every change gets to the pins.
    private static readonly Throw Basis = new(Ball(), Lane.Unbounded(OilMap.Dry), new() { CoverOil = false, MaxTime = 6 });

    private sealed record Throw(Ball Ball, Lane Lane, SimulatorOptions Options)
    {
        public Throw With(Func<SimulatorOptions, SimulatorOptions> change) => this with { Options = change(Options) };

        public Throw OnLane(Func<Lane, Lane> change) => this with { Lane = change(Lane) };
    }

    private static readonly (string What, string Specified, Func<Throw, Throw> Change)[] Changes =
    [
        ("cover never fresh", "7.6", t => t.With(o => o with { CoverOil = true, FreshCover = false })),
        ("pores +1 um", "4.9", t => t with { Ball = t.Ball with { Cover = t.Ball.Cover with { Pores = 1 * Micrometre } } }),
        ("mu_0 +0.01", "3.8", t => t.With(o => o with { Friction = o.Friction with { Floor = 0.03 } })),
        ("mu_0 -0.01", "3.8", t => t.With(o => o with { Friction = o.Friction with { Floor = 0.01 } })),
        ("Ra 0.5 to 1.0 um", "2.8", t => t with { Ball = t.Ball with { Finish = Finish.Measured(1 * Micrometre) } }),
        ("cross slope 0.003", "2.9", t => t.OnLane(l => l with { Topography = Topography.Tilted(0.003, 0) })),
        ("legal cross tilt, 0.040 in", "0.93", t => t.OnLane(l => l with { Topography = Topography.Tilted(0.040 / 41.5, 0) })),
        ("mu_d +25 %", "1.6", t => t.With(o => o with { Friction = o.Friction with { Dry = 0.25 } })),
        ("viscosity x2", "1.0", t => t.OnLane(l => l with { OilViscosity = 2 * l.OilViscosity })),
        ("drag off", "0.9", t => t.With(o => o with { AirDrag = false })),
        ("4 C warmer", "0.2", t => t.OnLane(l => l with { Temperature = l.Temperature + 4 })),
        ("pivoting friction on", "< 0.1", t => t.With(o => o with { PivotingFriction = true })),
        ("rolling resistance on", "< 0.1", t => t.With(o => o with { RollingResistance = true })),
    ];

    public static void Report(TextWriter to)
    {
        var heavy = OilMap.Tapered(60 * OilUnit, 8 * Foot, 5 * OilUnit, 40 * Foot, runout: 0.01);
        // The same shape, thinner.
        var thin = 25 * Millilitre / heavy.Volume;
        var usual = OilMap.Tapered(60 * thin * OilUnit, 8 * Foot, 5 * thin * OilUnit, 40 * Foot, runout: 0.01);
        to.WriteLine("Change at the pins (60 ft), in boards of 1.06 in; plus: more hook. One change at a time.");
        to.WriteLine("Isotropic ball of 15 lb, k 2.5 in, Ra 0.5 um, no pores; 8 m/s, 350 rpm, rotation 45, tilt 13, launch 2 degrees to the right;");
        to.WriteLine("film 60 units to 8 ft, then linear to 5 at 40 ft, the same on every board, and the same scaled to 25 mL; every turn meets a wiped cover.");
        to.WriteLine();
        var (first, second) = (Place(Basis, heavy), Place(Basis, usual));
        to.WriteLine(FormattableString.Invariant($"{"",-28} | {"specified",9} | {heavy.Volume / Millilitre,5:F0} mL | {usual.Volume / Millilitre,5:F0} mL"));
        foreach (var (what, specified, change) in Changes)
        {
            var changed = change(Basis);
            to.WriteLine(FormattableString.Invariant($"{what,-28} | {specified,9} | {Place(changed, heavy).Board - first.Board,8:+0.00;-0.00;0.00} | {Place(changed, usual).Board - second.Board,8:+0.00;-0.00;0.00}"));
        }
        to.WriteLine();
        to.WriteLine(FormattableString.Invariant($"unchanged: board                       {first.Board,8:F2} | {second.Board,8:F2}"));
        to.WriteLine(FormattableString.Invariant($"rolls from (ft)                         {first.Rolls / Foot,8:F1} | {second.Rolls / Foot,8:F1}"));
        to.WriteLine(FormattableString.Invariant($"oil taken up (uL), specified about 60   {first.Oil / Microlitre,8:F0} | {second.Oil / Microlitre,8:F0}"));
        to.WriteLine();
        to.WriteLine("Specified sizes belong to the heavy pattern and carry no sign; they name neither the ball's weight and size nor its pores, and agree as far as that lets them. Rolling resistance");
        to.WriteLine("acts here from the release on, sliding included, and comes out above its bound. On 25 mL the ball grips sooner and hooks more, so that what bares the asperities (pores,");
        to.WriteLine("roughness, dry friction) counts for more, and the floor of the friction in oil for less.");
    }

    private static (double Board, double Rolls, double Oil) Place(Throw t, OilMap oil)
    {
        var shot = Simulator.Throw(t.Ball, t.Lane with { Oil = oil }, Release, t.Options);
        // The lane has no pins to stop at: thrown once more, up to where they would stand.
        var pins = shot.AtDistance(60 * Foot);
        var toPins = Simulator.Throw(t.Ball, t.Lane with { Oil = oil }, Release, t.Options with { MaxTime = pins.Time });
        return (pins.Board, shot.StartOfRoll?.Distance ?? double.NaN, toPins.OilTakenUp);
    }

    private static Ball Ball()
    {
        var moment = 15 * Pound * 2.5 * Inch * 2.5 * Inch;
        return new() { Mass = 15 * Pound, Radius = 8.55 / 2 * Inch, Inertia = new(moment, moment, moment), Finish = Finish.Measured(0.5 * Micrometre), Cover = Cover.Plastic };
    }
}
