using System.Runtime.InteropServices;
using BallSim.Balls;
using BallSim.Ensembles;
using BallSim.Lanes;
using BallSim.Motion;
using BallSim.Releases;
using BallSim.Shots;
using BallSim.Spatial;

namespace BallSim.Gpu;

/// <summary>A chunk of throws, sorted by lane but for those in doubt, and their outcomes.</summary>
internal sealed class FilledChunk(int from, int count, SimulatorOptions options, ChunkRows room)
{
    public int From => from;

    public int Count => count;

    public Ball[] Balls => room.Balls;

    public Lane[] Lanes => room.Lanes;

    public Launch[] Launches => room.Launches;

    public Outcome[] Outcomes => room.Outcomes;

    public IReadOnlyCollection<Group> Groups { get; private set; } = [];

    /// <summary>Puts shots on one lane together.</summary>
    public void Sort()
    {
        // Most rows lie on the lane of the row before: stretches are looked up, not rows.
        var sizes = new Dictionary<Lane, int>(ReferenceEqualityComparer.Instance);
        for (int from = 0, to; from < count; from = to)
        {
            to = EndOfStretch(from);
            CollectionsMarshal.GetValueRefOrAddDefault(sizes, Lanes[from], out _) += to - from;
        }
        var groups = new Dictionary<Lane, Group?>(ReferenceEqualityComparer.Instance);
        var first = 0;
        foreach (var (lane, size) in sizes)
        {
            groups.Add(lane, LaneOnDevice.Takes(lane) ? new(lane, options, room, first) : null);
            first += size;
        }
        for (int from = 0, to; from < count; from = to)
        {
            to = EndOfStretch(from);
            if (groups[Lanes[from]] is not { } group)
            {
                room.InDoubt.AsSpan(from, to - from).Fill(true);
                continue;
            }
            for (var i = from; i < to; i++)
            {
                if (!room.InDoubt[i])
                {
                    group.Add(i, Balls[i]);
                }
            }
        }
        Groups = [.. groups.Values.OfType<Group>().Where(g => g.Count > 0)];
        foreach (var group in Groups)
        {
            Chunks.ForBlocks(group.Count, (at, n) =>
            {
                for (var k = at; k < at + n; k++)
                {
                    group.Launch(k, Launches[group.Row(k)]);
                }
            });
        }
    }

    private int EndOfStretch(int from)
    {
        var to = from + 1;
        while (to < count && ReferenceEquals(Lanes[to], Lanes[from]))
        {
            to++;
        }
        return to;
    }

    /// <summary>The rows in doubt, and those that were left over: the processor's.</summary>
    public int[] InDoubt()
    {
        List<int> rows = [];
        var inDoubt = room.InDoubt.AsSpan(0, count);
        for (int from = 0, next; (next = inDoubt[from..].IndexOf(true)) >= 0; from += next + 1)
        {
            rows.Add(from + next);
        }
        return [.. rows];
    }

    /// <summary>The outcomes of a group from what came back of its shots; of floats some may be in doubt.</summary>
    /// <param name="group">Of the chunk.</param>
    /// <param name="results">Of its shots.</param>
    /// <param name="left">Places of those that are left over, of which nothing came back.</param>
    /// <param name="single">Of floats.</param>
    public void Read(Group group, Finished[] results, int[] left, bool single)
    {
        Chunks.ForBlocks(group.Count, (at, n) =>
        {
            for (var k = at; k < at + n; k++)
            {
                ref var result = ref results[k];
                var row = group.Row(k);
                // Numbers of the card are doubles by another name.
                ref readonly var tally = ref System.Runtime.CompilerServices.Unsafe.As<Tally<DeviceDouble>, Tally<Real>>(ref result.Tally);
                Outcomes[row] = Ensembles.Outcomes.Of(result.End, tally, result.Ended, result.Steps, result.OilTaken, Launches[row], group.Lane);
                room.InDoubt[row] = single && Doubt.Of(Outcomes[row]);
            }
        });
        foreach (var place in left)
        {
            room.InDoubt[group.Row(place)] = true;
        }
    }
}
