using static BallSim.Units;

// What a program that takes the packages computes, every number to the last bit; .ci/pack holds each kind of program to what the source build prints. Written as a reader would: no using lines but for the units and the files.
static string R(double x) => x.ToString("R", System.Globalization.CultureInfo.InvariantCulture);

var ball = Ball.FromSpecification(weight: 15 * Pound, lowRg: 2.48 * Inch, differential: 0.050 * Inch, intermediateDifferential: 0.015 * Inch, pinToCg: 3 * Inch, topWeight: 2.5 * Ounce)
    with { Finish = Finish.Polished, Cover = Cover.Urethane };
var layout = new Layout(pinToAxis: 4.5 * Inch, angleAtPin: 50 * Degree, angleAtAxis: 40 * Degree);
var lane = Lane.Regulation with { Oil = OilMap.Crowned(length: 42 * Foot, volume: 25 * Millilitre) };
var release = new Release { Speed = 18 * MilesPerHour, SpinRate = 350 * Rpm, AxisRotation = 60 * Degree, AxisTilt = 12 * Degree, Board = 24, LaunchAngle = 3 * Degree };
foreach (var hand in new[] { Hand.Right, Hand.Left })
{
    var drilled = ball.Drill(layout, Grip.Fingertip, new PositiveAxisPoint(over: 5 * Inch, up: 0.5 * Inch, hand));
    var thrown = hand == Hand.Right ? release : release with { Board = 40 - release.Board };
    var shot = Simulator.Throw(drilled, lane, thrown);
    Console.WriteLine($"{hand}: {R(shot.Entry.Angle)} {R(shot.Entry.X)} {R(shot.Entry.Time)} {R(shot.Entry.Speed)} {R(shot.Entry.SpinRate)} {R(shot.Track.Flare)} {R(shot.OilTakenUp)}");

    // Enough for every lane of the widest vectors, and some left over.
    var throws = Enumerable.Range(0, 67).Select(i => new Throw(drilled, lane, thrown with { Speed = (16 + 0.05 * i) * MilesPerHour, SpinRate = (250 + 4 * i) * Rpm })).ToList();
    foreach (var outcome in Ensemble.Throw(throws))
    {
        Console.WriteLine($"{outcome.StopReason}: {R(outcome.X)} {R(outcome.Angle)} {R(outcome.Time)} {R(outcome.Revolutions)}");
    }
}

var text = new StringWriter();
BallSim.Files.OilMapCsv.Write(text, lane.Oil);
var again = new StringReader(text.ToString());
Console.WriteLine($"oil: {R(lane.Oil.Volume)} {R(BallSim.Files.OilMapCsv.Read(again, "oil").Volume)}");
