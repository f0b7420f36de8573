using System.Text;
using BallSim.Files.Text;
using BallSim.Sweeps;

namespace BallSim.Files;

/// <summary>
/// The table of a sweep, computed block by block into a file: CSV, or Parquet where the name ends in .parquet. Memory holds one block; a run that was killed at any moment goes on where it was, and the file
/// is then the same, byte for byte, as if it had not been; and it is the same however many machines computed it.
/// </summary>
public static class SweepTable
{
    /// <summary>Computes all rows and writes the table. Until it is whole, finished blocks lie in the folder <c>PATH.parts</c> beside it.</summary>
    /// <param name="sweep">The sweep.</param>
    /// <param name="path">The file.</param>
    /// <param name="resume">Go on with blocks that are there; false: blocks of an earlier run are refused.</param>
    /// <param name="progress">Told how many rows are done.</param>
    /// <param name="cancellation">Stops within a block; what is finished stays.</param>
    /// <exception cref="BadFileException">A file cannot be written, blocks of another plan lie there, or blocks lie there and <paramref name="resume"/> is false.</exception>
    public static void Write(SweepFile sweep, string path, bool resume = false, IProgress<int>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(sweep);
        ArgumentNullException.ThrowIfNull(path);
        var store = SweepStore.For(sweep.Plan, sweep.Fingerprint, path + ".parts");
        using (store.Held("whole"))
        {
            Compute(sweep.Plan, store, new Shard(1, 1), resume, progress, cancellation);
            Join(store, path);
        }
        store.Delete();
    }

    /// <summary>Computes one part of the rows into a folder that the machines share, or that is put together afterwards.</summary>
    /// <param name="sweep">The sweep.</param>
    /// <param name="folder">The folder; made if it is not there.</param>
    /// <param name="shard">Which part.</param>
    /// <param name="resume">Go on with blocks of this part that are there; false: they are refused.</param>
    /// <param name="progress">Told how many of the part's rows are done.</param>
    /// <param name="cancellation">Stops within a block; what is finished stays.</param>
    /// <exception cref="BadFileException">A file cannot be written, blocks of another plan lie there, or blocks of this part lie there and <paramref name="resume"/> is false.</exception>
    public static void WriteShard(SweepFile sweep, string folder, Shard shard, bool resume = false, IProgress<int>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(sweep);
        ArgumentNullException.ThrowIfNull(folder);
        var store = SweepStore.For(sweep.Plan, sweep.Fingerprint, folder);
        using (store.Held($"shard-{shard.Number}-of-{shard.Of}"))
        {
            Compute(sweep.Plan, store, shard, resume, progress, cancellation);
        }
    }

    /// <summary>How many rows a part has.</summary>
    public static int Rows(SweepFile sweep, Shard shard)
    {
        ArgumentNullException.ThrowIfNull(sweep);
        var perBlock = SweepStore.PerBlock(sweep.Plan.Rows);
        var (from, to) = shard.Blocks(SweepStore.Count(sweep.Plan.Rows));
        return (int)(Math.Min(sweep.Plan.Rows, (long)to * perBlock) - Math.Min(sweep.Plan.Rows, (long)from * perBlock));
    }

    /// <summary>Puts the parts in a folder together into one table. The folder stays.</summary>
    /// <param name="folder">The folder that the parts were written to.</param>
    /// <param name="path">The file.</param>
    /// <returns>How many rows the table has.</returns>
    /// <exception cref="BadFileException">Blocks are missing or damaged, or the file cannot be written; nothing is written then.</exception>
    public static int Gather(string folder, string path)
    {
        ArgumentNullException.ThrowIfNull(folder);
        ArgumentNullException.ThrowIfNull(path);
        var store = SweepStore.Open(folder);
        if (store.Missing() is { Length: > 0 } missing)
        {
            throw BadFile.At(folder, "", $"of {store.Blocks} blocks these are missing or damaged: {missing} (counted from 0); run the parts that hold them once more with --resume, then gather");
        }
        Join(store, path);
        return store.Rows;
    }

    private static void Compute(SweepPlan plan, SweepStore store, Shard shard, bool resume, IProgress<int>? progress, CancellationToken cancellation)
    {
        var (from, to) = shard.Blocks(store.Blocks);
        var mine = Enumerable.Range(from, to - from).ToArray();
        if (!resume && mine.Any(store.Has))
        {
            throw BadFile.At(store.Folder, "", "holds finished blocks of this sweep from an earlier run; go on with --resume, or delete the folder to begin anew");
        }
        var columns = SweepColumns.Of(plan);
        var done = 0;
        foreach (var block in mine)
        {
            var (first, count) = store.RowsOf(block);
            if (!store.Has(block))
            {
                store.Write(block, columns, Sweep.Block(plan, first, count, cancellation));
            }
            progress?.Report(done += count);
        }
    }

    private static void Join(SweepStore store, string path)
    {
        var blocks = Enumerable.Range(0, store.Blocks).Select(b => store.Read(b) ?? throw BadFile.At(store.Folder, $"block {b}", "was there a moment ago and is missing or damaged now"));
        if (path.EndsWith(".parquet", StringComparison.OrdinalIgnoreCase))
        {
            SweepStore.Durable(path, stream => SweepParquet.Write(stream, store, blocks));
            return;
        }
        SweepStore.Durable(path, stream =>
        {
            stream.Write(Encoding.UTF8.GetBytes(Columns.Header(store.Columns) + "\n"));
            foreach (var block in blocks)
            {
                stream.Write(block);
            }
        });
    }
}
