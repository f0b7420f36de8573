using System.Text;
using System.Text.Unicode;

namespace BallSim.Files.Text;

/// <summary>
/// Text as files hold it: UTF-8, or UTF-16 with the mark that says so, as spreadsheets save it. Anything else is refused with its place: a text read in the wrong encoding would not fail, it would mean something else.
/// </summary>
internal static class TextFile
{
    /// <summary>The text of a file no larger than <paramref name="largest"/> bytes.</summary>
    public static TextReader Opened(string path, int largest) => Decoded(BoundedFile.Bytes(path, largest), path);

    /// <summary>The text of a file's bytes; <paramref name="name"/> stands for the file in messages.</summary>
    public static TextReader Decoded(ReadOnlySpan<byte> bytes, string name)
    {
        if (Utf16(bytes) is { } utf16)
        {
            return new StringReader(utf16.GetString(bytes[2..]));
        }
        return new StringReader(Encoding.UTF8.GetString(Utf8Of(bytes, name)));
    }

    /// <summary>The bytes without the mark of UTF-8, once they are known to be UTF-8.</summary>
    public static ReadOnlySpan<byte> Utf8Of(ReadOnlySpan<byte> bytes, string name)
    {
        var text = bytes.StartsWith("\uFEFF"u8) ? bytes[3..] : bytes;
        if (Utf16(text) is not null || text.Contains((byte)0))
        {
            throw BadFile.At(name, "", "is UTF-16 or no text at all; save it as UTF-8");
        }
        if (Utf8.IsValid(text))
        {
            return text;
        }
        var line = 1 + text[..FirstInvalid(text)].Count((byte)'\n');
        throw BadFile.At(name, $"line {line}", "has bytes that are not UTF-8, as other encodings write umlauts or \"µ\"; save it as UTF-8");
    }

    private static Encoding? Utf16(ReadOnlySpan<byte> bytes) => bytes switch
    {
        [0xFF, 0xFE, ..] => Encoding.Unicode,
        [0xFE, 0xFF, ..] => Encoding.BigEndianUnicode,
        _ => null,
    };

    private static int FirstInvalid(ReadOnlySpan<byte> text)
    {
        var at = 0;
        while (at < text.Length && Rune.DecodeFromUtf8(text[at..], out _, out var length) == System.Buffers.OperationStatus.Done)
        {
            at += length;
        }
        return at;
    }
}
