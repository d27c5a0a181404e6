using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;
using System.Text;
using System.Text.Json;

namespace ShellForge.Cli.Tests.Viewing;

public class ViewVerbTests
{
    private static readonly string Misspelt = Bench.SmallBoard.Replace("closure: snap", "closure: snpa", StringComparison.Ordinal);

    [Fact]
    public async Task It_listens_on_the_loopback_address_alone()
    {
        await using ServedPage page = ServedPage.Of(Bench.SmallBoard);
        Uri address = await page.Address;

        IPEndPoint[] open = [.. IPGlobalProperties.GetIPGlobalProperties().GetActiveTcpListeners().Where(end => end.Port == address.Port)];

        Assert.Equal(IPAddress.Loopback, Assert.Single(open).Address);
    }

    [Theory]
    [InlineData("Host", "evil.example", 421)]
    [InlineData("Host", "127.0.0.1", 421)]
    [InlineData("Host", "127.0.0.1:1", 421)]
    [InlineData("Sec-Fetch-Site", "cross-site", 403)]
    [InlineData("Sec-Fetch-Site", "same-site", 403)]
    public async Task Others_are_refused(string field, string value, int status)
    {
        await using ServedPage page = ServedPage.Of(Bench.SmallBoard);

        (int got, string text) = await page.Get("/page", (field, value));

        Assert.Equal(status, got);
        Assert.True(text.Length < 100, text);
    }

