using BallSim.Friction;
using BallSim.Integration;
using BallSim.Motion;
using BallSim.Releases;
using BallSim.Spatial;

namespace BallSim.Tests.Motion;

/// <summary>
/// A plain driver of the equations of sliding and rolling, with the limit of grip as a parameter: short steps in time, events to the nearest step. The driver of the library knows one limit; here another can be
/// tried without writing it there. A ball that must slip begins in the direction to which the contact's own answer is parallel; where that answer is against it, no slip can begin, and the ball sticks in the same instant.
/// </summary>
internal sealed class StickSlip(Body<Real> body, FilmSurface<Real, MapOfReal> surface)
{
    // A slip begins with this and ends below half of it, m/s.
    private const double FirstSlip = 1e-8;

    private const double Longest = 2e-4, LongestInRoll = 5e-6, LongestWhileStiff = 1e-5;

    private Slide<Real, FilmSurface<Real, MapOfReal>> slide = new() { Body = body, Surface = surface };
    private Roll<Real, FilmSurface<Real, MapOfReal>> roll = new() { Body = body, Surface = surface };
    private Step<State<Real>> step;
    private State<Real> y;
    private Quat<Real> q;
    private bool stiff;

    /// <summary>Times of the changes between sliding and rolling so far, s.</summary>
    public List<double> Changes { get; } = [];

    public double Time => y.Time;

    /// <summary>Runs until a time or until so many changes; the limit is the friction coefficient at which rolling ends, of what is known of the oil while the ball rolls.</summary>
    public void Go(InitialState start, Func<CoverContact<Real>, Real, double> limit, double until, int mostChanges)
    {
        slide.Surface.Roam();
        roll.Surface.Roam();
        q = (start.Orientation.Spatial * body.Axes).Normalised();
        var R_LB = q.Matrix();
        Vec3<Real> ω = start.AngularVelocity.Spatial, across = ω.Cross(R_LB * body.d_P);
        y = default;
        (y.X, y.Y, y.VelocityX, y.VelocityY) = (start.X, start.Y, start.VelocityX + across.X, start.VelocityY + across.Y);
        y.Momentum = R_LB * body.Moments.Times(R_LB.Back(ω));
        var slides = true;
        while (y.Time < until && Changes.Count < mostChanges)
        {
            var changed = slides ? !SlideOn() : !RollOn(limit);
            if (changed)
            {
                Changes.Add(y.Time);
                slides = !slides;
            }
        }
    }

    private bool SlideOn()
    {
        slide.Start = q;
        step.Start = y;
        slide.Rates(y, out step.K1);
        var c = default(SlideContact<Real>);
        c.At(body, q, y);
        slide.Push(ref c, y, c.s, out _);
        var (ax, ay) = c.SlipRate(body);
        double s = c.s, falls = -(ax * c.sx + ay * c.sy) / c.s, grip = Math.Sqrt(c.fx * c.fx + c.fy * c.fy);
        if (falls > 0 && s < FirstSlip / 2)
        {
            // An impulse at the contact takes the rest of the slip and leaves the momentum about the contact alone.
            var σ = new Vec3<Real>(c.r_d.X, c.r_d.Y, c.r_d.Z + body.Radius);
            y.Momentum = y.Momentum + body.Mass * σ.Cross(new(y.VelocityX, y.VelocityY, c.ωr_d.Z));
            return false;
        }
        var h = falls > 0 ? Math.Min(Longest, 0.9 * s / falls) : Longest;
        // The direction of the slip relaxes at the rate stiffness/s: too fast for an explicit step while slip has hardly begun.
        var stiffness = grip * Compliance;
        stiff = stiff && 2.5 * s < stiffness * LongestWhileStiff;
        if (stiff)
        {
            slide.Linearise(y);
            RosenbrockW3<Slide<Real, FilmSurface<Real, MapOfReal>>, State<Real>, Real>.Take(ref slide, ref step, Math.Min(0.2 * s / Math.Abs(falls), LongestWhileStiff), out _);
        }
        else
        {
            RungeKutta5<Slide<Real, FilmSurface<Real, MapOfReal>>, State<Real>, Real>.Take(ref slide, ref step, Math.Min(h, 2.5 * s / stiffness), out _);
        }
        Advance();
        return true;
    }

    private bool RollOn(Func<CoverContact<Real>, Real, double> limit)
    {
        roll.Start = q;
        step.Start = y;
        roll.Contact(y, out var c, out var cover);
        if (c.Demand > limit(cover, y.CoverFilm) * c.N)
        {
            var rolling = y;
            y = y with { VelocityX = c.vx + c.ωrx, VelocityY = c.vy + c.ωry, Momentum = c.I_L * c.ω };
            if (BeginsToSlip(-c.fx / c.Demand, -c.fy / c.Demand))
            {
                return false;
            }
            // To sliding and back, and nothing has moved.
            Changes.AddRange([y.Time, y.Time]);
            y = rolling;
            return true;
        }
        roll.Rates(y, out step.K1);
        RungeKutta5<Roll<Real, FilmSurface<Real, MapOfReal>>, State<Real>, Real>.Take(ref roll, ref step, LongestInRoll, out _);
        Advance();
        return true;
    }

    // From the direction against the force that rolling asks for to that of the slip's own growth: Newton on the angle.
    private bool BeginsToSlip(double ex, double ey)
    {
        slide.Start = q;
        var c = default(SlideContact<Real>);
        c.At(body, q, y);
        double along = 0;
        for (var i = 0; i < 20; i++)
        {
            (c.ex, c.ey) = (ex, ey);
            slide.Push(ref c, y, 0.0, out var cover);
            double μ = cover.Friction;
            var (ax, ay) = c.SlipRate(body);
            along = ax * ex + ay * ey;
            var turn = (ex * ay - ey * ax) / (μ * c.N * Compliance + Math.Max(along, 0));
            (ex, ey) = (ex * Math.Cos(turn) - ey * Math.Sin(turn), ey * Math.Cos(turn) + ex * Math.Sin(turn));
        }
        (y.VelocityX, y.VelocityY) = (y.VelocityX + FirstSlip * ex, y.VelocityY + FirstSlip * ey);
        stiff = true;
        return along > 0;
    }

    private double Compliance => 1 / body.Mass + body.Radius * body.Radius / Math.Min(body.Moments.X, Math.Min(body.Moments.Y, body.Moments.Z));

    private void Advance()
    {
        y = step.End;
        q = q.Turned(y.Turn).Normalised();
        y.Turn = new(0, 0, 0);
    }
}
