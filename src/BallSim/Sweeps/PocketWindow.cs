using System.Globalization;
using BallSim.Ensembles;
using BallSim.Shots;
using static BallSim.Units;

namespace BallSim.Sweeps;

/// <summary>
/// What counts as a hit of the pocket: where the ball's centre is, and at which angle it goes, as it touches the head pin. No pin is computed; the window stands for what others found about strikes.
/// </summary>
/// <remarks>
/// Defaults. Place 5.0 to 7.6 cm beside the head pin's middle: more than 95 % strikes there at 6 degrees (Physics Today, October 2025; the zone is about half as wide at 2 to 3 degrees). Angle 4 to 6
/// degrees: what is aimed for (USBC). A tracking study of 2024 finds the angle less important (Int. J. Sports Sci. Coach., doi 10.1177/17479541241306543): widen the window to see what that would change.
/// </remarks>
public sealed record PocketWindow
{
    /// <summary>Nearest place, m from the lane's middle towards the hand's side; -0.5 to 0.5, 0.050.</summary>
    public double From { get; init => field = Check.Range(value, -0.5, 0.5, Quantity.Length, nameof(From)); } = 0.050;

    /// <summary>Farthest place, m from the lane's middle towards the hand's side; -0.5 to 0.5, 0.076.</summary>
    public double To { get; init => field = Check.Range(value, -0.5, 0.5, Quantity.Length, nameof(To)); } = 0.076;

    /// <summary>Least entry angle, rad; -90 to 90 degrees, 4 degrees.</summary>
    public double LeastAngle { get; init => field = Check.Range(value, -Math.PI / 2, Math.PI / 2, Quantity.Angle, nameof(LeastAngle)); } = 4 * Degree;

    /// <summary>Greatest entry angle, rad; -90 to 90 degrees, 6 degrees.</summary>
    public double GreatestAngle { get; init => field = Check.Range(value, -Math.PI / 2, Math.PI / 2, Quantity.Angle, nameof(GreatestAngle)); } = 6 * Degree;

    /// <summary>True if the shot touched the head pin within the window.</summary>
    public bool Holds(Outcome outcome) => outcome.StopReason == StopReason.HeadPin && Excess(outcome) == 0;

    /// <summary>How far outside the window a shot is: inches and degrees added up, 0 within; infinite if it did not reach the pins.</summary>
    internal double Excess(Outcome outcome)
    {
        if (!outcome.ReachedPins)
        {
            return double.PositiveInfinity;
        }
        // The pocket lies on the hand's side; that tells the hand.
        var place = outcome.X * Math.Sign(outcome.X - outcome.Offset);
        return (Math.Max(0, From - place) + Math.Max(0, place - To)) / Inch + (Math.Max(0, LeastAngle - outcome.Angle) + Math.Max(0, outcome.Angle - GreatestAngle)) / Degree;
    }

    /// <summary>In centimetres and degrees.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{100 * From:G3} to {100 * To:G3} cm from the middle, {LeastAngle / Degree:G3} to {GreatestAngle / Degree:G3}°");
}
