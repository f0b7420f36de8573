namespace BallSim.Drilling;

/// <summary>What a rules check says of one limit.</summary>
public enum RuleVerdict
{
    /// <summary>The value keeps the limit.</summary>
    Pass,

    /// <summary>The value breaks the limit.</summary>
    Fail,

    /// <summary>The value is not known: it must be measured.</summary>
    NotKnown,

    /// <summary>The limit does not concern this ball, or none is set.</summary>
    NotApplicable,
}
