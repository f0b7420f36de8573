using System.Buffers.Binary;
using System.Globalization;
using BallSim.Balls;
using BallSim.Files.Text;

namespace BallSim.Files;

/// <summary>Triangle meshes from STL files, ASCII or binary. The format knows no unit: the caller says what one is.</summary>
/// <remarks>
/// Corners that coincide are joined; the normals in the file are passed over, the order of the corners says which side is outside. A mesh
/// with holes or flipped triangles is read all the same: <see cref="TriangleMesh.Report"/> tells, and <see cref="Solid.FromMesh"/>
/// refuses it.
/// </remarks>
/// <example><code>
/// var core = Solid.FromMesh(Stl.Read("core.stl", unit: Millimetre));
/// </code></example>
public static class Stl
{
    /// <summary>Most bytes that are read.</summary>
    private const int LargestFile = 64 * 1024 * 1024;

    private const int HeaderLength = 84;
    private const int RecordLength = 50;

    /// <summary>Reads a file.</summary>
    /// <param name="path">The file, at most 64 MB: 1.3 million triangles.</param>
    /// <param name="unit">What one of the file's numbers is, m: write <c>Millimetre</c> or <c>Inch</c>; 1e-6 to 1.</param>
    /// <param name="within">Corners nearer than this are joined, m; 0, the default, joins those with equal coordinates only; at most 1
    /// mm.</param>
    /// <exception cref="BadFileException">The file cannot be used; the message names the file, the line or triangle and what was
    /// expected.</exception>
    public static TriangleMesh Read(string path, double unit, double within = 0) => Read(BoundedFile.Bytes(path, LargestFile), path, unit, within);

    /// <summary>Reads the bytes of a file.</summary>
    /// <param name="bytes">The whole content.</param>
    /// <param name="name">What error messages call it.</param>
    /// <param name="unit">What one of the file's numbers is, m; 1e-6 to 1.</param>
    /// <param name="within">Corners nearer than this are joined, m; 0 to 1 mm.</param>
    /// <exception cref="BadFileException">The content cannot be used.</exception>
    public static TriangleMesh Read(ReadOnlySpan<byte> bytes, string name, double unit, double within = 0)
    {
        if (!(unit >= 1e-6 && unit <= 1))
        {
            throw new ArgumentOutOfRangeException(nameof(unit), unit, FormattableString.Invariant($"unit = {unit:G6} m is out of [1E-06, 1] m; write Millimetre or Inch"));
        }
        // The length of a binary file follows from its count of triangles; a text never has that length but by the oddest chance, and
        // then "solid" decides.
        var triangles = bytes.Length >= HeaderLength && bytes.Length == HeaderLength + (long)RecordLength * Count(bytes)
            ? Binary(bytes, name, unit)
            : bytes.StartsWith("solid"u8)
                ? Ascii(TextFile.Decoded(bytes, name).ReadToEnd(), name, unit)
                : throw BadFile.At(name, "", bytes.Length < HeaderLength
                    ? $"is no STL file: it neither begins with \"solid\" nor has the {HeaderLength} bytes of a binary header"
                    : $"is no STL file: it does not begin with \"solid\", and as a binary one of {Count(bytes)} triangles it would have " +
                        $"{HeaderLength + (long)RecordLength * Count(bytes)} bytes; it has {bytes.Length} (cut off?)");
        return triangles.Count > 0 ? TriangleMesh.Joined(triangles, within) : throw BadFile.At(name, "", "holds no triangles");
    }

    private static uint Count(ReadOnlySpan<byte> bytes) => BinaryPrimitives.ReadUInt32LittleEndian(bytes[80..]);

    private static List<(Vector3D, Vector3D, Vector3D)> Binary(ReadOnlySpan<byte> bytes, string name, double unit)
    {
        var triangles = new List<(Vector3D, Vector3D, Vector3D)>((int)Count(bytes));
        for (var at = HeaderLength; at < bytes.Length; at += RecordLength)
        {
            var record = bytes.Slice(at, RecordLength);
            var (a, b, c) = (Corner(record, 12), Corner(record, 24), Corner(record, 36));
            if (!(Finite(a) && Finite(b) && Finite(c)))
            {
                throw BadFile.At(name, $"triangle {triangles.Count + 1}", "has a coordinate that is not a number");
            }
            triangles.Add((unit * a, unit * b, unit * c));
        }
        return triangles;
    }

    private static bool Finite(Vector3D v) => double.IsFinite(v.X) && double.IsFinite(v.Y) && double.IsFinite(v.Z);

    private static Vector3D Corner(ReadOnlySpan<byte> record, int at) => new(
        BinaryPrimitives.ReadSingleLittleEndian(record[at..]), BinaryPrimitives.ReadSingleLittleEndian(record[(at + 4)..]),
        BinaryPrimitives.ReadSingleLittleEndian(record[(at + 8)..]));

    private static List<(Vector3D, Vector3D, Vector3D)> Ascii(string text, string name, double unit)
    {
        var triangles = new List<(Vector3D, Vector3D, Vector3D)>();
        var corners = new List<Vector3D>(3);
        var (line, inFacet, ended) = (0, false, false);
        BadFileException Wrong(string sentence) => BadFile.At(name, $"line {line}", sentence);
        foreach (var row in text.AsSpan().EnumerateLines())
        {
            line++;
            var words = row.ToString().Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
            switch (words.Length == 0 ? "" : words[0].ToLowerInvariant())
            {
                case "" or "solid" or "outer" or "endloop":
                    break;
                case "endsolid":
                    ended = true;
                    break;
                case "facet":
                    (inFacet, ended) = inFacet ? throw Wrong("begins a facet within a facet; \"endfacet\" is missing") : (true, false);
                    break;
                case "vertex":
                    if (!inFacet || corners.Count == 3)
                    {
                        throw Wrong(inFacet ? "is a fourth corner; a facet has three" : "is a corner outside a facet");
                    }
                    corners.Add(unit * Numbers(words, Wrong));
                    break;
                case "endfacet":
                    if (corners.Count != 3)
                    {
                        throw Wrong($"ends a facet with {corners.Count} corners; a facet has three");
                    }
                    triangles.Add((corners[0], corners[1], corners[2]));
                    corners.Clear();
                    inFacet = false;
                    break;
                default:
                    throw Wrong($"begins with \"{Shortened(words[0])}\"; facet, outer loop, vertex, endloop, endfacet or endsolid was expected");
            }
        }
        return inFacet || !ended ? throw Wrong("is the last, and \"endsolid\" is missing: the file is cut off") : triangles;
    }

    private static Vector3D Numbers(string[] words, Func<string, BadFileException> wrong)
    {
        if (words.Length != 4)
        {
            throw wrong($"has {words.Length - 1} numbers; a corner has three");
        }
        double Number(string word) => double.TryParse(word, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value)
            ? value
            : throw wrong($"\"{Shortened(word)}\" is not a number");
        return new(Number(words[1]), Number(words[2]), Number(words[3]));
    }

    private static string Shortened(string word) => word.Length <= 40 ? word : word[..40] + "...";
}
