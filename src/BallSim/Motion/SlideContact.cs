using System.Runtime.CompilerServices;
using BallSim.Friction;
using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>
/// Everything that is known at an instant of sliding: kinematics from the state, then forces and accelerations by (M1) to (M6). Written out in numbers rather than vectors, in two methods that are not inlined and
/// write into the fields: the compiler inlines only so much into one method and calls for each sum and product beyond that, and whole contacts would be cleared and copied.
/// </summary>
internal struct SlideContact<T>
    where T : struct, IReal<T>
{
    /// <summary>I⁻¹ about Bcm in the lane frame.</summary>
    public Sym3<T> InverseI_L;

    /// <summary>Bo to Bcm, in the lane frame.</summary>
    public Vec3<T> r_d;

    /// <summary>Angular velocity, in the lane frame.</summary>
    public T ωx, ωy, ωz;

    /// <summary>Velocity of Bo; slip of the contact point (M5), its size and, of a ball that slides, 1 over its size; air drag.</summary>
    public T vx, vy, sx, sy, s, perSlip, Dx, Dy;

    /// <summary>The unit vector along which the ball slides, or would: that of the slip, or given by who asks what a push along another would do.</summary>
    public T ex, ey;

    /// <summary>Contact force, horizontal acceleration of Bcm.</summary>
    public T fx, fy, N, ax, ay;

    /// <summary>Gravity along the lane, with the slope's push at this place.</summary>
    public T gX, gY;

    /// <summary>Power of the friction force on the slip and of the small moments on the turn, W.</summary>
    public T FrictionPower;

    /// <summary>Moment of all forces about Bcm.</summary>
    public T Mx, My, Mz;

    // -ω × L; r_d × D; w, of which the n component of (I⁻¹ x) × r_d is w · x; m times what the contact would have to hold if its own force had no moment.
    private T gyroX, gyroY, gyroZ, airX, airY, airZ, wX, wY, wZ, lift;

    public readonly Vec3<T> ω => new(ωx, ωy, ωz);

    public readonly Vec3<T> ωr_d => ω.Cross(r_d);

    public readonly Vec3<T> f => new(fx, fy, N);

    /// <summary>The kinematics of a state, and what of the forces does not depend on the contact.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public void At(in Body<T> body, in Quat<T> start, in State<T> y)
    {
        Kinematics<T>.Turned(start, y, body.InverseMoments, body.d_P, out InverseI_L, out r_d);
        ref readonly var a = ref InverseI_L;
        T rx = r_d.X, ry = r_d.Y, rz = r_d.Z;
        T lx = y.MomentumX, ly = y.MomentumY, lz = y.MomentumZ;
        var wx = T.Fma(a.Xx, lx, T.Fma(a.Xy, ly, a.Xz * lz));
        var wy = T.Fma(a.Xy, lx, T.Fma(a.Yy, ly, a.Yz * lz));
        var wz = T.Fma(a.Xz, lx, T.Fma(a.Yz, ly, a.Zz * lz));
        var wrx = T.Fms(wy, rz, wz * ry);
        var wry = T.Fms(wz, rx, wx * rz);
        (ωx, ωy, ωz) = (wx, wy, wz);

        T radius = body.Radius, tiny = 1e-60;
        var cx = y.VelocityX - wrx;
        var cy = y.VelocityY - wry;
        // The slip from ω in two steps, not by way of the velocity.
        var arm = radius + rz;
        var ux = T.Fma(ry, wz, T.Fnma(arm, wy, y.VelocityX));
        var uy = T.Fnma(rx, wz, T.Fma(arm, wx, y.VelocityY));
        (vx, vy, sx, sy) = (cx, cy, ux, uy);
        // The root and the division side by side: s/s² for 1/s.
        var square = T.Fma(ux, ux, T.Fma(uy, uy, tiny));
        T size = T.Sqrt(square), one = 1.0;
        var per = size * (one / square);
        (s, perSlip) = (size, per);
        (ex, ey) = (ux * per, uy * per);
        Kinematics<T>.Air(body, cx, cy, wx, wy, wz, out var dx, out var dy, out var dz);
        (Dx, Dy) = (dx, dy);
        (gX, gY) = (body.g.X, body.g.Y);
        Free(body, lx, ly, lz, wrx, wry, dx, dy, dz);
    }

    /// <summary>A ball that rolls, as one that is about to slide; along what is not said.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public void At(in Body<T> body, in RollContact<T> held)
    {
        (InverseI_L, r_d) = (held.InverseI_L, held.r_d);
        (ωx, ωy, ωz) = (held.ωx, held.ωy, held.ωz);
        // No slip, but a number that can be divided by.
        T zero = 0.0, tiny = 1e-18;
        (vx, vy, sx, sy, s) = (held.vx, held.vy, zero, zero, tiny);
        (Dx, Dy) = (held.Dx, held.Dy);
        (gX, gY) = (held.gX, held.gY);
        var l = held.I_L * held.ω;
        Free(body, l.X, l.Y, l.Z, held.ωrx, held.ωry, held.Dx, held.Dy, held.Dz);
    }

    // What of the forces does not depend on the contact.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void Free(in Body<T> body, T lx, T ly, T lz, T wrx, T wry, T dx, T dy, T dz)
    {
        ref readonly var a = ref InverseI_L;
        T wx = ωx, wy = ωy, wz = ωz, rx = r_d.X, ry = r_d.Y, rz = r_d.Z;
        // The body's own rate of L is -ω × L; the air's moment about Bcm is -r_d × D.
        var gx = T.Fms(wz, ly, wy * lz);
        var gy = T.Fms(wx, lz, wz * lx);
        var gz = T.Fms(wy, lx, wx * ly);
        (gyroX, gyroY, gyroZ) = (gx, gy, gz);
        var qx = T.Fms(ry, dz, rz * dy);
        var qy = T.Fms(rz, dx, rx * dz);
        var qz = T.Fms(rx, dy, ry * dx);
        (airX, airY, airZ) = (qx, qy, qz);
        T ux = T.Fms(a.Xx, ry, a.Xy * rx), uy = T.Fms(a.Xy, ry, a.Yy * rx), uz = T.Fms(a.Xz, ry, a.Yz * rx);
        (wX, wY, wZ) = (ux, uy, uz);
        // Only the n components of α × r_d and of ω × (ω × r_d) are needed; the air comes last, since its root does.
        var held = T.Fma(ux, gx, T.Fma(uy, gy, uz * gz)) + T.Fms(wx, wry, wy * wrx) - body.g.Z;
        held = T.Fnma(T.Fms(ux, ry, uy * rx), dz, held);
        held = T.Fnma(T.Fms(uy, rz, uz * ry), dx, T.Fnma(T.Fms(uz, rx, ux * rz), dy, held));
        lift = T.Fms(body.Mass, held, dz);
    }

    /// <summary>Forces for sliding along (ex, ey) with friction coefficient μ; the slip itself may be zero.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public void Push(in Body<T> body, T μ)
    {
        Force(body, μ, out var mx, out var my, out var mz, out var px, out var py, out var pz, out var qx, out var qy, out var n);
        T ux = n * qx, uy = n * qy;
        N = n;
        (fx, fy) = (ux, uy);
        Mx = T.Fms(n, px, airX);
        My = T.Fms(n, py, airY);
        Mz = T.Fms(n, pz, airZ);
        ax = T.Fma(body.InverseMass, ux + Dx, gX);
        ay = T.Fma(body.InverseMass, uy + Dy, gY);
        FrictionPower = T.Fma(ux, sx, uy * sy);
        if (body.HasSmallMoments)
        {
            FrictionPower = T.Fma(n, T.Fma(mx, ωx, T.Fma(my, ωy, mz * ωz)), FrictionPower);
        }
    }

    /// <summary>The contact's force alone, as <see cref="Push"/> would have it: what <see cref="Shift"/> asks for.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public void Press(in Body<T> body, T μ)
    {
        Force(body, μ, out _, out _, out _, out _, out _, out _, out var ux, out var uy, out var n);
        N = n;
        (fx, fy) = (n * ux, n * uy);
    }

    // Per newton of normal force: the force (ux, uy, 1) = (-μ ex, -μ ey, 1), its moment (px, py, pz) about Bcm with ρ = -R n - r_d, and the small moments (mx, my, mz) in it; and the normal force n. In one method with its caller.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void Force(in Body<T> body, T μ, out T mx, out T my, out T mz, out T px, out T py, out T pz, out T ux, out T uy, out T n)
    {
        T one = 1.0;
        mx = my = mz = 0.0;
        var grip = -μ;
        if (body.HasSmallMoments)
        {
            // Pivoting friction takes its share of the grip: |s|/√(s² + (8 r_c ω_z/3π)²).
            var w = body.PivotRadius * ωz * (8 / (3 * Math.PI));
            grip = grip * s / T.Sqrt(T.Fma(s, s, w * w));
            var small = Kinematics<T>.SmallMoments(body, ω, μ, s);
            (mx, my, mz) = (small.X, small.Y, small.Z);
        }
        T rx = r_d.X, ry = r_d.Y;
        ux = grip * ex;
        uy = grip * ey;
        var arm = body.Radius + r_d.Z;
        T qx = mx - ry, qy = my + rx;
        px = T.Fma(arm, uy, qx);
        py = T.Fnma(arm, ux, qy);
        pz = T.Fma(ry, ux, T.Fnma(rx, uy, mz));
        // m w · p by its coefficients, which do not wait for the friction.
        T m = body.Mass, wx = wX, wy = wY, wz = wZ;
        T perX = m * T.Fms(ry, wz, arm * wy), perY = m * T.Fms(arm, wx, rx * wz);
        var still = T.Fnma(m, T.Fma(wx, qx, T.Fma(wy, qy, wz * mz)), one);

        // (M6): N from a_c · n = 0.
        n = lift / T.Fnma(perX, ux, T.Fnma(perY, uy, still));
    }

    /// <summary>Angular acceleration under the force last pushed with.</summary>
    public readonly Vec3<T> α => InverseI_L * new Vec3<T>(gyroX + Mx, gyroY + My, gyroZ + Mz);

    /// <summary>How far the track shifts in a turn, in widths of the contact, for the force last pushed with: its moment without the air's.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public readonly T Shift(in Body<T> body)
    {
        T rx = r_d.X, ry = r_d.Y, arm = body.Radius + r_d.Z;
        // ρ × f; of the rates of ω only what is needed.
        T px = T.Fms(arm, fy, ry * N), py = T.Fnma(arm, fx, rx * N), pz = T.Fms(ry, fx, rx * fy);
        T hx = gyroX - px, hy = gyroY - py, hz = gyroZ - pz;
        ref readonly var a = ref InverseI_L;
        return FreshCover<T>.Shift(ωx, ωy, ωz,
            T.Fma(a.Xx, hx, T.Fma(a.Xy, hy, a.Xz * hz)), T.Fma(a.Xy, hx, T.Fma(a.Yy, hy, a.Yz * hz)), T.Fma(a.Xz, hx, T.Fma(a.Yz, hy, a.Zz * hz)), body.Radius, body.ContactRadius);
    }

    /// <summary>Horizontal acceleration of the slip: ds/dt = a_c + α × (-R n).</summary>
    public readonly (T X, T Y) SlipRate(in Body<T> body)
    {
        var a = α;
        var inner = a.Cross(r_d) + ω.Cross(ωr_d);
        return (T.Fnma(body.Radius, a.Y, ax - inner.X), T.Fma(body.Radius, a.X, ay - inner.Y));
    }
}
