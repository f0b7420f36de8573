using System.Runtime.CompilerServices;
using BallSim.Friction;
using BallSim.Integration;
using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>
/// The fresh fraction of the cover dips twice a turn, when the track crosses itself, in a small part of the turn. Steps short enough to follow every dip would be three times as many; but what a dip does to the path is small, and all
/// that matters of it is its integral. So the stages of a step take the cover for fresh, and each step is made whole at its end: the shift of the track is smooth, its values at the
/// stages give it everywhere in the step, the law with its dips is summed over that finely, and what it differs by from what the stages took is added to the state as an impulse, with what it has moved since. The oil on the cover, which a
/// fresh contact does not ask for, is brought to the end of the step with the mean of the fresh fraction.
/// </summary>
/// <remarks>
/// Neglected: what the impulse would have changed in the forces within the same step, the second order of something small. At tolerances of 5e-6 m and finer (<see cref="Body{T}.HasFineDips"/>) that counts: there the stages take what is
/// foreseen of it, and the rest is summed from the law itself (<see cref="DipPlaces{T}"/>). At 8e-7 m and finer the law is taken as it is, in short steps.
/// </remarks>
internal partial struct Dips<T>
    where T : struct, IReal<T>
{
    /// <summary>What the start of the step saw.</summary>
    public Dip<T> Start;

    // Stages of the step under way still to come; the slope at its end is asked for; none.
    private const int AtEnd = -1, None = 0;
    private int left;

    // The shift at three stages; over the stages so far, by their weights, the film, the lost friction and its first and second moment in the step.
    private T q3, q4, q5, film, sum, first, second;

    // The friction foreseen to be lost, θ (foreseen1 + θ foreseen2) of the part θ of the step that is over, and the mean of 1 - φ; the film, the slip and the friction of a fresh cover at four stages.
    private T foreseen1, foreseen2, bare, film3, film4, film5, film6, slip3, slip4, slip5, slip6, fresh3, fresh4, fresh5, fresh6;

    // Along the step, and at places in it: here and not on the stack, so that lanes of it lie on the lines of the cache.
    private Quartic<T> shift;
    private DipSums<T> places;

    /// <summary>Whether a step is under way, at whose end the oil is brought on.</summary>
    public readonly bool IsUnderWay => left != None;

    /// <summary>Whether the slopes asked for are those of the last stage, or begin a stretch. What is at the end of the step follows from both: what is new there is of second order.</summary>
    public readonly bool IsAtEdge => left is 1 or None;

    /// <summary>Whether the slopes asked for are those at the end of a step.</summary>
    public readonly bool IsAtEnd => left == AtEnd;

    /// <summary>Whether the shift of the track is asked for at the stage to come.</summary>
    public readonly bool Asks => left != 5;

    /// <summary>Whether the slopes asked for begin a stretch: there is no step before.</summary>
    public readonly bool Begins => left == None;

    /// <summary>Begins a step from <see cref="Start"/>.</summary>
    public void Begin()
    {
        left = 5;
        sum = first = second = 0.0;
        film = Start.Film * RungeKutta5.Weight1;
        Weigh(Start.Lost, RungeKutta5.Weight1, 0);
    }

    /// <summary>A stage of the step.</summary>
    public void Note(in Dip<T> seen, T filmThere, in Body<T> body)
    {
        if (body.HasFineDips)
        {
            Keep(seen, filmThere);
        }
        switch (left)
        {
            case 4:
                q3 = seen.Shift;
                film = T.Fma(filmThere, RungeKutta5.Weight3, film);
                Weigh(seen.Lost, RungeKutta5.Weight3, RungeKutta5.Place3);
                break;
            case 3:
                q4 = seen.Shift;
                film = T.Fma(filmThere, RungeKutta5.Weight4, film);
                Weigh(seen.Lost, RungeKutta5.Weight4, RungeKutta5.Place4);
                break;
            case 2:
                q5 = seen.Shift;
                film = T.Fma(filmThere, RungeKutta5.Weight5, film);
                Weigh(seen.Lost, RungeKutta5.Weight5, RungeKutta5.Place5);
                break;
            case 1:
                film = T.Fma(filmThere, RungeKutta5.Weight6, film);
                Weigh(seen.Lost, RungeKutta5.Weight6, RungeKutta5.Place6);
                break;
            case AtEnd:
                left = None;
                return;
            case None:
                return;
        }
        left--;
    }

    private void Weigh(T lost, double weight, double place)
    {
        sum = T.Fma(weight, lost, sum);
        first = T.Fma(weight * place, lost, first);
        second = T.Fma(weight * place * place, lost, second);
    }

    /// <summary>
    /// Adds to the end of a step what the stages missed; <paramref name="d"/> and <paramref name="seen"/>: what the last stage saw. What is at the end of the step is left in <paramref name="d"/>.
    /// </summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public void Amend<TSurface>(ref Step<State<T>> step, T h, ref TSurface surface, in Body<T> body, ref Dip<T> d, in Seen<T> seen, bool byDistance)
        where TSurface : struct, ISurface<T>
    {
        left = AtEnd;
        ref var end = ref step.End;
        T whole, late, last;
        if (body.HasFineDips)
        {
            SumFinely(ref step, h, ref surface, body, ref d, out whole, out late, out last);
            d.ToEnd(Start);
        }
        else
        {
            // The shift along the step, from the start and four stages.
            Quartic<T>.Through(Start.Shift, q3, q4, q5, d.Shift, out shift);
            DipSums<T>.Over(shift, ref places);
            CoverOil<T>.Carry(body, ref surface, film, places.Mean, h * T.Fma(0.5 / RungeKutta5.Place6, d.Strip - Start.Strip, Start.Strip), step.Start, ref end);
            Curve(ref surface, ref d, T.Fma(RungeKutta5.Place6, end.CoverFilm - step.Start.CoverFilm, step.Start.CoverFilm));
            d.ToEnd(Start);
            places.Lost(Start, d, out whole, out late, out last);
        }
        whole = whole - sum;
        late = late - first;
        last = last - second;
        // Early and late share: the effect per unit of friction goes from its value at the start to that at the end.
        var (g1, g0) = (h * late, h * (whole - late));
        T px = T.Fma(g0, Start.PushX, g1 * d.PushX), py = T.Fma(g0, Start.PushY, g1 * d.PushY);
        T tx = T.Fma(g0, Start.TurnX, g1 * d.TurnX), ty = T.Fma(g0, Start.TurnY, g1 * d.TurnY), tz = T.Fma(g0, Start.TurnZ, g1 * d.TurnZ);
        end.VelocityX = end.VelocityX + px;
        end.VelocityY = end.VelocityY + py;
        end.MomentumX = end.MomentumX + tx;
        end.MomentumY = end.MomentumY + ty;
        end.MomentumZ = end.MomentumZ + tz;
        end.FrictionWork = T.Fma(g0, Start.Work, T.Fma(g1, d.Work, end.FrictionWork));
        Move(ref end, h, whole, late, last, body, d, seen, byDistance);
    }

    // Since then it has moved the ball. Apart, or the compiler calls for sums of vectors.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private readonly void Move(ref State<T> end, T h, T whole, T late, T last, in Body<T> body, in Dip<T> d, in Seen<T> seen, bool byDistance)
    {
        T half = 0.5;
        var since = h * h * (whole - late) * half;
        var sx = since * (Start.PushX + d.PushX) * d.Scale;
        var sy = since * (Start.PushY + d.PushY) * d.Scale;
        // The turn that was lost or won went round with the ball.
        var spin = since * d.Scale * body.InverseMoments.Z;
        var turned = new Vec3<T>(spin * (Start.TurnX + d.TurnX), spin * (Start.TurnY + d.TurnY), spin * (Start.TurnZ + d.TurnZ));
        var round = half * h * h * h * (whole - late - late + last) * d.Scale * d.Scale * body.InverseMoments.Z;
        turned = Vec3<T>.AddScaled(turned, round, seen.ω.Cross(new(d.TurnX, d.TurnY, d.TurnZ)));
        if (byDistance)
        {
            var later = -(sy / seen.VelocityY);
            turned = Vec3<T>.AddScaled(turned, later, seen.ω);
            end.X = T.Fma(seen.VelocityX, later, end.X + sx);
            end.Time = end.Time + later;
        }
        else
        {
            end.X = end.X + sx;
            end.Y = end.Y + sy;
        }
        end.Turn = end.Turn + Quat<T>.TurnRate(end.Turn, turned);
    }

    /// <summary>
    /// The friction that is lost by not being fresh as a polynomial of 1 - φ, through four values of the law. Where the lane is dry it begins with a cusp: hence the value close to 0.
    /// </summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public static void Curve<TSurface>(ref TSurface surface, ref Dip<T> at, T coverFilm)
        where TSurface : struct, ISurface<T>
    {
        var f1 = surface.Friction(T.Fma(0.15, coverFilm, at.Film), at.Slip) - at.WhenFresh;
        var f2 = surface.Friction(T.Fma(0.5, coverFilm, at.Film), at.Slip) - at.WhenFresh;
        var f3 = surface.Friction(at.Film + coverFilm, at.Slip) - at.WhenFresh;
        at.Curve1 = T.Fma(f1, 11.204481792717086, T.Fma(f2, -1.7142857142857142, f3 * 0.17647058823529413));
        at.Curve2 = T.Fma(f1, -33.61344537815126, T.Fma(f2, 13.142857142857142, f3 * -1.5294117647058822));
        at.Curve3 = T.Fma(f1, 22.408963585434172, T.Fma(f2, -11.428571428571429, f3 * 2.3529411764705883));
    }
}
