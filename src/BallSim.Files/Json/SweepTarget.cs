using BallSim.Files.Text;

namespace BallSim.Files.Json;

/// <summary>Something of a throw that a sweep can vary: a number by its path in the file, "release.speed".</summary>
/// <param name="Name">The path.</param>
/// <param name="Kind">Its kind of unit; null for a pure number.</param>
/// <param name="Stage">What has to be made anew when it changes.</param>
/// <param name="With">The subject with another value, checked by the record that holds it.</param>
internal sealed record SweepTarget(string Name, UnitKind? Kind, SweepStage Stage, Func<SweepSubject, double, SweepSubject> With);
