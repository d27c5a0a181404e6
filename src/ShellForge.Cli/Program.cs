using System.Runtime.InteropServices;
using ShellForge.Cli;

using var cancel = new CancellationTokenSource();

int asks = 0;

// The interrupt key, and the polite way in which systems and schedulers end a program: what runs is given up, and nothing is half-written.
// Whoever asks twice, or has waited long enough, does not wait for a computation that never looks up: files appear whole anyway.
void Stop(PosixSignalContext asked)
{
    asked.Cancel = true;
    if (Interlocked.Increment(ref asks) > 1)
    {
        Environment.Exit((int)ExitCode.Interrupted);
    }

    new Thread(EndWhatDoesNot) { IsBackground = true }.Start();
    cancel.Cancel();
}

void EndWhatDoesNot()
{
    const int patienceSeconds = 5;
    Thread.Sleep(TimeSpan.FromSeconds(patienceSeconds));
    Environment.Exit((int)ExitCode.Interrupted);
}

using PosixSignalRegistration interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, Stop);
using PosixSignalRegistration terminate = PosixSignalRegistration.Create(PosixSignal.SIGTERM, Stop);
return ShellForgeCommand.Run(args, Workbench.OfProcess(cancel.Token));
