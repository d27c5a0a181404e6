using ShellForge.Testing;

namespace ShellForge.Browser.Tests;

/// <summary>The command, running beside the test.</summary>
internal sealed class ServedBoard : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly CancellationTokenSource _stop = new();
    private readonly Task _run;
    private readonly TaskCompletionSource<string> _address = new();

    /// <param name="board">The board file; null for one that is begun on the page.</param>
    public ServedBoard(string? board)
    {
        if (board is not null)
        {
            Save(board);
        }

        string[] asked = board is null ? ["view", "--new", "board.yaml"] : ["view", "board.yaml"];
        _run = Task.Run(() => Cli.ShellForgeCommand.Run(asked, new Cli.Workbench
        {
            Out = new Listener(_address),
            Err = TextWriter.Null,
            Folder = _folder.Path,
            Cancel = _stop.Token,
        }));
    }

    public Task<string> Address => _address.Task.WaitAsync(TimeSpan.FromSeconds(60));

    /// <summary>Its folder.</summary>
    public string Folder => _folder.Path;

    public string Text => File.ReadAllText(_folder.File("board.yaml"));

    public void Save(string board) => _folder.Write("board.yaml", board);

    public void Dispose()
    {
        _stop.Cancel();
        _run.Wait(TimeSpan.FromSeconds(60));
        _stop.Dispose();
        _folder.Dispose();
    }

    private sealed class Listener(TaskCompletionSource<string> address) : StringWriter
    {
        public override void WriteLine(string? value)
        {
            int at = value?.IndexOf("http://", StringComparison.Ordinal) ?? -1;
            if (at >= 0)
            {
                address.TrySetResult(value![at..]);
            }

            base.WriteLine(value);
        }
    }
}
