using BallSim.Integration;
using BallSim.Motion;
using BallSim.Spatial;

namespace BallSim.Tests.Integration;

/// <summary>Zeros and tops found look by look, on functions that are known.</summary>
public class SearchTests
{
    [Theory]
    [InlineData(0.3, 1)]
    [InlineData(0.3, 9)]
    [InlineData(1e-9, 1)]
    [InlineData(0.999999, 5)]
    public void A_zero_is_found_to_the_least_distance(double zero, int power)
    {
        foreach (var least in new[] { 1e-4, 1e-9, 5e-15 })
        {
            double F(double x) => Math.Pow(x, power) - Math.Pow(zero, power);
            var search = new Search(new(0, F(0), 1, F(1)), least);
            var looks = 0;
            for (; !search.IsOver; looks++)
            {
                Assert.InRange(search.Place, 0, 1);
                search.Tell(F(search.Place));
            }
            Assert.Equal(zero, search.Place, 2.01 * least + 1e-15);
            Assert.InRange(looks, 1, 60);
        }
    }

    [Fact]
    public void A_smooth_zero_takes_few_looks()
    {
        static double F(double x) => Math.Sin(x) - 0.4;
        var search = new Search(new(0, F(0), 1, F(1)), 1e-9);
        var looks = 0;
        for (; !search.IsOver; looks++)
        {
            search.Tell(F(search.Place));
        }
        Assert.InRange(looks, 3, 7);
    }

    [Fact]
    public void The_first_look_is_where_zero_is_likely_if_that_lies_between()
    {
        Assert.Equal(0.3, new Search(new(0.1, -1, 0.5, 1, 0.3), 1e-3).Place);
        foreach (var likely in new[] { 0, 0.1, 0.5, 0.7 })
        {
            Assert.Equal(0.3, new Search(new(0.1, -1, 0.5, 1, likely), 1e-3).Place, 1e-15);
        }
        static int Looks(double likely)
        {
            static double F(double x) => (x - 0.3) * (1 + x * x * x);
            var search = new Search(new(0, F(0), 1, F(1), likely), 1e-3);
            var looks = 0;
            for (; !search.IsOver; looks++)
            {
                search.Tell(F(search.Place));
            }
            Assert.Equal(0.3, search.Place, 2e-3);
            return looks;
        }
        Assert.InRange(Looks(0.3004), 2, 3);
        Assert.InRange(Looks(0.2996), 2, 3);
        Assert.InRange(Looks(0), 4, 9);
    }

    [Fact]
    public void Looks_that_never_come_to_a_number_end()
    {
        var search = new Search(new(0, double.NaN, 1, double.NaN), 1e-9);
        for (var looks = 0; !search.IsOver; looks++)
        {
            Assert.InRange(looks, 0, 60);
            search.Tell(double.NaN);
        }
    }

    // By a curve that errs by so much at the stages.
    private static Between Seek(Func<double, double> f, out int looks, double off = 0)
    {
        var swing = new Swing<Real> { Third = f(RungeKutta5.Place3) + off, Fourth = f(RungeKutta5.Place4) + off, Fifth = f(RungeKutta5.Place5) + off };
        var passage = new Passage(f(0), swing, f(1), 10);
        for (looks = 0; !passage.IsOver; looks++)
        {
            passage.Tell(f(passage.Place));
        }
        return passage.Between;
    }

    [Fact]
    public void What_only_rises_passes_zero_before_the_end_and_nobody_looks()
    {
        foreach (var zero in new[] { 0.1, 0.3, 0.6, 0.9 })
        {
            double F(double x) => x - zero;
            var found = Seek(F, out var looks);
            Assert.Equal(0, looks);
            Assert.Equal((0, F(0), 1, F(1)), (found.Low, found.AtLow, found.High, found.AtHigh));
            // Where the curve does, to the halvings of the step.
            Assert.Equal(zero, found.Likely, 2e-4);
        }
    }

    [Fact]
    public void A_top_is_found_where_it_passes_zero_and_only_there_by_one_look_where_the_curve_is_good()
    {
        for (var top = 0.07; top < 0.93; top += 0.013)
        {
            foreach (var height in new[] { 1e-3, 1e-2, -1e-3, -1e-2 })
            {
                foreach (var off in new[] { 0, 0.1, 0.29, -0.1, -0.25 })
                {
                    double F(double x) => height - 40 * (x - top) * (x - top) + 2 * Math.Pow(x - top, 3);
                    var found = Seek(F, out var looks, off);
                    Assert.InRange(looks, 1, off == 0 ? 1 : 9);
                    Assert.Equal(height > 0, found.Exists);
                    if (found.Exists)
                    {
                        Assert.True(found.Low <= top && F(found.Low) <= 0 && F(found.High) > 0);
                        Assert.Equal((F(found.Low), F(found.High)), (found.AtLow, found.AtHigh));
                    }
                    if (found.Exists && off == 0)
                    {
                        Assert.Equal(0, F(found.Likely), 3e-3);
                    }
                }
            }
        }
        // Far below zero nobody looks.
        Assert.False(Seek(x => -3 - (x - 0.4) * (x - 0.4), out var none).Exists);
        Assert.Equal(0, none);
    }

    [Fact]
    public void Where_the_curve_is_off_the_quarters_are_looked_at_and_the_first_at_whose_end_it_is_above_zero_is_found()
    {
        // The curve's top is far from the other: a narrow one that the stages do not see.
        static double F(double x) => -0.2 - (x - 0.2) * (x - 0.2) + 1.5 * Math.Exp(-300 * (x - 0.55) * (x - 0.55));
        var found = Seek(F, out var looks, 0.15);
        Assert.InRange(looks, 4, 6);
        Assert.Equal((0.25, 0.5), (found.Low, found.High));
        Assert.Equal((F(0.25), F(0.5)), (found.AtLow, found.AtHigh));
        Assert.Equal(0, found.Likely);
    }

    [Fact]
    public void Of_two_tops_that_pass_zero_the_first_is_found()
    {
        // A quartic, with tops at a quarter and at four fifths, the second the higher.
        static double F(double x) => 0.02 - 60 * (x - 0.25) * (x - 0.25) * (x - 0.8) * (x - 0.8) + 0.05 * x;
        var found = Seek(F, out var looks);
        Assert.Equal(1, looks);
        Assert.Equal(0, found.Low);
        Assert.InRange(found.High, 0.2, 0.3);
    }
}
