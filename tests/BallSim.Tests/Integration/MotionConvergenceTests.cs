using BallSim.Friction;
using BallSim.Integration;
using BallSim.Motion;
using BallSim.Spatial;

namespace BallSim.Tests.Integration;

/// <summary>
/// The order of the method on the equations of motion themselves: fixed steps, the orientation reset after each, an asymmetric ball with
/// an offset and drag. The method's own error of order
/// five is so small that at the steps of a shot the next order hides it, and where it shows doubles have run out of digits: hence numbers
/// of twice their length. The reference is the same method
/// at a quarter of the smallest step (its error is then a thousandth).
/// </summary>
public class MotionConvergenceTests
{
    private static readonly int[] Counts = [200, 300, 450, 675];

    /// <summary>The same coefficient everywhere.</summary>
    private readonly struct Even(double mu) : ISurface<Twice>
    {
        public static bool HasSlopes => false;

        public void Slopes(Twice x, Twice y, out Twice across, out Twice along) => across = along = 0.0;

        public Twice Enter(Twice y) => double.PositiveInfinity;

        public bool Joins => true;

        public void Roam()
        {
        }

        public BallSim.Friction.FilmLaw<Twice> Law => default;

        public Twice FilmInContact(Twice film) => 0.0;

        public Twice Value(Twice x, Twice y) => mu;

        public Twice Friction(Twice value, Twice slip) => value;

        public Twice Friction(Twice value, Twice slip, out Twice inContact)
        {
            inContact = 0.0;
            return value;
        }

        public Twice BareShare(Twice value, out Twice inContact) => inContact = 0.0;

        public Twice Friction(Twice value, Twice bare, Twice inContact, Twice slip) => value;
    }

    private static Body<Twice> Ball { get; } = new()
    {
        Mass = 7.0,
        InverseMass = (Twice)1.0 / 7.0,
        Radius = 0.1085,
        Moments = new(0.0278, 0.0291, 0.0286),
        InverseMoments = new(1 / (Twice)0.0278, 1 / (Twice)0.0291, 1 / (Twice)0.0286),
        Axes = new(1, 0, 0, 0),
        d_P = new(0.3e-3, 0.8e-3, -0.5e-3),
        g = new(0.0, 0.0, -9.80665),
        Drag = 0.01,
    };

    private static Quat<Twice> Orientation { get; } = new Quat<Twice>(0.5, -0.5, 0.1, 0.7).Normalised();

    private delegate void Turned<TOde>(ref TOde ode, Quat<Twice> q);

    // Place, velocity or momentum, orientation and work after a stretch of motion in a number of equal steps.
    private static Twice[] After<TOde>(TOde ode, Turned<TOde> turned, State<Twice> y, double stretch, int count)
        where TOde : struct, IOde<State<Twice>>
    {
        var q = Orientation;
        var h = (Twice)stretch / count;
        Step<State<Twice>> step = default;
        for (var i = 0; i < count; i++)
        {
            turned(ref ode, q);
            step.Start = y;
            ode.Rates(y, out step.K1);
            RungeKutta5<TOde, State<Twice>, Twice>.Take(ref ode, ref step, h, out _);
            y = step.End;
            q = q.Turned(y.Turn);
            y.Turn = default;
        }
        return [y.Time, y.X, y.Y, y.VelocityX, y.VelocityY, y.MomentumX, y.MomentumY, y.MomentumZ, q.W, q.X, q.Y, q.Z, y.FrictionWork, y.DragWork];
    }

    private static double Order<TOde>(TOde ode, Turned<TOde> turned, State<Twice> start, double stretch)
        where TOde : struct, IOde<State<Twice>>
    {
        var exact = After(ode, turned, start, stretch, 4 * Counts[^1]);
        double Error(int count) => After(ode, turned, start, stretch, count).Zip(exact, (a, b) => Math.Abs((double)(a - b))).Max();
        return Slope.Of([.. Counts.Select(n => stretch / n)], [.. Counts.Select(Error)]);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Sliding(bool byDistance)
    {
        var spin = new Vec3<Twice>(-38.0, 22.0, 9.0);
        var R_LB = Orientation.Matrix();
        var v_G = new Vec3<Twice>(0.3, 8.0, 0.0) + spin.Cross(R_LB * Ball.d_P);
        var start = new State<Twice> { VelocityX = v_G.X, VelocityY = v_G.Y, Momentum = R_LB * Ball.Moments.Times(R_LB.Back(spin)) };
        var ode = new Slide<Twice, Even> { Body = Ball, Surface = new(0.05), ByDistance = byDistance };
        Assert.Equal(5, Order(ode, (ref Slide<Twice, Even> o, Quat<Twice> q) => o.Start = q, start, byDistance ? 1.6 : 0.2), 0.2);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Rolling(bool byDistance)
    {
        var r_d = Orientation.Matrix() * Ball.d_P;
        var σ = new Vec3<Twice>(r_d.X, r_d.Y, r_d.Z + Ball.Radius);
        var start = new State<Twice> { Momentum = Orientation.Matrix().Turned(new(Ball.Moments.X, Ball.Moments.Y, Ball.Moments.Z, 0, 0, 0)).AtArm(Ball.Mass, σ) * new Vec3<Twice>(-60.0, 5.0, 12.0) };
        var ode = new Roll<Twice, Even> { Body = Ball, Surface = new(0.5), ByDistance = byDistance };
        Assert.Equal(5, Order(ode, (ref Roll<Twice, Even> o, Quat<Twice> q) => o.Start = q, start, byDistance ? 1.3 : 0.2), 0.2);
    }

    [Fact]
    public void Numbers_of_twice_the_length_carry_thirty_digits()
    {
        Twice third = (Twice)1.0 / 3.0, root = Twice.Sqrt(2.0);
        Assert.Equal(0, (double)(third * 3.0 - 1.0), 1e-31);
        Assert.Equal(0, (double)(root * root - 2.0), 1e-31);
        Assert.Equal(1e-25, (double)((Twice)1.0 + 1e-25 - 1.0), 1e-32);
    }

    [Fact]
    public void Sums_of_several_terms_are_the_sums_one_after_the_other()
    {
        State<Real> Of(double a) => new() { Time = a, X = a * 1.1, Y = a / 3, VelocityX = -a, VelocityY = a * a, Momentum = new(a, 2 * a, a / 7), Turn = new(a / 9, -a, a * 1.7), Revolutions = a, FrictionWork = -a / 11, DragWork = a };
        var (one, two, three) = (Of(0.3), Of(0.3), Of(0.3));
        one.Add(0.7, Of(1.3));
        one.Add(-0.1, Of(5.9));
        two.Add(0.7, Of(1.3), -0.1, Of(5.9));
        Assert.Equal(one, two);
        one.Add(1.9, Of(-0.4));
        three.Add(0.7, Of(1.3), -0.1, Of(5.9), 1.9, Of(-0.4));
        Assert.Equal(one, three);
    }
}
