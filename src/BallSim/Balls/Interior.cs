namespace BallSim.Balls;

/// <summary>
/// What fills a ball: concentric layers about the origin, and parts in the innermost of them. A part displaces what it lies in: the
/// innermost layer, or an earlier part that it lies in wholly.
/// </summary>
internal sealed class Interior
{
    // Chords shorter than this are touching, not overlap, m.
    private const double Touch = 1e-7;

    private readonly (double Radius, double Density)[] layers;
    private readonly Part[] parts;
    private readonly double[] displaced;
    private readonly double fillerVolume;

    /// <param name="layers">Outer radius and density, from the innermost layer outwards.</param>
    /// <param name="parts">The parts, those that lie in others after them.</param>
    public Interior(IReadOnlyList<(double Radius, double Density)> layers, IReadOnlyList<Part> parts)
    {
        (this.layers, this.parts) = ([.. layers], [.. parts]);
        displaced = new double[this.parts.Length];
        var room = this.layers[0].Radius;
        for (var i = 0; i < this.parts.Length; i++)
        {
            var reach = this.parts[i].Solid.Reach(Vector3D.Zero);
            Check.That(reach <= room + Touch,
                $"part {i + 1}, {this.parts[i].Solid}, reaches {Check.Text(reach)} m from the centre of the ball, beyond the {Check.Text(room)} m " +
                "that the cover leaves", nameof(parts));
            displaced[i] = this.layers[0].Density;
            var inFiller = true;
            for (var j = 0; j < i; j++)
            {
                if (LiesIn(j, i))
                {
                    (displaced[i], inFiller) = (this.parts[j].Density, false);
                }
            }
            fillerVolume -= inFiller ? this.parts[i].Solid.Volume : 0;
        }
        fillerVolume += new SphereShape(room).Moments.Total;
        Moments = Sum(layer => layer.Moments, solid => solid.Moments);
    }

    private Interior(Interior of, Rotation turned)
    {
        (layers, displaced, fillerVolume, parts) = (of.layers, of.displaced, of.fillerVolume, [.. of.parts.Select(p => p.Turned(turned))]);
        Moments = of.Moments.Turned(turned);
    }

    /// <summary>Radius of the whole, m.</summary>
    public double Radius => layers[^1].Radius;

    /// <summary>Mass moments of the whole.</summary>
    public Moments Moments { get; }

    /// <summary>Volume of the innermost layer outside all parts, m³.</summary>
    public double FillerVolume => fillerVolume;

    /// <summary>Mass moments of what lies within a shaft.</summary>
    public Moments Within(Shaft shaft) => Sum(layer => layer.Within(shaft), solid => solid.Within(shaft));

    /// <summary>The same interior turned about the centre.</summary>
    public Interior Turned(Rotation rotation) => new(this, rotation);

    private Moments Sum(Func<SphereShape, Moments> ofLayer, Func<Solid, Moments> ofPart)
    {
        // Every layer as a whole sphere, with the difference to what lies round it.
        var sum = default(Moments);
        for (var i = 0; i < layers.Length; i++)
        {
            var step = layers[i].Density - (i + 1 < layers.Length ? layers[i + 1].Density : 0);
            sum += step * ofLayer(new(layers[i].Radius));
        }
        for (var i = 0; i < parts.Length; i++)
        {
            sum += (parts[i].Density - displaced[i]) * ofPart(parts[i].Solid);
        }
        return sum;
    }

    // Whether part i lies wholly in the earlier part j; where they overlap otherwise the build is refused. Seen along a grid of rays
    // askew to the axes, 24 across the part: what is thinner than the grid escapes it.
    private bool LiesIn(int j, int i)
    {
        const int Across = 24;
        var (outer, inner) = (parts[j].Solid, parts[i].Solid);
        var (middle, w) = (inner.Centre, new Vector3D(0.283, 0.519, 0.806).Unit);
        var reach = inner.Reach(middle);
        if (outer.Reach(outer.Centre) + reach < (outer.Centre - middle).Length)
        {
            return false;
        }
        var u = w.Cross(Vector3D.UnitX).Unit;
        var v = w.Cross(u);
        var (theirs, own) = (new List<double>(), new List<double>());
        var (shared, outside) = (0.0, 0.0);
        for (var k = 0; k < Across * Across; k++)
        {
            double Place(int n) => ((n + 0.5) / Across * 2 - 1) * reach;
            var origin = middle + Place(k / Across) * u + Place(k % Across) * v;
            theirs.Clear();
            own.Clear();
            inner.Chords(origin, w, own);
            if (own.Count > 0)
            {
                outer.Chords(origin, w, theirs);
            }
            for (var a = 0; a + 1 < own.Count; a += 2)
            {
                var common = 0.0;
                for (var b = 0; b + 1 < theirs.Count; b += 2)
                {
                    common += Math.Max(0, Math.Min(own[a + 1], theirs[b + 1]) - Math.Max(own[a], theirs[b]));
                }
                shared = Math.Max(shared, common);
                outside = Math.Max(outside, own[a + 1] - own[a] - common);
            }
        }
        Check.That(shared <= Touch || outside <= Touch,
            $"part {i + 1}, {inner}, and part {j + 1}, {outer}, overlap over {Check.Text(shared)} m, and neither lies in the other; " +
            "parts lie beside each other, or a later one wholly in an earlier one", nameof(parts));
        return shared > Touch;
    }
}
