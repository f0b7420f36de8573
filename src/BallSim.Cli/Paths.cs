using System.CommandLine;

namespace BallSim.Cli;

/// <summary>Arguments that name files and folders.</summary>
internal static class Paths
{
    /// <summary>
    /// An argument that is a path; what begins with a dash is an option that does not exist (a file of such a name is written ./-name).
    /// </summary>
    public static Argument<T> Argument<T>(string name, string description, ArgumentArity arity)
    {
        var argument = new Argument<T>(name) { Description = description, Arity = arity };
        argument.Validators.Add(result =>
        {
            foreach (var token in result.Tokens.Where(t => t.Value.StartsWith('-')))
            {
                result.AddError($"there is no option {token.Value} here");
            }
        });
        return argument;
    }
}
