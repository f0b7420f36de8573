using BallSim.Friction;
using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>What can be seen of the ball at one instant, whatever the phase: everything in the lane frame.</summary>
internal struct Moment<T>
    where T : struct, IReal<T>
{
    public Phase Phase;
    public T Time, X, Y, VelocityX, VelocityY, SlipX, SlipY;
    public Quat<T> Orientation;
    public Vec3<T> AngularVelocity, ContactForce, Offset;

    /// <summary>Friction coefficient at the contact; while rolling, the one at which it would start to slide.</summary>
    public T Friction;

    /// <summary>Film on the cover, and the oil at the contact; while rolling those of the force that holds.</summary>
    public T CoverFilm, Fresh;

    public T Value, Revolutions, FrictionWork, DragWork;

    /// <summary>The instant that a state of a phase describes, relative to an orientation.</summary>
    public static Moment<T> Of<TSurface>(Phase phase, in State<T> y, Quat<T> start, in Body<T> body, TSurface surface)
        where TSurface : struct, ISurface<T>
    {
        surface.Roam();
        T zero = 0.0;
        var m = new Moment<T>
        {
            Phase = phase,
            Time = y.Time,
            X = y.X,
            Y = y.Y,
            Orientation = (start.Turned(y.Turn) * body.Axes.Inverse).Normalised(),
            CoverFilm = y.CoverFilm,
            Fresh = 1.0,
            Revolutions = y.Revolutions,
            FrictionWork = y.FrictionWork,
            DragWork = y.DragWork,
            Value = phase == Phase.Loft ? zero : surface.Value(y.X, y.Y),
        };
        switch (phase)
        {
            case Phase.Slide:
                var slide = default(SlideContact<T>);
                slide.At(body, start, y);
                var ode = new Slide<T, TSurface> { Body = body, Surface = surface, Start = start };
                ode.Push(ref slide, y, slide.s, out var cover);
                (m.Friction, m.Fresh) = (cover.Friction, cover.Fresh);
                (m.VelocityX, m.VelocityY, m.SlipX, m.SlipY) = (slide.vx, slide.vy, slide.sx, slide.sy);
                (m.AngularVelocity, m.ContactForce, m.Offset) = (slide.ω, slide.f, slide.r_d);
                break;
            case Phase.Roll:
                new Roll<T, TSurface> { Body = body, Surface = surface, Start = start }.Contact(y, out var roll, out var held);
                (m.Friction, m.Fresh) = (held.Friction, held.Fresh);
                (m.VelocityX, m.VelocityY) = (roll.vx, roll.vy);
                (m.AngularVelocity, m.ContactForce, m.Offset) = (roll.ω, roll.f, roll.r_d);
                break;
            default:
                Kinematics<T>.Turned(start, y, body.InverseMoments, body.d_P, out var inverse, out m.Offset);
                (m.VelocityX, m.VelocityY) = (y.VelocityX, y.VelocityY);
                m.AngularVelocity = inverse * y.Momentum;
                break;
        }
        return m;
    }
}
