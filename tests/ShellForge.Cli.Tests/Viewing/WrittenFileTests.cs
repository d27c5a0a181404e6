using System.Runtime.Versioning;
using System.Text.Json;
using ShellForge.Cli.Writing;

namespace ShellForge.Cli.Tests.Viewing;

/// <summary>The board file, written from the page: by the page alone, whole, and never over somebody else's text.</summary>
public class WrittenFileTests
{
    private static readonly string Thicker = Bench.SmallBoard + "# thicker\n";

    [Fact]
    public async Task A_text_that_is_sent_is_looked_at_and_not_written()
    {
        await using ServedPage page = ServedPage.Of(Bench.SmallBoard);

        (int status, string shown) = await page.Send("/page", Bench.SmallBoard.Replace("Buoy", "Beacon", StringComparison.Ordinal));
        (int wrong, string mistakes) = await page.Send("/page", Bench.SmallBoard.Replace("snap", "snpa", StringComparison.Ordinal));

        Assert.Equal(200, status);
        Assert.Contains("Beacon", shown, StringComparison.Ordinal);
        Assert.Equal(422, wrong);
        JsonElement mistake = Assert.Single(JsonDocument.Parse(mistakes).RootElement.GetProperty("diagnostics").EnumerateArray());
        Assert.Equal((12, 12), (mistake.GetProperty("line").GetInt32(), mistake.GetProperty("column").GetInt32()));
        Assert.Equal(Bench.SmallBoard, page.Saved);
        Assert.DoesNotContain("Beacon", (await page.Get("/page")).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_text_is_written_in_place_of_the_one_it_was_made_from()
    {
        await using ServedPage page = ServedPage.Of(Bench.SmallBoard);
        string stamp = await Stamp(page);

        (int status, string now) = await page.Send($"/file?stamp={stamp}", Thicker);

        Assert.Equal(200, status);
        Assert.Equal(Thicker, page.Saved);
        Assert.NotEqual(stamp, JsonDocument.Parse(now).RootElement.GetProperty("stamp").GetString());
        Assert.Equal(["board.yaml"], page.Names);
    }

    [Fact]
    public async Task What_somebody_else_has_written_meanwhile_is_not_lost()
    {
        await using ServedPage page = ServedPage.Of(Bench.SmallBoard);
        string stamp = await Stamp(page);
        const string theirs = "format: shellforge/1\n";
        page.Save(theirs);

        (int status, string now) = await page.Send($"/file?stamp={stamp}", Thicker);

        Assert.Equal(409, status);
        Assert.Equal(theirs, page.Saved);
        Assert.Equal(theirs, JsonDocument.Parse(now).RootElement.GetProperty("text").GetString());
    }

    [Fact]
    public async Task What_somebody_else_writes_while_the_turn_is_waited_for_is_not_lost()
    {
        await using ServedPage page = ServedPage.Of(Bench.SmallBoard);
        string stamp = await Stamp(page);
        const string theirs = "format: shellforge/1\n";
        Task<(int Status, string Text)> saving;
        using (FolderTurn.Of(Path.GetDirectoryName(page.Place)!))
        {
            saving = page.Send($"/file?stamp={stamp}", Thicker);
            for (int i = 0; i < 200 && page.Names.Length == 1; i++)
            {
                await Task.Delay(20);
            }

            Assert.Equal(2, page.Names.Length);
            page.Save(theirs);
        }

        Assert.Equal(409, (await saving).Status);
        Assert.Equal(theirs, page.Saved);
        Assert.Equal(["board.yaml"], page.Names);
    }

    [Theory]
    [InlineData("archive")]
    [InlineData("long")]
    public async Task What_could_not_be_read_again_is_refused_and_the_page_goes_on(string what)
    {
        await using ServedPage page = ServedPage.Of((what == "long" ? "\uFEFF" : "") + Bench.SmallBoard);
        string before = page.Saved;
        string text = what == "archive" ? "PK\u0003\u0004 and more" : new string('#', (4 << 20) - 1) + "\n";

        (int status, string why) = await page.Send($"/file?stamp={await Stamp(page)}", text);

        Assert.True(status is 400 or 413, $"{status} {why}");
        Assert.Equal(before, page.Saved);
        Assert.Equal(200, (await page.Send($"/file?stamp={await Stamp(page)}", Thicker)).Status);
    }

    [Fact]
    public async Task A_file_that_is_gone_is_told_and_written_anew_only_when_that_is_known()
    {
        await using ServedPage page = ServedPage.Of(Bench.SmallBoard);
        string stamp = await Stamp(page);
        page.Remove();

        Assert.Equal(409, (await page.Send($"/file?stamp={stamp}", Thicker)).Status);
        Assert.Empty(page.Names);
        Assert.Equal(200, (await page.Send("/file?stamp=", Thicker)).Status);
        Assert.Equal(Thicker, page.Saved);
    }

    [SkippableFact]
    [UnsupportedOSPlatform("windows")]
    public async Task What_a_link_leads_to_is_written_and_keeps_its_rights()
    {
        Skip.If(OperatingSystem.IsWindows(), "links need rights there");
        await using ServedPage page = ServedPage.OfLink(Bench.SmallBoard);
        File.SetUnixFileMode(page.Place, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupWrite);

        Assert.Equal(200, (await page.Send($"/file?stamp={await Stamp(page)}", Thicker)).Status);

        Assert.Equal(Thicker, page.Saved);
        Assert.NotNull(new FileInfo(page.LinkOrFile).LinkTarget);
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupWrite, File.GetUnixFileMode(page.Place));
    }

    [Theory]
    [InlineData("none")]
    [InlineData("query")]
    [InlineData("wrong")]
    [InlineData("elsewhere")]
    public async Task Only_the_page_itself_writes(string how)
    {
        await using ServedPage page = ServedPage.Of(Bench.SmallBoard);
        string key = await page.Key();
        string query = how == "query" ? $"&key={key}" : "";
        (string, string)[] fields = how switch
        {
            "wrong" => [("X-Key", new string('0', key.Length))],
            "elsewhere" => [("X-Key", key), ("Sec-Fetch-Site", "cross-site"), ("Sec-Fetch-Mode", "navigate")],
            _ => [("X-Other", "1")],
        };

        (int status, _) = await page.Send($"/file?stamp={await Stamp(page)}{query}", Thicker, fields);

        Assert.Equal(403, status);
        Assert.Equal(Bench.SmallBoard, page.Saved);
    }

    [Fact]
    public async Task Whoever_was_not_shown_the_address_sees_nothing()
    {
        await using ServedPage page = ServedPage.Of(Bench.SmallBoard);
        foreach (string path in new[] { "/", "/page", "/file", "/schema", "/names", "/events", "/?key=", "/?key=0" })
        {
            using HttpResponseMessage answer = await page.Client.GetAsync(new Uri(await page.Address, path));

            Assert.Equal(403, (int)answer.StatusCode);
            Assert.DoesNotContain("Buoy", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        }
    }

    private static async Task<string> Stamp(ServedPage page) =>
        JsonDocument.Parse((await page.Get("/file")).Text).RootElement.GetProperty("stamp").GetString()!;
}
