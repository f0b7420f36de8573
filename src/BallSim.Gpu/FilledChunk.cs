using System.Runtime.InteropServices;
using BallSim.Balls;
using BallSim.Ensembles;
using BallSim.Lanes;
using BallSim.Motion;
using BallSim.Releases;
using BallSim.Shots;
using BallSim.Spatial;

namespace BallSim.Gpu;

/// <summary>A chunk of throws, sorted by lane, and their outcomes.</summary>
internal sealed class FilledChunk(int from, int count, SimulatorOptions options)
{
    public int From => from;

    public int Count => count;

    public Ball[] Balls { get; } = new Ball[count];

    public Lane[] Lanes { get; } = new Lane[count];

    public Launch[] Launches { get; } = new Launch[count];

    public Outcome[] Outcomes { get; } = new Outcome[count];

    public IReadOnlyCollection<Group> Groups { get; private set; } = [];

    /// <summary>Puts shots on one lane together.</summary>
    public void Sort()
    {
        var sizes = new Dictionary<Lane, int>(ReferenceEqualityComparer.Instance);
        foreach (var lane in Lanes)
        {
            CollectionsMarshal.GetValueRefOrAddDefault(sizes, lane, out _)++;
        }
        var groups = sizes.ToDictionary(s => s.Key, s => new Group(s.Key, options, s.Value), (IEqualityComparer<Lane>)ReferenceEqualityComparer.Instance);
        for (var i = 0; i < count; i++)
        {
            groups[Lanes[i]].Add(i, Balls[i], Launches[i]);
        }
        Groups = groups.Values;
    }

    /// <summary>The outcomes of a group from what came back of its shots.</summary>
    public void Read(Group group, Finished[] results) => Chunks.ForBlocks(group.Count, (at, n, _) =>
    {
        for (var k = at; k < at + n; k++)
        {
            ref var result = ref results[k];
            var row = group.Rows[k];
            // Numbers of the card are doubles by another name.
            ref readonly var end = ref System.Runtime.CompilerServices.Unsafe.As<Moment<DeviceDouble>, Moment<Real>>(ref result.End);
            ref readonly var tally = ref System.Runtime.CompilerServices.Unsafe.As<Tally<DeviceDouble>, Tally<Real>>(ref result.Tally);
            Outcomes[row] = Ensembles.Outcomes.Of(end, tally, result.Ended, result.Steps, result.OilTaken, Launches[row], group.Lane);
        }
    });
}
