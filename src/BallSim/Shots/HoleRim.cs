using BallSim.Drilling;

namespace BallSim.Shots;

/// <summary>The edge that a hole has on the surface of the ball: where its cylinder leaves the sphere.</summary>
internal sealed class HoleRim
{
    // Half a millimetre apart on a finger hole; a touch is told within the contact radius, which is three times that.
    private const int Places = 120;

    // Two neighbouring points of a ring lie some 7 mm apart: how deep it runs over a hole is looked for between.
    private const int Parts = 8;

    private readonly Hole hole;
    private readonly double radius;
    private readonly Vector3D[] rim;

    private HoleRim(Hole hole, double radius, Vector3D[] rim) => (this.hole, this.radius, this.rim) = (hole, radius, rim);

    public static HoleRim Of(Hole hole, double radius)
    {
        var aside = (Math.Abs(hole.Axis.X) < 0.7 ? Vector3D.UnitX : Vector3D.UnitY).Cross(hole.Axis).Unit;
        var other = hole.Axis.Cross(aside);
        var rim = new Vector3D[Places];
        for (var i = 0; i < Places; i++)
        {
            var turn = 2 * Math.PI * i / Places;
            // On the cylinder's wall, then along it to the sphere: |foot + s axis| = R.
            var foot = radius * hole.Entry + hole.Diameter / 2 * (Math.Cos(turn) * aside + Math.Sin(turn) * other);
            var along = foot.Dot(hole.Axis);
            rim[i] = (foot + (Math.Sqrt(along * along - foot.Dot(foot) + radius * radius) - along) * hole.Axis).Unit;
        }
        return new(hole, radius, rim);
    }

    public HoleClearance Clearance(TrackRing ring, double contactRadius)
    {
        var (clearance, distance) = (double.PositiveInfinity, 0.0);
        var places = ring.Places;
        foreach (var edge in rim)
        {
            var nearest = 0;
            for (var i = 1; i < places.Length; i++)
            {
                nearest = edge.Dot(places[i].Contact) > edge.Dot(places[nearest].Contact) ? i : nearest;
            }
            for (var i = Math.Max(nearest, 1); i <= Math.Min(nearest + 1, places.Length - 1); i++)
            {
                var arc = radius * Sphere.ToArc(edge, places[i - 1].Contact, places[i].Contact);
                (clearance, distance) = arc < clearance ? (arc, places[nearest].Distance) : (clearance, distance);
            }
        }
        for (var i = 1; i < places.Length; i++)
        {
            if (!Holds(places[i - 1].Contact) && !Holds(places[i].Contact))
            {
                continue;
            }
            for (var part = 0; part <= Parts; part++)
            {
                var place = (places[i - 1].Contact + part / (double)Parts * (places[i].Contact - places[i - 1].Contact)).Unit;
                var depth = Holds(place) ? ToRim(place) : 0;
                (clearance, distance) = -depth < clearance ? (-depth, places[i].Distance) : (clearance, distance);
            }
        }
        return new(hole, ring.Number, clearance, distance, clearance < contactRadius);
    }

    // Is a direction over the hole's mouth? The cylinder leaves the ball on the other side too, if it is long enough: that is not the mouth.
    private bool Holds(Vector3D direction)
    {
        var from = radius * (direction - hole.Entry);
        var across = from - from.Dot(hole.Axis) * hole.Axis;
        return across.Length < hole.Diameter / 2 && direction.Dot(hole.Axis) > 0;
    }

    private double ToRim(Vector3D direction)
    {
        var least = Sphere.ToArc(direction, rim[^1], rim[0]);
        for (var i = 1; i < rim.Length; i++)
        {
            least = Math.Min(least, Sphere.ToArc(direction, rim[i - 1], rim[i]));
        }
        return radius * least;
    }
}
