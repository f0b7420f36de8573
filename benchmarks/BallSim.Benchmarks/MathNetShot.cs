using BallSim.Motion;
using BallSim.Releases;
using BallSim.Spatial;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.OdeSolvers;

namespace BallSim.Benchmarks;

/// <summary>
/// The same shot as a careful user of a general library would solve it: MathNet's classical Runge-Kutta method at a fixed step, on the textbook variables (velocity of the centre, angular
/// velocity in the body, quaternion), the events found by halving the step. The forces come from the library's own equations, so that both solve the same problem.
/// </summary>
internal sealed class MathNetShot(Body<Real> body, double step)
{
    // Components: x, y, vx, vy, q (4), ω in the body (3).
    private const int Size = 11;

    // Slip, m/s, that is taken for none: below it an explicit method only chatters about s = 0.
    private const double Faded = 3e-7;

    private Vector<double> y = Vector<double>.Build.Dense(Size);
    private double time;

    /// <summary>Place across and time at the touch of the head pin, or at the pins' line.</summary>
    public (double X, double Time) Throw(InitialState start, double touch, double pinsAt)
    {
        // The body frame of the equations is that of the principal axes.
        var q = Rotation.From((start.Orientation.Spatial * body.Axes).Normalised());
        var spin = q.Inverse.Apply(start.AngularVelocity);
        y = Vector<double>.Build.Dense([start.X, start.Y, start.VelocityX, start.VelocityY, q.W, q.X, q.Y, q.Z, spin.X, spin.Y, spin.Z]);
        time = 0;
        double End(Vector<double> v) => Math.Max(touch - Math.Sqrt(v[0] * v[0] + (v[1] - pinsAt) * (v[1] - pinsAt)), v[1] - pinsAt);
        var rolls = false;
        while (true)
        {
            var h = rolls ? step : Math.Min(step, SlideStep());
            var next = Step(rolls, y, h);
            if (End(next) >= 0)
            {
                Halve(rolls, ref h, v => End(v) >= 0);
                return (y[0], time);
            }
            if (!rolls)
            {
                var (sx, sy) = Slip(y);
                var (nx, ny) = Slip(next);
                var faded = (nx * nx) + (ny * ny) < Faded * Faded;
                if (faded || (sx * nx) + (sy * ny) < 0)
                {
                    if (!faded)
                    {
                        Halve(false, ref h, v => Slip(v) is var (tx, ty) && (sx * tx) + (sy * ty) < 0);
                    }
                    rolls = Excess(y) <= 0;
                    if (!rolls)
                    {
                        StartSlip();
                    }
                    continue;
                }
            }
            else if (Excess(next) > 0)
            {
                Halve(true, ref h, v => Excess(v) > 0);
                StartSlip();
                rolls = false;
                continue;
            }
            (y, time) = (next, time + h);
        }
    }

    // Brings the step down to where the condition first holds, and takes it.
    private void Halve(bool rolls, ref double h, Func<Vector<double>, bool> beyond)
    {
        double low = 0, high = h;
        for (var i = 0; i < 40; i++)
        {
            var middle = 0.5 * (low + high);
            (low, high) = beyond(Step(rolls, y, middle)) ? (low, middle) : (middle, high);
        }
        (y, time) = (Step(rolls, y, high), time + high);
    }

    private Vector<double> Step(bool rolls, Vector<double> from, double h) =>
        RungeKutta.FourthOrder(from, 0, h, 2, rolls ? Roll : Slide)[1];

    // Near s = 0 an explicit method has to follow the direction of the slip.
    private double SlideStep()
    {
        var (sx, sy) = Slip(y);
        return Math.Max(0.06 * Math.Sqrt((sx * sx) + (sy * sy)), 1e-8);
    }

    private Vector<double> Slide(double t, Vector<double> v)
    {
        var c = SlideContact(v, out var momentum);
        c.Push(body, Friction(v[1]));
        var inner = c.α.Cross(c.r_d) + c.ω.Cross(c.ωr_d);
        var (aX, aY) = (c.ax - inner.X, c.ay - inner.Y);
        return Rates(v, c.vx, c.vy, aX, aY, Turn(v).R_LB.Back(c.α));
    }

