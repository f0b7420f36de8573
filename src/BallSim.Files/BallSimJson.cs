using System.Text.Json.Serialization.Metadata;
using BallSim.Balls;
using BallSim.Drilling;
using BallSim.Ensembles;
using BallSim.Files.Json;
using BallSim.Friction;
using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Shots;

namespace BallSim.Files;

/// <summary>
/// The library's input values for System.Text.Json, generated at build time, without reflection: <c>JsonSerializer.Serialize(release, BallSimJson.Release)</c>. Names and units are those of the library's files, and what is written reads back as
/// the very same value, to the last bit. A value that cannot be is a <see cref="System.Text.Json.JsonException"/> with the sentence that a file would get.
/// </summary>
/// <remarks>
/// A <see cref="Ball"/> is written by its mass, moments, surface and marks, not with what fills it: a <see cref="BallDrawing"/> carries that. A <see cref="Lane"/> and the maps on it are written by
/// their cells, in plain numbers of SI, long but exact; as they are described they are a <see cref="LaneSheet"/> and an <see cref="OilSheet"/>. A sheet that names a file names it relative to the folder of the program. A finish sanded with a grit number of more than five figures comes back as its roughness.
/// A <see cref="BallSim.Sweeps.SweepPlan"/> makes its throws by a function, which no text holds: what a sweep is as text is the file that <see cref="SweepFile"/> reads.
/// </remarks>
/// <example><code>
/// var text = JsonSerializer.Serialize(layout, BallSimJson.Layout);
/// var same = JsonSerializer.Deserialize(text, BallSimJson.Layout);
/// </code></example>
public static class BallSimJson
{
    /// <summary>All of them, for options of your own: <c>new JsonSerializerOptions { TypeInfoResolver = BallSimJson.Resolver }</c>.</summary>
    public static IJsonTypeInfoResolver Resolver => BallSimJsonContext.Default;

    /// <summary>A layout.</summary>
    public static JsonTypeInfo<Layout> Layout => BallSimJsonContext.Default.Layout;

    /// <summary>A positive axis point with its hand.</summary>
    public static JsonTypeInfo<PositiveAxisPoint> PositiveAxisPoint => BallSimJsonContext.Default.PositiveAxisPoint;

    /// <summary>One bore of a grip.</summary>
    public static JsonTypeInfo<Bore> Bore => BallSimJsonContext.Default.Bore;

    /// <summary>A grip: its name, or its numbers.</summary>
    public static JsonTypeInfo<Grip> Grip => BallSimJsonContext.Default.Grip;

    /// <summary>A release.</summary>
    public static JsonTypeInfo<Release> Release => BallSimJsonContext.Default.Release;

    /// <summary>How releases differ from throw to throw.</summary>
    public static JsonTypeInfo<Scatter> Scatter => BallSimJsonContext.Default.Scatter;

    /// <summary>A cover: its name, or its numbers.</summary>
    public static JsonTypeInfo<Cover> Cover => BallSimJsonContext.Default.Cover;

    /// <summary>A finish: grit, roughness, or polished.</summary>
    public static JsonTypeInfo<Finish> Finish => BallSimJsonContext.Default.Finish;

    /// <summary>The numbers of the friction law.</summary>
    public static JsonTypeInfo<FrictionCalibration> FrictionCalibration => BallSimJsonContext.Default.FrictionCalibration;

    /// <summary>How a shot is computed.</summary>
    public static JsonTypeInfo<SimulatorOptions> SimulatorOptions => BallSimJsonContext.Default.SimulatorOptions;

    /// <summary>How an ensemble is computed, on the processor: another <see cref="BallSim.Ensembles.EnsembleOptions.Engine"/> is a device of the machine, which no text holds. To write options with one is a <see cref="NotSupportedException"/>.</summary>
    public static JsonTypeInfo<EnsembleOptions> EnsembleOptions => BallSimJsonContext.Default.EnsembleOptions;

    /// <summary>A vector, in numbers without units.</summary>
    public static JsonTypeInfo<Vector3D> Vector3D => BallSimJsonContext.Default.Vector3D;

    /// <summary>A rotation as its four numbers.</summary>
    public static JsonTypeInfo<Rotation> Rotation => BallSimJsonContext.Default.Rotation;

    /// <summary>An inertia tensor.</summary>
    public static JsonTypeInfo<InertiaTensor> InertiaTensor => BallSimJsonContext.Default.InertiaTensor;

    /// <summary>A state of motion to start from.</summary>
    public static JsonTypeInfo<InitialState> InitialState => BallSimJsonContext.Default.InitialState;

    /// <summary>A ball by mass, moments, surface and marks.</summary>
    public static JsonTypeInfo<Ball> Ball => BallSimJsonContext.Default.Ball;

    /// <summary>A ball as a scenario describes it.</summary>
    public static JsonTypeInfo<BallSheet> BallSheet => BallSimJsonContext.Default.BallSheet;

    /// <summary>A ball as it is drawn.</summary>
    public static JsonTypeInfo<BallDrawing> BallDrawing => BallSimJsonContext.Default.BallDrawing;

    /// <summary>A finish of a scenario, with its name.</summary>
    public static JsonTypeInfo<FinishSheet> FinishSheet => BallSimJsonContext.Default.FinishSheet;

    /// <summary>Oil as a scenario describes it.</summary>
    public static JsonTypeInfo<OilSheet> OilSheet => BallSimJsonContext.Default.OilSheet;

    /// <summary>A lane of a scenario, with its oil.</summary>
    public static JsonTypeInfo<LaneSheet> LaneSheet => BallSimJsonContext.Default.LaneSheet;

    /// <summary>A bowler.</summary>
    public static JsonTypeInfo<Bowler> Bowler => BallSimJsonContext.Default.Bowler;

    /// <summary>A map of oil, by its cells.</summary>
    public static JsonTypeInfo<OilMap> OilMap => BallSimJsonContext.Default.OilMap;

    /// <summary>A map of given friction, by its cells.</summary>
    public static JsonTypeInfo<FrictionMap> FrictionMap => BallSimJsonContext.Default.FrictionMap;

    /// <summary>A lane's surface: its two slopes, or its heights by their cells.</summary>
    public static JsonTypeInfo<Topography> Topography => BallSimJsonContext.Default.Topography;

    /// <summary>A lane with all that lies on it.</summary>
    public static JsonTypeInfo<Lane> Lane => BallSimJsonContext.Default.Lane;

    /// <summary>A whole scenario.</summary>
    public static JsonTypeInfo<Scenario> Scenario => BallSimJsonContext.Default.Scenario;
}
