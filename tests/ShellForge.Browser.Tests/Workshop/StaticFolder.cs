using System.Collections.Concurrent;
using System.Net;

namespace ShellForge.Browser.Tests.Workshop;

/// <summary>A web server that knows nothing but the files of a folder, as any host of pages is; it notes what it is asked for.</summary>
internal sealed class StaticFolder : IDisposable
{
    private static readonly Dictionary<string, string> Types = new()
    {
        [".html"] = "text/html; charset=utf-8",
        [".css"] = "text/css",
        [".js"] = "text/javascript",
        [".json"] = "application/json",
        [".wasm"] = "application/wasm",
    };

    private HttpListener _listener = new();
    private readonly string _folder;

    public StaticFolder(string folder)
    {
        _folder = folder;
        for (int port = 42800; ; port++)
        {
            Address = $"http://localhost:{port}/";
            _listener = new HttpListener();
            _listener.Prefixes.Add(Address);
            try
            {
                _listener.Start();
                break;
            }
            catch (HttpListenerException) when (port < 43800)
            {
                // Taken by another.
            }
        }

        _ = Task.Run(Serve);
    }

    public string Address { get; private set; } = "";

    /// <summary>All requests, each as method and path.</summary>
    public ConcurrentQueue<string> Asked { get; } = new();

    public void Dispose() => _listener.Close();

    private async Task Serve()
    {
        while (_listener.IsListening)
        {
            try
            {
                HttpListenerContext context = await _listener.GetContextAsync();
                await Answer(context);
            }
            catch (Exception e) when (e is HttpListenerException or ObjectDisposedException)
            {
                // The server stops, or whoever asked has gone.
            }
        }
    }

    private async Task Answer(HttpListenerContext context)
    {
        string path = context.Request.Url!.AbsolutePath;
        Asked.Enqueue($"{context.Request.HttpMethod} {path}{context.Request.Url.Query}");
        string file = Path.Combine(_folder, path == "/" ? "index.html" : path[1..]);
        using HttpListenerResponse response = context.Response;
        if (!File.Exists(file))
        {
            response.StatusCode = 404;
            return;
        }

        response.ContentType = Types.GetValueOrDefault(Path.GetExtension(file), "application/octet-stream");
        await response.OutputStream.WriteAsync(await File.ReadAllBytesAsync(file));
    }
}
