using System.Diagnostics;
using System.Globalization;
using BallSim.Balls;
using BallSim.Ensembles;
using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Shots;
using static BallSim.Units;

namespace BallSim.Benchmarks;

/// <summary>
/// Random throws by the hundred thousand, from a seed: balls, lanes and releases over what the trade knows and some way beyond. Every one must end for a reason, within its steps, with numbers; none may take longer than a second; and memory after
/// the last must be what it was after the first tenth. Most go through the ensemble; one in a hundred is thrown by itself and its whole path looked at.
/// </summary>
internal static class Soak
{
    private const int Batch = 4096;
    private const int OneIn = 100;

    /// <summary>Reports; false if anything was amiss.</summary>
    public static bool Report(TextWriter output, int shots, int seed)
    {
        var random = new Random(seed);
        var reasons = new SortedDictionary<StopReason, int>();
        var (amiss, alone, mostSteps, slowest, settled) = (0, 0, 0, 0.0, 0L);
        var clock = Stopwatch.StartNew();
        for (var done = 0; done < shots;)
        {
            var rows = Rows(random, Math.Min(Batch, shots - done));
            var options = new SimulatorOptions { Tolerance = 1e-4, MaxTime = 30, CoverOil = random.Next(4) > 0, PivotingFriction = random.Next(4) == 0, RollingResistance = random.Next(4) == 0, MagnusForce = random.Next(4) == 0 };
            var outcomes = Ensemble.Throw(rows, new() { Shot = options });
            for (var i = 0; i < rows.Length; i++)
            {
                var o = outcomes[i];
                reasons[o.StopReason] = reasons.GetValueOrDefault(o.StopReason) + 1;
                mostSteps = Math.Max(mostSteps, o.Steps);
                if (o.Steps > options.MaxSteps || !double.IsFinite(o.Time + o.X + o.Distance + o.Board + o.Offset + o.Angle + o.Speed + o.SlipSpeed + o.SpinRate + o.AxisRotation + o.AxisTilt + o.Revolutions + o.BreakpointBoard + o.BreakpointDistance + o.OilTakenUp))
                {
                    amiss++;
                    output.WriteLine($"amiss, seed {seed}, throw {done + i}: {o}; {rows[i]}");
                }
                if (i % OneIn == 0)
                {
                    alone++;
                    var began = clock.Elapsed.TotalSeconds;
                    var shot = Simulator.Throw(rows[i].Ball, rows[i].Lane, rows[i].Release, options);
                    var told = shot.ToString();
                    var whole = shot.Samples(50).All(p => double.IsFinite(p.X + p.Y + p.VelocityX + p.VelocityY + p.SpinRate + p.NormalForce + p.Energy + p.OilUptake));
                    slowest = Math.Max(slowest, clock.Elapsed.TotalSeconds - began);
                    if (shot.StopReason != o.StopReason || told.Contains("NaN", StringComparison.Ordinal) || !whole)
                    {
                        amiss++;
                        output.WriteLine($"amiss alone, seed {seed}, throw {done + i}: {shot.StopReason} and {o.StopReason}; {rows[i]}");
                    }
                }
            }
            done += rows.Length;
            if (settled == 0 && done >= shots / 10)
            {
                settled = GC.GetTotalMemory(forceFullCollection: true);
            }
        }
        var end = GC.GetTotalMemory(forceFullCollection: true);
        var grown = (end - settled) / 1048576.0;
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{shots} random throws from seed {seed} in {clock.Elapsed.TotalSeconds:F0} s, {alone} of them alone too: {amiss} amiss; at most {mostSteps} steps, {slowest:F3} s for the slowest alone; "
            + $"memory {settled / 1048576.0:F1} MB after a tenth, {end / 1048576.0:F1} MB at the end"));
        output.WriteLine(string.Join(", ", reasons.Select(r => $"{r.Key} {r.Value}")));
        return amiss == 0 && slowest < 1 && grown < 4;
    }

    private static Throw[] Rows(Random random, int count)
    {
        double Between(double low, double high) => low + (high - low) * random.NextDouble();
        Vector3D Direction()
        {
            var (turn, height) = (Between(-Math.PI, Math.PI), Between(-1, 1));
            return new(Math.Sqrt(1 - height * height) * Math.Cos(turn), Math.Sqrt(1 - height * height) * Math.Sin(turn), height);
        }
        var balls = Enumerable.Range(0, 8).Select(_ =>
        {
            var differential = Between(0, 0.06) * Inch;
            return Ball.FromSpecification(Between(6, 16) * Pound, Between(2.46, 2.8) * Inch, differential, Between(0, 1) * differential, Between(8.5, 8.595) * Inch, Between(0, 3e-3) * Direction(),
                finish: Finish.Measured(Between(0.05, 2) * Micrometre), cover: random.Next(3) switch { 0 => Cover.Plastic, 1 => Cover.Urethane, _ => Cover.Reactive }) with
            { Marks = new() { Hand = random.Next(2) == 0 ? Hand.Right : Hand.Left } };
        }).ToArray();
        var lanes = Enumerable.Range(0, 8).Select(_ => (random.Next(5) switch
        {
            0 => Lane.Regulation with { GivenFriction = FrictionMap.Smoothstep(Between(0, 0.1), Between(0.1, 0.5), 8, 12) },
            1 => Lane.Regulation with { GivenFriction = FrictionMap.Zones((0, Between(0, 0.3)), (Between(3, 16), Between(0, 0.3))) },
            2 => Lane.Regulation with { Oil = OilMap.Even(Between(20, 58) * Foot, Between(0, 20) * Micrometre) },
            3 => Lane.Regulation,
            _ => Lane.Regulation with { Oil = OilMap.Crowned(Between(30, 50) * Foot, Between(5, 40) * Millilitre) },
        }) with { Topography = random.Next(3) == 0 ? Topography.Tilted(Between(-0.003, 0.003), Between(-0.003, 0.003)) : Topography.Flat, Temperature = Between(10, 35) }).ToArray();
        return [.. Enumerable.Range(0, count).Select(_ => new Throw(balls[random.Next(balls.Length)], lanes[random.Next(lanes.Length)], new Release
        {
            Board = Between(1, 39),
            Speed = Between(1, 14),
            SpinRate = Between(0, 75),
            AxisRotation = Between(-Math.PI, Math.PI),
            AxisTilt = Between(-1.5, 1.5),
            LaunchAngle = Between(-5, 8) * Degree,
            Loft = random.Next(3) == 0 ? Between(0, 3) : 0,
            RollPhase = Between(-3, 3),
            AxisInBall = Direction(),
        }))];
    }
}
