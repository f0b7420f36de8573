using System.Globalization;
using System.Numerics;
using System.Text.Json;
using BallSim.Balls;
using BallSim.Friction;
using BallSim.Lanes;
using BallSim.Spatial;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using static BallSim.Units;

namespace BallSim.Tests.Friction;

/// <summary>References: tests/data/friction.csv and the friction_derived blocks of full-model.json, both computed apart from this code from the film law of the sheet of equations.</summary>
public class FilmLawTests
{
    // The one ball and lane of friction.csv: R = 0.1085 m, m = 6.80 kg, smooth pores, defaults otherwise.
    private static Contact Contact(double roughness, double viscosity, double pores = 0) =>
        new(6.80, 0.1085, roughness, pores, 0.8e9, 0.40, 0.20e-6, 10e9, 0.30, viscosity);

    private static double Mu(Contact contact, FrictionCalibration calibration, double film, double slip) => contact.Law<Real>(calibration).Friction(film, slip);

    public static TheoryData<double, double, double, double, double> Rows()
    {
        var rows = new TheoryData<double, double, double, double, double>();
        foreach (var line in File.ReadLines(Path.Combine(AppContext.BaseDirectory, "data", "friction.csv")).Skip(1))
        {
            double[] n = [.. line.Split(',').Select(t => double.Parse(t, CultureInfo.InvariantCulture))];
            foreach (var (slip, mu) in new[] { (7.0, n[3]), (3.0, n[4]), (0.5, n[5]) })
            {
                rows.Add(n[0], n[1], n[2], slip, mu);
            }
        }
        return rows;
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public void The_coefficient_is_that_of_the_reference_table(double units, double roughness, double viscosity, double slip, double mu) =>
        Assert.Equal(mu, Mu(Contact(roughness, viscosity), FrictionCalibration.Default, units * OilUnit, slip), 1e-12 * mu);

    [Fact]
    public void The_reference_table_is_read_whole() => Assert.Equal(27 * 3, Rows().Count);

    [Fact]
    public void The_derived_constants_are_those_of_the_full_model_cases()
    {
        using var document = JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "data", "full-model.json")));
        var seen = 0;
        foreach (var inputs in document.RootElement.GetProperty("cases").EnumerateArray().Select(c => c.GetProperty("inputs")))
        {
            var f = inputs.GetProperty("friction");
            double In(string name) => f.GetProperty(name).GetDouble();
            var contact = new Contact(inputs.GetProperty("m").GetDouble(), inputs.GetProperty("R").GetDouble(), In("Ra_ball"), In("h_p"), In("E_b"), In("nu_b"),
                In("Ra_lane"), In("E_l"), In("nu_l"), In("eta"));
            void Same(string name, double value)
            {
                var expected = inputs.GetProperty("friction_derived").GetProperty(name).GetDouble();
                Assert.Equal(expected, value, 1e-12 * expected);
            }
            Same("E_star", contact.EffectiveModulus);
            Same("contact_radius", contact.ContactRadius);
            Same("mean_pressure", contact.MeanPressure);
            Same("h_ff", contact.FloodedFilm(In("u_e")));
            Same("h_s", contact.FilmScale(In("c_s")));
            seen++;
        }
        Assert.Equal(6, seen);
    }

    /// <summary>A contact, a calibration, a film and a slip within the ranges that their types let pass, and a factor above one.</summary>
    private static Gen<(Contact Contact, FrictionCalibration Calibration, double Film, double Slip, double Factor)> Inputs { get; } =
        from n in Gen.Choose(0, 1000).ArrayOf(12)
        let dry = 0.12 + 0.20e-3 * n[0]
        let floor = 0.04e-3 * n[1]
        let ceiling = 0.03 + (Math.Min(0.08, dry - floor - 0.005) - 0.03) * n[2] / 1000.0
        select (
            new Contact(3.6 + 3.6e-3 * n[3], 0.1085, 0.05e-6 + 2.95e-9 * n[4], 2e-9 * n[5], 0.2e9 + 2.8e6 * n[6], 0.40, 0.20e-6, 10e9, 0.30, 0.012 + 69e-6 * n[7]),
            new FrictionCalibration { Dry = dry, Floor = floor, ViscousCeiling = ceiling, FilmScale = 0.5 + 2.5e-3 * n[8] },
            n[9] * n[9] * 20e-12, n[10] * 0.01, 1.02 + 0.001 * n[11]);

    private static Property Holds(Func<Contact, FrictionCalibration, double, double, double, bool> property) =>
        Prop.ForAll(Inputs.ToArbitrary(), i => property(i.Contact, i.Calibration, i.Film, i.Slip, i.Factor));

    private const double Rounding = 3e-15;

    [Property(MaxTest = 400)]
    public Property It_lies_between_floor_and_dry() => Holds((c, k, h, s, _) =>
        Mu(c, k, h, s) >= k.Floor * (1 - Rounding) && Mu(c, k, h, s) <= k.Dry * (1 + Rounding));

    [Property(MaxTest = 200)]
    public Property Without_film_it_is_dry_and_the_first_oil_costs_nothing() => Holds((c, k, _, s, _) =>
    {
        // mu(h) = mu_d - const h^1.5: the slope at 0 falls as the root of h.
        double Slope(double h) => (k.Dry - Mu(c, k, h, s)) / h * c.FilmScale(k.FilmScale);
        return Math.Abs(Mu(c, k, 0, s) / k.Dry - 1) < Rounding
            && Slope(1e-4 * c.FilmScale(k.FilmScale)) <= 0.02 * k.Dry
            && Math.Abs(Slope(1e-4 * c.FilmScale(k.FilmScale)) / Slope(1e-6 * c.FilmScale(k.FilmScale)) - 10) < 0.1;
    });

    [Property(MaxTest = 400)]
    public Property It_falls_with_the_film() => Holds((c, k, h, s, factor) => Mu(c, k, h * factor, s) <= Mu(c, k, h, s) * (1 + Rounding));

    [Property(MaxTest = 400)]
    public Property It_rises_with_the_slip() => Holds((c, k, h, s, factor) => Mu(c, k, h, s * factor) >= Mu(c, k, h, s) * (1 - Rounding));

    [Property(MaxTest = 400)]
    public Property It_rises_with_roughness_and_pores() => Holds((c, k, h, s, factor) =>
        Mu(c with { BallRoughness = c.BallRoughness * factor }, k, h, s) >= Mu(c, k, h, s) * (1 - Rounding)
        && Mu(c with { LaneRoughness = c.LaneRoughness * factor }, k, h, s) >= Mu(c, k, h, s) * (1 - Rounding)
        && Mu(c with { Pores = c.Pores + 1e-7 * factor }, k, h, s) >= Mu(c, k, h, s) * (1 - Rounding));

    // Nothing of the kind is claimed of viscosity and modulus: both change the film that remains and the shear that it bears, one against the other.
    [Property(MaxTest = 400)]
    public Property It_rises_with_film_scale_dry_and_floor() => Holds((c, k, h, s, factor) =>
        Mu(c, k with { FilmScale = k.FilmScale * factor }, h, s) >= Mu(c, k, h, s) * (1 - Rounding)
        && Mu(c, k with { Dry = k.Dry * factor }, h, s) >= Mu(c, k, h, s) * (1 - Rounding)
        && Mu(c, k with { Floor = k.Floor + (k.Dry - k.Floor - k.ViscousCeiling) * (factor - 1) / 2 }, h, s) >= Mu(c, k, h, s) * (1 - Rounding));

    [Fact]
    public void It_is_not_monotone_in_viscosity()
    {
        // friction.csv, 20 units, Ra 0.5 um: at slip 7 the coefficient rises from 0.015 to 0.06 Pa s, at slip 0.5 it falls.
        double Change(double s) => Mu(Contact(0.5e-6, 0.06), FrictionCalibration.Default, 20 * OilUnit, s)
            - Mu(Contact(0.5e-6, 0.015), FrictionCalibration.Default, 20 * OilUnit, s);
        Assert.True(Change(7) > 0 && Change(0.5) < 0);
    }

    [Fact]
    public void It_is_not_monotone_in_the_modulus()
    {
        // Stiffer: a thinner flooded film, which bares more asperities where oil abounds; and more pressure, which makes the shear of a thin film count for less.
        double Change(double film, double s) => Mu(Contact(0.5e-6, 0.03) with { BallModulus = 3e9 }, FrictionCalibration.Default, film, s)
            - Mu(Contact(0.5e-6, 0.03) with { BallModulus = 0.2e9 }, FrictionCalibration.Default, film, s);
        Assert.True(Change(100 * OilUnit, 0) > 0 && Change(2 * OilUnit, 7) < 0);
    }

    [Fact]
    public void A_film_below_zero_counts_as_none() => Assert.Equal(0.20, Mu(Contact(0.5e-6, 0.03), FrictionCalibration.Default, -1e-6, 2), 1e-15);

    [Fact]
    public void A_contact_that_grips_better_oiled_than_dry_is_refused()
    {
        var calibration = FrictionCalibration.Default with { Dry = 0.09 };
        var message = Assert.Throws<ArgumentException>(() => Contact(0.5e-6, 0.03).Law<Real>(calibration)).Message;
        Assert.Contains("Floor + ViscousCeiling = 0.1 is not below Dry = 0.09", message);
        Assert.Contains("Dry = 20 is out of [0.01, 1]", Assert.Throws<ArgumentOutOfRangeException>(() => FrictionCalibration.Default with { Dry = 20 }).Message);
        Assert.Contains("for micrometres write 0.25 * Micrometre",
            Assert.Throws<ArgumentOutOfRangeException>(() => FrictionCalibration.Default with { GapFloor = 0.25 }).Message);
    }

    [Fact]
    public void Surfaces_join_map_and_law_and_keep_to_a_given_row()
    {
        var oil = OilMap.Crowned(40 * Foot, 25 * Millilitre);
        var law = Contact(0.5e-6, 0.03).Law<Real>(FrictionCalibration.Default);
        var surface = new FilmSurface<Real, MapOfReal>(law, new MapOfReal(oil.Map));
        var (x, y) = (0.2, 12.1);
        Assert.Equal(oil.FilmAt(x, y), (double)surface.Value(x, y));
        Assert.Equal((double)law.Friction(oil.FilmAt(x, y), 3), (double)surface.Friction(surface.Value(x, y), 3));
        // The row that begins at the foul line reaches to 8 ft, and is read beyond its end until told otherwise.
        Assert.Equal(8 * Foot, (double)surface.Enter(0));
        Assert.Equal(oil.Map.At(x, y, oil.Map.RowOf(0)), (double)surface.Value(x, y));
        surface.Roam();
        Assert.Equal(oil.FilmAt(x, y), (double)surface.Value(x, y));

        var given = new GivenSurface<Real, MapOfReal>(new MapOfReal(FrictionMap.Zones((0, 0.04), (12, 0.2)).Map));
        Assert.Equal(12, (double)given.Enter(0));
        Assert.Equal(0.04, (double)given.Friction(given.Value(x, y), 3));
        Assert.Equal(double.PositiveInfinity, (double)given.Enter(12));
        Assert.Equal(0.2, (double)given.Friction(given.Value(x, y), 3));
    }

    [Fact]
    public void The_law_can_be_asked_in_words_of_ball_and_lane()
    {
        // friction.csv: 20 units, Ra 0.5 um, 0.03 Pa s, slip 7 m/s.
        var i = 0.4 * 6.80 * 0.1085 * 0.1085;
        var ball = new Ball { Mass = 6.80, Radius = 0.1085, Inertia = new(i, i, i), Finish = Finish.Measured(0.5 * Micrometre), Cover = Cover.Plastic };
        var mu = FrictionCalibration.Default.Coefficient(ball, Lane.Regulation, 20 * OilUnit, 7);
        Assert.Equal(3.424556414769767e-02, mu, 1e-13);
        Assert.Contains("for micrometres write 20 * Micrometre", Assert.Throws<ArgumentOutOfRangeException>(
            () => FrictionCalibration.Default.Coefficient(ball, Lane.Regulation, 20, 7)).Message);
        Assert.Contains("slip = -1 m/s is out of", Assert.Throws<ArgumentOutOfRangeException>(
            () => FrictionCalibration.Default.Coefficient(ball, Lane.Regulation, 0, -1)).Message);
    }

    [Fact]
    public void The_inverse_four_thirds_power_is_good_to_rounding()
    {
        // X = a^(-4/3) exactly when X³ a⁴ = 1; both numbers are dyadic, so the product is formed exactly in integers.
        static (BigInteger Mantissa, int Exponent) Dyadic(double d)
        {
            var bits = BitConverter.DoubleToInt64Bits(d);
            return ((bits & 0xFFFFFFFFFFFFFL) | 0x10000000000000L, (int)(bits >> 52) - 1075);
        }
        static double RelativeError(double a)
        {
            double power = Elementary<Real>.InverseFourThirdsPower(a);
            var ((ma, ea), (mx, ex)) = (Dyadic(a), Dyadic(power));
            var (mantissa, exponent) = (BigInteger.Pow(mx, 3) * BigInteger.Pow(ma, 4), 3 * ex + 4 * ea);
            var one = BigInteger.One << -exponent;
            return Math.Exp(BigInteger.Log(BigInteger.Abs(mantissa - one) + BigInteger.One) - BigInteger.Log(one)) / 3;
        }
        double worst = 0;
        for (var n = 0; n <= 60000; n++)
        {
            worst = Math.Max(worst, RelativeError(Math.Pow(10, n * 12.0 / 60000)));
        }
        Assert.InRange(worst, 0, 6e-16);
    }
}
