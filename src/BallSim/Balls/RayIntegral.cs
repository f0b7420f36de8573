namespace BallSim.Balls;

/// <summary>Integrals over what of a form lies within a shaft, by rays along the shaft: along each ray in closed form, across them
/// adaptively.</summary>
internal static class RayIntegral
{
    // Bound of what a panel may be off by, of the square of the shaft's radius times the reach of the form. Held against spheres, whose
    // integral is exact, the whole comes out within 1e-8 of itself; the ball's moments inherit that times the share of the hole in the
    // ball, a hundredth or less.
    private const double Tolerance = 1e-9;

    /// <summary>What the integral needs to know of a form beside its chords.</summary>
    internal interface ISilhouette
    {
        /// <summary>Adds places along a direction of length one where the outline of the form begins, ends or may change.</summary>
        void Extents(Vector3D direction, List<double> places);

        /// <summary>Whether <see cref="Grazes"/> leaves some out; they are then looked for along each slice.</summary>
        bool HidesGrazes { get; }

        /// <summary>
        /// Adds the places v at which, in the plane of origin + v across + w along, a line of constant v grazes the form or meets an edge.
        /// </summary>
        void Grazes(Vector3D origin, Vector3D across, Vector3D along, List<double> places);
    }

    /// <summary>The integral; the form must not reach beyond the shaft's mouth.</summary>
    public static Moments Of<T>(T shape, Shaft shaft) where T : Shape, ISilhouette
    {
        var (bottom, w, a) = shaft;
        var reach = shape.Reach(bottom);
        var (u, v) = shaft.FrameTowards(shape.Middle);
        var length = Math.Max(a, reach);
        var tolerance = Tolerance * a * a * reach;
        var (chords, grazes, outer) = (new List<double>(), new List<double>(), new List<double>());

        Moments Ray(double x, double y)
        {
            chords.Clear();
            shape.Chords(bottom + x * u + y * v, w, chords);
            var (l1, l2, l3) = (0.0, 0.0, 0.0);
            for (var i = 0; i + 1 < chords.Count; i += 2)
            {
                var (low, high) = (Math.Max(0, chords[i]), chords[i + 1]);
                if (high > low)
                {
                    l1 += high - low;
                    l2 += (high - low) * (high + low) / 2;
                    l3 += (high - low) * (high * high + high * low + low * low) / 3;
                }
            }
            return new(l1, x * l1, y * l1, l2, x * x * l1, y * y * l1, l3, x * y * l1, y * l2, x * l2);
        }
        Moments Slice(double x)
        {
            var half = Math.Sqrt(Math.Max(0, a * a - x * x));
            var origin = bottom + x * u;
            grazes.Clear();
            // Where the surface crosses the flat bottom the lower end of a ray changes from one to the other.
            shape.Chords(origin, v, grazes);
            shape.Grazes(origin, v, w, grazes);
            if (shape.HidesGrazes)
            {
                Search(y =>
                {
                    chords.Clear();
                    shape.Chords(origin + y * v, w, chords);
                    return chords.Count;
                }, half, grazes);
            }
            return Quadrature.Piecewise(y => Ray(x, y), -half, half, grazes, 0.02 * tolerance / a, length);
        }

        shape.Extents(u, outer);
        for (var i = 0; i < outer.Count; i++)
        {
            outer[i] -= bottom.Dot(u);
        }
        outer.Add(0);
        return Quadrature.Piecewise(Slice, -a, a, outer, tolerance, length)
            .Turned(Rotation.Between(Vector3D.UnitX, Vector3D.UnitY, u, v)).Moved(bottom);
    }

    // Where a line grazes the form the number of its chords changes: seen at a row of places, then halved down to a 1e-8th of the slice.
    // Two changes between neighbouring places stay unseen and are left to the adaptive quadrature.
    private static void Search(Func<double, int> chords, double half, List<double> places)
    {
        const int Places = 24;
        var (from, atFrom) = (-half, chords(-half));
        for (var i = 1; i <= Places; i++)
        {
            // Closer at the ends, where a slice may only just be cut.
            var to = -half * Math.Cos(Math.PI * i / Places);
            var atTo = chords(to);
            if (atTo != atFrom)
            {
                var (low, high) = (from, to);
                for (var k = 0; k < 28 && (low + high) / 2 is var middle && middle > low && middle < high; k++)
                {
                    (low, high) = chords(middle) == atFrom ? (middle, high) : (low, middle);
                }
                places.Add((low + high) / 2);
            }
            (from, atFrom) = (to, atTo);
        }
    }

    /// <summary>Adds the real roots of a v² + 2 b v + c.</summary>
    public static void Roots(double a, double b, double c, List<double> places)
    {
        var d = b * b - a * c;
        if (d < 0 || (a == 0 && b == 0))
        {
            return;
        }
        // The form without cancellation; a root at infinity is no place.
        var q = -(b + Math.CopySign(Math.Sqrt(d), b));
        if (q != 0)
        {
            places.Add(c / q);
        }
        if (a != 0 && double.IsFinite(q / a))
        {
            places.Add(q / a);
        }
    }
}
