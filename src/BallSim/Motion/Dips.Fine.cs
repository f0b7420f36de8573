using System.Runtime.CompilerServices;
using BallSim.Friction;
using BallSim.Integration;
using BallSim.Spatial;

namespace BallSim.Motion;

// At tolerances for which an impulse at the end of a step comes too late: what a dip changes in the forces of its own step. How the track will shift is foreseen from the step before, and with it the friction that will be lost, its sum and where in
// the step it lies: the stages take so much less of it, smoothly. What is still to be added at the end is little, and is summed from the law itself.
internal partial struct Dips<T>
{
    /// <summary>The friction foreseen to be lost at the stage asked for.</summary>
    public readonly T Foreseen
    {
        get
        {
            double place;
            switch (left)
            {
                case 5: place = RungeKutta5.Place2; break;
                case 4: place = RungeKutta5.Place3; break;
                case 3: place = RungeKutta5.Place4; break;
                case 2: place = RungeKutta5.Place5; break;
                case 1: place = RungeKutta5.Place6; break;
                default: return 0.0;
            }
            return place * T.Fma(foreseen2, place, foreseen1);
        }
    }

    /// <summary>Begins a step of length h, with what is foreseen in it.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public void BeginFinely(T h)
    {
        Begin();
        // The shift swings with the turn: its third and fourth derivative are the first and second times -ω².
        T dt = h * Start.Scale, turn = Start.Swing * dt * dt;
        Quartic<T> shift;
        shift.C0 = Start.Shift;
        shift.C1 = Start.Rise * dt;
        shift.C2 = 0.5 * (Start.Bend * dt * dt);
        shift.C3 = turn * shift.C1 * (-1.0 / 6);
        shift.C4 = turn * shift.C2 * (-1.0 / 12);
        BareSums<T>.Over(shift, out var sums);
        bare = sums.Mean;
        // Its sum and its first moment.
        T whole = Start.Depth * bare, late = Start.Depth * sums.Late;
        foreseen1 = T.Fms(whole, 18.0, late * 24.0);
        foreseen2 = T.Fms(late, 36.0, whole * 24.0);
    }

    private void Keep(in Dip<T> seen, T filmThere)
    {
        switch (left)
        {
            case 4: (film3, slip3, fresh3) = (filmThere, seen.Slip, seen.WhenFresh); break;
            case 3: (film4, slip4, fresh4) = (filmThere, seen.Slip, seen.WhenFresh); break;
            case 2: (film5, slip5, fresh5) = (filmThere, seen.Slip, seen.WhenFresh); break;
            case 1: (film6, slip6, fresh6) = (filmThere, seen.Slip, seen.WhenFresh); break;
        }
    }

    // What is at the end of the step of the shift and its derivatives, the oil, and the friction that was lost: in its sum, and times θ and θ².
    [MethodImpl(MethodImplOptions.NoInlining)]
    private void SumFinely<TSurface>(ref Step<State<T>> step, T h, ref TSurface surface, in Body<T> body, ref Dip<T> d, out T whole, out T late, out T last)
        where TSurface : struct, ISurface<T>
    {
        ref readonly var start = ref step.Start;
        ref var end = ref step.End;
        T half = 0.5;
        var strip = h * T.Fma(0.5 / RungeKutta5.Place6, d.Strip - Start.Strip, Start.Strip);
        // The film on the cover, near enough for what it does to the friction: with the fresh fraction that was foreseen.
        CoverOil<T>.Carry(body, ref surface, film, bare, strip, start, ref end);
        Unsafe.SkipInit(out DipPlaces<T> places);
        Quartic<T>.Through(Start.Shift, q3, q4, q5, d.Shift, out places.Shift);
        Quartic<T>.Through(Start.Film, film3, film4, film5, film6, out places.Film);
        Quartic<T>.Through(Start.Slip, slip3, slip4, slip5, slip6, out places.Slip);
        Quartic<T>.Through(Start.WhenFresh, fresh3, fresh4, fresh5, fresh6, out places.WhenFresh);
        places.Held = start.CoverFilm;
        places.HeldAtEnd = end.CoverFilm;
        var turns = end.Revolutions - start.Revolutions;
        places.Taking = turns * body.PickUp;
        places.Giving = T.Fma(end.Time - start.Time, body.Absorption, turns);
        places.Law = surface.Law;
        places.Sum();
        (whole, late, last) = (places.Lost, places.LostLate, places.LostLast);
        end.CoverFilm = start.CoverFilm + T.Fms(places.Taking, places.Drawn, places.Giving * places.MeanHeld);
        end.OilTaken = T.Fma(strip, T.Fms(body.PickUp, places.Drawn, places.Again), start.OilTaken);

        var dt = h * half * (Start.Scale + d.Scale);
        d.Rise = places.Shift.SlopeAtEnd / dt;
        d.Bend = places.Shift.BendAtEnd / (dt * dt);
        // What the last dips lost stands until there are others.
        T few = 0.02;
        d.Depth = T.Fma(few, Start.Depth, whole) / (places.Bare + few);
    }
}
