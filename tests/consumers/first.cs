using static BallSim.Units;

// The first throw of a program, for .ci/startup.
var ball = Ball.FromSpecification(weight: 15 * Pound, lowRg: 2.48 * Inch, differential: 0.050 * Inch, intermediateDifferential: 0.015 * Inch, pinToCg: 3 * Inch, topWeight: 2.5 * Ounce)
    with { Finish = Finish.Polished, Cover = Cover.Urethane };
var drilled = ball.Drill(new Layout(pinToAxis: 4.5 * Inch, angleAtPin: 50 * Degree, angleAtAxis: 40 * Degree), Grip.Fingertip, new PositiveAxisPoint(over: 5 * Inch, up: 0.5 * Inch));
var lane = Lane.Regulation with { Oil = OilMap.Crowned(length: 42 * Foot, volume: 25 * Millilitre) };
var release = new Release { Speed = 18 * MilesPerHour, SpinRate = 350 * Rpm, AxisRotation = 60 * Degree, AxisTilt = 12 * Degree, Board = 24, LaunchAngle = 3 * Degree };
var shot = Simulator.Throw(drilled, lane, release);
Console.WriteLine($"{shot.Entry.Angle / Degree:F2} deg at board {shot.Entry.Board:F1}");
