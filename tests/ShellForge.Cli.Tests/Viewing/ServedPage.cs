using ShellForge.Testing;

namespace ShellForge.Cli.Tests.Viewing;

/// <summary>The command <c>view</c>, running on a folder of its own until it is disposed.</summary>
internal sealed class ServedPage : IAsyncDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly CancellationTokenSource _stop = new();
    private readonly Task<int> _run;

    private readonly string _saved;

    private ServedPage(string? board, bool isLink)
    {
        _saved = isLink ? "elsewhere/kept.yaml" : "board.yaml";
        if (board is not null)
        {
            _folder.Write(_saved, board);
        }

        if (isLink)
        {
            File.CreateSymbolicLink(_folder.File("board.yaml"), _folder.File(_saved));
        }

        var told = new AddressWriter();
        _run = Task.Run(() => ShellForgeCommand.Run(board is null ? ["view", "--new", "board.yaml"] : ["view", "board.yaml"], new Workbench
        {
            Out = told,
            Err = TextWriter.Null,
            Folder = _folder.Path,
            Cancel = _stop.Token,
        }));
        Address = told.Address.WaitAsync(TimeSpan.FromSeconds(60));
    }

    /// <summary>Where it is served.</summary>
    public Task<Uri> Address { get; }

    /// <summary>Asks for pages.</summary>
    public HttpClient Client { get; } = new() { Timeout = TimeSpan.FromMinutes(3) };

    public static ServedPage Of(string board) => new(board, isLink: false);

    /// <summary>A board file that is begun on the page.</summary>
    public static ServedPage New() => new(null, isLink: false);

    /// <summary>The same, its board file a link to a file in another folder.</summary>
    public static ServedPage OfLink(string board) => new(board, isLink: true);

    public void Save(string board) => _folder.Write(_saved, board);

    /// <summary>Writes another file and renames it over the board file.</summary>
    public void SaveAsEditorsDo(string board)
    {
        string other = _folder.Write(".board.yaml.new", board);
        File.Move(other, _folder.File(_saved), overwrite: true);
    }

    public void Remove() => File.Delete(_folder.File("board.yaml"));

    /// <summary>The board file as it is now.</summary>
    public string Saved => File.ReadAllText(_folder.File(_saved));

    /// <summary>The file that is read and written in the end.</summary>
    public string Place => _folder.File(_saved);

    /// <summary>The file that the command was given.</summary>
    public string LinkOrFile => _folder.File("board.yaml");

    /// <summary>Names of all files beside it.</summary>
    public string[] Names => [.. Directory.GetFiles(_folder.Path).Select(path => Path.GetFileName(path)!).Order(StringComparer.Ordinal)];

    /// <summary>What the page's requests carry.</summary>
    public async Task<string> Key() => (await Address).Query["?key=".Length..];

    /// <summary>Asks as the page does.</summary>
    public async Task<(int Status, string Text)> Get(string path, params (string Name, string Value)[] fields) =>
        await Ask(new HttpRequestMessage(HttpMethod.Get, new Uri(await Address, path)), [.. fields, ("X-Key", await Key())]);

    /// <summary>Asks for bytes.</summary>
    public async Task<byte[]> Bytes(string path)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, new Uri(await Address, path));
        request.Headers.Add("X-Key", await Key());
        using HttpResponseMessage answer = await Client.SendAsync(request);
        return await answer.Content.ReadAsByteArrayAsync();
    }

    /// <summary>Sends a text as the page does.</summary>
    public async Task<(int Status, string Text)> Send(string path, string text, params (string Name, string Value)[] fields) => await Ask(
        new HttpRequestMessage(HttpMethod.Post, new Uri(await Address, path)) { Content = new StringContent(text) },
        fields.Length > 0 ? fields : [("X-Key", await Key())]);

    private async Task<(int Status, string Text)> Ask(HttpRequestMessage request, (string Name, string Value)[] fields)
    {
        using HttpRequestMessage asked = request;
        foreach ((string name, string value) in fields)
        {
            request.Headers.TryAddWithoutValidation(name, value);
        }

        using HttpResponseMessage answer = await Client.SendAsync(request);
        return ((int)answer.StatusCode, await answer.Content.ReadAsStringAsync());
    }

    /// <summary>Stops the command; gives its exit status.</summary>
    public async Task<int> Stop()
    {
        await _stop.CancelAsync();
        return await _run.WaitAsync(TimeSpan.FromSeconds(60));
    }

    public async ValueTask DisposeAsync()
    {
        await Stop();
        _stop.Dispose();
        Client.Dispose();
        _folder.Dispose();
    }

    // The command says where it is before it does anything else.
    private sealed class AddressWriter : StringWriter
    {
        private readonly TaskCompletionSource<Uri> _address = new();

        public Task<Uri> Address => _address.Task;

        public override void WriteLine(string? value)
        {
            int at = value?.IndexOf("http://", StringComparison.Ordinal) ?? -1;
            if (at >= 0)
            {
                _address.TrySetResult(new Uri(value![at..]));
            }

            base.WriteLine(value);
        }
    }
}
