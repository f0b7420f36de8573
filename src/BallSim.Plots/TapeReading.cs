using static System.FormattableString;
using static BallSim.Units;

namespace BallSim.Plots;

/// <summary>Lengths as a tape reads them: inches to a thirty-second.</summary>
internal static class TapeReading
{
    private const int Parts = 32;

    public static string Of(double length)
    {
        var parts = (int)Math.Round(length / Inch * Parts);
        var (whole, rest, over) = (parts / Parts, parts % Parts, Parts);
        while (rest > 0 && rest % 2 == 0)
        {
            (rest, over) = (rest / 2, over / 2);
        }
        return rest == 0 ? Invariant($"{whole}") : whole == 0 ? Invariant($"{rest}/{over}") : Invariant($"{whole} {rest}/{over}");
    }
}
