using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Security.Cryptography;
using System.Text;
using ShellForge.Bench;

namespace ShellForge.Cli.Viewing;

/// <summary>What a server is asked for.</summary>
internal interface IWebSite
{
    /// <summary>What every request must carry: only who was shown the address knows it.</summary>
    string Key { get; }

    /// <summary>How many bytes may be sent to a path.</summary>
    int LongestBody(string path);

    /// <summary>Answers a request that has passed all guards.</summary>
    /// <param name="request">What is asked for.</param>
    /// <param name="body">What was sent with it; null for a GET.</param>
    /// <param name="cancel">Stops it.</param>
    BenchAnswer Answer(WebRequestHead request, byte[]? body, CancellationToken cancel);

    /// <summary>Waits for the next event after a count of events; gives the new count.</summary>
    Task<long> NextEvent(long seen, CancellationToken cancel);
}

/// <summary>
/// A server for one page on this machine. Listens on the loopback address and nothing else, refuses requests that name another host (so
/// that no foreign name can be pointed here), requests that other sites make, and all that do not carry the key in the address: others
/// who work on this machine don't know it.
/// </summary>
internal sealed class LoopbackServer : IDisposable
{
    private const string EventsPath = "/events";
    private static readonly TimeSpan LongestRead = TimeSpan.FromSeconds(10);
    private static readonly TimeSpan Heartbeat = TimeSpan.FromSeconds(15);


    // A page has a few megabytes, and goes no farther than this machine.
    private static readonly TimeSpan LongestSend = TimeSpan.FromSeconds(30);

    // A browser opens six connections to a host. Those that say nothing are cut off in time; so many of them are a bound on memory.
    private const int MostConnections = 256;

    // Pages in tabs that wait for news; each keeps its connection, and all together leave room for those that ask.
    private const int MostListeners = 64;

    // Nothing is loaded from anywhere: style and script stand in the page, pictures are data.
    private const string Guards =
        "Cache-Control: no-store\r\nX-Content-Type-Options: nosniff\r\nReferrer-Policy: no-referrer\r\n"
        + "Cross-Origin-Resource-Policy: same-origin\r\nX-Frame-Options: DENY\r\n"
        + "Content-Security-Policy: default-src 'none'; script-src 'unsafe-inline'; style-src 'unsafe-inline'; img-src data: blob:; "
        + "connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'\r\n";

    private readonly TcpListener _listener;
    private readonly IWebSite _site;
    private readonly SemaphoreSlim _room = new(MostConnections);

    private readonly TimeSpan _longestSend;
    private int _listeners;

