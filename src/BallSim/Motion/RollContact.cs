using System.Runtime.CompilerServices;
using BallSim.Friction;
using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>Everything that is known at an instant of rolling: kinematics from the momentum about the contact point, then the contact force by (M7). Written out as <see cref="SlideContact{T}"/> is, and for its reason.</summary>
internal struct RollContact<T>
    where T : struct, IReal<T>
{
    /// <summary>Inertia about Bcm in the lane frame.</summary>
    public Sym3<T> I_L;

    /// <summary>Inverse of the inertia about Bcm, once it was asked for.</summary>
    public Sym3<T> InverseI_L;

    /// <summary>Inverse of the inertia about the contact point, lane frame.</summary>
    public T Jxx, Jyy, Jzz, Jxy, Jxz, Jyz;

    /// <summary>Bo to Bcm.</summary>
    public Vec3<T> r_d;

    /// <summary>Angular velocity; height of Bcm over the contact point; ω × r_d.</summary>
    public T ωx, ωy, ωz, arm, ωrx, ωry, ωrz;

    /// <summary>Velocity of Bo; air drag.</summary>
    public T vx, vy, Dx, Dy, Dz;

    /// <summary>Contact force and angular acceleration.</summary>
    public T fx, fy, N, αx, αy, αz;

    /// <summary>Gravity along the lane, with the slope's push at this place.</summary>
    public T gX, gY;

    public readonly Vec3<T> ω => new(ωx, ωy, ωz);

    public readonly Vec3<T> f => new(fx, fy, N);

    public readonly Vec3<T> α => new(αx, αy, αz);

    /// <summary>Velocity of Bcm.</summary>
    public readonly Vec3<T> v_G => new(vx + ωrx, vy + ωry, ωrz);

    [MethodImpl(MethodImplOptions.NoInlining)]
    public void At(in Body<T> body, in Quat<T> start, in State<T> y)
    {
        Kinematics<T>.Turned(start, y, body.Moments, body.d_P, out I_L, out r_d);
        T px = r_d.X, py = r_d.Y, pz = r_d.Z, radius = body.Radius, m = body.Mass, one = 1.0;
        var up = pz + radius;

        // J = I + m (σ² 1 - σ σᵀ), σ from the contact point to Bcm, and its inverse by cofactors.
        T xx = px * px, yy = py * py, zz = up * up;
        var jxx = T.Fma(m, yy + zz, I_L.Xx);
        var jyy = T.Fma(m, xx + zz, I_L.Yy);
        var jzz = T.Fma(m, xx + yy, I_L.Zz);
        var jxy = T.Fnma(m, px * py, I_L.Xy);
        var jxz = T.Fnma(m, px * up, I_L.Xz);
        var jyz = T.Fnma(m, py * up, I_L.Yz);
        var cxx = T.Fms(jyy, jzz, jyz * jyz);
        var cxy = T.Fms(jxz, jyz, jxy * jzz);
        var cxz = T.Fms(jxy, jyz, jxz * jyy);
        var per = one / T.Fma(jxx, cxx, T.Fma(jxy, cxy, jxz * cxz));
        var cyy = T.Fms(jxx, jzz, jxz * jxz);
        var czz = T.Fms(jxx, jyy, jxy * jxy);
        var cyz = T.Fms(jxy, jxz, jxx * jyz);
        (Jxx, Jyy, Jzz, Jxy, Jxz, Jyz) = (per * cxx, per * cyy, per * czz, per * cxy, per * cxz, per * cyz);

        // Divided last: the division runs beside the products.
        T lx = y.MomentumX, ly = y.MomentumY, lz = y.MomentumZ;
        var wx = per * T.Fma(cxx, lx, T.Fma(cxy, ly, cxz * lz));
        var wy = per * T.Fma(cxy, lx, T.Fma(cyy, ly, cyz * lz));
        var wz = per * T.Fma(cxz, lx, T.Fma(cyz, ly, czz * lz));
        var ux = radius * wy;
        var uy = -(radius * wx);
        (ωx, ωy, ωz) = (wx, wy, wz);
        (vx, vy) = (ux, uy);
        (gX, gY) = (body.g.X, body.g.Y);
        arm = up;
        ωrx = T.Fms(wy, pz, wz * py);
        ωry = T.Fms(wz, px, wx * pz);
        ωrz = T.Fms(wx, py, wy * px);
        Kinematics<T>.Air(body, ux, uy, wx, wy, wz, out Dx, out Dy, out Dz);
    }

    /// <summary>
    /// (M7): (I + m(σ² - σσᵀ)) α = -ω × (I ω) - m σ × (ω × (ω × r_d) - g) + R n × D + N small, f = m (α × σ + ω × (ω × r_d) - g) - D; the small moments grow with N,
    /// which is linear in α.
    /// </summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public void Hold(in Body<T> body, in Vec3<T> small)
    {
        T one = 1.0, m = body.Mass;
        T wx = ωx, wy = ωy, wz = ωz, px = r_d.X, py = r_d.Y, up = arm;
        // c = ω × (ω × r_d) - g.
        var cx = T.Fms(wy, ωrz, wz * ωry) - gX;
        var cy = T.Fms(wz, ωrx, wx * ωrz) - gY;
        var cz = T.Fms(wx, ωry, wy * ωrx) - body.g.Z;
        var lx = T.Fma(I_L.Xx, wx, T.Fma(I_L.Xy, wy, I_L.Xz * wz));
        var ly = T.Fma(I_L.Xy, wx, T.Fma(I_L.Yy, wy, I_L.Yz * wz));
        var lz = T.Fma(I_L.Xz, wx, T.Fma(I_L.Yz, wy, I_L.Zz * wz));
        var hx = T.Fnma(m, T.Fms(py, cz, up * cy), T.Fnma(body.Radius, Dy, T.Fms(wz, ly, wy * lz)));
        var hy = T.Fnma(m, T.Fms(up, cx, px * cz), T.Fma(body.Radius, Dx, T.Fms(wx, lz, wz * lx)));
        var hz = T.Fnma(m, T.Fms(px, cy, py * cx), T.Fms(wy, lx, wx * ly));
        var ax = T.Fma(Jxx, hx, T.Fma(Jxy, hy, Jxz * hz));
        var ay = T.Fma(Jxy, hx, T.Fma(Jyy, hy, Jyz * hz));
        var az = T.Fma(Jxz, hx, T.Fma(Jyz, hy, Jzz * hz));
        if (body.HasSmallMoments)
        {
            // N = n · f with α = α0 + N α1.
            var α1 = new Sym3<T>(Jxx, Jyy, Jzz, Jxy, Jxz, Jyz) * small;
            var n = T.Fms(m, T.Fms(ax, py, ay * px) + cz, Dz) / T.Fnma(m, T.Fms(α1.X, py, α1.Y * px), one);
            ax = T.Fma(n, α1.X, ax);
            ay = T.Fma(n, α1.Y, ay);
            az = T.Fma(n, α1.Z, az);
        }
        (αx, αy, αz) = (ax, ay, az);
        fx = T.Fms(m, T.Fms(ay, up, az * py) + cx, Dx);
        fy = T.Fms(m, T.Fms(az, px, ax * up) + cy, Dy);
        N = T.Fms(m, T.Fms(ax, py, ay * px) + cz, Dz);
    }

    /// <summary>Asks for the inverse of the inertia about Bcm; only oil on the cover does.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public void Invert() => InverseI_L = I_L.Inverse();

    /// <summary>Fresh fraction of the cover for the force that holds.</summary>
    public readonly T FreshCover(in Body<T> body) => body.HasFreshCover ? FreshCover<T>.Fraction(Shift(body)) : 0.0;

    /// <summary>How far the track shifts in a turn, in widths of the contact, for that force.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public readonly T Shift(in Body<T> body)
    {
        ref readonly var a = ref InverseI_L;
        T wx = ωx, wy = ωy, wz = ωz, rx = r_d.X, ry = r_d.Y;
        var lx = T.Fma(I_L.Xx, wx, T.Fma(I_L.Xy, wy, I_L.Xz * wz));
        var ly = T.Fma(I_L.Xy, wx, T.Fma(I_L.Yy, wy, I_L.Yz * wz));
        var lz = T.Fma(I_L.Xz, wx, T.Fma(I_L.Yz, wy, I_L.Zz * wz));
        // -ω × I ω less the contact's moment ρ × f, ρ = -σ.
        var hx = T.Fms(wz, ly, wy * lz) + T.Fms(ry, N, arm * fy);
        var hy = T.Fms(wx, lz, wz * lx) + T.Fms(arm, fx, rx * N);
        var hz = T.Fms(wy, lx, wx * ly) + T.Fms(rx, fy, ry * fx);
        return FreshCover<T>.Shift(wx, wy, wz,
            T.Fma(a.Xx, hx, T.Fma(a.Xy, hy, a.Xz * hz)), T.Fma(a.Xy, hx, T.Fma(a.Yy, hy, a.Yz * hz)), T.Fma(a.Xz, hx, T.Fma(a.Yz, hy, a.Zz * hz)), body.Radius, body.ContactRadius);
    }

    /// <summary>The tangential force that rolling asks of the contact.</summary>
    public readonly T Demand => T.Sqrt(T.Fma(fx, fx, fy * fy));
}
