using System.Text;
using BallSim.Cli;

Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
using var cancellation = new CancellationTokenSource();
Console.CancelKeyPress += (_, e) =>
{
    // The first Ctrl-C asks for a clean end; a second one is not held back.
    e.Cancel = !cancellation.IsCancellationRequested;
    cancellation.Cancel();
};
return Application.Run(args, new Screen(Console.Out, Console.Error, Screen.WidthOfTerminal()), cancellation.Token);
