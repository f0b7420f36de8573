namespace BallSim.Cli;

/// <summary>What the command returns to the shell.</summary>
internal static class ExitCode
{
    public const int Fine = 0;
    public const int WrongInput = 1;
    public const int WrongCommandLine = 2;
    public const int Unfinished = 3;
    public const int Unexpected = 70;
    public const int Cancelled = 130;
}
