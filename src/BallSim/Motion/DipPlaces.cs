using System.Runtime.CompilerServices;
using BallSim.Friction;
using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>
/// What the fresh fraction of the cover changes over a step, summed from the law itself. Where the track crosses itself, by Gauss' rule of eight places on either side of that place, on a scale that is the finer the nearer to it: first the oil that
/// comes onto the cover before and after it, hence how much of it the cover holds along the step; then the friction that it takes. Far from it by Gauss' rule of four. One shot does four places side by side.
/// </summary>
internal struct DipPlaces<T> : IFourfold
    where T : struct, IReal<T>
{
    /// <summary>The film on the lane, m, the slip, m/s, and the friction of a fresh cover along the step.</summary>
    public Quartic<T> Film, Slip, WhenFresh;

    /// <summary>The film on the cover at the start of the step, and about at its end, m.</summary>
    public T Held, HeldAtEnd;

    public FilmLaw<T> Law;

    // Where the track crosses itself, or comes nearest to it.
    private T crossing;

    // What stands before is the same at all places.
    private const int Shared = 3 * 5 + 2 + 8 + 1;

    /// <summary>The shift of the track along the step.</summary>
    public Quartic<T> Shift;

    /// <summary>What the cover would take in the step from a film of one in the contact, and what part of what it holds it gives back.</summary>
    public T Taking, Giving;

    /// <summary>Means over the step: of 1 - φ; of the film drawn into the contact, that held by the cover and that offered again, m; of the friction lost by not being fresh, and of it times θ and θ².</summary>
    public T Bare, Drawn, MeanHeld, Again, Lost, LostLate, LostLast;

    // The film drawn in before and after the crossing, and times the part of the way to it and from it that is over; that of the whole step times θ.
    private T before, beforeLate, after, afterLate, drawnLate;

    // 1 - φ at two places on either side.
    private T bare1, bare2, bare3, bare4;

    // The film held at the crossing. Along the way to it it goes as Held + v (rise1 + v (1 - v) bend1) of the part v that is over, from it as heldThere + v (rise2 + (1 - v)² bend2): what a dip brings, it brings near the crossing.
    private T heldThere, rise1, bend1, rise2, bend2;

    private bool isFar;

    // |δ|/(2 r_c) from which on all is smooth.
    private const double Far = 1.5;

    // Gauss' rules of eight and of four on [0, 1]: places and weights.
    private const double
        U0 = 0.019855071751231884, U1 = 0.10166676129318664, U2 = 0.2372337950418355, U3 = 0.4082826787521751,
        U4 = 0.591717321247825, U5 = 0.7627662049581645, U6 = 0.8983332387068134, U7 = 0.9801449282487681,
        W0 = 0.05061426814518813, W1 = 0.11119051722668724, W2 = 0.15685332293894363, W3 = 0.181341891689181,
        P0 = 0.06943184420297371, P1 = 0.33000947820757187, P2 = 0.6699905217924281, P3 = 0.9305681557970263,
        Z0 = 0.17392742256872693, Z1 = 0.32607257743127307;

    [MethodImpl(MethodImplOptions.NoInlining)]
    public void Sum()
    {
        T zero = 0.0, one = 1.0;
        Cross(out var least);
        var far = T.IfLess(Far, least, one, zero);
        isFar = !T.Any(one - far);
        if (isFar || !T.Any(far))
        {
            SumAlike();
            return;
        }
        // Lanes of both kinds.
        var others = this;
        SumAlike();
        others.isFar = true;
        others.SumAlike();
        Bare = T.IfLess(zero, far, others.Bare, Bare);
        Drawn = T.IfLess(zero, far, others.Drawn, Drawn);
        MeanHeld = T.IfLess(zero, far, others.MeanHeld, MeanHeld);
        Again = T.IfLess(zero, far, others.Again, Again);
        Lost = T.IfLess(zero, far, others.Lost, Lost);
        LostLate = T.IfLess(zero, far, others.LostLate, LostLate);
        LostLast = T.IfLess(zero, far, others.LostLast, LostLast);
    }

    private void SumAlike()
    {
        if (T.DoesFour(Shift.C0, Shift.C1, Shift.C2, Shift.C3, Shift.C4, ref this))
        {
            return;
        }
        Clear();
        DipPlaces<T> second = this, third = this, fourth = this;
        if (isFar)
        {
            Lose(P0, Z0);
            second.Lose(P1, Z1);
            third.Lose(P2, Z1);
            fourth.Lose(P3, Z0);
        }
        else
        {
            Draw(U0, W0, U4, W3);
            second.Draw(U1, W1, U5, W2);
            third.Draw(U2, W2, U6, W1);
            fourth.Draw(U3, W3, U7, W0);
            before = before + second.before + third.before + fourth.before;
            beforeLate = beforeLate + second.beforeLate + third.beforeLate + fourth.beforeLate;
            after = after + second.after + third.after + fourth.after;
            afterLate = afterLate + second.afterLate + third.afterLate + fourth.afterLate;
            Settle();
            second.Settle(heldThere, rise1, bend1, rise2, bend2);
            third.Settle(heldThere, rise1, bend1, rise2, bend2);
            fourth.Settle(heldThere, rise1, bend1, rise2, bend2);
            Lose(U0, W0, U4, W3);
            second.Lose(U1, W1, U5, W2);
            third.Lose(U2, W2, U6, W1);
            fourth.Lose(U3, W3, U7, W0);
        }
        Bare = Bare + second.Bare + third.Bare + fourth.Bare;
        Drawn = Drawn + second.Drawn + third.Drawn + fourth.Drawn;
        drawnLate = drawnLate + second.drawnLate + third.drawnLate + fourth.drawnLate;
        MeanHeld = MeanHeld + second.MeanHeld + third.MeanHeld + fourth.MeanHeld;
        Again = Again + second.Again + third.Again + fourth.Again;
        Lost = Lost + second.Lost + third.Lost + fourth.Lost;
        LostLate = LostLate + second.LostLate + third.LostLate + fourth.LostLate;
        LostLast = LostLast + second.LostLast + third.LostLast + fourth.LostLast;
        HoldFar();
    }

    public void Do(Doubles4 a, Doubles4 b, Doubles4 c, Doubles4 d, Doubles4 e)
    {
        Unsafe.SkipInit(out DipPlaces<Doubles4> many);
        LaneCopy<Doubles4>.Spread(ref many, this, Shared);
        (many.Shift.C0, many.Shift.C1, many.Shift.C2, many.Shift.C3, many.Shift.C4) = (a, b, c, d, e);
        many.Clear();
        if (isFar)
        {
            many.Lose(Doubles4.Of(P0, P1, P2, P3), Doubles4.Of(Z0, Z1, Z1, Z0));
        }
        else
        {
            Doubles4 u = Doubles4.Of(U0, U1, U2, U3), w = Doubles4.Of(W0, W1, W2, W3), u2 = Doubles4.Of(U4, U5, U6, U7), w2 = Doubles4.Of(W3, W2, W1, W0);
            many.Draw(u, w, u2, w2);
            (before, beforeLate, after, afterLate) = (many.before.Sum, many.beforeLate.Sum, many.after.Sum, many.afterLate.Sum);
            Settle();
            many.Settle(Same(heldThere), Same(rise1), Same(bend1), Same(rise2), Same(bend2));
            many.Lose(u, w, u2, w2);
        }
        (Bare, Drawn, drawnLate, MeanHeld, Again) = (many.Bare.Sum, many.Drawn.Sum, many.drawnLate.Sum, many.MeanHeld.Sum, many.Again.Sum);
        (Lost, LostLate, LostLast) = (many.Lost.Sum, many.LostLate.Sum, many.LostLast.Sum);
        HoldFar();
    }

    // Of one double.
    private static Doubles4 Same(T a) => Unsafe.BitCast<T, double>(a);

    // The root of the shift, or that of its slope where it alone changes its sign, by secant and a step of Newton's: places are finer near it, and a little off does not matter.
    private void Cross(out T least)
    {
        T zero = 0.0, one = 1.0, tiny = 1e-9;
        T first = Shift.C0, last = Shift.At(one), slopeLast = Shift.SlopeAtEnd;
        var turns = T.IfLess(zero, first * last, T.IfLess(Shift.C1 * slopeLast, zero, one, zero), zero);
        Quartic<T> f;
        f.C0 = T.IfLess(zero, turns, Shift.C1, Shift.C0);
        f.C1 = T.IfLess(zero, turns, 2.0 * Shift.C2, Shift.C1);
        f.C2 = T.IfLess(zero, turns, 3.0 * Shift.C3, Shift.C2);
        f.C3 = T.IfLess(zero, turns, 4.0 * Shift.C4, Shift.C3);
        f.C4 = T.IfLess(zero, turns, zero, Shift.C4);
        var fall = f.C0 - T.IfLess(zero, turns, slopeLast, last);
        var θ = f.C0 / T.IfLess(T.Abs(fall), tiny, tiny, fall);
        θ = T.Min(T.Max(θ, zero), one);
        var slope = f.SlopeAt(θ);
        θ = θ - f.At(θ) / T.IfLess(T.Abs(slope), tiny, tiny, slope);
        crossing = T.Min(T.Max(θ, zero), one);
        least = T.Min(T.Abs(Shift.At(crossing)), T.Min(T.Abs(first), T.Abs(last)));
    }

    private void Clear() => before = beforeLate = after = afterLate = drawnLate = Bare = Drawn = MeanHeld = Again = Lost = LostLate = LostLast = 0.0;

    // Two of the eight places on either side.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private void Draw(T u, T w, T u2, T w2)
    {
        T one = 1.0, two = 2.0;
        T rest = one - crossing, near = u * u, far = u2 * u2, wide = two * w * u, wide2 = two * w2 * u2;
        Draw(T.Fnma(crossing, near, crossing), crossing * wide, one - near, out bare1, ref before, ref beforeLate);
        Draw(T.Fnma(crossing, far, crossing), crossing * wide2, one - far, out bare2, ref before, ref beforeLate);
        Draw(T.Fma(rest, near, crossing), rest * wide, near, out bare3, ref after, ref afterLate);
        Draw(T.Fma(rest, far, crossing), rest * wide2, far, out bare4, ref after, ref afterLate);
    }

    private readonly void Draw(T θ, T weight, T v, out T bare, ref T sum, ref T late)
    {
        T zero = 0.0;
        bare = BareAt(θ);
        var drawn = weight * Law.FilmInContact(T.Fma(bare, T.Fma(θ, HeldAtEnd - Held, Held), T.Max(Film.At(θ), zero)));
        sum = sum + drawn;
        late = T.Fma(v, drawn, late);
    }

    private readonly T BareAt(T θ)
    {
        T one = 1.0;
        return one - FreshCover<T>.Fraction(Shift.At(θ));
    }

    // How the film on the cover goes on either side.
    private void Settle()
    {
        T one = 1.0;
        Gained(before, beforeLate, crossing, Held, out rise1, out bend1);
        heldThere = Held + rise1;
        Gained(after, afterLate, one - crossing, heldThere, out rise2, out bend2);
    }

    // Far from a crossing, where the film on the cover was only foreseen.
    private void HoldFar()
    {
        if (isFar)
        {
            T one = 1.0;
            Gained(Drawn, drawnLate, one, Held, out var rise, out var bend);
            MeanHeld = Held + T.Fma(bend, 1.0 / 12, 0.5 * rise);
        }
    }

    private void Settle(T there, T toRise, T toBend, T fromRise, T fromBend) => (heldThere, rise1, bend1, rise2, bend2) = (there, toRise, toBend, fromRise, fromBend);

    // Towards a balance, exponentially, see CoverOil; the bend from the mean, which is the end less what comes and goes times the part of the way that is over by then. ∫ v² (1 - v) dv = 1/12.
    private readonly void Gained(T drawn, T late, T part, T from, out T rise, out T bend)
    {
        T one = 1.0, half = 0.5, giving = part * Giving;
        rise = T.Fms(Taking, drawn, giving * from) / T.Fma(giving, T.Fma(giving, 1.0 / 12, half), one);
        var middle = T.Fms(Taking, late, giving * T.Fma(from, half, rise * (1.0 / 3)));
        bend = 12.0 * T.Fma(half, rise, -middle);
    }

    // Two of the eight places on either side.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private void Lose(T u, T w, T u2, T w2)
    {
        T one = 1.0, two = 2.0;
        T rest = one - crossing, near = u * u, far = u2 * u2, wide = two * w * u, wide2 = two * w2 * u2;
        LoseAt(T.Fnma(crossing, near, crossing), crossing * wide, bare1, Along(Held, rise1, bend1, one - near, one - near));
        LoseAt(T.Fnma(crossing, far, crossing), crossing * wide2, bare2, Along(Held, rise1, bend1, one - far, one - far));
        LoseAt(T.Fma(rest, near, crossing), rest * wide, bare3, Along(heldThere, rise2, bend2, near, one - near));
        LoseAt(T.Fma(rest, far, crossing), rest * wide2, bare4, Along(heldThere, rise2, bend2, far, one - far));
    }

    private static T Along(T from, T rise, T bend, T v, T near) => T.Fma(v, T.Fma((1.0 - v) * near, bend, rise), from);

    // One of four places, where all is smooth.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private void Lose(T θ, T weight) => LoseAt(θ, weight, BareAt(θ), T.Fma(θ, HeldAtEnd - Held, Held));

    // Also called for a vector of places: not inlined, or the callers exceed what the compiler is willing to inline.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private void LoseAt(T θ, T weight, T bare, T held)
    {
        T zero = 0.0, film = T.Max(Film.At(θ), zero), slip = T.Max(Slip.At(θ), zero);
        var again = bare * held;
        var lost = weight * (Law.Friction(film + again, slip, out var drawn) - WhenFresh.At(θ));
        Bare = T.Fma(weight, bare, Bare);
        drawn = weight * drawn;
        Drawn = Drawn + drawn;
        drawnLate = T.Fma(θ, drawn, drawnLate);
        MeanHeld = T.Fma(weight, held, MeanHeld);
        Again = T.Fma(weight, again, Again);
        Lost = Lost + lost;
        LostLate = T.Fma(θ, lost, LostLate);
        LostLast = T.Fma(θ * θ, lost, LostLast);
    }
}
