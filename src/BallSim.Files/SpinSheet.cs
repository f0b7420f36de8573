using BallSim.Balls;
using BallSim.Shots;
using static BallSim.Units;

namespace BallSim.Files;

/// <summary>A spin test as a file describes it: how the ball is set spinning, what takes energy from it, and what is asked.</summary>
public sealed record SpinSheet
{
    /// <summary>
    /// Damping of the part of the spin square to the momentum where a file names no dissipation, N m s: assumed, so that a ball of 15 lb with a
    /// differential of 0.05 in settles within the minute. No published value was found: fit it to your own spinner.
    /// </summary>
    public const double AssumedDamping = 0.05;

    /// <summary>Turns at the start, rad/s; 600 rpm, assumed.</summary>
    public double SpinRate { get; init; } = 600 * Rpm;

    /// <summary>The axis at the start, a direction in the ball frame of any length but zero; null: the grip centre of a drilled ball, else <see cref="Leaning"/>.</summary>
    public Vector3D? Axis { get; init; }

    /// <summary>Time to compute, s; 120 s.</summary>
    public double Duration { get; init; } = 120;

    /// <summary>The angle to the preferred axis that counts as there, rad; 5 degrees.</summary>
    public double Within { get; init; } = 5 * Degree;

    /// <summary>What takes energy from the spin.</summary>
    public SpinDissipation Dissipation { get; init; } = new() { SquareToMomentum = AssumedDamping };

    /// <summary>Start of an undrilled ball if none is given: 30 degrees from the pin, halfway between y and z of the ball frame (assumed).</summary>
    public static Vector3D Leaning { get; } = new(Math.Sqrt(3) / 2, Math.Sqrt(0.125), Math.Sqrt(0.125));

    /// <summary>The test run with a ball.</summary>
    /// <exception cref="ArgumentException">A number out of its range.</exception>
    public SpinRecord Run(Ball ball)
    {
        ArgumentNullException.ThrowIfNull(ball);
        var axis = Axis ?? ball.Marks.GripCentre ?? Leaning;
        return SpinTest.Run(ball, SpinRate * axis.Unit, Dissipation, Duration);
    }
}
