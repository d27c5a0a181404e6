using System.Text;
using System.Text.Json;
using ShellForge.Testing;

namespace ShellForge.Cli.Tests.Viewing;

/// <summary>Hand-over files that are sent to the page, what is then asked, and the files that can be taken from it.</summary>
public class HandedOverTests
{
    private static readonly string Ring = Repository.At("tests", "boards", "ecad", "placement-fixed-columns");

    [Fact]
    public async Task The_text_is_that_of_the_command_and_nothing_is_written()
    {
        await using ServedPage page = ServedPage.Of(Bench.SmallBoard);

        (int status, string answer) = await page.Send("/handed-over", Sent("edge.gbr", "parts.pos"));

        Assert.Equal(200, status);
        using var bench = new Bench();
        bench.Run("import", Ring, "-o", "board.yaml");
        string[] told = [.. File.ReadAllLines(bench.Folder.File("board.yaml"))];
        string expected = string.Join('\n', told[1..]) + "\n";
        using JsonDocument json = JsonDocument.Parse(answer);
        Assert.StartsWith("# yaml-language-server", told[0], StringComparison.Ordinal);
        Assert.Equal(expected, json.RootElement.GetProperty("text").GetString());
        Assert.Contains("data-ref=\"J1\"", json.RootElement.GetProperty("picture").GetString(), StringComparison.Ordinal);
        Assert.Equal(Bench.SmallBoard, page.Saved);
        Assert.Equal(["board.yaml"], page.Names);
    }

    [Fact]
    public async Task What_the_text_leaves_open_is_asked_with_what_can_be_said()
    {
        await using ServedPage page = ServedPage.Of(Bench.SmallBoard);
        (_, string answer) = await page.Send("/handed-over", Sent("edge.gbr", "parts.pos"));
        using JsonDocument import = JsonDocument.Parse(answer);

        (int status, string asked) = await page.Send("/questions", import.RootElement.GetProperty("text").GetString()!);

        Assert.Equal(200, status);
        using JsonDocument json = JsonDocument.Parse(asked);
        JsonElement[] questions = [.. json.RootElement.GetProperty("questions").EnumerateArray()];
        JsonElement thickness = questions.Single(each => each.GetProperty("path").GetString() == "board.thickness");
        Assert.Contains("1.6", Choices(thickness));
        Assert.Equal("mm", thickness.GetProperty("fields")[0].GetProperty("unit").GetString());
        JsonElement cable = questions.Single(each => each.GetProperty("path").GetString() == "housing.cable");
        Assert.Equal(["{part: J1}", "none"], Choices(cable));
        Assert.Contains("m3x4-od4.6", Choices(questions.Single(each => each.GetProperty("path").GetString() == "housing.insert")));
        JsonElement mouth = questions.Single(each => each.GetProperty("path").GetString() == "board.parts[J1].faces");
        Assert.Equal("J1", mouth.GetProperty("part").GetString());
        Assert.Equal(
            ["board.parts[J1].faces", "board.parts[J1].past-edge"],
            mouth.GetProperty("fields").EnumerateArray().Select(each => each.GetProperty("path").GetString()));
    }

    [Fact]
    public async Task One_height_settles_all_parts_of_its_package()
    {
        await using ServedPage page = ServedPage.Of(Bench.SmallBoard);

        (_, string asked) = await page.Send(
            "/questions", "  # TODO board.parts[C1].height: height of CAN; the same for C2, C3, ...\n# TODO nothing\n");

        using JsonDocument json = JsonDocument.Parse(asked);
        JsonElement question = Assert.Single(json.RootElement.GetProperty("questions").EnumerateArray());
        Assert.Equal(1, question.GetProperty("line").GetInt32());
        Assert.Equal(["C2", "C3"], question.GetProperty("others").EnumerateArray().Select(each => each.GetString()));
    }

    [Fact]
    public async Task A_hundred_thousand_questions_are_bounded()
    {
        await using ServedPage page = ServedPage.Of(Bench.SmallBoard);
        string many = string.Concat(
            Enumerable.Range(0, 50_000).Select(i => $"# TODO housing.cable: a\n# TODO b{i}: c; the same for {i}\n"));

        (int status, string asked) = await page.Send("/questions", Bench.SmallBoard + "\n" + many);

        Assert.Equal(200, status);
        Assert.True(asked.Length < 100_000, $"{asked.Length}");
    }

    [Theory]
    [InlineData("")]
    [InlineData("{")]
    [InlineData("[]")]
    [InlineData("null")]
    [InlineData("{\"files\": null}")]
    [InlineData("{\"files\": [null]}")]
    [InlineData("{\"files\": [{\"name\": \"a.gbr\"}]}")]
    [InlineData("{\"files\": [{\"name\": \"\", \"content\": \"\"}]}")]
    [InlineData("{\"files\": [{\"name\": \"a.gbr\", \"content\": \"no base 64!\"}]}")]
    [InlineData("{\"files\": [], \"unit\": -1}")]
    [InlineData("{\"files\": [], \"shift\": [1]}")]
    [InlineData("{\"files\": [], \"shift\": [1e300, 0]}")]
    public async Task What_the_page_would_not_send_is_refused(string body)
    {
        await using ServedPage page = ServedPage.Of(Bench.SmallBoard);

        (int status, string text) = await page.Send("/handed-over", body);

        Assert.Equal(400, status);
        Assert.Equal("not a list of files\n", text);
    }

