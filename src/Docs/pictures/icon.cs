#:property PublishAot=false
#:property PackAsTool=false
// The icon of the packages and of the documentation: dotnet run src/Docs/pictures/icon.cs -- FILE. A ball with three holes and the rings of its track, each turned a little from the one before, as flare turns them.
using System.Buffers.Binary;
using System.IO.Compression;

const int size = 256, fine = 4;
var file = args.Length == 1 ? args[0] : throw new ArgumentException("name the file to write");

// Directions on the ball as the viewer sees it: x right, y up, z towards the viewer.
(double X, double Y, double Z) Unit(double x, double y, double z) => (x / Math.Sqrt(x * x + y * y + z * z), y / Math.Sqrt(x * x + y * y + z * z), z / Math.Sqrt(x * x + y * y + z * z));
var light = Unit(-0.5, 0.7, 0.75);
var holes = new[] { (At: Unit(0.10, 0.62, 0.78), Radius: 0.105), (At: Unit(0.42, 0.55, 0.72), Radius: 0.105), (At: Unit(0.20, 0.12, 0.97), Radius: 0.12) };
var axes = Enumerable.Range(0, 5).Select(i => Unit(-0.62 + 0.075 * i, 0.66 + 0.02 * i, 0.42)).ToArray();
const double ring = -0.36, halfWidth = 0.021;

(double R, double G, double B, double A) Colour(double x, double y)
{
    var r2 = x * x + y * y;
    if (r2 > 1)
    {
        return default;
    }
    var at = (X: x, Y: y, Z: Math.Sqrt(1 - r2));
    double Along((double X, double Y, double Z) d) => at.X * d.X + at.Y * d.Y + at.Z * d.Z;
    var shade = 0.42 + 0.58 * Math.Max(0, Along(light));
    if (holes.Any(h => Math.Acos(Math.Min(1, Along(h.At))) < h.Radius))
    {
        return (0.03, 0.05, 0.09, 1);
    }
    var (red, green, blue) = (0.09, 0.30, 0.52);
    for (var i = 0; i < axes.Length; i++)
    {
        if (Math.Abs(Along(axes[i]) - ring) < halfWidth)
        {
            (red, green, blue) = (0.98, 0.80 - 0.05 * i, 0.36 - 0.03 * i);
        }
    }
    var gleam = 0.55 * Math.Pow(Math.Max(0, Along(light)), 40);
    return (red * shade + gleam, green * shade + gleam, blue * shade + gleam, 1);
}

// Each point of the picture is the mean of sixteen; a row begins with the number of its filter, none.
var rows = new byte[size * (1 + 4 * size)];
for (var row = 0; row < size; row++)
{
    for (var column = 0; column < size; column++)
    {
        double r = 0, g = 0, b = 0, a = 0;
        for (var k = 0; k < fine * fine; k++)
        {
            var c = Colour((column + (k % fine + 0.5) / fine) / (0.48 * size) - 1 / 0.96, 1 / 0.96 - (row + (k / fine + 0.5) / fine) / (0.48 * size));
            (r, g, b, a) = (r + c.R, g + c.G, b + c.B, a + c.A);
        }
        byte Level(double sum, double of) => of == 0 ? (byte)0 : (byte)Math.Round(255 * Math.Min(1, sum / of));
        var at = row * (1 + 4 * size) + 1 + 4 * column;
        (rows[at], rows[at + 1], rows[at + 2], rows[at + 3]) = (Level(r, a), Level(g, a), Level(b, a), Level(a, fine * fine));
    }
}

// A PNG file: its mark, then chunks of length, name, content and the check sum of the last two.
using var png = new MemoryStream();
png.Write([0x89, (byte)'P', (byte)'N', (byte)'G', 13, 10, 26, 10]);
void Chunk(string name, byte[] content)
{
    Span<byte> number = stackalloc byte[4];
    BinaryPrimitives.WriteInt32BigEndian(number, content.Length);
    png.Write(number);
    byte[] named = [.. name.Select(c => (byte)c), .. content];
    png.Write(named);
    BinaryPrimitives.WriteUInt32BigEndian(number, Crc(named));
    png.Write(number);
}
static uint Crc(byte[] bytes)
{
    var crc = uint.MaxValue;
    foreach (var b in bytes)
    {
        crc ^= b;
        for (var bit = 0; bit < 8; bit++)
        {
            crc = (crc >> 1) ^ (0xEDB88320 & (uint)-(int)(crc & 1));
        }
    }
    return ~crc;
}
var header = new byte[13];
BinaryPrimitives.WriteInt32BigEndian(header, size);
BinaryPrimitives.WriteInt32BigEndian(header.AsSpan(4), size);
// Eight bits a channel; red, green, blue and how opaque.
(header[8], header[9]) = (8, 6);
Chunk("IHDR", header);
using var packed = new MemoryStream();
using (var zip = new ZLibStream(packed, CompressionLevel.SmallestSize, leaveOpen: true))
{
    zip.Write(rows);
}
Chunk("IDAT", packed.ToArray());
Chunk("IEND", []);
File.WriteAllBytes(file + ".part", png.ToArray());
File.Move(file + ".part", file, overwrite: true);
