namespace BallSim.Fitting;

/// <summary>What a gyroscope fixed in the ball shows at an instant.</summary>
/// <param name="Time">Time, s.</param>
/// <param name="AngularVelocity">Angular velocity in the axes of the sensor, rad/s.</param>
public readonly record struct GyroSample(double Time, Vector3D AngularVelocity)
{
    /// <summary>The spin rates as a track by time, for a fit of the shot in which the sensor flew: its time counts from the foul line.</summary>
    /// <param name="id">What the shot is called.</param>
    /// <param name="samples">The samples.</param>
    public static TrackedShot AsTrack(string id, IEnumerable<GyroSample> samples)
    {
        ArgumentNullException.ThrowIfNull(samples);
        return TrackedShot.Of(id, samples.Select(s => new TrackedPoint { Time = s.Time, SpinRate = s.AngularVelocity.Length }));
    }

    /// <summary>Time, and the rate about each axis.</summary>
    public override string ToString() => FormattableString.Invariant($"{Time:F3} s: {AngularVelocity.X / Units.Rpm:F1}, {AngularVelocity.Y / Units.Rpm:F1}, {AngularVelocity.Z / Units.Rpm:F1} rpm");
}