    [Theory]
    [InlineData("board.txt", "nothing of a board", "no hand-over file")]
    [InlineData("../../etc/passwd", "", "passwd")]
    [InlineData("a\u001b[31m\u202e.gbr", "G04*", "")]
    public async Task What_makes_no_board_is_told(string name, string content, string told)
    {
        await using ServedPage page = ServedPage.Of(Bench.SmallBoard);

        (int status, string text) = await page.Send("/handed-over", OneFile(name, Encoding.UTF8.GetBytes(content)));

        Assert.Equal(422, status);
        using JsonDocument json = JsonDocument.Parse(text);
        string first = json.RootElement.GetProperty("diagnostics")[0].GetProperty("text").GetString()!;
        Assert.Contains(told, first, StringComparison.Ordinal);
        Assert.DoesNotContain("..", first, StringComparison.Ordinal);
    }

    [Fact]
    public async Task None_and_too_many_files_are_told()
    {
        await using ServedPage page = ServedPage.Of(Bench.SmallBoard);
        string many = string.Join(',', Enumerable.Range(0, 201).Select(i => $$"""{"name": "f{{i}}.gbr", "content": ""}"""));

        (int none, string noneTold) = await page.Send("/handed-over", """{"files": []}""");
        (int tooMany, string manyTold) = await page.Send("/handed-over", $$"""{"files": [{{many}}]}""");

        Assert.Equal((422, 422), (none, tooMany));
        Assert.Contains("0 files at once", noneTold, StringComparison.Ordinal);
        Assert.Contains("201 files at once", manyTold, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_file_larger_than_any_is_told_and_the_others_are_read()
    {
        await using ServedPage page = ServedPage.Of(Bench.SmallBoard);
        string large = Convert.ToBase64String(new byte[(12 << 20) + 1]);
        string edge = Convert.ToBase64String(File.ReadAllBytes(Path.Combine(Ring, "edge.gbr")));

        (int status, string text) = await page.Send(
            "/handed-over",
            $$"""{"files": [{"name": "copper.gbr", "content": "{{large}}"}, {"name": "edge.gbr", "content": "{{edge}}"}]}""");

        Assert.Equal(200, status);
        Assert.Contains("copper.gbr: too large", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Who_does_not_know_the_key_can_send_nothing()
    {
        await using ServedPage page = ServedPage.Of(Bench.SmallBoard);

        foreach (string path in new[] { "/handed-over", "/questions", "/made" })
        {
            (int status, _) = await page.Send(path, Sent("edge.gbr"), ("X-Key", "guessed"));
            Assert.Equal(403, status);
        }
    }

    [Fact]
    public async Task The_files_to_take_are_those_that_make_writes()
    {
        await using ServedPage page = ServedPage.Of(Bench.SmallBoard);
        using var bench = new Bench();
        bench.Folder.Write("board.yaml", Bench.SmallBoard);
        bench.Run("make", "board.yaml", "-o", "out");
        string[] expected =
            [.. Directory.GetFiles(bench.Folder.File("out")).Select(path => Path.GetFileName(path)!).Order(StringComparer.Ordinal)];

        (int status, string text) = await page.Get("/made");

        Assert.Equal(200, status);
        using JsonDocument json = JsonDocument.Parse(text);
        string[] names = [.. json.RootElement.GetProperty("files").EnumerateArray().Select(each => each.GetProperty("name").GetString()!)];
        Assert.Equal(expected, names.Order(StringComparer.Ordinal));
        foreach (string name in names)
        {
            byte[] taken = await page.Bytes($"/made?name={Uri.EscapeDataString(name)}");
            Assert.True(taken.AsSpan().SequenceEqual(File.ReadAllBytes(bench.Folder.File(Path.Combine("out", name)))), name);
        }

        (int other, _) = await page.Get("/made?name=../board.yaml");
        Assert.Equal(404, other);
    }

    [Fact]
    public async Task A_file_is_begun_by_its_first_save()
    {
        await using ServedPage page = ServedPage.New();

        (int before, string empty) = await page.Get("/file");
        (int shown, _) = await page.Get("/");
        (int mistakes, _) = await page.Get("/page");
        (int saved, _) = await page.Send("/file?stamp=", Bench.SmallBoard);

        Assert.Equal((200, 200, 422, 200), (before, shown, mistakes, saved));
        Assert.Contains("null", empty, StringComparison.Ordinal);
        Assert.Equal(Bench.SmallBoard, page.Saved);
    }

    private static string[] Choices(JsonElement question) =>
        [.. question.GetProperty("fields")[0].GetProperty("choices").EnumerateArray()
            .Select(each => each.GetProperty("value").GetString()!)];

    private static string Sent(params string[] names) => JsonSerializer.Serialize(new
    {
        files = names.Select(name => new { name, content = File.ReadAllBytes(Path.Combine(Ring, name)) }),
    });

    private static string OneFile(string name, byte[] content) => JsonSerializer.Serialize(new { files = new[] { new { name, content } } });
}
