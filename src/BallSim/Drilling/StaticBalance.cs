using System.Globalization;
using BallSim.Balls;
using static BallSim.Units;

namespace BallSim.Drilling;

/// <summary>
/// Static imbalance of a ball along the directions of its grip, as masses in kg on a balance scale: a positive top pulls the grip centre
/// down, a positive side the half towards the positive axis point, a positive finger the half of the fingers.
/// </summary>
/// <param name="Top">Towards the grip centre, kg: the part of the centre of mass along it times W/L.</param>
/// <param name="Side">Along the midline towards the side of the positive axis point, kg; negative on the far side.</param>
/// <param name="Finger">Towards the fingers, kg; negative towards the thumb.</param>
/// <remarks>
/// W e = s L: a ball of weight W whose centre of mass lies e off is held by s at the lever L. The lever length is not published in what
/// could be read; 3.36 in is assumed (3 oz on a 16 lb ball are 1 mm).
/// </remarks>
public readonly record struct StaticBalance(double Top, double Side, double Finger)
{
    internal const double AssumedLever = 3.36 * Inch;

    /// <summary>The imbalance of a ball with a grip.</summary>
    /// <param name="ball">A ball that is laid out or drilled.</param>
    /// <param name="balanceLever">Lever length of the balance scale, m; 1 to 10 in, 3.36 in assumed.</param>
    /// <exception cref="ArgumentException">The ball has no grip.</exception>
    public static StaticBalance Of(Ball ball, double balanceLever = AssumedLever)
    {
        if (ball.Marks is not { GripCentre: { } centre, GripRight: { } right, GripUp: { } up })
        {
            throw new ArgumentException("the ball has no grip to measure its balance from; drill it first", nameof(ball));
        }
        var moment = ball.Mass / Ball.Lever(balanceLever) * ball.CentreOfMass;
        return new(moment.Dot(centre), moment.Dot(right), moment.Dot(up));
    }

    /// <summary>The imbalance in ounces.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{(Top < 0 ? "bottom" : "top")} {Math.Abs(Top) / Ounce:F2} oz, side {Side / Ounce:+0.00;-0.00;0.00} oz, {(Finger < 0 ? "thumb" : "finger")} {Math.Abs(Finger) / Ounce:F2} oz");
}
