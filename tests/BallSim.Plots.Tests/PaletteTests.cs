namespace BallSim.Plots.Tests;

/// <summary>
/// The palette under full colour blindness of the three kinds, simulated with the matrices of Machado, Oliveira and Fernandes, IEEE Trans. Vis. Comput. Graph. 15 (2009) 1291 (severity 1; entries
/// from memory), and measured as the distance in CIE L*a*b* (D65): 2.3 is just noticeable; 20 asked here is far above it.
/// </summary>
public class PaletteTests
{
    public static TheoryData<string, double[]> Eyes => new()
    {
        { "full", [1, 0, 0, 0, 1, 0, 0, 0, 1] },
        { "no red", [0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998] },
        { "no green", [0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.011820, 0.042940, 0.968881] },
        { "no blue", [1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.303900] },
    };

    [Theory, MemberData(nameof(Eyes))]
    public void Colours_stay_apart(string eye, double[] matrix)
    {
        string[] seen = [.. Palette.Colours, Palette.Paper];
        for (var i = 0; i < seen.Length; i++)
        {
            for (var j = 0; j < i; j++)
            {
                var (a, b) = (Lab(seen[i], matrix), Lab(seen[j], matrix));
                var distance = Math.Sqrt(a.Zip(b, (p, q) => (p - q) * (p - q)).Sum());
                Assert.True(distance > 20, $"{seen[i]} and {seen[j]} are only {distance:F1} apart with {eye} vision");
            }
        }
    }

    private static double[] Lab(string colour, double[] m)
    {
        double Linear(int at)
        {
            var c = Convert.ToInt32(colour.Substring(at, 2), 16) / 255.0;
            return c <= 0.04045 ? c / 12.92 : Math.Pow((c + 0.055) / 1.055, 2.4);
        }
        double[] c = [Linear(1), Linear(3), Linear(5)];
        double Seen(int row) => Math.Clamp(m[3 * row] * c[0] + m[3 * row + 1] * c[1] + m[3 * row + 2] * c[2], 0, 1);
        var (r, g, b) = (Seen(0), Seen(1), Seen(2));
        double F(double t) => t > 0.008856 ? Math.Cbrt(t) : 7.787 * t + 16.0 / 116;
        var (x, y, z) = (F((0.4124 * r + 0.3576 * g + 0.1805 * b) / 0.9505), F(0.2126 * r + 0.7152 * g + 0.0722 * b), F((0.0193 * r + 0.1192 * g + 0.9505 * b) / 1.089));
        return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
    }
}
