using BallSim.Balls;
using BallSim.Friction;
using BallSim.Lanes;
using BallSim.Motion;
using BallSim.Shots;
using BallSim.Spatial;
using static BallSim.Units;

namespace BallSim.Tests.Motion;

/// <summary>What the fresh cover changes over a step, summed at a few places: against twenty thousand, with the oil on the cover carried from one to the next; lanes repeat the shot alone.</summary>
public class DipPlacesTests
{
    // The shift crosses zero at the start, in the middle and near the end; comes near it and turns back; stays far. All in steps of up to 1.2 rad of δ = A sin + c.
    public static TheoryData<double, double, double> Swings => new()
    {
        { 3.0, 0.3, 0.02 }, { 3.0, 0.3, 2.7 }, { 4.0, -0.5, 2.9 }, { 2.0, 0.1, -0.8 }, { 1.2, 1.15, 4.3 }, { 3.0, 0.2, 1.1 }, { 3.5, 0.0, 4.3 }, { 0.4, 0.1, 2.8 },
    };

    [Theory]
    [MemberData(nameof(Swings))]
    public void A_few_places_are_as_good_as_many(double swing, double shift, double phase)
    {
        foreach (var turn in (double[])[0.2, 0.6, 1.1])
        {
            var places = Places<Real>(swing, shift, phase, turn);
            var (drawn, again, held, end, lost, late, last, bare) = Many(places);
            // What is foreseen of it is a little off.
            places.HeldAtEnd = places.Held + 0.95 * (end - places.Held);
            places.Sum();
            var what = $"{swing} {shift} {phase} {turn}";
            // Of what would be lost by a cover that is nowhere fresh, of what is held, of what is drawn in.
            var all = Math.Abs(Many(Places<Real>(0, 0, 0, turn)).Lost);
            void Near(double exact, double found, double part, string name) => Assert.True(Math.Abs(found - exact) < part, $"{name} at {what}: {found:E4} for {exact:E4}, allowed {part:E1}");
            Near(lost, places.Lost, 5e-4 * all, "lost");
            Near(late, places.LostLate, 5e-4 * all, "late");
            Near(last, places.LostLast, 5e-4 * all, "last");
            Near(drawn, places.Drawn, 5e-4 * drawn, "drawn");
            Near(again, places.Again, 1e-3 * held, "again");
            Near(held, places.MeanHeld, 5e-4 * held, "held");
            Near(bare, places.Bare, 5e-4, "bare");
        }
    }

    [Fact]
    public void Lanes_sum_as_the_shot_alone_whatever_is_beside_them()
    {
        var swings = Swings.Select(s => ((double)s[0], (double)s[1], (double)s[2])).ToArray();
        var lanes = default(DipPlaces<Doubles8>);
        var alone = new DipPlaces<Real>[8];
        for (var i = 0; i < 8; i++)
        {
            alone[i] = Places<Real>(swings[i].Item1, swings[i].Item2, swings[i].Item3, 0.3 + 0.1 * i);
            LaneCopy<Doubles8>.Set(ref lanes, i, alone[i]);
            alone[i].Sum();
        }
        lanes.Sum();
        for (var i = 0; i < 8; i++)
        {
            foreach (var (one, many) in new (double, Doubles8)[]
            {
                (alone[i].Bare, lanes.Bare), (alone[i].Drawn, lanes.Drawn), (alone[i].MeanHeld, lanes.MeanHeld), (alone[i].Again, lanes.Again), (alone[i].Lost, lanes.Lost), (alone[i].LostLate, lanes.LostLate), (alone[i].LostLast, lanes.LostLast),
            })
            {
                Assert.Equal(one, Doubles8.Lane(many, i));
            }
        }
    }

    // A film that thins along the step, slip that falls, and a third of the film on the cover. The shift is the beginning of the series of a sine.
    private static DipPlaces<T> Places<T>(double swing, double shift, double phase, double turn)
        where T : struct, IReal<T>
    {
        var ball = Ball.FromSpecification(15 * Pound, 2.48 * Inch, 0.05 * Inch);
        var law = Contact.Of(ball, Lane.Regulation).Law<T>(new());
        double Shift(double θ) => swing * Math.Sin(phase + θ * turn) + shift;
        var places = new DipPlaces<T> { Law = law, Held = 2e-6, HeldAtEnd = 2.05e-6, Taking = 0.5 * turn / (2 * Math.PI), Giving = turn / (2 * Math.PI) };
        double s = Math.Sin(phase), c = Math.Cos(phase);
        (places.Shift.C0, places.Shift.C1, places.Shift.C2) = (Shift(0), swing * c * turn, -0.5 * swing * s * turn * turn);
        (places.Shift.C3, places.Shift.C4) = (-swing * c * Math.Pow(turn, 3) / 6, swing * s * Math.Pow(turn, 4) / 24);
        (places.Film.C0, places.Film.C1) = (6e-6, -1e-6);
        (places.Slip.C0, places.Slip.C1) = (3.0, -0.2);
        T At(double θ) => law.Friction(places.Film.At(θ), places.Slip.At(θ));
        // The quartic through five values of the fresh friction.
        var f = new[] { At(0), At(0.25), At(0.5), At(0.75), At(1) };
        places.WhenFresh.C0 = f[0];
        places.WhenFresh.C1 = (-25.0 * f[0] + 48.0 * f[1] - 36.0 * f[2] + 16.0 * f[3] - 3.0 * f[4]) / 3.0;
        places.WhenFresh.C2 = (70.0 * f[0] - 208.0 * f[1] + 228.0 * f[2] - 112.0 * f[3] + 22.0 * f[4]) / 3.0;
        places.WhenFresh.C3 = (-80.0 * f[0] + 288.0 * f[1] - 384.0 * f[2] + 224.0 * f[3] - 48.0 * f[4]) / 3.0;
        places.WhenFresh.C4 = (32.0 * f[0] - 128.0 * f[1] + 192.0 * f[2] - 128.0 * f[3] + 32.0 * f[4]) / 3.0;
        return places;
    }

    private static (double Drawn, double Again, double Held, double End, double Lost, double Late, double Last, double Bare) Many(DipPlaces<Real> p)
    {
        const int Count = 20_000;
        double held = p.Held, drawn = 0, again = 0, mean = 0, lost = 0, late = 0, last = 0, bare = 0;
        for (var i = 0; i < Count; i++)
        {
            Real θ = (i + 0.5) / Count;
            double x = 1 - (double)FreshCover<Real>.Fraction(p.Shift.At(θ)), film = p.Film.At(θ);
            double here = p.Law.FilmInContact(film + x * held);
            var middle = held + 0.5 / Count * ((double)p.Taking * here - (double)p.Giving * held);
            double less = (double)p.Law.Friction(film + x * middle, p.Slip.At(θ)) - (double)p.Law.Friction(film, p.Slip.At(θ));
            here = p.Law.FilmInContact(film + x * middle);
            held += ((double)p.Taking * here - (double)p.Giving * middle) / Count;
            drawn += here / Count;
            again += x * middle / Count;
            mean += middle / Count;
            bare += x / Count;
            lost += less / Count;
            late += less * (double)θ / Count;
            last += less * (double)θ * (double)θ / Count;
        }
        return (drawn, again, mean, held, lost, late, last, bare);
    }
}
