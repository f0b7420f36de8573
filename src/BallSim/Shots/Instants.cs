using BallSim.Friction;
using BallSim.Lanes;
using BallSim.Motion;
using BallSim.Spatial;

namespace BallSim.Shots;

/// <summary>Turns a kept state into what can be seen of the ball; hides the kind of surface from the shot.</summary>
internal abstract class Instants
{
    /// <summary>r_c, half the width of the strip that the contact leaves, m.</summary>
    public abstract double ContactRadius { get; }

    public abstract PathPoint At(Phase phase, in State<Real> state, Quat<Real> start);

    /// <summary>What passes between lane and cover; nothing in the air, on a lane of given friction, and where the cover carries no oil.</summary>
    public abstract OilExchange ExchangeAt(Phase phase, in State<Real> state, Quat<Real> start);
}

/// <summary>The same for one kind of surface.</summary>
internal sealed class Instants<TSurface>(Body<Real> body, TSurface surface, Lane lane, Hand hand) : Instants
    where TSurface : struct, ISurface<Real>
{
    public override double ContactRadius => body.ContactRadius;

    public override PathPoint At(Phase phase, in State<Real> state, Quat<Real> start)
    {
        var m = Moment<Real>.Of(phase, state, start, body, surface);
        var ω = Vector3D.From(m.AngularVelocity);
        var offset = Vector3D.From(m.Offset);
        var velocity = new Vector3D(m.VelocityX, m.VelocityY, 0) + ω.Cross(offset);
        var place = new Vector3D(m.X, m.Y, body.Radius) + offset;
        var turn = Vector3D.From((m.Orientation * body.Axes).Matrix().Back(m.AngularVelocity));
        var spinEnergy = 0.5 * (body.Moments.X * turn.X * turn.X + body.Moments.Y * turn.Y * turn.Y + body.Moments.Z * turn.Z * turn.Z);
        return new()
        {
            Time = m.Time,
            Phase = PathRecorder.Public(phase),
            X = m.X,
            Y = m.Y,
            Board = lane.BoardAt(m.X),
            VelocityX = m.VelocityX,
            VelocityY = m.VelocityY,
            Orientation = Rotation.From(m.Orientation),
            AngularVelocity = ω,
            SlipX = m.SlipX,
            SlipY = m.SlipY,
            ContactForce = Vector3D.From(m.ContactForce),
            Friction = m.Friction,
            Film = lane.GivenFriction is null ? m.Value : 0,
            CoverFilm = m.CoverFilm,
            FreshCover = m.Fresh,
            OilUptake = OilUptake(m),
            Offset = offset,
            Revolutions = m.Revolutions,
            FrictionWork = m.FrictionWork,
            DragWork = m.DragWork,
            Energy = 0.5 * body.Mass * velocity.Dot(velocity) + spinEnergy - body.Mass * Vector3D.From(body.g).Dot(place)
                - (TSurface.HasSlopes ? body.Mass * body.g.Z * lane.Topography.HeightAt(place.X, place.Y) : 0),
            Hand = hand,
        };
    }

    private double OilUptake(in Moment<Real> m)
    {
        if (m.Phase == Phase.Loft)
        {
            return 0;
        }
        double old = (1 - m.Fresh) * m.CoverFilm;
        double through = Math.Sqrt(Square(m.VelocityX - m.SlipX) + Square(m.VelocityY - m.SlipY));
        return 2 * body.ContactRadius * through * (body.PickUp * surface.FilmInContact(m.Value + old) - old);
    }

    private static double Square(double a) => a * a;

    public override OilExchange ExchangeAt(Phase phase, in State<Real> state, Quat<Real> start)
    {
        if (phase == Phase.Loft || !body.HasCoverOil)
        {
            return default;
        }
        var m = Moment<Real>.Of(phase, state, start, body, surface);
        double fresh = m.Fresh, onCover = m.CoverFilm, spin = Math.Sqrt(m.AngularVelocity.Dot(m.AngularVelocity));
        double overCover = body.Radius * Math.Sqrt(m.AngularVelocity.X * m.AngularVelocity.X + m.AngularVelocity.Y * m.AngularVelocity.Y);
        var swept = 2 * body.ContactRadius * overCover;
        double speed = Math.Sqrt(m.VelocityX * m.VelocityX + m.VelocityY * m.VelocityY), down = Math.Abs(m.VelocityY);
        return new()
        {
            X = m.X,
            Y = m.Y,
            HalfStrip = body.ContactRadius * (speed < OilExchange.MostAcross * down ? speed / down : OilExchange.MostAcross),
            FromLane = OilUptake(m),
            Ring = spin > 0 ? 2 * Math.PI * swept / spin : 0,
            Absorbed = spin > 0 ? 2 * Math.PI * swept / spin * body.Absorption * onCover : 0,
            LeftOnOldRings = swept * fresh * onCover,
        };
    }
}
