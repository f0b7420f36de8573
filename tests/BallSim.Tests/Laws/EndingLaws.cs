using BallSim.Shots;
using FsCheck;
using FsCheck.Xunit;

namespace BallSim.Tests.Laws;

/// <summary>Whatever goes in: a throw ends within its bounds, says why, and holds no number that is none.</summary>
public class EndingLaws
{
    [Property(Arbitrary = [typeof(EveryInput)], MaxTest = 800)]
    public void A_throw_from_anywhere_ends_within_its_bounds_and_with_numbers(AnyThrow any)
    {
        var shot = Simulator.Throw(any.Ball, any.Lane, any.Start, any.Options);
        Assert.True(Enum.IsDefined(shot.StopReason));
        Assert.NotEmpty(shot.StopSentence);
        Assert.True(shot.Steps <= any.Options.MaxSteps, $"{shot.Steps} steps");
        Assert.True(shot.PhaseChanges.Count <= any.Options.MaxTransitions + 2, $"{shot.PhaseChanges.Count} changes");
        // The end is sought on the polynomial of a step.
        Assert.InRange(shot.Duration, 0, any.Options.MaxTime + 1e-9);
        for (var i = 0; i < shot.SegmentCount; i++)
        {
            AllNumbers(shot.At(i, 0.5));
            AllNumbers(shot.At(i, 1));
        }
        AllNumbers(shot.End);
        Assert.DoesNotContain("NaN", shot.ToString());
        Assert.True(double.IsFinite(shot.OilTakenUp), $"oil {shot.OilTakenUp}");
        Assert.All(shot.PhaseChanges, c => Assert.True(double.IsFinite(c.Time + c.Distance + c.Board)));
    }

    private static void AllNumbers(PathPoint p)
    {
        double[] numbers =
        [
            p.Time, p.X, p.Y, p.Board, p.VelocityX, p.VelocityY, p.Orientation.W, p.Orientation.X, p.Orientation.Y, p.Orientation.Z, p.AngularVelocity.X, p.AngularVelocity.Y, p.AngularVelocity.Z,
            p.SlipX, p.SlipY, p.ContactForce.X, p.ContactForce.Y, p.ContactForce.Z, p.Friction, p.Film, p.CoverFilm, p.FreshCover, p.OilUptake, p.Offset.X, p.Offset.Y, p.Offset.Z, p.Revolutions,
            p.FrictionWork, p.DragWork, p.Energy, p.Speed, p.SpinRate, p.Heading, p.AxisRotation, p.AxisTilt,
        ];
        Assert.True(Array.TrueForAll(numbers, double.IsFinite), $"{p.Time} s, number {Array.FindIndex(numbers, n => !double.IsFinite(n))} of: {p}");
    }
}
