namespace BallSim.Fitting;

/// <summary>A remark on the quality of a track.</summary>
/// <param name="Issue">What is odd.</param>
/// <param name="Line">Line of the file, or 0.</param>
/// <param name="Sentence">The remark in words.</param>
public readonly record struct QualityNote(QualityIssue Issue, int Line, string Sentence)
{
    /// <summary>The line and the remark.</summary>
    public override string ToString() => Line > 0 ? $"line {Line}: {Sentence}" : Sentence;
}
