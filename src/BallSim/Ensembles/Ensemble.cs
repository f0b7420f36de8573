using System.Runtime.Intrinsics;
using BallSim.Balls;
using BallSim.Lanes;
using BallSim.Releases;

namespace BallSim.Ensembles;

/// <summary>
/// Computes many shots: side by side in vectors, on all cores. Every shot is that of <see cref="Shots.Simulator"/> step by step, all physics included; in doubles the shots side by side are bit-equal to those
/// one by one, so that results depend neither on the machine's vectors nor on threads, chunks or order. Outcomes come as an array, or into columns of the caller's.
/// </summary>
public static class Ensemble
{
    /// <summary>Throws a list of throws.</summary>
    /// <param name="throws">The throws; read while they are computed, from several threads.</param>
    /// <param name="options">How; null for the default.</param>
    /// <param name="progress">Told how many shots are done, from any thread.</param>
    /// <param name="cancellation">Stops between two chunks.</param>
    /// <returns>One outcome a throw, in their order.</returns>
    /// <exception cref="ArgumentException">A release does not fit its ball or lane; the message tells which. Nothing is returned then.</exception>
    public static Outcome[] Throw(IReadOnlyList<Throw> throws, EnsembleOptions? options = null, IProgress<int>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(throws);
        var outcomes = Room(throws.Count);
        Run(new ThrowRows(throws, outcomes), options ?? new(), progress, cancellation);
        return outcomes;
    }

    /// <summary>Throws a list of throws, outcomes into columns. They are written as they come: after an exception or a cancellation some rows are written and some are not.</summary>
    /// <param name="throws">The throws; read while they are computed, from several threads.</param>
    /// <param name="outcomes">Room for the numbers that are wanted.</param>
    /// <param name="options">How; null for the default.</param>
    /// <param name="progress">Told how many shots are done, from any thread.</param>
    /// <param name="cancellation">Stops between two chunks.</param>
    /// <exception cref="ArgumentException">A column has not one place a row, or there is none: nothing is thrown then. Or a release does not fit its ball or lane. The message tells which.</exception>
    public static void ThrowInto(IReadOnlyList<Throw> throws, OutcomeColumns outcomes, EnsembleOptions? options = null, IProgress<int>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(throws);
        ArgumentNullException.ThrowIfNull(outcomes);
        Run(new ThrowRows(throws, outcomes.Into(throws.Count)), options ?? new(), progress, cancellation);
    }

    /// <summary>Throws one ball on one lane by releases in columns.</summary>
    /// <param name="ball">The ball.</param>
    /// <param name="lane">The lane.</param>
    /// <param name="common">The release that holds what the columns do not give.</param>
    /// <param name="columns">The numbers that differ from shot to shot.</param>
    /// <param name="options">How; null for the default.</param>
    /// <param name="progress">Told how many shots are done, from any thread.</param>
    /// <param name="cancellation">Stops between two chunks.</param>
    /// <returns>One outcome a row, in their order.</returns>
    /// <exception cref="ArgumentException">A row is no release; the message tells which.</exception>
    public static Outcome[] Throw(Ball ball, Lane lane, Release common, ReleaseColumns columns, EnsembleOptions? options = null, IProgress<int>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(ball);
        ArgumentNullException.ThrowIfNull(lane);
        ArgumentNullException.ThrowIfNull(common);
        ArgumentNullException.ThrowIfNull(columns);
        var outcomes = Room(columns.Count);
        Run(new ColumnRows(ball, lane, common, columns, Rows.Into(outcomes)), options ?? new(), progress, cancellation);
        return outcomes;
    }

    /// <summary>Throws one ball on one lane by releases in columns, outcomes into columns. They are written as they come: after an exception or a cancellation some rows are written and some are not.</summary>
    /// <param name="ball">The ball.</param>
    /// <param name="lane">The lane.</param>
    /// <param name="common">The release that holds what the columns do not give.</param>
    /// <param name="columns">The numbers that differ from shot to shot.</param>
    /// <param name="outcomes">Room for the numbers that are wanted.</param>
    /// <param name="options">How; null for the default.</param>
    /// <param name="progress">Told how many shots are done, from any thread.</param>
    /// <param name="cancellation">Stops between two chunks.</param>
    /// <exception cref="ArgumentException">A column of outcomes has not one place a row, or there is none: nothing is thrown then. Or a row is no release. The message tells which.</exception>
    public static void ThrowInto(Ball ball, Lane lane, Release common, ReleaseColumns columns, OutcomeColumns outcomes, EnsembleOptions? options = null, IProgress<int>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(ball);
        ArgumentNullException.ThrowIfNull(lane);
        ArgumentNullException.ThrowIfNull(common);
        ArgumentNullException.ThrowIfNull(columns);
        ArgumentNullException.ThrowIfNull(outcomes);
        Run(new ColumnRows(ball, lane, common, columns, outcomes.Into(columns.Count)), options ?? new(), progress, cancellation);
    }

    /// <summary>How many shots run side by side on this machine.</summary>
    /// <param name="precision">Doubles or floats.</param>
    public static int Width(Precision precision) => (Vector512.IsHardwareAccelerated ? 8 : Vector256.IsHardwareAccelerated ? 4 : 1) * (precision == Precision.Single && Vector256.IsHardwareAccelerated ? 2 : 1);

    // Not cleared: each row is written, or none is returned.
    private static Outcome[] Room(int count) => GC.AllocateUninitializedArray<Outcome>(count);

    private static void Run(Rows rows, EnsembleOptions options, IProgress<int>? progress, CancellationToken cancellation) => options.Engine.Run(rows, options, progress, cancellation);
}
