namespace BallSim.Balls;

/// <summary>The form of a solid in its own frame, with the questions that builds and drilling ask of it.</summary>
internal abstract class Shape
{
    /// <summary>Integrals over the form at density one.</summary>
    public abstract Moments Moments { get; }

    /// <summary>Greatest distance of any point of the form from the given one, m.</summary>
    public abstract double Reach(Vector3D from);

    /// <summary>The pieces of a line (origin + w direction, direction of length one) that lie within, as pairs w in rising order, added
    /// to a list.</summary>
    public abstract void Chords(Vector3D origin, Vector3D direction, List<double> chords);

    /// <summary>Integrals at density one over what of the form lies within a shaft.</summary>
    public abstract Moments Within(Shaft shaft);

    /// <summary>Middle of the form, as good as any point within for laying rays.</summary>
    public Vector3D Middle => Moments.First / Moments.Total;
}