    [Theory]
    [InlineData("GET /board.yaml HTTP/1.1\r\nHost: H\r\n\r\n", "404")]
    [InlineData("GET /../board.yaml HTTP/1.1\r\nHost: H\r\n\r\n", "404")]
    [InlineData("GET /%2e%2e/board.yaml HTTP/1.1\r\nHost: H\r\n\r\n", "404")]
    [InlineData("GET //etc/passwd HTTP/1.1\r\nHost: H\r\n\r\n", "404")]
    [InlineData("POST / HTTP/1.1\r\nHost: H\r\nContent-Length: 0\r\n\r\n", "404")]
    [InlineData("POST /file HTTP/1.1\r\nHost: H\r\n\r\n", "413")]
    [InlineData("POST /file HTTP/1.1\r\nHost: H\r\nContent-Length: -1\r\n\r\n", "413")]
    [InlineData("POST /file HTTP/1.1\r\nHost: H\r\nContent-Length: 99999999\r\n\r\n", "413")]
    [InlineData("POST /file HTTP/1.1\r\nHost: H\r\nTransfer-Encoding: chunked\r\n\r\n4\r\nabcd\r\n0\r\n\r\n", "413")]
    [InlineData("POST /page HTTP/1.1\r\nHost: H\r\nContent-Length: 2\r\n\r\n\u00FF\u00FF", "400")]
    [InlineData("PUT /file HTTP/1.1\r\nHost: H\r\nContent-Length: 0\r\n\r\n", "405")]
    [InlineData("OPTIONS /file HTTP/1.1\r\nHost: H\r\n\r\n", "405")]
    [InlineData("GET / HTTP/1.1\r\n\r\n", "421")]
    [InlineData("GET / HTTP/1.1\r\nHost: H\r\nHost: evil.example\r\n\r\n", "400")]
    [InlineData("GET http://H/ HTTP/1.1\r\nHost: H\r\n\r\n", "400")]
    [InlineData("nonsense\r\n\r\n", "400")]
    [InlineData("GET / HTTP/1.1\r\nHost H\r\n\r\n", "400")]
    public async Task Nothing_but_the_page_is_served(string request, string status)
    {
        await using ServedPage page = ServedPage.Of(Bench.SmallBoard);

        string answer = await Raw(await page.Address, request);

        Assert.StartsWith($"HTTP/1.1 {status}", answer, StringComparison.Ordinal);
        Assert.DoesNotContain("shellforge/1", answer, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Two_hundred_connections_that_say_nothing_keep_nobody_out()
    {
        await using ServedPage page = ServedPage.Of(Bench.SmallBoard);
        Uri address = await page.Address;
        var idle = new List<TcpClient>();
        try
        {
            for (int i = 0; i < 200; i++)
            {
                var client = new TcpClient();
                idle.Add(client);
                await client.ConnectAsync(IPAddress.Loopback, address.Port);
            }

            (int got, _) = await page.Get("/page").WaitAsync(TimeSpan.FromSeconds(60));

            Assert.Equal(200, got);
        }
        finally
        {
            idle.ForEach(client => client.Dispose());
        }
    }

    [Fact]
    public async Task A_head_without_an_end_is_bounded()
    {
        await using ServedPage page = ServedPage.Of(Bench.SmallBoard);

        string answer = await Raw(await page.Address, "GET / HTTP/1.1\r\nX: " + new string('x', 64 << 10));

        Assert.StartsWith("HTTP/1.1 400", answer, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_housing_comes_first_and_what_the_rules_say_after()
    {
        await using ServedPage page = ServedPage.Of(Bench.SmallBoard);

        (int status, string shown) = await page.Get("/page");
        (_, string whole) = await page.Get("/page?checked=1");

        Assert.Equal(200, status);
        Assert.Contains("data-checked=\"no\"", shown, StringComparison.Ordinal);
        Assert.Contains("\"name\":\"tub\"", shown, StringComparison.Ordinal);
        Assert.DoesNotContain("id=\"assembly\"", shown, StringComparison.Ordinal);
        Assert.Contains("data-checked=\"yes\"", whole, StringComparison.Ordinal);
        Assert.Contains("id=\"assembly\"", whole, StringComparison.Ordinal);
        Assert.Contains("data-path=\"housing.walls\"", whole, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_number_that_is_tried_changes_the_page_and_not_the_file()
    {
        await using ServedPage page = ServedPage.Of(Bench.SmallBoard);

        (_, string asIs) = await page.Get("/page");
        (_, string tried) = await page.Get("/page?set=housing.floor%3D4");
        (_, string again) = await page.Get("/page");

        Assert.NotEqual(asIs, tried);
        Assert.Contains("data-path=\"housing.floor\" min=\"0.8\" max=\"5\" step=\"0.2\" value=\"4\"", tried, StringComparison.Ordinal);
        Assert.Equal(asIs, again);
    }

    [Fact]
    public async Task Mistakes_are_told_at_their_lines_and_go_when_the_file_is_mended()
    {
        await using ServedPage page = ServedPage.Of(Bench.SmallBoard);
        Task<string> saved = await Listening(page);
        page.Save(Misspelt);
        await saved;

        (int status, string text) = await page.Get("/page");

        Assert.Equal(422, status);
        JsonElement mistake = Assert.Single(JsonDocument.Parse(text).RootElement.GetProperty("diagnostics").EnumerateArray());
        Assert.Matches(@"^board\.yaml:12:\d+: ", mistake.GetProperty("text").GetString());
        Assert.Equal("  closure: snpa", mistake.GetProperty("source").GetString());

        saved = await Listening(page);
        page.Save(Bench.SmallBoard + "\n");
        await saved;
        Assert.Equal(200, (await page.Get("/page")).Status);
    }

    [Fact]
    public async Task A_file_that_is_broken_from_the_start_or_goes_away_is_told_on_the_page()
    {
        await using ServedPage page = ServedPage.Of(Misspelt);

        (int status, string text) = await page.Get("/");
        Assert.Equal(200, status);
        Assert.Contains("closure: snpa</code>", text, StringComparison.Ordinal);

        Task<string> gone = await Listening(page);
        page.Remove();
        await gone;
        Assert.Equal(422, (await page.Get("/page")).Status);
    }

    [Fact]
    public async Task A_file_that_is_gone_and_comes_back_by_a_new_name_renamed_over_it_is_shown_again()
    {
        await using ServedPage page = ServedPage.Of(Bench.SmallBoard);
        Task<string> seen = await Listening(page);
        page.Remove();
        await seen;
        Assert.Equal(422, (await page.Get("/page")).Status);

        seen = await Listening(page);
        page.SaveAsEditorsDo(Bench.SmallBoard.Replace("Buoy", "Beacon", StringComparison.Ordinal));
        await seen;
        (int status, string text) = await page.Get("/page");
        Assert.Equal(200, status);
        Assert.Contains("Beacon", text, StringComparison.Ordinal);
    }

    [SkippableFact]
    public async Task A_link_is_followed_to_the_file_that_is_saved()
    {
        Skip.If(OperatingSystem.IsWindows(), "links need rights there");
        await using ServedPage page = ServedPage.OfLink(Bench.SmallBoard);
        Assert.Equal(200, (await page.Get("/page")).Status);
        Task<string> seen = await Listening(page);
        page.Save(Misspelt);
        await seen.WaitAsync(TimeSpan.FromSeconds(20));
        Assert.Equal(422, (await page.Get("/page")).Status);
    }

    [Fact]
    public async Task It_stops_when_asked()
    {
        await using ServedPage page = ServedPage.Of(Bench.SmallBoard);
        Task<string> listening = await Listening(page);
        await page.Get("/page");

        Assert.Equal(0, await page.Stop());
        await Assert.ThrowsAnyAsync<Exception>(() => listening);
    }

    [Fact]
    public void A_port_that_is_taken_and_a_file_that_is_not_there_are_file_trouble()
    {
        using var taken = new TcpListener(IPAddress.Loopback, 0);
        taken.Start();
        using var bench = new Bench();
        bench.Folder.Write("board.yaml", Bench.SmallBoard);
        string port = ((IPEndPoint)taken.LocalEndpoint).Port.ToString(System.Globalization.CultureInfo.InvariantCulture);

        Assert.Equal((int)ExitCode.FileTrouble, bench.Run("view", "board.yaml", "--port", port));
        Assert.Contains(port, bench.Err, StringComparison.Ordinal);
        Assert.Equal((int)ExitCode.FileTrouble, bench.Run("view", "none.yaml"));
        Assert.Equal((int)ExitCode.BadInput, bench.Run("view", "board.yaml", "--port", "65536"));
    }

    private static async Task<string> Raw(Uri address, string request)
    {
        using var client = new TcpClient();
        await client.ConnectAsync(IPAddress.Loopback, address.Port);
        await using NetworkStream stream = client.GetStream();
        try
        {
            string fields = $"Host: {address.Authority}\r\nX-Key: {address.Query["?key=".Length..]}\r";
            await stream.WriteAsync(Encoding.Latin1.GetBytes(request.Replace("Host: H\r", fields, StringComparison.Ordinal)));
        }
        catch (IOException)
        {
            // Refused before all of it was said.
        }

        using var reader = new StreamReader(stream, Encoding.UTF8);
        var text = new StringBuilder();
        char[] some = new char[4096];
        try
        {
            for (int read; (read = await reader.ReadAsync(some)) > 0;)
            {
                text.Append(some, 0, read);
            }
        }
        catch (IOException)
        {
            // Closed with some of the request unread: what was answered has come.
        }

        return text.ToString();
    }

    // Begins to listen before it returns, so that no save is missed.
    private static async Task<Task<string>> Listening(ServedPage page)
    {
        var address = new Uri(await page.Address, $"/events?key={await page.Key()}");
        HttpResponseMessage answer = await page.Client.GetAsync(address, HttpCompletionOption.ResponseHeadersRead);
        var reader = new StreamReader(await answer.Content.ReadAsStreamAsync());
        while (!(await reader.ReadLineAsync() ?? throw new IOException("no more events")).StartsWith(": here", StringComparison.Ordinal))
        {
        }

        return Change(reader);
    }

    private static async Task<string> Change(StreamReader reader)
    {
        while (await reader.ReadLineAsync() is { } line)
        {
            if (line.StartsWith("event: changed", StringComparison.Ordinal))
            {
                return line;
            }
        }

        throw new IOException("no more events");
    }
}
