using BallSim.Motion;
using BallSim.Spatial;

namespace BallSim.Gpu;

/// <summary>The numbers of a <see cref="Body{T}"/>; its switches are types here.</summary>
internal struct Constants<T>
    where T : unmanaged, IDeviceReal<T>, IReal<T>
{
    public T Mass, InverseMass, Radius;
    public Vec3<T> Moments, InverseMoments;
    public Quat<T> Axes;
    public Vec3<T> d_P, g;
    public T Drag, Lift, RollingResistance, PickUp, Absorption, ContactRadius, PivotRadius;

    public static Constants<T> Of(in Body<Real> body)
    {
        static T Number(Real a) => (double)a;
        static Vec3<T> Vector(Vec3<Real> a) => new(Number(a.X), Number(a.Y), Number(a.Z));
        return new()
        {
            Mass = Number(body.Mass),
            InverseMass = Number(body.InverseMass),
            Radius = Number(body.Radius),
            Moments = Vector(body.Moments),
            InverseMoments = Vector(body.InverseMoments),
            Axes = new(Number(body.Axes.W), Number(body.Axes.X), Number(body.Axes.Y), Number(body.Axes.Z)),
            d_P = Vector(body.d_P),
            g = Vector(body.g),
            Drag = Number(body.Drag),
            Lift = Number(body.Lift),
            RollingResistance = Number(body.RollingResistance),
            PickUp = Number(body.PickUp),
            Absorption = Number(body.Absorption),
            ContactRadius = Number(body.ContactRadius),
            PivotRadius = Number(body.PivotRadius),
        };
    }

    public readonly Body<T> Body<TEffects>()
        where TEffects : struct, IEffects => Body(TEffects.Value);

    public readonly Body<T> Body(Effects effects)
    {
        Body<T> body = default;
        (body.Mass, body.InverseMass, body.Radius) = (Mass, InverseMass, Radius);
        (body.Moments, body.InverseMoments, body.Axes) = (Moments, InverseMoments, Axes);
        (body.d_P, body.g) = (d_P, g);
        (body.Drag, body.Lift, body.RollingResistance) = (Drag, Lift, RollingResistance);
        (body.PickUp, body.Absorption, body.ContactRadius, body.PivotRadius) = (PickUp, Absorption, ContactRadius, PivotRadius);
        body.Effects = effects;
        return body;
    }
}
