using BallSim.Integration;
using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>Who looks on while a shot runs: keeps the path, or only what is asked for, or nothing.</summary>
internal interface IRecorder<T>
    where T : struct, IReal<T>
{
    /// <summary>A step was accepted: the states in it are relative to the orientation <paramref name="start"/>.</summary>
    void Took(Phase phase, in Step<State<T>> step, T h, Quat<T> start);

    /// <summary>The phase changed at a state of the phase before it.</summary>
    void Changed(Phase from, Phase to, in State<T> at, Quat<T> start);
}
