namespace BallSim.Balls;

/// <summary>A sphere about its own origin: the layers of a ball, and round inserts.</summary>
internal sealed class SphereShape(double radius) : Shape
{
    /// <inheritdoc/>
    public override Moments Moments { get; } = Ball(radius);

    /// <inheritdoc/>
    public override double Reach(Vector3D from) => from.Length + radius;

    /// <inheritdoc/>
    public override void Chords(Vector3D origin, Vector3D direction, List<double> chords)
    {
        var middle = -origin.Dot(direction);
        var square = middle * middle - origin.Dot(origin) + radius * radius;
        if (square > 0)
        {
            chords.Add(middle - Math.Sqrt(square));
            chords.Add(middle + Math.Sqrt(square));
        }
    }

    /// <summary>
    /// One quadrature in the distance s from the line through the centre along the shaft; the turn about that line is done in closed form.
    /// </summary>
    /// <remarks>
    /// With the shaft's axis at a distance e, radius a, bottom at height b, the circle of radius s lies in the shaft for |φ| ≤ Φ,
    /// <code>
    /// cos Φ = (s² + e² - a²)/(2 s e),   from max(b, -h) to h = √(ρ² - s²)
    /// </code>
    /// </remarks>
    public override Moments Within(Shaft shaft)
    {
        var bottom = shaft.Bottom.Dot(shaft.Axis);
        var (a, across) = (shaft.Radius, shaft.Bottom - bottom * shaft.Axis);
        var e = across.Length;
        // A distance below rounding has no direction; any will do.
        if (e < 1e-12 * radius)
        {
            (e, across) = (0, shaft.Axis.Cross(Math.Abs(shaft.Axis.X) < 0.6 ? Vector3D.UnitX : Vector3D.UnitY));
        }
        var edge = radius * radius - bottom * bottom;
        Moments Ring(double s)
        {
            var h = Math.Sqrt(Math.Max(0, radius * radius - s * s));
            var low = Math.Max(bottom, -h);
            if (low >= h)
            {
                return default;
            }
            var Φ = s + e <= a ? Math.PI : Math.Acos(Math.Clamp((s * s + e * e - a * a) / (2 * s * e), -1, 1));
            var (l1, l2, l3) = (h - low, (h * h - low * low) / 2, (h * h * h - low * low * low) / 3);
            var (turn, cos, cos2, sin2) = (2 * Φ, 2 * Math.Sin(Φ), Φ + Math.Sin(2 * Φ) / 2, Φ - Math.Sin(2 * Φ) / 2);
            return s * new Moments(turn * l1, s * cos * l1, 0, turn * l2, s * s * cos2 * l1, s * s * sin2 * l1, turn * l3, 0, 0, s * cos * l2);
        }
        var places = new List<double> { Math.Abs(a - e) };
        if (edge > 0)
        {
            places.Add(Math.Sqrt(edge));
        }
        var (from, to) = (Math.Max(0, e - a), Math.Min(e + a, bottom >= 0 ? Math.Sqrt(Math.Max(0, edge)) : radius));
        var scale = a * a * radius;
        var local = Quadrature.Piecewise(Ring, from, to, places, 1e-14 * scale, radius);
        var u = across.Unit;
        return local.Turned(Rotation.Between(Vector3D.UnitX, Vector3D.UnitZ, u, shaft.Axis));
    }

    private static Moments Ball(double radius)
    {
        var volume = 4 * Math.PI / 3 * radius * radius * radius;
        var second = volume * radius * radius / 5;
        return new(volume, 0, 0, 0, second, second, second, 0, 0, 0);
    }
}
