using System.Text;
using BallSim.Balls;
using static BallSim.Units;

namespace BallSim.Files.Tests;

public class StlTests
{
    // A right-angled corner tetrahedron with legs of 2, 3 and 4 in: its volume is 2 · 3 · 4/6 in³.
    private static readonly (Vector3D A, Vector3D B, Vector3D C)[] Corner =
    [
        (new(0, 0, 0), new(0, 3, 0), new(2, 0, 0)), (new(0, 0, 0), new(2, 0, 0), new(0, 0, 4)), (new(0, 0, 0), new(0, 0, 4), new(0, 3, 0)),
        (new(2, 0, 0), new(0, 3, 0), new(0, 0, 4)),
    ];

    private static byte[] Binary(IEnumerable<(Vector3D A, Vector3D B, Vector3D C)> triangles, string header = "solid that is binary all the same")
    {
        using var stream = new MemoryStream();
        using var writer = new BinaryWriter(stream);
        writer.Write(Encoding.ASCII.GetBytes(header.PadRight(80)));
        writer.Write((uint)triangles.Count());
        foreach (var (a, b, c) in triangles)
        {
            foreach (var v in (Vector3D[])[Vector3D.Zero, a, b, c])
            {
                writer.Write((float)v.X);
                writer.Write((float)v.Y);
                writer.Write((float)v.Z);
            }
            writer.Write((ushort)0);
        }
        return stream.ToArray();
    }

    private static string Ascii(IEnumerable<(Vector3D A, Vector3D B, Vector3D C)> triangles) => "solid corner\n" + string.Concat(triangles.Select(t =>
        FormattableString.Invariant($"  facet normal 0 0 0\n    outer loop\n      vertex {t.A.X} {t.A.Y} {t.A.Z}\n      vertex {t.B.X:E6} {t.B.Y} {t.B.Z}\n      vertex {t.C.X} {t.C.Y} {t.C.Z}\n    endloop\n  endfacet\n")))
        + "endsolid corner\n";

    private static byte[] Text(string text) => Encoding.UTF8.GetBytes(text);

    [Fact]
    public void Both_kinds_give_the_solid_in_the_unit_that_is_stated()
    {
        foreach (var bytes in (byte[][])[Binary(Corner), Binary(Corner, "no text"), Text(Ascii(Corner)), Text(Ascii(Corner).Replace("\n", "\r\n", StringComparison.Ordinal).ToUpperInvariant().Replace("SOLID CORNER", "solid", StringComparison.Ordinal))])
        {
            var mesh = Stl.Read(bytes, "corner.stl", Inch);
            Assert.Equal((4, 4), (mesh.Triangles.Count, mesh.Vertices.Count));
            Assert.True(mesh.Report.IsSound);
            var solid = Solid.FromMesh(mesh);
            Assert.Equal(4 * Inch * Inch * Inch, solid.Volume, 1e-15);
            Assert.Equal(0.5 * Inch, solid.Centre.X, 1e-12);
        }
        var path = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName() + ".stl");
        File.WriteAllBytes(path, Binary(Corner));
        try
        {
            Assert.Equal(4e-9, Solid.FromMesh(Stl.Read(path, Millimetre)).Volume, 1e-18);
        }
        finally
        {
            File.Delete(path);
        }
    }

    [Fact]
    public void A_broken_surface_is_read_and_told()
    {
        var open = Stl.Read(Binary(Corner[..3]), "open.stl", Inch);
        Assert.Equal(3, open.Report.OpenEdges);
        var flipped = Stl.Read(Binary([.. Corner[..3], (Corner[3].A, Corner[3].C, Corner[3].B)]), "flipped.stl", Inch);
        Assert.Equal(3, flipped.Report.FlippedEdges);
        Assert.Contains("runs twice".Replace("runs", "run", StringComparison.Ordinal), Assert.Throws<ArgumentException>(() => Solid.FromMesh(flipped)).Message);
    }

    public static TheoryData<string, string> Broken => new()
    {
        { "", "neither begins with \"solid\"" },
        { "solid x\nendsolid x\n", "holds no triangles" },
        { "solid x\nfacet normal 0 0 1\nouter loop\nvertex 0 0 0\nvertex 1 0 0\nvertex 0 1 0\n", "line 7: is the last, and \"endsolid\" is missing" },
        { "solid x\nfacet\nouter loop\nvertex 0 0\n", "line 4: has 2 numbers" },
        { "solid x\nfacet\nouter loop\nvertex 0 0 1,5\n", "line 4: \"1,5\" is not a number" },
        { "solid x\nfacet\nouter loop\nvertex 0 0 NaN\n", "line 4: \"NaN\" is not a number" },
        { "solid x\nfacet\nvertex 0 0 0\nvertex 0 0 0\nvertex 0 0 0\nvertex 0 0 0\n", "line 6: is a fourth corner" },
        { "solid x\nvertex 0 0 0\n", "line 2: is a corner outside a facet" },
        { "solid x\nfacet\nvertex 0 0 0\nendfacet\n", "line 4: ends a facet with 1 corners" },
        { "solid x\nfacet\nfacet\n", "line 3: begins a facet within a facet" },
        { "solid x\ntriangle 1 2 3\n", "line 2: begins with \"triangle\"" },
    };

    [Theory]
    [MemberData(nameof(Broken))]
    public void A_broken_file_is_refused_with_its_place(string text, string part)
    {
        var message = Assert.Throws<BadFileException>(() => Stl.Read(Text(text), "part.stl", Inch)).Message;
        Assert.StartsWith("part.stl: ", message, StringComparison.Ordinal);
        Assert.Contains(part, message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_binary_file_cut_off_or_with_nonsense_is_refused()
    {
        var whole = Binary(Corner, "no text");
        Assert.Contains("would have 284 bytes; it has 283 (cut off?)", Assert.Throws<BadFileException>(() => Stl.Read(whole.AsSpan(0, 283), "part.stl", Inch)).Message);
        Assert.Contains("triangle 2: has a coordinate that is not a number", Assert.Throws<BadFileException>(
            () => Stl.Read(Binary([Corner[0], (new(double.NaN, 0, 0), new(1, 0, 0), new(0, 1, 0))]), "part.stl", Inch)).Message);
        Assert.Contains("does not exist", Assert.Throws<BadFileException>(() => Stl.Read("/no/such.stl", Inch)).Message);
        Assert.Contains("write Millimetre or Inch", Assert.Throws<ArgumentOutOfRangeException>(() => Stl.Read(whole, "part.stl", 25.4)).Message);
    }
}
