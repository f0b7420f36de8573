namespace BallSim.Files.Text;

/// <summary>Files read up to a limit and replaced as a whole; trouble with the disk is told as trouble with the file.</summary>
internal static class BoundedFile
{
    /// <summary>All bytes of a file no larger than <paramref name="largest"/>.</summary>
    public static byte[] Bytes(string path, int largest)
    {
        try
        {
            using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read);
            // One byte more than allowed, so that the limit holds for pipes and growing files too, whatever length the system reports.
            var buffer = new byte[Math.Min(largest, stream.CanSeek ? stream.Length : largest) + 1];
            int filled = stream.ReadAtLeast(buffer, buffer.Length, throwOnEndOfStream: false);
            return filled <= largest && stream.ReadByte() < 0 ? buffer[..filled]
                : throw BadFile.At(path, "", $"is larger than {largest / (1024 * 1024)} MB, the most that is read");
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            throw BadFile.At(path, "", "does not exist");
        }
        catch (Exception e) when (e is UnauthorizedAccessException or NotSupportedException or ArgumentException or IOException and not BadFileException)
        {
            throw BadFile.At(path, "", Directory.Exists(path) ? "is a folder, not a file" : $"cannot be read: {e.Message}");
        }
    }

    /// <summary>Writes beside the target and renames: whoever reads meanwhile, and whatever fails, there is a whole file.</summary>
    public static void Replace(string path, Action<Stream> content)
    {
        var temporary = $"{path}.{Environment.ProcessId}.tmp";
        try
        {
            using (var stream = new FileStream(temporary, FileMode.CreateNew, FileAccess.Write, FileShare.None))
            {
                content(stream);
                stream.Flush(flushToDisk: true);
            }
            File.Move(temporary, path, overwrite: true);
        }
        catch (Exception e) when (e is UnauthorizedAccessException or IOException or NotSupportedException or ArgumentException)
        {
            throw BadFile.At(path, "", Directory.Exists(path) ? "is a folder; name a file to write" : $"cannot be written: {e.Message}");
        }
        finally
        {
            if (File.Exists(temporary))
            {
                File.Delete(temporary);
            }
        }
    }
}
