namespace BallSim;

/// <summary>The principal moments of an inertia tensor in rising order, and the unit vectors of their axes in the tensor's frame.</summary>
/// <param name="LeastMoment">Smallest principal moment, kg m².</param>
/// <param name="MiddleMoment">Middle principal moment, kg m².</param>
/// <param name="GreatestMoment">Greatest principal moment, kg m².</param>
/// <param name="Least">Axis of the smallest moment, a unit vector.</param>
/// <param name="Middle">Axis of the middle moment, a unit vector.</param>
/// <param name="Greatest">Axis of the greatest moment, a unit vector.</param>
/// <remarks>
/// An axis has no sign of its own: each is given so that its component of largest size is positive. Where moments are equal, any
/// axes of their plane would serve; the ones nearest the frame's own axes come out.
/// </remarks>
public readonly record struct PrincipalAxes(
    double LeastMoment, double MiddleMoment, double GreatestMoment, Vector3D Least, Vector3D Middle, Vector3D Greatest)
{
    /// <summary>
    /// Jacobi's method: plane rotations that each clear one off-diagonal entry, in cyclic order. It squares the off-diagonal size per
    /// sweep,
    /// keeps the axes orthonormal whatever the moments are, and does nothing to a tensor that is diagonal already.
    /// </summary>
    internal static PrincipalAxes Of(InertiaTensor tensor)
    {
        double[,] a =
        {
            { tensor.Xx, tensor.Xy, tensor.Xz },
            { tensor.Xy, tensor.Yy, tensor.Yz },
            { tensor.Xz, tensor.Yz, tensor.Zz },
        };
        Vector3D[] axes = [Vector3D.UnitX, Vector3D.UnitY, Vector3D.UnitZ];
        // Six sweeps reach rounding for any 3 x 3 matrix; the bound guards against input that is not finite.
        for (var sweep = 0; sweep < 12 && (a[0, 1] != 0 || a[0, 2] != 0 || a[1, 2] != 0); sweep++)
        {
            Clear(a, axes, 0, 1);
            Clear(a, axes, 0, 2);
            Clear(a, axes, 1, 2);
        }
        var order = new[] { 0, 1, 2 };
        // Insertion by hand keeps equal moments in the frame's own order.
        if (a[order[1], order[1]] < a[order[0], order[0]])
        {
            (order[0], order[1]) = (order[1], order[0]);
        }
        if (a[order[2], order[2]] < a[order[1], order[1]])
        {
            (order[1], order[2]) = (order[2], order[1]);
        }
        if (a[order[1], order[1]] < a[order[0], order[0]])
        {
            (order[0], order[1]) = (order[1], order[0]);
        }
        double Moment(int i) => a[order[i], order[i]];
        return new(Moment(0), Moment(1), Moment(2), Signed(axes[order[0]]), Signed(axes[order[1]]), Signed(axes[order[2]]));
    }

    private static void Clear(double[,] a, Vector3D[] axes, int p, int q)
    {
        var off = a[p, q];
        // Below rounding of the diagonal the entry no longer moves it: drop it, so that the sweeps end.
        if (Math.Abs(off) <= 1e-17 * (Math.Abs(a[p, p]) + Math.Abs(a[q, q])))
        {
            a[p, q] = a[q, p] = 0;
            return;
        }
        var θ = (a[q, q] - a[p, p]) / (2 * off);
        // The smaller root of t² + 2θt - 1 = 0: the smaller of the two turns.
        var t = Math.CopySign(1, θ) / (Math.Abs(θ) + Math.Sqrt(1 + θ * θ));
        var c = 1 / Math.Sqrt(1 + t * t);
        var s = t * c;
        var r = 3 - p - q;
        a[p, p] -= t * off;
        a[q, q] += t * off;
        a[p, q] = a[q, p] = 0;
        var (arp, arq) = (a[r, p], a[r, q]);
        a[r, p] = a[p, r] = c * arp - s * arq;
        a[r, q] = a[q, r] = s * arp + c * arq;
        (axes[p], axes[q]) = (c * axes[p] - s * axes[q], s * axes[p] + c * axes[q]);
    }

    private static Vector3D Signed(Vector3D axis)
    {
        var (x, y, z) = (Math.Abs(axis.X), Math.Abs(axis.Y), Math.Abs(axis.Z));
        var largest = x >= y && x >= z ? axis.X : y >= z ? axis.Y : axis.Z;
        return largest < 0 ? -axis : axis;
    }

    /// <summary>The moments, and the axis of each.</summary>
    public override string ToString() => FormattableString.Invariant($"{LeastMoment:G4} about {Least}, {MiddleMoment:G4} about {Middle}, {GreatestMoment:G4} kg m² about {Greatest}");
}
