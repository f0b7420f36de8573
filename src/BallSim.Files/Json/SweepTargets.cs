using BallSim.Balls;

namespace BallSim.Files.Json;

/// <summary>All that can be varied: the numbers of the tables that a scenario is read by, so that a sweep knows every input that a file knows, by the same names and in the same units.</summary>
internal static class SweepTargets
{
    /// <summary>The targets of one subject: a ball from a drawing has the numbers of its drawing in place of those of a specification.</summary>
    public static IReadOnlyList<SweepTarget> Of(SweepSubject subject) =>
    [
        .. subject.Ball.Drawing is null ? Of("ball", Shapes.Ball, SweepStage.Ball, s => s.Ball, (s, b) => s with { Ball = b }) : Drawn(subject.Ball.Drawing),
        .. Of("cover", Shapes.Cover, SweepStage.Ball, CoverOf, WithCover),
        .. Of("layout", Shapes.Layout, SweepStage.Ball, s => s.Layout, (s, l) => s with { Layout = l }),
        .. Of("axis", Shapes.Axis, SweepStage.Ball, s => s.Bowler.Axis, (s, a) => s with { Bowler = s.Bowler with { Axis = a } }),
        .. Of("grip", Shapes.Grip, SweepStage.Ball, s => s.Bowler.Grip, (s, g) => s with { Bowler = s.Bowler with { Grip = g } }),
        .. Of("finish", Shapes.Finish, SweepStage.Finish, s => new FinishSheet { Name = "varied" }, (s, f) => s with { Finish = f }),
        .. Of("lane", Shapes.Lane, SweepStage.Lane, s => s.Lane, (s, l) => s with { Lane = l }),
        .. Of("oil", Shapes.Oil, SweepStage.Lane, s => s.Oil, (s, o) => s with { Oil = o })
            .Where(t => Shapes.OilShapes.Any(o => o.Shape == subject.Oil.Shape && (o.Needed.Contains(t.Name["oil.".Length..]) || o.Known.Contains(t.Name["oil.".Length..])))),
        .. Of("release", Shapes.Release, SweepStage.Release, s => s.Release, (s, r) => s with { Release = r }),
    ];

    public static Cover CoverOf(SweepSubject s) => s.Ball.Drawing?.Material ?? s.Ball.Cover;

    public static SweepSubject WithCover(SweepSubject s, Cover cover) =>
        s with { Ball = s.Ball with { Cover = cover, Drawing = s.Ball.Drawing is { } drawing ? drawing with { Material = cover } : null } };

    private static IEnumerable<SweepTarget> Drawn(BallDrawing drawing) =>
    [
        .. OfDrawing("ball", DrawingShapes.Whole),
        .. OfDrawing("ball.cover", DrawingShapes.Cover),
        .. OfDrawing("ball.filler", DrawingShapes.Filler),
        .. drawing.Cores.SelectMany((core, i) => Of($"ball.core{i + 1}", DrawingShapes.Core, SweepStage.Ball, s => s.Ball.Drawing!.Cores[i],
            (s, c) => WithDrawing(s, s.Ball.Drawing! with { Cores = [.. s.Ball.Drawing!.Cores.Select((old, k) => k == i ? c : old)] }))
            .Where(t => t.Name.EndsWith(".density", StringComparison.Ordinal) || DrawingShapes.Forms.First(f => f.Form == core.Form).Needed.Any(n => t.Name.EndsWith("." + n, StringComparison.Ordinal)))),
    ];

    private static IEnumerable<SweepTarget> OfDrawing(string prefix, Shape<BallDrawing> shape) => Of(prefix, shape, SweepStage.Ball, s => s.Ball.Drawing!, WithDrawing);

    private static SweepSubject WithDrawing(SweepSubject s, BallDrawing drawing) => s with { Ball = s.Ball with { Drawing = drawing } };

    private static IEnumerable<SweepTarget> Of<T>(string prefix, Shape<T> shape, SweepStage stage, Func<SweepSubject, T> part, Func<SweepSubject, T, SweepSubject> with) =>
        shape.Properties.Select(p => new SweepTarget($"{prefix}.{p.Name}", p.Kind, stage, (s, v) => with(s, p.With(part(s), v))));
}
