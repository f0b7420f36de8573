namespace BallSim.Balls;

/// <summary>An ellipsoid about its own origin, its half axes along x, y and z.</summary>
internal sealed class EllipsoidShape(double a, double b, double c) : Shape, RayIntegral.ISilhouette
{
    /// <inheritdoc/>
    public override Moments Moments { get; } = Filled(a, b, c);

    /// <inheritdoc/>
    public override double Reach(Vector3D from)
    {
        // The farthest point y of the unit sphere, stretched: y → unit of D(Dy - p) climbs; from each axis on the far side, so that the
        // highest of several summits is found.
        var greatest = 0.0;
        foreach (var start in (Vector3D[])[Vector3D.UnitX, Vector3D.UnitY, Vector3D.UnitZ])
        {
            var y = start.Dot(from) > 0 ? -start : start;
            for (var i = 0; i < 200; i++)
            {
                y = Stretched(Stretched(y) - from).Unit;
            }
            greatest = Math.Max(greatest, (Stretched(y) - from).Length);
        }
        return greatest;
    }

    /// <inheritdoc/>
    public override void Chords(Vector3D origin, Vector3D direction, List<double> chords)
    {
        var (o, d) = (Shrunk(origin), Shrunk(direction));
        var (dd, od) = (d.Dot(d), o.Dot(d));
        var square = od * od - dd * (o.Dot(o) - 1);
        if (square > 0)
        {
            chords.Add((-od - Math.Sqrt(square)) / dd);
            chords.Add((-od + Math.Sqrt(square)) / dd);
        }
    }

    /// <inheritdoc/>
    public override Moments Within(Shaft shaft) => RayIntegral.Of(this, shaft);

    /// <inheritdoc/>
    public bool HidesGrazes => false;

    /// <inheritdoc/>
    public void Extents(Vector3D direction, List<double> places)
    {
        var half = Stretched(direction).Length;
        places.Add(-half);
        places.Add(half);
    }

    /// <inheritdoc/>
    public void Grazes(Vector3D origin, Vector3D across, Vector3D along, List<double> places)
    {
        // In the stretched space a ray grazes the unit sphere where (o·d)² = d² (o² - 1), o = origin + v across.
        var (o, v, d) = (Shrunk(origin), Shrunk(across), Shrunk(along));
        var (dd, od, vd) = (d.Dot(d), o.Dot(d), v.Dot(d));
        RayIntegral.Roots(vd * vd - dd * v.Dot(v), od * vd - dd * o.Dot(v), od * od - dd * (o.Dot(o) - 1), places);
    }

    private static Moments Filled(double a, double b, double c)
    {
        var volume = 4 * Math.PI / 3 * a * b * c;
        return new(volume, 0, 0, 0, volume * a * a / 5, volume * b * b / 5, volume * c * c / 5, 0, 0, 0);
    }

    private Vector3D Stretched(Vector3D y) => new(a * y.X, b * y.Y, c * y.Z);

    private Vector3D Shrunk(Vector3D y) => new(y.X / a, y.Y / b, y.Z / c);
}
