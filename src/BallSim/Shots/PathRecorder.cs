using BallSim.Integration;
using BallSim.Lanes;
using BallSim.Motion;
using BallSim.Spatial;

namespace BallSim.Shots;

/// <summary>Keeps the whole path of a shot, and its changes of phase.</summary>
internal readonly struct PathRecorder(Lane lane) : IRecorder<Real>
{
    public List<PathSegment> Segments { get; } = new(128);

    public List<PhaseChange> Changes { get; } = new(8);

    public void Took(Phase phase, in Step<State<Real>> step, Real h, Quat<Real> start)
    {
        Dense<State<Real>, Real>.Polynomial(step, h, out var p1, out var p2, out var p3, out var p4);
        Segments.Add(new(phase, step.Start, p1, p2, p3, p4, start));
    }

    /// <summary>Keeps a run that ended before its first step was accepted: a path of one instant.</summary>
    public void Stood(Phase phase, in State<Real> at, Quat<Real> start)
    {
        State<Real> still = default;
        Segments.Add(new(phase, at, still, still, still, still, start));
    }

    public void Changed(Phase from, Phase to, in State<Real> at, Quat<Real> start) =>
        Changes.Add(new(Public(from), Public(to), at.Time, at.X, at.Y, lane.BoardAt(at.X)));

    public static ShotPhase Public(Phase phase) => phase switch
    {
        Phase.Loft => ShotPhase.Loft,
        Phase.Slide => ShotPhase.Sliding,
        _ => ShotPhase.Rolling,
    };
}