    private LoopbackServer(TcpListener listener, IWebSite site, TimeSpan longestSend)
    {
        _longestSend = longestSend;
        _listener = listener;
        _site = site;
        Port = ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    /// <summary>The port it listens on.</summary>
    public int Port { get; }

    /// <summary>The address of the page.</summary>
    public string Address => string.Create(CultureInfo.InvariantCulture, $"http://127.0.0.1:{Port}/?key={_site.Key}");

    /// <summary>Starts listening.</summary>
    /// <param name="port">The port; 0: one that is free.</param>
    /// <param name="site">Who answers.</param>
    /// <exception cref="IOException">The port is taken.</exception>
    public static LoopbackServer Start(int port, IWebSite site) => Start(port, site, LongestSend);

    /// <summary>Starts listening.</summary>
    /// <param name="port">The port; 0: one that is free.</param>
    /// <param name="site">Who answers.</param>
    /// <param name="longestSend">How long whoever asked may take for an answer.</param>
    /// <exception cref="IOException">The port is taken.</exception>
    public static LoopbackServer Start(int port, IWebSite site, TimeSpan longestSend)
    {
        var listener = new TcpListener(IPAddress.Loopback, port);
        try
        {
            listener.Start();
        }
        catch (SocketException e)
        {
            throw new IOException($"port {port} can't be listened on: {e.Message}", e);
        }

        return new LoopbackServer(listener, site, longestSend);
    }

    /// <summary>Serves until cancelled.</summary>
    public async Task Run(CancellationToken cancel)
    {
        try
        {
            while (true)
            {
                await _room.WaitAsync(cancel);
                TcpClient client = await _listener.AcceptTcpClientAsync(cancel);
                _ = Task.Run(() => Serve(client, cancel), CancellationToken.None);
            }
        }
        catch (OperationCanceledException)
        {
            // Asked to stop.
        }
    }

    /// <inheritdoc />
    public void Dispose()
    {
        _listener.Dispose();
        _room.Dispose();
    }

    private async Task Serve(TcpClient client, CancellationToken cancel)
    {
        try
        {
            using (client)
            {
                client.NoDelay = true;
                await using NetworkStream stream = client.GetStream();
                using var gone = CancellationTokenSource.CreateLinkedTokenSource(cancel);
                (WebRequestHead? request, ReadOnlyMemory<byte> along) = await InTime(stop => WebRequestHead.Read(stream, stop), gone.Token);
                if (Refused(request) is { } refusal)
                {
                    await Send(stream, refusal, gone.Token);
                    return;
                }

                byte[]? body = request!.Method == "POST"
                    ? await InTime(stop => Body(stream, along, request.BodyLength!.Value, stop), gone.Token) : null;
                Task watch = WatchForLeaving(stream, gone);
                if (request.Path == EventsPath)
                {
                    await Listen(stream, gone.Token);
                }
                else
                {
                    await Send(stream, _site.Answer(request, body, gone.Token), gone.Token);
                }

                client.Client.Shutdown(SocketShutdown.Send);
                await gone.CancelAsync();
                await watch;
            }
        }
        catch (Exception e) when (e is IOException or SocketException or OperationCanceledException or ObjectDisposedException)
        {
            // Whoever asked has gone, or the server stops.
        }
        finally
        {
            Release();
        }
    }

    private void Release()
    {
        try
        {
            _room.Release();
        }
        catch (ObjectDisposedException)
        {
            // The server stopped first.
        }
    }

    private static async Task<T> InTime<T>(Func<CancellationToken, Task<T>> read, CancellationToken cancel)
    {
        using var slow = CancellationTokenSource.CreateLinkedTokenSource(cancel);
        slow.CancelAfter(LongestRead);
        return await read(slow.Token);
    }

    private static async Task<byte[]> Body(NetworkStream stream, ReadOnlyMemory<byte> along, int length, CancellationToken cancel)
    {
        byte[] body = new byte[length];
        int there = Math.Min(along.Length, length);
        along[..there].CopyTo(body);
        await stream.ReadExactlyAsync(body.AsMemory(there), cancel);
        return body;
    }

    private BenchAnswer? Refused(WebRequestHead? request)
    {
        if (request is null)
        {
            return BenchAnswer.Text("400 Bad Request", "not a request that this page makes");
        }

        string port = Port.ToString(CultureInfo.InvariantCulture);
        if (request.Host != $"127.0.0.1:{port}" && request.Host != $"localhost:{port}")
        {
            return BenchAnswer.Text("421 Misdirected Request", "this page is served to this machine only");
        }

        bool sends = request.Method == "POST";
        if (request.Method != "GET" && !sends)
        {
            return BenchAnswer.Text("405 Method Not Allowed", "GET and POST only");
        }

        // A page of another site may link here, but not ask in its own name, and never send.
        bool linked = !sends && request.Path == "/" && request.FetchMode is null or "navigate";
        if (!(request.FetchSite is null or "same-origin" or "none" || linked))
        {
            return BenchAnswer.Text("403 Forbidden", "asked by another site");
        }

        string? key = sends ? request.KeyInField : request.KeyInField ?? request.Values("key").FirstOrDefault();
        if (key is null || !CryptographicOperations.FixedTimeEquals(Encoding.UTF8.GetBytes(key), Encoding.UTF8.GetBytes(_site.Key)))
        {
            return BenchAnswer.Text("403 Forbidden", "open the whole address that the command shows, with its key");
        }

        return !sends || (request.BodyLength is >= 0 && request.BodyLength <= _site.LongestBody(request.Path)) ? null
            : BenchAnswer.Text("413 Content Too Large", "longer than anything that this page sends, or its length is not said");
    }

    // Everything was read: the next thing is the end of the connection.
    private static async Task WatchForLeaving(NetworkStream stream, CancellationTokenSource gone)
    {
        byte[] rest = new byte[256];
        try
        {
            while (await stream.ReadAsync(rest, gone.Token) > 0)
            {
                // Said after the head; of no interest.
            }

            await gone.CancelAsync();
        }
        catch (Exception e) when (e is IOException or OperationCanceledException or ObjectDisposedException)
        {
            await gone.CancelAsync();
        }
    }

    private async Task Send(NetworkStream stream, BenchAnswer answer, CancellationToken cancel)
    {
        string head = string.Create(
            CultureInfo.InvariantCulture,
            $"HTTP/1.1 {answer.Status}\r\nContent-Type: {answer.Type}\r\nContent-Length: {answer.Body.Length}\r\nConnection: "
                + $"close\r\n{Guards}\r\n");
        await Write(stream, Encoding.ASCII.GetBytes(head), cancel);
        await Write(stream, answer.Body, cancel);
    }

    // Whoever does not take what it asked for is cut off: it would keep others out.
    private async Task Write(NetworkStream stream, byte[] bytes, CancellationToken cancel)
    {
        using var slow = CancellationTokenSource.CreateLinkedTokenSource(cancel);
        slow.CancelAfter(_longestSend);
        await stream.WriteAsync(bytes, slow.Token);
    }

    private async Task Listen(NetworkStream stream, CancellationToken cancel)
    {
        try
        {
            if (Interlocked.Increment(ref _listeners) > MostListeners)
            {
                await Send(stream, BenchAnswer.Text("503 Service Unavailable", "open in too many places; close some"), cancel);
                return;
            }

            await SendEvents(stream, cancel);
        }
        finally
        {
            Interlocked.Decrement(ref _listeners);
        }
    }

    private async Task SendEvents(NetworkStream stream, CancellationToken cancel)
    {
        string head = $"HTTP/1.1 200 OK\r\nContent-Type: text/event-stream\r\nConnection: close\r\n{Guards}\r\nretry: 1000\n\n";
        await Write(stream, Encoding.ASCII.GetBytes(head), cancel);
        long seen = -1;
        Task<long> next = _site.NextEvent(seen, cancel);
        while (true)
        {
            if (await Task.WhenAny(next, Task.Delay(Heartbeat, cancel)) == next)
            {
                // The first count is where this listener starts from, not news.
                long now = await next;
                string text = seen < 0 ? ": here\n\n" : string.Create(CultureInfo.InvariantCulture, $"event: changed\ndata: {now}\n\n");
                seen = now;
                await Write(stream, Encoding.ASCII.GetBytes(text), cancel);
                next = _site.NextEvent(seen, cancel);
            }
            else
            {
                await Write(stream, ": still here\n\n"u8.ToArray(), cancel);
            }
        }
    }
}
