using BallSim.Balls;
using BallSim.Lanes;
using BallSim.Motion;
using BallSim.Releases;
using BallSim.Shots;
using BallSim.Spatial;

namespace BallSim.Gpu;

/// <summary>Shots of a chunk on one lane, ready for the device.</summary>
internal sealed class Group(Lane lane, SimulatorOptions options, int most)
{
    private readonly Dictionary<Ball, int> indices = new(ReferenceEqualityComparer.Instance);
    private readonly List<Ball> balls = [];
    private readonly Dictionary<Type, Array> setups = [];

    public Lane Lane => lane;

    public int Count { get; private set; }

    public Start[] Starts { get; } = new Start[most];

    /// <summary>Where in the chunk the shots stand.</summary>
    public int[] Rows { get; } = new int[most];

    public void Add(int row, Ball ball, in Launch launch)
    {
        if (!indices.TryGetValue(ball, out var setup))
        {
            setup = balls.Count;
            indices.Add(ball, setup);
            balls.Add(ball);
        }
        var q = launch.Orientation.Normalised;
        ref var start = ref Starts[Count];
        (start.X, start.VelocityX, start.VelocityY) = (launch.X, launch.Velocity.X, launch.Velocity.Y);
        start.Orientation = new(q.W, q.X, q.Y, q.Z);
        start.AngularVelocity = new(launch.AngularVelocity.X, launch.AngularVelocity.Y, launch.AngularVelocity.Z);
        start.Hand = launch.Hand == Hand.Right ? 1.0 : -1.0;
        (start.Loft, start.Setup) = (launch.Loft, setup);
        Rows[Count++] = row;
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
