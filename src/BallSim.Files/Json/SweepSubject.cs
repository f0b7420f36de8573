using BallSim.Balls;
using BallSim.Drilling;
using BallSim.Lanes;
using BallSim.Releases;

namespace BallSim.Files.Json;

/// <summary>Everything that one throw is made from, as the file describes it and before anything is made.</summary>
internal sealed record SweepSubject
{
    public required BallSheet Ball { get; init; }

    public required Layout Layout { get; init; }

    public FinishSheet? Finish { get; init; }

    public required Bowler Bowler { get; init; }

    public required Release Release { get; init; }

    public required Lane Lane { get; init; }

    public required OilSheet Oil { get; init; }

    public Ball Drilled() => Ball.Drilled(Layout, Bowler).Ball;

    public Ball Finished(Ball drilled) => Finish is null ? drilled : drilled with { Finish = Finish.Built() };

    public Lane Oiled() => Lane with { Oil = Oil.Built() };
}
