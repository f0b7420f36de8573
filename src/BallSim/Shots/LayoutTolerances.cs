using BallSim.Balls;
using BallSim.Drilling;
using BallSim.Lanes;
using BallSim.Releases;
using static BallSim.Units;

namespace BallSim.Shots;

/// <summary>
/// How exactly a ball was made, laid out and balanced: one number for each source of error, each the size of an error that is as likely one
/// way as the other (standard deviations give standard deviations, limits combined by their squares give a limit of the same kind). The
/// release stays the same.
/// </summary>
/// <remarks>
/// A core out of place moves the centre of mass: the balance error stands for its shift, whose change of the moments is neglected, and so are
/// errors that go together.
/// </remarks>
public sealed record LayoutTolerances
{
    /// <summary>The values described at each property.</summary>
    public static LayoutTolerances Default { get; } = new();

    /// <summary>
    /// Arc by which the pin is off the axis of the core, m, towards the mark and across, each on its own; 0 to 1.5 in, 1/4 in assumed. The
    /// rules allow 1 in (USBC release 2012, quoted).
    /// </summary>
    public double CoreTilt { get; init => field = Check.Range(value, 0, 1.5 * Inch, Quantity.Length, nameof(CoreTilt)); } = 0.25 * Inch;

    /// <summary>
    /// Arc by which the mass-bias mark is off around the pin, m; 0 to 2 in, 3/8 in assumed. The rules allow 1.5 in (USBC release 2012,
    /// quoted).
    /// </summary>
    public double Mark { get; init => field = Check.Range(value, 0, 2 * Inch, Quantity.Length, nameof(Mark)); } = 0.375 * Inch;

    /// <summary>Error of the pin-to-axis distance, m; 0 to 1 in, 1/16 in.</summary>
    public double PinToAxis { get; init => field = Check.Range(value, 0, 1 * Inch, Quantity.Length, nameof(PinToAxis)); } = Inch / 16;

    /// <summary>Error of the angle at the pin, rad; 0 to 30 degrees, 2 degrees.</summary>
    public double AngleAtPin { get; init => field = Check.Range(value, 0, 30 * Degree, Quantity.Angle, nameof(AngleAtPin)); } = 2 * Degree;

    /// <summary>Error of the angle at the axis, rad; 0 to 30 degrees, 2 degrees.</summary>
    public double AngleAtAxis { get; init => field = Check.Range(value, 0, 30 * Degree, Quantity.Angle, nameof(AngleAtAxis)); } = 2 * Degree;

    /// <summary>Error of the static balance, kg, along top, side and finger, each on its own; 0 to 3 oz, 1/4 oz assumed.</summary>
    public double StaticBalance { get; init => field = Check.Range(value, 0, 3 * Ounce, Quantity.Mass, nameof(StaticBalance)); } = 0.25 * Ounce;

    /// <summary>Error of the depth of the holes, m, the same in all; 0 to 1/2 in, 1/16 in assumed.</summary>
    public double HoleDepth { get; init => field = Check.Range(value, 0, 0.5 * Inch, Quantity.Length, nameof(HoleDepth)); } = Inch / 16;

    /// <summary>Lever length L of the balance scale, m, in W e = s L; 1 to 10 in, 3.36 in assumed.</summary>
    public double BalanceLever { get; init => field = Check.Range(value, 1 * Inch, 10 * Inch, Quantity.Length, nameof(BalanceLever)); } = 3.36 * Inch;

    /// <summary>The sources of error, in the order in which <see cref="Made"/> takes them.</summary>
    internal IReadOnlyList<(string Source, double Size, string Text)> Sources =>
    [
        ("core tilt, pin towards the mark", CoreTilt, InInches(CoreTilt)),
        ("core tilt, pin across", CoreTilt, InInches(CoreTilt)),
        ("mark around the pin", Mark, InInches(Mark)),
        ("pin to axis", PinToAxis, InInches(PinToAxis)),
        ("angle at the pin", AngleAtPin, InDegrees(AngleAtPin)),
        ("angle at the axis", AngleAtAxis, InDegrees(AngleAtAxis)),
        ("balance, top", StaticBalance, InOunces(StaticBalance)),
        ("balance, side", StaticBalance, InOunces(StaticBalance)),
        ("balance, finger", StaticBalance, InOunces(StaticBalance)),
        ("hole depth", HoleDepth, InInches(HoleDepth)),
    ];

