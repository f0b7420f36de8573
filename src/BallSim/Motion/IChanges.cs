using BallSim.Friction;
using BallSim.Spatial;

namespace BallSim.Motion;

/// <summary>Who brings shots through what lies between plain steps, several side by side, in doubles: lanes of floats leave it to lanes of doubles.</summary>
internal interface IChanges<TOne> : IDisposable
    where TOne : struct, ISurface<Real>
{
    /// <summary>Brings those that wait for a change to where they wait for a lane, or to their end: if there are enough for all lanes, or all, to the end. Whether there were any.</summary>
    bool Change(Run<Real, TOne, Tally<Real>>[] begun, Waiting shots, bool toTheEnd);
}