    private Vector<double> Roll(double t, Vector<double> v)
    {
        var c = RollContact(v);
        c.Hold(body, new(0.0, 0.0, 0.0));
        return Rates(v, c.vx, c.vy, body.Radius * c.α.Y, -body.Radius * c.α.X, Turn(v).R_LB.Back(c.α));
    }

    private static Vector<double> Rates(Vector<double> v, double vx, double vy, double ax, double ay, Vec3<Real> spinRate)
    {
        var (w, x, y, z) = (v[4], v[5], v[6], v[7]);
        var (p, q, r) = (v[8], v[9], v[10]);
        return Vector<double>.Build.Dense([
            vx, vy, ax, ay,
            -0.5 * ((x * p) + (y * q) + (z * r)), 0.5 * ((w * p) + (y * r) - (z * q)), 0.5 * ((w * q) + (z * p) - (x * r)), 0.5 * ((w * r) + (x * q) - (y * p)),
            spinRate.X, spinRate.Y, spinRate.Z]);
    }

    private SlideContact<Real> SlideContact(Vector<double> v, out Vec3<Real> momentum)
    {
        var (q, R_LB, ω) = Turn(v);
        momentum = R_LB * body.Moments.Times(new(v[8], v[9], v[10]));
        var ωr_d = ω.Cross(R_LB * body.d_P);
        var state = new State<Real> { X = v[0], Y = v[1], VelocityX = v[2] + ωr_d.X, VelocityY = v[3] + ωr_d.Y, Momentum = momentum };
        var c = default(SlideContact<Real>);
        c.At(body, q, state);
        return c;
    }

    private RollContact<Real> RollContact(Vector<double> v)
    {
        var (q, R_LB, ω) = Turn(v);
        var r_d = R_LB * body.d_P;
        var J_L = R_LB.Turned(new(body.Moments.X, body.Moments.Y, body.Moments.Z, 0, 0, 0)).AtArm(body.Mass, new(r_d.X, r_d.Y, r_d.Z + body.Radius));
        var c = default(RollContact<Real>);
        c.At(body, q, new State<Real> { X = v[0], Y = v[1], Momentum = J_L * ω });
        return c;
    }

    private static (Quat<Real> Q, Mat3<Real> R_LB, Vec3<Real> ω) Turn(Vector<double> v)
    {
        var q = new Quat<Real>(v[4], v[5], v[6], v[7]).Normalised();
        var R_LB = q.Matrix();
        return (q, R_LB, R_LB * new Vec3<Real>(v[8], v[9], v[10]));
    }

    private (double X, double Y) Slip(Vector<double> v)
    {
        var c = SlideContact(v, out _);
        return (c.sx, c.sy);
    }

    private double Excess(Vector<double> v)
    {
        var c = RollContact(v);
        c.Hold(body, new(0.0, 0.0, 0.0));
        return (double)c.Demand - (Friction(v[1]) * (double)c.N);
    }

    // Past the limit of grip by a moment, with half the acceleration that sliding adds in it.
    private void StartSlip()
    {
        const double Moment = 3e-4;
        y = Step(true, y, Moment);
        time += Moment;
        var held = RollContact(y);
        held.Hold(body, new(0.0, 0.0, 0.0));
        var c = SlideContact(y, out var momentum);
        c.s = 1.0;
        (c.ex, c.ey) = (-held.fx / held.Demand, -held.fy / held.Demand);
        c.Push(body, Friction(y[1]));
        var inner = c.α.Cross(c.r_d) + c.ω.Cross(c.ωr_d);
        var (aX, aY) = (c.ax - inner.X, c.ay - inner.Y);
        var Δ = Turn(y).R_LB.Back(c.α - held.α);
        y[2] = held.vx + (0.5 * Moment * (aX - (body.Radius * held.α.Y)));
        y[3] = held.vy + (0.5 * Moment * (aY + (body.Radius * held.α.X)));
        y[8] += 0.5 * Moment * Δ.X;
        y[9] += 0.5 * Moment * Δ.Y;
        y[10] += 0.5 * Moment * Δ.Z;
    }

    private static double Friction(double y) => ReleaseSet.Lane.GivenFriction!.At(0, y);
}
