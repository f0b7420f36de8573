using BallSim.Balls;
using BallSim.Integration;
using BallSim.Motion;
using BallSim.Spatial;

namespace BallSim.Shots;

/// <summary>
/// The spin test: a ball set spinning on a support that lets it turn freely. Without dissipation the spin axis goes round a closed curve in
/// the ball for ever and migrates nowhere; with it, the axis works its way to that of greatest inertia, which is how the preferred axis is
/// found in practice.
/// </summary>
/// <remarks>
/// Neglected: the weight's moment on an offset centre of mass (the ball turns about its centre of mass) and any wandering of the ball on
/// its support.
/// </remarks>
public static class SpinTest
{
    // A step turns the ball by at most this, so that the rate of the rotation vector is exact to 1e-10.
    private const double MaxTurn = 1;

    /// <summary>Spins a ball.</summary>
    /// <param name="ball">The ball.</param>
    /// <param name="angularVelocity">Angular velocity at the start, in the ball frame, rad/s; up to 500 rad/s, not zero.</param>
    /// <param name="dissipation">What takes energy from the spin; <see cref="SpinDissipation.None"/> for a free body.</param>
    /// <param name="duration">Time to compute, s; 0.001 to 3600.</param>
    /// <param name="orientation">Ball frame to lane frame at the start; null: the two coincide. It matters for the support and for what the
    /// lane frame sees.</param>
    /// <param name="options">Tolerance and limits; <see cref="SpinTestOptions.Default"/> if null.</param>
    /// <exception cref="ArgumentException">A number out of its range; the message says which.</exception>
    public static SpinRecord Run(Ball ball, Vector3D angularVelocity, SpinDissipation dissipation, double duration,
        Rotation? orientation = null, SpinTestOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(ball);
        ArgumentNullException.ThrowIfNull(dissipation);
        options ??= SpinTestOptions.Default;
        Check.Finite(angularVelocity);
        Check.Range(angularVelocity.Length, 1e-3, 500, Quantity.SpinRate, nameof(angularVelocity));
        Check.Range(duration, 1e-3, 3600, Quantity.Time);
        Check.That(dissipation.RotorCoupling == 0 || dissipation.RotorMoment > 0,
            "RotorCoupling says how strongly the rotor is coupled but not how large it is; give RotorMoment, for example 0.002 kg m², too",
            nameof(dissipation));
        var start = orientation ?? Rotation.Identity;
        Check.That(Math.Abs(start.Norm - 1) < 1e-6,
            $"orientation has the length {Check.Text(start.Norm)}; a rotation is a unit quaternion", nameof(orientation));

        var inertia = ball.Inertia.Spatial;
        var ode = new Spin<Real>
        {
            I_B = inertia,
            InverseI_B = inertia.Inverse(),
            Coupling = dissipation.RotorCoupling,
            InverseRotor = dissipation.RotorMoment > 0 ? 1 / dissipation.RotorMoment : 0,
            Air = dissipation.Air,
            Slowing = dissipation.Slowing,
            Square = dissipation.SquareToMomentum,
            SupportLevel = dissipation.SupportLevel,
            SupportUpright = dissipation.SupportUpright,
            Start = start.Normalised.Spatial,
        };
        var hasRotor = dissipation.RotorCoupling > 0;
        var ω = start.Normalised.Apply(angularVelocity).Spatial;
        SpinState<Real> y = default;
        y.Rotor = (hasRotor ? dissipation.RotorMoment : 0.0) * ω;
        y.Momentum = ode.Start.Matrix().Turned(inertia) * ω + y.Rotor;
        var (segments, complete) = Integrate(ode, y, duration, options);
        return new(ball, dissipation, segments, hasRotor, complete);
    }

    private static (SpinSegment[] Segments, bool Complete) Integrate(Spin<Real> ode, SpinState<Real> y, double duration, SpinTestOptions options)
    {
        List<SpinSegment> segments = new(1024);
        Step<SpinState<Real>> step = default;
        step.Start = y;
        ode.Rates(y, out step.K1);
        var first = y.Momentum.Dot(y.Momentum);
        var (time, h, lastNorm) = (0.0, 0.02 / Math.Sqrt(ode.ω.Dot(ode.ω)), 1.0);
        for (var taken = 0; taken < options.MaxSteps; taken++)
        {
            // The turn is known at the start of a step only; dissipation does not speed a ball up.
            h = Math.Min(h, MaxTurn / (1e-9 + Math.Sqrt(ode.ω.Dot(ode.ω))));
            var last = time + h >= duration;
            h = last ? duration - time : h;
            RungeKutta5<Spin<Real>, SpinState<Real>, Real>.Take(ref ode, ref step, h, out var error);
            // Relative to the momentum that is left, so that the direction of a slow spin is as good as that of a fast one.
            var scale = Math.Sqrt(Math.Max(step.Start.Momentum.Dot(step.Start.Momentum), 1e-24 * first));
            var norm = Math.Max(Length(error.Turn), Math.Max(Length(error.Momentum), Length(error.Rotor)) / scale) / options.Tolerance;
            if (!(norm <= 1))
            {
                h *= Math.Min(Pace<Real>.Factor(Math.Min(norm, 1e20), lastNorm), 0.8);
                // The rates were last taken at the end of the step that failed.
                ode.Rates(step.Start, out step.K1);
                continue;
            }
            segments.Add(new(time, h, step, ode.Start));
            if (last)
            {
                return ([.. segments], true);
            }
            time += h;
            h *= Pace<Real>.Factor(norm, lastNorm);
            lastNorm = norm;
            ode.Start = ode.Start.Turned(step.End.Turn).Normalised();
            step.Start = step.End;
            step.Start.Turn = default;
            ode.Rates(step.Start, out step.K1);
        }
        return ([.. segments], false);
    }

    private static double Length(Vec3<Real> v) => Math.Sqrt(v.Dot(v));
}
