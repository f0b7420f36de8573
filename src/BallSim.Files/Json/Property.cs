using BallSim.Files.Text;

namespace BallSim.Files.Json;

/// <summary>
/// One number of a record: its name in the file, its kind of unit (null: a pure number), how to read it out and how to put it in.
/// </summary>
internal sealed record Property<T>(string Name, UnitKind? Kind, Func<T, double?> Value, Func<T, double, T> With);