    /// <summary>
    /// What each error does to the ball and to the shot: central differences over plus and minus each tolerance, two shots for each source.
    /// </summary>
    /// <param name="ball">The undrilled ball as it should be.</param>
    /// <param name="layout">The layout as it should be.</param>
    /// <param name="grip">The grip.</param>
    /// <param name="axisPoint">The bowler's positive axis point.</param>
    /// <param name="lane">The lane.</param>
    /// <param name="release">The release, the same for every ball.</param>
    /// <param name="options">Tolerance and small forces of the shots.</param>
    /// <param name="drill">
    /// How a ball is drilled with a grip; by default the holes are taken out of the ball's mean density (a built ball's layers too: its core is
    /// the one that lies otherwise). Give <c>(b, l, g) => b.LayOut(l, g, axisPoint)</c> for the layout alone.
    /// </param>
    /// <exception cref="ArgumentException">The nominal shot, or one within the tolerances, does not touch the head pin: entries can then
    /// not be compared.</exception>
    public ToleranceStudy Study(Ball ball, Layout layout, Grip grip, PositiveAxisPoint axisPoint, Lane lane, Release release,
        SimulatorOptions? options = null, Func<Ball, Layout, Grip, Ball>? drill = null)
    {
        ArgumentNullException.ThrowIfNull(ball);
        ArgumentNullException.ThrowIfNull(grip);
        ArgumentNullException.ThrowIfNull(lane);
        ArgumentNullException.ThrowIfNull(release);
        drill ??= (b, l, g) => b.Drill(l, g, axisPoint);
        ball = ball with { Interior = null };
        (double Rg, StaticBalance Balance, double Board, double Angle) Outcome(double[] errors, string which)
        {
            var made = Made(ball, layout, grip, drill, errors);
            var shot = Simulator.Throw(made, lane, release, options);
            Check.That(shot.ReachedPins && shot.Entry.TouchesHeadPin,
                $"the shot with {which} {shot.StopSentence}; choose a release that stays on the head pin", nameof(release));
            return (made.RgAbout(made.Marks.PositiveAxis!.Value), Drilling.StaticBalance.Of(made, BalanceLever), shot.Entry.Board, shot.Entry.Angle);
        }
        var sources = Sources;
        var nominal = Outcome(new double[sources.Count], "no error");
        List<ToleranceEffect> effects = [];
        for (var i = 0; i < sources.Count; i++)
        {
            var errors = new double[sources.Count];
            errors[i] = sources[i].Size;
            var more = Outcome(errors, $"{sources[i].Source} +{sources[i].Text}");
            errors[i] = -sources[i].Size;
            var less = Outcome(errors, $"{sources[i].Source} -{sources[i].Text}");
            effects.Add(new(sources[i].Source, sources[i].Size, sources[i].Text,
                (more.Rg - less.Rg) / 2, HalfWay(more.Balance, less.Balance), (more.Board - less.Board) / 2, (more.Angle - less.Angle) / 2));
        }
        return new(nominal.Rg, nominal.Balance, nominal.Board, nominal.Angle, effects);
    }

    private static double HalfWay(StaticBalance a, StaticBalance b) =>
        new Vector3D(a.Top - b.Top, a.Side - b.Side, a.Finger - b.Finger).Length / 2;

    /// <summary>The drilled ball that comes out with the given errors, in the order of <see cref="Sources"/>.</summary>
    internal Ball Made(Ball ball, Layout layout, Grip grip, Func<Ball, Layout, Grip, Ball> drill, double[] errors)
    {
        // The marks stay where they are and the driller trusts them; the core lies otherwise. Turning the core by -θ about an axis puts the
        // mark at +θ from where it belongs.
        var marks = ball.Marks;
        var towards = DrilledBalls.ReferenceAtPin(ball);
        var turn = -errors[0] / ball.Radius * marks.Pin.Cross(towards)
            + errors[1] / ball.Radius * towards - errors[2] / ball.Radius * marks.Pin;
        var made = drill(turn.Length == 0 ? ball : ball with { Inertia = Turned(ball.Inertia, Rotation.About(turn, turn.Length)) },
            new(layout.PinToAxis + errors[3], layout.AngleAtPin + errors[4], layout.AngleAtAxis + errors[5]), Deeper(grip, errors[9]));
        var laidOut = made.Marks;
        Check.That(laidOut is { PositiveAxis: not null, GripCentre: not null, GripRight: not null, GripUp: not null },
            "drill gave back a ball without grip and positive axis point; it must lay the ball out", nameof(drill));
        var off = errors[6] * laidOut.GripCentre!.Value + errors[7] * laidOut.GripRight!.Value + errors[8] * laidOut.GripUp!.Value;
        return made with { CentreOfMass = made.CentreOfMass + BalanceLever / made.Mass * off };
    }

    private static Grip Deeper(Grip grip, double by)
    {
        Bore More(Bore bore) => bore with { Depth = bore.Depth + by };
        return grip with { Thumb = More(grip.Thumb), Middle = More(grip.Middle), Ring = More(grip.Ring) };
    }

    private static InertiaTensor Turned(InertiaTensor tensor, Rotation by)
    {
        var t = by.Spatial.Matrix().Turned(tensor.Spatial);
        return new(t.Xx, t.Yy, t.Zz, t.Xy, t.Xz, t.Yz);
    }

    private static string InInches(double x) => FormattableString.Invariant($"{x / Inch:0.####} in");

    private static string InDegrees(double x) => FormattableString.Invariant($"{x / Degree:0.##} deg");

    private static string InOunces(double x) => FormattableString.Invariant($"{x / Ounce:0.###} oz");

    /// <summary>The tolerances in inches, degrees and ounces.</summary>
    public override string ToString() => $"± core {InInches(CoreTilt)}, mark {InInches(Mark)}, pin to axis {InInches(PinToAxis)}, angles {InDegrees(AngleAtPin)} and {InDegrees(AngleAtAxis)}, balance {InOunces(StaticBalance)}, depth {InInches(HoleDepth)}";
}
