using BallSim.Balls;
using BallSim.Lanes;
using BallSim.Motion;
using BallSim.Releases;
using BallSim.Shots;
using BallSim.Spatial;

namespace BallSim.Gpu;

/// <summary>Shots of a chunk on one lane, ready for the device.</summary>
internal sealed class Group(Lane lane, SimulatorOptions options, ChunkRows room, int first)
{
    private readonly Dictionary<Ball, int> indices = new(ReferenceEqualityComparer.Instance);
    private readonly List<Ball> balls = [];
    private readonly Dictionary<Type, Array> setups = [];
    private Ball? last;
    private int lastSetup;

    public Lane Lane => lane;

    public int Count { get; private set; }

    public ReadOnlySpan<Start> Starts => room.Starts.AsSpan(first, Count);

    /// <summary>Where in the chunk a shot stands.</summary>
    public int Row(int place) => room.Places[first + place];

    /// <summary>Gives a row of the chunk the next place.</summary>
    public void Add(int row, Ball ball)
    {
        // Most often the ball of the row before.
        if (!ReferenceEquals(ball, last))
        {
            if (!indices.TryGetValue(ball, out lastSetup))
            {
                lastSetup = balls.Count;
                indices.Add(ball, lastSetup);
                balls.Add(ball);
            }
            last = ball;
        }
        (room.Places[first + Count], room.Setups[first + Count]) = (row, lastSetup);
        Count++;
    }

    /// <summary>How the shot at a place is thrown.</summary>
    public void Launch(int place, in Launch launch)
    {
        var q = launch.Orientation.Normalised;
        ref var start = ref room.Starts[first + place];
        (start.X, start.VelocityX, start.VelocityY) = (launch.X, launch.Velocity.X, launch.Velocity.Y);
        start.Orientation = new(q.W, q.X, q.Y, q.Z);
        start.AngularVelocity = new(launch.AngularVelocity.X, launch.AngularVelocity.Y, launch.AngularVelocity.Z);
        start.Hand = launch.Hand == Hand.Right ? 1.0 : -1.0;
        start.Loft = launch.Loft;
        start.Setup = room.Setups[first + place];
    }

    public GroupKind Kind(bool single) => new(single, lane.GivenFriction is not null, lane.Topography.Heights is not null, balls.Count == 1, Simulator.BodyOf(balls[0], lane, options).At(options.Tolerance).Effects);

    public Setup<T>[] Setups<T>()
        where T : unmanaged, IDeviceReal<T>, IReal<T>
    {
        if (!setups.TryGetValue(typeof(T), out var found))
        {
            setups[typeof(T)] = found = balls.Select(ball => Setup<T>.Of(ball, lane, options)).ToArray();
        }
        return (Setup<T>[])found;
    }
}
