using System.Globalization;
using static BallSim.Units;

namespace BallSim.Drilling;

/// <summary>
/// The measures of a hand's three holes: thumb below the grip centre, middle and ring finger above it, the ring finger on the side of the
/// positive axis
/// point for either hand.
/// </summary>
/// <remarks>
/// Spans and bridge are arcs on the surface between the near edges of two holes. The width of a hole is taken as that of one drilled
/// straight at the centre:
/// a pitch of 1/2 in moves the rim by less than 0.01 in, which is neglected.
/// </remarks>
public sealed record Grip
{
    /// <summary>Arc between the near edges of thumb and middle finger, m; 1.5 to 6.5 in.</summary>
    public required double MiddleSpan { get; init => field = Check.Range(value, 1.5 * Inch, 6.5 * Inch, Quantity.Length, nameof(MiddleSpan)); }

    /// <summary>Arc between the near edges of thumb and ring finger, m; 1.5 to 6.5 in.</summary>
    public required double RingSpan { get; init => field = Check.Range(value, 1.5 * Inch, 6.5 * Inch, Quantity.Length, nameof(RingSpan)); }

    /// <summary>Arc between the near edges of the two finger holes, m; 0.1 to 1 in, usually 1/4 to 3/8 in (from memory).</summary>
    public double Bridge { get; init => field = Check.Range(value, 0.1 * Inch, 1 * Inch, Quantity.Length, nameof(Bridge)); } = 0.25 * Inch;

    /// <summary>The thumb hole; 1 in wide and 2 3/4 in deep unless given (within the usual range, from memory).</summary>
    public Bore Thumb { get; init => field = Drilled(value, nameof(Thumb)); } = new(1 * Inch, 2.75 * Inch);

    /// <summary>
    /// True for a bowler who leaves the thumb out: no thumb hole is drilled. The spans still place the fingers, as if the thumb were there.
    /// </summary>
    public bool Thumbless { get; init; }

    /// <summary>
    /// The middle finger's hole; 31/32 in wide, 1 1/4 in deep (within the usual range, from memory) and leaning 1/4 in away from the ring
    /// finger unless given: two such holes drilled straight at the centre would meet 7/8 in under the surface.
    /// </summary>
    public Bore Middle { get; init => field = Drilled(value, nameof(Middle)); } = new(31.0 / 32 * Inch, 1.25 * Inch, lateralPitch: -0.25 * Inch);

    /// <summary>
    /// The ring finger's hole; 31/32 in wide, 1 1/4 in deep (within the usual range, from memory) and leaning 1/4 in away from the middle
    /// finger unless given.
    /// </summary>
    public Bore Ring { get; init => field = Drilled(value, nameof(Ring)); } = new(31.0 / 32 * Inch, 1.25 * Inch, lateralPitch: 0.25 * Inch);

    /// <summary>A grip that takes the fingers to the first joint: spans of 4 1/2 in, shallow finger holes (assumed).</summary>
    public static Grip Fingertip { get; } = new() { MiddleSpan = 4.5 * Inch, RingSpan = 4.5 * Inch };

    /// <summary>
    /// A grip that takes the fingers to the second joint: spans of 3 1/4 in, finger holes 7/8 in wide and 2 in deep, a bridge of 3/8 in
    /// and 3/8 in of pitch away from each other, without which holes that deep would meet (assumed).
    /// </summary>
    public static Grip Conventional { get; } = new()
    {
        MiddleSpan = 3.25 * Inch,
        RingSpan = 3.25 * Inch,
        Bridge = 0.375 * Inch,
        Middle = new(0.875 * Inch, 2 * Inch, lateralPitch: -0.375 * Inch),
        Ring = new(0.875 * Inch, 2 * Inch, lateralPitch: 0.375 * Inch),
    };

    /// <summary>The measures in inches.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"spans {MiddleSpan / Inch:0.###} and {RingSpan / Inch:0.###} in, bridge {Bridge / Inch:0.###} in; {(Thumbless ? "no thumb" : $"thumb {Thumb}")}; middle finger {Middle}; ring finger {Ring}");

    // A bore left at its default has no width; its own checks run only where it is built.
    private static Bore Drilled(Bore bore, string name)
    {
        Check.That(bore.Diameter > 0, $"{name} has no width; build it with new Bore(diameter, depth)", name);
        return bore;
    }
}
