using ShellForge.Cli;

using var cancel = new CancellationTokenSource();
Console.CancelKeyPress += (_, pressed) =>
{
    pressed.Cancel = true;
    cancel.Cancel();
};
return ShellForgeCommand.Run(args, Workbench.OfProcess(cancel.Token));
