using System.Runtime.CompilerServices;
using BallSim.Friction;
using BallSim.Integration;
using BallSim.Motion;
using BallSim.Shots;
using BallSim.Spatial;

namespace BallSim.Benchmarks;

/// <summary>How many floating-point operations the shots of the set take on the bare law: the same run, to the last bit, in a number type that counts.</summary>
internal static class Work
{
    private readonly struct Nobody : IRecorder<Counted>
    {
        public void Took(Phase phase, in Step<State<Counted>> step, Counted h, Quat<Counted> start)
        {
            // Only the run itself is counted.
        }

        public void Changed(Phase from, Phase to, in State<Counted> at, Quat<Counted> start)
        {
            // As above.
        }
    }

    // The bicubic: two differences and fifteen fused multiply-adds.
    private struct CountedMap(MapOfReal map) : IMap<Counted>
    {
        private const int Operations = 2 + 15 * 2;

        private MapOfReal map = map;

        public Counted Enter(Counted y) => (double)map.Enter(y.Value);

        public readonly bool Joins => map.Joins;

        public void Roam() => map.Roam();

        public readonly Counted At(Counted x, Counted y) => Counted.Done(Operations, map.At(x.Value, y.Value));
    }

    /// <summary>Operations of a shot, the mean of the set, at a tolerance in m.</summary>
    public static double PerShot(double tolerance)
    {
        var options = new SimulatorOptions { Tolerance = tolerance };
        var (real, ends) = (Simulator.BodyOf(ReleaseSet.Ball, ReleaseSet.Lane, options), Simulator.BoundsOf(ReleaseSet.Ball, ReleaseSet.Lane, options));
        // The two are laid out alike: a counted number is a double, as a real one is.
        var body = Unsafe.As<Body<Real>, Body<Counted>>(ref real);
        var bounds = Unsafe.As<Bounds<Real>, Bounds<Counted>>(ref ends);
        var map = ReleaseSet.Lane.GivenFriction!.Map;
        long operations = 0;
        foreach (var release in ReleaseSet.Releases)
        {
            var launch = release.LaunchOn(ReleaseSet.Lane, ReleaseSet.Ball);
            var (at, turning) = (launch.Orientation.Normalised.Spatial, launch.AngularVelocity.Spatial);
            var run = new Run<Counted, GivenSurface<Counted, CountedMap>, Nobody>(body, new(new(new(map))), bounds, tolerance, default);
            Counted.Operations = 0;
            run.Go(launch.X, 0.0, launch.Velocity.X, launch.Velocity.Y, Unsafe.As<Quat<Real>, Quat<Counted>>(ref at), Unsafe.As<Vec3<Real>, Vec3<Counted>>(ref turning), launch.Loft);
            operations += Counted.Operations;
        }
        return (double)operations / ReleaseSet.Releases.Length;
    }
}
