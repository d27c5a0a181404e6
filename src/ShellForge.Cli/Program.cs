using System.Runtime.InteropServices;
using ShellForge.Cli;

using var cancel = new CancellationTokenSource();

// The interrupt key, and the polite way in which systems and schedulers end a program: what runs is given up, and nothing is half-written.
void Stop(PosixSignalContext asked)
{
    asked.Cancel = true;
    cancel.Cancel();
}

using PosixSignalRegistration interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, Stop);
using PosixSignalRegistration terminate = PosixSignalRegistration.Create(PosixSignal.SIGTERM, Stop);
return ShellForgeCommand.Run(args, Workbench.OfProcess(cancel.Token));
