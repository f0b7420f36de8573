using BallSim.Balls;
using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Shots;

namespace BallSim.Ensembles;

/// <summary>
/// Which shots floats do not tell, so that they are thrown in doubles: those whose rounding comes back as another end. Of a million scenarios of all kinds 833 stopped otherwise in floats, by up to six metres. Nearly all had a centre
/// of mass so far off that the ball may hop, where a moment without weight decides, or were at the limit of grip in every turn. Without those nine are left, which just touch the pin or the edge. A ball within the rules is far from both.
/// </summary>
internal static class Doubt
{
    // What swings with the centre of mass, m d ω², as a part of the weight: from one on the ball may hop; a tenth less, since it does not only turn as fast as it rolls.
    private const double MostSwing = 0.9;

    // A shot that slips again more often is at the limit of grip in every turn.
    private const int MostSlips = 7;

    /// <summary>From the start: a ball that may hop.</summary>
    public static bool Of(Ball ball, Lane lane, in Launch launch)
    {
        var turn = Math.Max(launch.Velocity.Length / ball.Radius, launch.AngularVelocity.Length);
        return ball.CentreOfMass.Length * turn * turn > MostSwing * -lane.Gravity.Z;
    }

    /// <summary>In the end: one that hopped nevertheless, or slipped again and again.</summary>
    public static bool Of(in Outcome outcome) => outcome.StopReason is StopReason.LeftLane or StopReason.TransitionLimit || outcome.SlippedAgain > MostSlips;
}
