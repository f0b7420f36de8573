using System.Runtime.CompilerServices;
using BallSim.Shots;

namespace BallSim.Ensembles;

/// <summary>
/// Outcomes as columns, for programs that hold them so: one for each number of <see cref="Outcome"/>, in its unit. Give room for what is wanted, an array or a slice of one, with one place a row; what is left empty is not wanted.
/// </summary>
public sealed record OutcomeColumns
{
    /// <inheritdoc cref="Outcome.StopReason"/>
    public Memory<StopReason> StopReason { get; init; }

    /// <inheritdoc cref="Outcome.Time"/>
    public Memory<double> Time { get; init; }

    /// <inheritdoc cref="Outcome.X"/>
    public Memory<double> X { get; init; }

    /// <inheritdoc cref="Outcome.Distance"/>
    public Memory<double> Distance { get; init; }

    /// <inheritdoc cref="Outcome.Board"/>
    public Memory<double> Board { get; init; }

    /// <inheritdoc cref="Outcome.BoardAtPinLine"/>
    public Memory<double> BoardAtPinLine { get; init; }

    /// <inheritdoc cref="Outcome.Offset"/>
    public Memory<double> Offset { get; init; }

    /// <inheritdoc cref="Outcome.Angle"/>
    public Memory<double> Angle { get; init; }

    /// <inheritdoc cref="Outcome.Speed"/>
    public Memory<double> Speed { get; init; }

    /// <inheritdoc cref="Outcome.SlipSpeed"/>
    public Memory<double> SlipSpeed { get; init; }

    /// <inheritdoc cref="Outcome.SpinRate"/>
    public Memory<double> SpinRate { get; init; }

    /// <inheritdoc cref="Outcome.AxisRotation"/>
    public Memory<double> AxisRotation { get; init; }

    /// <inheritdoc cref="Outcome.AxisTilt"/>
    public Memory<double> AxisTilt { get; init; }

    /// <inheritdoc cref="Outcome.Revolutions"/>
    public Memory<double> Revolutions { get; init; }

    /// <inheritdoc cref="Outcome.AxisMigration"/>
    public Memory<double> AxisMigration { get; init; }

    /// <inheritdoc cref="Outcome.BreakpointBoard"/>
    public Memory<double> BreakpointBoard { get; init; }

    /// <inheritdoc cref="Outcome.BreakpointDistance"/>
    public Memory<double> BreakpointDistance { get; init; }

    /// <inheritdoc cref="Outcome.RollDistance"/>
    public Memory<double> RollDistance { get; init; }

    /// <inheritdoc cref="Outcome.RollBoard"/>
    public Memory<double> RollBoard { get; init; }

    /// <inheritdoc cref="Outcome.RollTime"/>
    public Memory<double> RollTime { get; init; }

    /// <inheritdoc cref="Outcome.SlippedAgain"/>
    public Memory<int> SlippedAgain { get; init; }

    /// <inheritdoc cref="Outcome.OilTakenUp"/>
    public Memory<double> OilTakenUp { get; init; }

    /// <inheritdoc cref="Outcome.Steps"/>
    public Memory<int> Steps { get; init; }

    private delegate T Number<T>(in Outcome outcome);

    private (string Name, int Length, Keeper Write)[] Table =>
    [
        Of(StopReason, (in o) => o.StopReason),
        Of(Time, (in o) => o.Time),
        Of(X, (in o) => o.X),
        Of(Distance, (in o) => o.Distance),
        Of(Board, (in o) => o.Board),
        Of(BoardAtPinLine, (in o) => o.BoardAtPinLine),
        Of(Offset, (in o) => o.Offset),
        Of(Angle, (in o) => o.Angle),
        Of(Speed, (in o) => o.Speed),
        Of(SlipSpeed, (in o) => o.SlipSpeed),
        Of(SpinRate, (in o) => o.SpinRate),
        Of(AxisRotation, (in o) => o.AxisRotation),
        Of(AxisTilt, (in o) => o.AxisTilt),
        Of(Revolutions, (in o) => o.Revolutions),
        Of(AxisMigration, (in o) => o.AxisMigration),
        Of(BreakpointBoard, (in o) => o.BreakpointBoard),
        Of(BreakpointDistance, (in o) => o.BreakpointDistance),
        Of(RollDistance, (in o) => o.RollDistance),
        Of(RollBoard, (in o) => o.RollBoard),
        Of(RollTime, (in o) => o.RollTime),
        Of(SlippedAgain, (in o) => o.SlippedAgain),
        Of(OilTakenUp, (in o) => o.OilTakenUp),
        Of(Steps, (in o) => o.Steps),
    ];

    /// <summary>Outcomes of so many rows into the columns.</summary>
    /// <exception cref="ArgumentException">A column has not one place a row, or there is none.</exception>
    internal Keeper Into(int rows)
    {
        Keeper? all = null;
        foreach (var (name, length, write) in Table.Where(c => c.Length > 0))
        {
            Check.That(length == rows, $"{name} has {length} places, there are {rows} rows: a column of outcomes must have one place a row; of a longer array give a slice", name);
            all += write;
        }
        // Without rows no column has a place.
        Check.That(all is not null || rows == 0, "there is no column of outcomes: give at least one with a place for each row, such as X", nameof(OutcomeColumns));
        return all ?? ((_, _) => { });
    }

    /// <summary>Which numbers are wanted.</summary>
    public override string ToString() => string.Join(", ", Table.Where(c => c.Length > 0).Select(c => c.Name));

    private static (string, int, Keeper) Of<T>(Memory<T> column, Number<T> number, [CallerArgumentExpression(nameof(column))] string name = "") => (name, column.Length, (from, found) =>
    {
        var places = column.Span.Slice(from, found.Length);
        for (var i = 0; i < found.Length; i++)
        {
            places[i] = number(in found[i]);
        }
    });
}
