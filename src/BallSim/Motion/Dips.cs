using System.Runtime.CompilerServices;
using BallSim.Friction;
using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>
/// The fresh fraction of the cover dips twice a turn, when the track crosses itself, in a small part of the turn. Steps short enough to follow every dip would be three times as many; but what a dip does to the path is small, and all
/// that matters of it is its integral. So the stages of a step take the cover for fresh, and each step is made whole at its end: the shift of the track is smooth, its values at the
/// stages give it everywhere in the step, the law with its dips is summed over that finely, and what it differs by from what the stages took is added to the state as an impulse, with what it has moved since.
/// </summary>
/// <remarks>
/// Neglected: what the impulse would have changed in the forces within the same step, the second order of something small. For tolerances down to 1e-5 m; finer ones take the law as it is.
/// </remarks>
internal struct Dips<T>
    where T : struct, IReal<T>
{
    private const int Samples = 12;

    /// <summary>What the start of the step saw.</summary>
    public Dip<T> Start;

    // Stages of the step under way still to come.
    private int left;

    // The shift at the start and at three stages, and over the stages so far, by their weights: the lost friction, its first and second moment in the step, 1 - φ and its square.
    private T q1, q2, q3, q4, sum, first, second, bare, square;

    /// <summary>Whether more stages follow before the end of the step.</summary>
    public readonly bool IsInside => left > 1;

    /// <summary>Whether the shift of the track is asked for at the stage to come.</summary>
    public readonly bool Asks => left != 2;

    /// <summary>Begins a step from <see cref="Start"/>.</summary>
    public void Begin()
    {
        left = 5;
        q1 = Start.Shift;
        sum = bare = square = first = second = 0.0;
        Weigh(Start, 0.09646076681806523, 0);
    }

    /// <summary>A stage of the step, by its weight and its place.</summary>
    public void Note(in Dip<T> seen)
    {
        switch (left)
        {
            case 5:
                q2 = seen.Shift;
                Weigh(seen, 0.01, 0.161);
                break;
            case 4:
                q3 = seen.Shift;
                Weigh(seen, 0.4798896504144996, 0.327);
                break;
            case 3:
                q4 = seen.Shift;
                Weigh(seen, 1.379008574103742, 0.9);
                break;
            case 2:
                Weigh(seen, -3.290069515436081, 0.9800255409045097);
                break;
            case 1:
                Weigh(seen, 2.324710524099774, 1);
                break;
            default:
                return;
        }
        left--;
    }

    private void Weigh(in Dip<T> seen, double weight, double place)
    {
        T w = weight;
        sum = T.Fma(w, seen.Lost, sum);
        var dry = w * seen.Bare;
        bare = bare + dry;
        square = T.Fma(dry, seen.Bare, square);
        first = T.Fma(weight * place, seen.Lost, first);
        second = T.Fma(weight * place * place, seen.Lost, second);
    }

    /// <summary>Adds to the end of a step what the stages missed; <paramref name="d"/> and <paramref name="seen"/>: what the last stage, at the end of the step, saw.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public readonly void Amend<TSurface>(ref State<T> end, T h, ref TSurface surface, in Body<T> body, in Dip<T> d, in Seen<T> seen, bool byDistance)
        where TSurface : struct, ISurface<T>
    {
        T half = 0.5, one = 1.0, zero = 0.0;
        // The shift along the step, from four stages and the end.
        T q5 = d.Shift;
        var c1 = T.Fma(q1, -11.380395210869882, T.Fma(q2, 17.760283698115376, T.Fma(q3, -6.922179527489635, T.Fma(q4, 1.3814401015160496, q5 * -0.8391490612719097))));
        var c2 = T.Fma(q1, 39.674034396810626, T.Fma(q2, -91.80672643541598, T.Fma(q3, 57.608394011040374, T.Fma(q4, -14.18640086926791, q5 * 8.710698896832888))));
        var c3 = T.Fma(q1, -50.398566553333204, T.Fma(q2, 134.39399183045512, T.Fma(q3, -98.45832992516313, T.Fma(q4, 39.04463447216141, q5 * -24.581729824120202))));
        var c4 = T.Fma(q1, 21.104927367392467, T.Fma(q2, -60.34754909315453, T.Fma(q3, 47.772115441612385, T.Fma(q4, -26.23967370440955, q5 * 17.710179988559222))));
        Curve(ref surface, Start, out var a1, out var a2, out var a3);
        Curve(ref surface, d, out var b1, out var b2, out var b3);
        T whole = zero, late = zero, last = zero, dry = zero, dry2 = zero;
        for (var i = 0; i < Samples; i++)
        {
            T θ = (i + 0.5) / Samples;
            var q = T.Fma(T.Fma(T.Fma(T.Fma(c4, θ, c3), θ, c2), θ, c1), θ, q1);
            var x = one - FreshCover<T>.Fraction(q);
            var r0 = x * T.Fma(T.Fma(a3, x, a2), x, a1);
            var r1 = x * T.Fma(T.Fma(b3, x, b2), x, b1);
            var r = T.Fma(θ, r1 - r0, r0);
            dry = dry + x;
            dry2 = T.Fma(x, x, dry2);
            whole = whole + r;
            r = θ * r;
            late = late + r;
            last = T.Fma(θ, r, last);
        }
        T per = 1.0 / Samples;
        // Oil on the cover; what comes in the middle of the step is partly given back by its end.
        var fresh = surface.FilmInContact(d.Film);
        var most = surface.FilmInContact(d.Film + d.CoverFilm) - fresh;
        var some = surface.FilmInContact(T.Fma(half, d.CoverFilm, d.Film)) - fresh;
        var more = h * T.Fma(dry, per, -bare);
        var drawn = body.PickUp * T.Fma(T.Fma(4.0, some, -most), more, h * T.Fma(dry2, per, -square) * T.Fma(2.0, most, -4.0 * some));
        var gain = d.Turns * drawn * T.Fma(-half * h, T.Fma(body.Absorption, d.Scale, d.Turns), one);
        end.CoverFilm = end.CoverFilm + gain;
        end.OilTaken = T.Fma(d.Strip, T.Fma(-more, d.CoverFilm, drawn), end.OilTaken);

        // The dip takes place with half of that gain, and the friction that it costs is nearly in proportion to the film on the cover.
        per = per * T.Fma(half, gain / (d.CoverFilm + 1e-12), one);
        whole = T.Fma(whole, per, -sum);
        late = T.Fma(late, per, -first);
        last = T.Fma(last, per, -second);
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
        // Since then it has moved the ball.
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

    // The friction that is lost by not being fresh as a polynomial of 1 - φ, through four values of the law. Where the lane is dry it begins with a cusp: hence the value close to 0.
    private static void Curve<TSurface>(ref TSurface surface, in Dip<T> at, out T c1, out T c2, out T c3)
        where TSurface : struct, ISurface<T>
    {
        var f1 = surface.Friction(T.Fma(0.15, at.CoverFilm, at.Film), at.Slip) - at.WhenFresh;
        var f2 = surface.Friction(T.Fma(0.5, at.CoverFilm, at.Film), at.Slip) - at.WhenFresh;
        var f3 = surface.Friction(at.Film + at.CoverFilm, at.Slip) - at.WhenFresh;
        c1 = T.Fma(f1, 11.204481792717086, T.Fma(f2, -1.7142857142857142, f3 * 0.17647058823529413));
        c2 = T.Fma(f1, -33.61344537815126, T.Fma(f2, 13.142857142857142, f3 * -1.5294117647058822));
        c3 = T.Fma(f1, 22.408963585434172, T.Fma(f2, -11.428571428571429, f3 * 2.3529411764705883));
    }
}
