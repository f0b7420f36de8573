using BallSim.Balls;
using BallSim.Drilling;

namespace BallSim.Files;

/// <summary>
/// A ball on the bench: by its specification or its drawing, and, where it is drilled, for whom and by which layout; with what was measured on it
/// and how it is spun.
/// </summary>
public sealed record Workpiece
{
    /// <summary>What the file is about; may be empty.</summary>
    public string Title { get; init; } = "";

    /// <summary>The undrilled ball.</summary>
    public required BallSheet Ball { get; init; }

    /// <summary>The layout; null for a ball that is not drilled.</summary>
    public Layout? Layout { get; init; }

    /// <summary>The bowler it is drilled for; null for a ball that is not drilled.</summary>
    public Bowler? Bowler { get; init; }

    /// <summary>What was measured on the ball.</summary>
    public BallMeasurements Measured { get; init; } = new();

    /// <summary>How it is spun.</summary>
    public SpinSheet Spin { get; init; } = new();

    /// <summary>The ball drilled; null for a ball that is not.</summary>
    /// <exception cref="ArgumentException">The layout, the grip or a hole is impossible on this ball.</exception>
    public DrillSheet? Drilled() => Layout is { } layout && Bowler is { } bowler ? Ball.Drilled(layout, bowler) : null;

    /// <summary>
    /// The line from 6 to 16 lb that shares the core of a drawn ball, drilled alike; weights that cannot be had are left out.
    /// </summary>
    /// <exception cref="ArgumentException">
    /// The ball is not drawn or not drilled, its filler has no densities to blend from, or the holes are impossible.
    /// </exception>
    public IReadOnlyList<DrillSheet> DrilledLine()
    {
        if (Ball.Drawing is not { } drawing || Layout is not { } layout || Bowler is not { } bowler)
        {
            throw new ArgumentException("a line of weights needs a ball that is drawn (core, filler, cover), a layout and a bowler");
        }
        return [.. from row in drawing.Line() let poured = row.Poured where poured is not null select DrillSheet.Of(poured.Sheet.Ball, layout, bowler.Grip, bowler.Axis)];
    }

    /// <summary>
    /// The ball, drilled if it is, against the rules. Where nothing was measured, what follows from the drawing counts: the densest part, and the static
    /// balance of the drilled ball.
    /// </summary>
    /// <param name="rules">The limits; <see cref="BallRules.Default"/> if null.</param>
    /// <exception cref="ArgumentException">The layout, the grip or a hole is impossible on this ball.</exception>
    public RulesCheck Checked(BallRules? rules = null)
    {
        var drilled = Drilled();
        var poured = Ball.Drawing?.Poured();
        var balance = drilled is null ? (StaticBalance?)null : StaticBalance.Of(drilled.Ball, Ball.BalanceLever);
        // The pin and the mark of a ball that was computed lie on its axes.
        var arc = drilled is null ? null : (double?)0;
        var measured = Measured with
        {
            ComponentDensity = Measured.ComponentDensity ?? poured?.GreatestDensity,
            TopWeight = Measured.TopWeight ?? balance?.Top,
            SideWeight = Measured.SideWeight ?? balance?.Side,
            FingerWeight = Measured.FingerWeight ?? balance?.Finger,
            PinToLowAxis = Measured.PinToLowAxis ?? (poured is null ? null : arc),
            MarkToHighAxis = Measured.MarkToHighAxis ?? (poured is null ? null : arc),
        };
        return RulesCheck.Of(drilled?.Ball ?? Ball.Built(), measured, rules);
    }

    /// <summary>Where the value of a line of <see cref="Checked"/> comes from: what was not measured but follows from the drawing or the drilling says so.</summary>
    public string NoteOf(RuleLine line)
    {
        ArgumentNullException.ThrowIfNull(line);
        var rules = BallRules.Default;
        (string What, double? Measured)[] filled =
        [
            (rules.ComponentDensity.What, Measured.ComponentDensity), (rules.PinToLowAxis.What, Measured.PinToLowAxis), (rules.MarkToHighAxis.What, Measured.MarkToHighAxis),
            ("static balance, top", Measured.TopWeight), ("static balance, side", Measured.SideWeight), ("static balance, finger/thumb", Measured.FingerWeight),
        ];
        return filled.Any(f => f.What == line.What && f.Measured is null) && line.Measured is not null ? "computed" : line.Note;
    }

    /// <summary>A workpiece from its file, which may also be that of a ball or a drawing alone.</summary>
    /// <param name="path">The file, JSON, at most 4 MB.</param>
    /// <exception cref="BadFileException">
    /// The file cannot be read, or something in it is wrong; the message says where and what would be right.
    /// </exception>
    public static Workpiece Read(string path) => Json.WorkpieceReader.Read(Json.JsonFile.Opened(path));
}
