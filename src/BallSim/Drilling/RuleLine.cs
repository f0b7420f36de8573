namespace BallSim.Drilling;

/// <summary>One line of a rules check.</summary>
/// <param name="What">What is limited.</param>
/// <param name="Measured">The value in SI units, or null if it is not known.</param>
/// <param name="Limit">The limit with its source, date and standing.</param>
/// <param name="Verdict">Pass, fail, not known, or not applicable.</param>
/// <param name="Note">Where the value comes from, or why there is none.</param>
public sealed record RuleLine(string What, double? Measured, RuleLimit Limit, RuleVerdict Verdict, string Note)
{
    /// <summary>The value in the unit of the limit, or "-".</summary>
    public string MeasuredText => Measured is { } m ? Limit.Number(m) : "-";

    /// <summary>The verdict in words.</summary>
    public string VerdictText => Verdict switch
    {
        RuleVerdict.Pass => "pass",
        RuleVerdict.Fail => "FAIL",
        RuleVerdict.NotKnown => "not known",
        _ => "no limit here",
    };

    /// <summary>Source, date and standing of the limit.</summary>
    public string SourceText => string.Join(", ", new[] { Limit.Source, Limit.Date, Limit.Standing }.Where(s => s.Length > 0));

    /// <summary>The line as text.</summary>
    public override string ToString() =>
        $"{What}: {MeasuredText}, limit {Limit.Text}: {VerdictText} ({SourceText}{(Note.Length > 0 ? "; " + Note : "")})";
}
