using System.Globalization;
using BallSim.Balls;
using static BallSim.Units;

namespace BallSim.Drilling;

/// <summary>
/// A bowler's positive axis point: where the spin axis leaves the ball at release, on the side of the hand, as two arcs on the surface.
/// From the grip centre
/// go <see cref="Over"/> along the midline of the grip towards the side of the hand (right for a right-hander), then <see cref="Up"/>
/// square to it.
/// </summary>
public readonly record struct PositiveAxisPoint
{
    /// <summary>A positive axis point from its two arcs.</summary>
    /// <param name="over">Arc along the midline, m; -8 to 8 in, usually 4 to 5.5 in (usual values from memory).</param>
    /// <param name="up">Arc square to the midline, m, up positive; -6 to 6 in, usually within an inch.</param>
    /// <param name="hand">The hand of the bowler.</param>
    public PositiveAxisPoint(double over, double up, Hand hand = Hand.Right) => (Over, Up, Hand) = (over, up, hand);

    /// <summary>
    /// Arc from the grip centre along the midline, m; -8 to 8 in. Negative lies on the far side of the grip: a ball that is spun backwards.
    /// </summary>
    public double Over { get; init => field = Check.Range(value, -8 * Inch, 8 * Inch, Quantity.Length, nameof(Over)); }

    /// <summary>
    /// Arc from the midline up to the point, m; -6 to 6 in. A quarter of the circumference (6.7 in) is refused: there the point is the
    /// pole of the midline, and
    /// the number over means nothing.
    /// </summary>
    public double Up { get; init => field = Check.Range(value, -6 * Inch, 6 * Inch, Quantity.Length, nameof(Up)); }

    /// <summary>The hand of the bowler.</summary>
    public Hand Hand { get; init; }

    /// <summary>The direction of this point on a ball that has a grip, a unit vector in the ball frame.</summary>
    /// <exception cref="ArgumentException">The ball has no grip, or one for the other hand.</exception>
    public Vector3D DirectionOn(Ball ball)
    {
        var marks = ball.Marks;
        if (marks is not { GripCentre: { } centre, GripRight: { } right, GripUp: { } up })
        {
            throw new ArgumentException("the ball has no grip to measure over and up from; drill it first: ball.Drill(layout, grip, axisPoint)", nameof(ball));
        }
        Check.That(marks.Hand == Hand, $"the positive axis point is for the {Hand} hand, the ball was drilled for the {marks.Hand} hand", nameof(ball));
        Check.That(Math.Abs(Up) < Math.PI / 2 * ball.Radius, $"Up = {Check.Text(Up)} m reaches a quarter of this ball's circumference, " +
            $"{Check.Text(Math.PI / 2 * ball.Radius)} m; from there on it is no height over the midline", nameof(Up));
        // The pole of the midline is the same from everywhere on it, so that the foot of the point needs no up direction of its own.
        var foot = Sphere.Along(centre, right, Over / ball.Radius);
        return Sphere.Along(foot, up, Up / ball.Radius);
    }

    /// <summary>The two arcs in inches and the hand.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Over / Inch:0.###} in over, {Math.Abs(Up) / Inch:0.###} in {(Up < 0 ? "down" : "up")}, {(Hand == Hand.Right ? "right" : "left")} hand");
}
