using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using BallSim.Integration;
using BallSim.Motion;
using BallSim.Spatial;

namespace BallSim.Tests.Motion;

/// <summary>What a look inside a step takes of the state there is what the dense output has, to the last bit.</summary>
public class InsideTests
{
    [Fact]
    public void A_look_inside_a_step_sees_the_dense_output()
    {
        var random = new Random(3);
        var step = default(Step<State<Real>>);
        foreach (ref var number in MemoryMarshal.CreateSpan(ref Unsafe.As<State<Real>, double>(ref step.Start), 9 * Unsafe.SizeOf<State<Real>>() / sizeof(double)))
        {
            number = random.NextDouble() - 0.5;
        }
        step.Interpolant = Interpolant.Slopes;
        Real h = 0.3;
        foreach (var θ in (double[])[0.0, 0.25, 0.5, 0.75, 0.9, 1.0])
        {
            var whole = Dense<State<Real>, Real>.Between(step, h, θ);
            Inside<Real>.At(step, h, θ, out var seen);
            Assert.Equal(Asked(whole), Asked(seen));
        }
    }

    private static double[] Asked(in State<Real> y) => [y.X, y.Y, y.MomentumX, y.MomentumY, y.MomentumZ, y.TurnX, y.TurnY, y.TurnZ, y.CoverFilm];
}
