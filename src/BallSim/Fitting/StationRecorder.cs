using BallSim.Friction;
using BallSim.Integration;
using BallSim.Motion;
using BallSim.Spatial;

namespace BallSim.Fitting;

/// <summary>Notes the ball where it passes stations, on the dense output of the steps. Stations are in order; places and instants each have a queue of their own.</summary>
internal struct StationRecorder<TSurface>(Body<Dual> body, TSurface surface, Hand hand, Dual clockOffset, Station[] stations, Passage[] passages) : IRecorder<Dual>
    where TSurface : struct, ISurface<Dual>
{
    // A station on the seam of two steps may lie a rounding error beyond the end of the last.
    private const double Seam = 1e-9;

    private int nextPlace, nextInstant;

    public void Took(Phase phase, in Step<State<Dual>> step, Dual h, Quat<Dual> start)
    {
        for (; Find(ref nextPlace, isTime: false) && stations[nextPlace].At <= (double)step.End.Y + Seam; nextPlace++)
        {
            Pass(nextPlace, phase, step, h, start);
        }
        for (; Find(ref nextInstant, isTime: true) && stations[nextInstant].At + (double)ShownAtStart <= (double)step.End.Time + Seam; nextInstant++)
        {
            Pass(nextInstant, phase, step, h, start);
        }
    }

    public void Changed(Phase from, Phase to, in State<Dual> at, Quat<Dual> start)
    {
        // Paths are continuous: a change of phase is no station.
    }

    // The clock of the track runs ahead of the shot's by the offset.
    private Dual ShownAtStart => -clockOffset;

    private bool Find(ref int next, bool isTime)
    {
        while (next < stations.Length && stations[next].IsTime != isTime)
        {
            next++;
        }
        return next < stations.Length;
    }

    private void Pass(int i, Phase phase, in Step<State<Dual>> s, Dual h, Quat<Dual> start)
    {
        Dense<State<Dual>, Dual>.Coefficients(s.Interpolant, h, s.Start.X, s.End.X, s.K1.X, s.K3.X, s.K4.X, s.K5.X, s.K6.X, s.K7.X, out var x1, out var x2, out var x3, out var x4);
        Dense<State<Dual>, Dual>.Coefficients(s.Interpolant, h, s.Start.Y, s.End.Y, s.K1.Y, s.K3.Y, s.K4.Y, s.K5.Y, s.K6.Y, s.K7.Y, out var y1, out var y2, out var y3, out var y4);
        Dense<State<Dual>, Dual>.Coefficients(s.Interpolant, h, s.Start.Time, s.End.Time, s.K1.Time, s.K3.Time, s.K4.Time, s.K5.Time, s.K6.Time, s.K7.Time, out var t1, out var t2, out var t3, out var t4);
        var station = stations[i];
        var θ = station.IsTime
            ? Reached(station.At + ShownAtStart, s.Start.Time, t1, t2, t3, t4)
            : Reached(station.At, s.Start.Y, y1, y2, y3, y4);
        ref var p = ref passages[i];
        p.IsSeen = true;
        p.X = Value(θ, s.Start.X, x1, x2, x3, x4);
        p.Y = Value(θ, s.Start.Y, y1, y2, y3, y4);
        p.Time = Value(θ, s.Start.Time, t1, t2, t3, t4) - ShownAtStart;
        if (station.AsksMotion)
        {
            Motion(ref p, Moment<Dual>.Of(phase, Dense<State<Dual>, Dual>.Between(s, h, θ), start, body, surface));
        }
    }

    private void Motion(ref Passage p, in Moment<Dual> m)
    {
        var (vx, vy, ω) = (m.VelocityX, m.VelocityY, m.AngularVelocity);
        Dual side = hand == Hand.Right ? 1 : -1;
        p.Speed = Dual.Sqrt(vx * vx + vy * vy);
        p.Heading = Atan2(vx, vy);
        p.SpinRate = Dual.Sqrt(ω.Dot(ω));
        // The release formula inverted, as SpinAxis does, with e = v/|v| and l = n × e.
        var along = (ω.X * vx + ω.Y * vy) / p.Speed;
        var across = (ω.Y * vx - ω.X * vy) / p.Speed;
        p.AxisRotation = Atan2(-(side * along), across);
        p.AxisTilt = Atan2(side * ω.Z, Dual.Sqrt(along * along + across * across));
    }

    // The fraction of the step: Newton on the values, then one step more on the numbers with derivatives, which gives θ its own: -(∂f/∂p)/(∂f/∂θ).
    private static Dual Reached(Dual target, Dual c0, Dual c1, Dual c2, Dual c3, Dual c4)
    {
        double a0 = (double)(c0 - target), a1 = (double)c1, a2 = (double)c2, a3 = (double)c3, a4 = (double)c4;
        var θ = Math.Clamp(-a0 / (a1 + a2 + a3 + a4), 0, 1);
        for (var i = 0; i < 20; i++)
        {
            var move = (a0 + θ * (a1 + θ * (a2 + θ * (a3 + θ * a4)))) / (a1 + θ * (2 * a2 + θ * (3 * a3 + θ * 4 * a4)));
            θ -= move;
            if (Math.Abs(move) < 1e-14)
            {
                break;
            }
        }
        Dual at = θ;
        return at - (Value(at, c0, c1, c2, c3, c4) - target) / (c1 + at * (2.0 * c2 + at * (3.0 * c3 + at * (4.0 * c4))));
    }

    private static Dual Value(Dual θ, Dual c0, Dual c1, Dual c2, Dual c3, Dual c4) => c0 + θ * (c1 + θ * (c2 + θ * (c3 + θ * c4)));

    private static Dual Atan2(Dual y, Dual x)
    {
        double b = (double)y, a = (double)x, square = a * a + b * b;
        return square > 0 ? Dual.Chain(Math.Atan2(b, a), a / square, y, -b / square, x) : 0.0;
    }
}
