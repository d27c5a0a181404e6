using System.Net;
using System.Net.Sockets;
using System.Text;
using ShellForge.Bench;
using ShellForge.Cli.Viewing;

namespace ShellForge.Cli.Tests.Viewing;

/// <summary>The server by itself: whoever is slow, or leaves, keeps nobody out and nothing in memory.</summary>
public class LoopbackServerTests
{
    private const int Large = 32 << 20;

    [Fact]
    public async Task Who_asks_and_does_not_take_the_answer_is_cut_off()
    {
        using var stop = new CancellationTokenSource();
        using LoopbackServer server = LoopbackServer.Start(0, new LargeSite(), TimeSpan.FromSeconds(1));
        Task run = server.Run(stop.Token);
        using var client = new TcpClient();
        await client.ConnectAsync(IPAddress.Loopback, server.Port);
        await using NetworkStream stream = client.GetStream();
        await stream.WriteAsync(Encoding.ASCII.GetBytes($"GET / HTTP/1.1\r\nHost: 127.0.0.1:{server.Port}\r\n\r\n"));
        await Task.Delay(TimeSpan.FromSeconds(3));

        long got = 0;
        byte[] some = new byte[1 << 16];
        try
        {
            for (int read; (read = await stream.ReadAsync(some).AsTask().WaitAsync(TimeSpan.FromSeconds(30))) > 0;)
            {
                got += read;
            }
        }
        catch (IOException)
        {
            // Cut off with some of it on its way.
        }

        Assert.InRange(got, 1, Large - 1);
        await stop.CancelAsync();
        await run;
    }

    [Fact]
    public async Task Who_waits_for_news_in_many_places_keeps_nobody_out()
    {
        using var stop = new CancellationTokenSource();
        using LoopbackServer server = LoopbackServer.Start(0, new QuietSite(), TimeSpan.FromSeconds(30));
        Task run = server.Run(stop.Token);
        var waiting = new List<TcpClient>();
        for (int i = 0; i < 300; i++)
        {
            waiting.Add(await Asking(server, "/events"));
        }

        using TcpClient asks = await Asking(server, "/");
        using var answer = new StreamReader(asks.GetStream());

        Assert.Equal("HTTP/1.1 200 OK", await answer.ReadLineAsync().WaitAsync(TimeSpan.FromSeconds(30)));
        waiting.ForEach(client => client.Dispose());
        await stop.CancelAsync();
        await run;
    }

    private static async Task<TcpClient> Asking(LoopbackServer server, string path)
    {
        var client = new TcpClient();
        await client.ConnectAsync(IPAddress.Loopback, server.Port);
        await client.GetStream().WriteAsync(Encoding.ASCII.GetBytes(
            $"GET {path}?key=k HTTP/1.1\r\nHost: 127.0.0.1:{server.Port}\r\n\r\n"));
        return client;
    }

    [Fact]
    public async Task Who_leaves_before_the_next_save_is_forgotten()
    {
        var versions = new SavedVersions();
        long seen = versions.Version;
        for (int i = 0; i < 50; i++)
        {
            using var leaves = new CancellationTokenSource();
            Task<long> waits = versions.NextVersion(seen, leaves.Token);
            Assert.Equal(1, versions.Waiting);
            await leaves.CancelAsync();
            await Assert.ThrowsAnyAsync<OperationCanceledException>(() => waits);
            Assert.Equal(0, versions.Waiting);
        }

        Task<long> stays = versions.NextVersion(seen, CancellationToken.None);
        versions.FileChanged();
        Assert.Equal(seen + 1, await stays);
    }

    private sealed class QuietSite : IWebSite
    {
        public string Key => "k";

        public int LongestBody(string path) => 0;

        public BenchAnswer Answer(WebRequestHead request, byte[]? body, CancellationToken cancel) => BenchAnswer.Text("200 OK", "here");

        public async Task<long> NextEvent(long seen, CancellationToken cancel)
        {
            await Task.Delay(Timeout.Infinite, cancel);
            return seen;
        }
    }

    private sealed class LargeSite : IWebSite
    {
        public string Key => "k";

        public int LongestBody(string path) => 0;

        public BenchAnswer Answer(WebRequestHead request, byte[]? body, CancellationToken cancel) =>
            new("200 OK", "text/plain", new byte[Large]);

        public Task<long> NextEvent(long seen, CancellationToken cancel) => Task.FromResult(seen + 1);
    }
}
