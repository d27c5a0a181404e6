using Microsoft.Playwright;
using ShellForge.Testing;

namespace ShellForge.Browser.Tests;

/// <summary>The whole way on the page: hand-over files, questions, housing, files for the slicer.</summary>
[Collection(SharedBrowser.Name)]
public class HandOverTests(Browser browser)
{
    internal static readonly string[] Files =
        [.. new[] { "edge.gbr", "parts.pos" }.Select(name => Repository.At("tests", "boards", "ecad", "placement-fixed-columns", name))];

    [SkippableFact]
    public async Task From_hand_over_files_to_a_file_for_the_slicer_without_a_terminal()
    {
        Skip.IfNot(Browser.Missing is null, Browser.Missing);
        using var served = new ServedBoard(null);
        IPage page = await browser.Open(await served.Address);
        await FollowingTests.State(page, "broken");
        await Browser.Until(page, "Boolean(window.housing?.editor)");
        Assert.Equal("A new file.", await page.Locator("#file-state").InnerTextAsync());
        await Shot(page, "bench-new");

        await page.Locator("#hand-over-files").SetInputFilesAsync(Files);
        await page.Locator("#questions").WaitForAsync();
        await FollowingTests.State(page, "checked");
        Assert.Equal(0, await page.Locator("#question-picture svg [onload], #question-picture svg script").CountAsync());
        Assert.True(await page.Locator("#tries .try").CountAsync() > 2);
        await Shot(page, "bench-question");
        await Browser.AxeFindsNothing(page, "asking");

        // A question whose line has moved since it was asked: what is typed above it stays.
        await page.EvaluateAsync("housing.editor.dispatch({ changes: { from: 0, insert: '# One.\\n# Two.\\n# Three.\\n' } })");
        Assert.Equal(
            ["board.thickness", "board.holes", "board.parts[J1].faces", "housing.insert", "housing.cable"],
            await Answers(page, Said(page)));

        string text = await page.EvaluateAsync<string>("housing.editor.state.sliceDoc()");
        Assert.DoesNotContain("# TODO", text, StringComparison.Ordinal);
        Assert.StartsWith("# One.\n# Two.\n# Three.\n# Read from", text, StringComparison.Ordinal);
        string[] said =
            ["thickness: 1.2", "faces: 270", "past-edge: 1", "cable: {part: J1}", "holes: [{circle: 52", "insert: m2.5x4-od4.6"];
        foreach (string line in said)
        {
            Assert.Contains(line, text, StringComparison.Ordinal);
        }

        Assert.False(File.Exists(Path.Combine(served.Folder, "board.yaml")));
        await FollowingTests.State(page, "checked");
        await page.Locator("#save-file").ClickAsync();
        await Browser.Until(page, "document.getElementById('file-state').textContent === 'As saved.'");
        Assert.Equal(text, served.Text);
        await FollowingTests.State(page, "checked");

        await page.Locator("#list-made").ClickAsync();
        ILocator plate = page.Locator("#made-files button").Filter(new() { HasText = ".3mf" }).First;
        await plate.WaitForAsync();
        await plate.ScrollIntoViewIfNeededAsync();
        await Shot(page, "bench-files");
        IDownload taken = await page.RunAndWaitForDownloadAsync(() => plate.ClickAsync());

        Assert.Equal(0, Run(served.Folder, "make", "board.yaml", "-o", "out", "--quiet") & ~1);
        Assert.Equal(
            File.ReadAllBytes(Path.Combine(served.Folder, "out", taken.SuggestedFilename)), File.ReadAllBytes(await taken.PathAsync()));
        await page.Context.CloseAsync();
    }

    [SkippableFact]
    public async Task Files_that_make_no_board_are_told_and_the_text_stays()
    {
        Skip.IfNot(Browser.Missing is null, Browser.Missing);
        using var served = new ServedBoard(FollowingTests.Board);
        IPage page = await browser.Open(await served.Address);
        await Browser.Until(page, "Boolean(window.housing?.editor)");

        await page.Locator("#hand-over-files").SetInputFilesAsync(Repository.At("tests", "boards", "ecad", "gerber-open", "edge.gbr"));
        await page.Locator("#hand-over-told li").First.WaitForAsync();

        Assert.Contains("open by 0.2 mm", await page.Locator("#hand-over-told").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Equal(FollowingTests.Board, await page.EvaluateAsync<string>("housing.editor.state.sliceDoc()"));
        Assert.True(await page.Locator("#questions").IsHiddenAsync());
        await page.Context.CloseAsync();
    }

    // A folder of downloads let go over the page by mistake.
    [SkippableFact]
    public async Task More_files_than_a_board_has_are_told_before_they_are_read()
    {
        Skip.IfNot(Browser.Missing is null, Browser.Missing);
        using var served = new ServedBoard(FollowingTests.Board);
        IPage page = await browser.Open(await served.Address);
        await Browser.Until(page, "Boolean(window.housing?.editor)");

        await page.EvaluateAsync("() => { FileReader.prototype.readAsDataURL = () => { throw new Error('a file was read'); }; }");
        await LetGo(page, [.. Enumerable.Range(0, 201).Select(i => ($"layer-{i}.gbr", "G04*"))]);
        await Browser.Until(page, "document.getElementById('hand-over-state').textContent.includes('more than 200 files')");
        Assert.Equal(FollowingTests.Board, await page.EvaluateAsync<string>("housing.editor.state.sliceDoc()"));
        await page.Context.CloseAsync();
    }

    // The browser gives a folder in parts of a hundred; these hold nothing but folders, the files come last.
    [SkippableFact]
    public async Task Files_of_a_dropped_folder_are_read_however_many_folders_lie_beside_them()
    {
        Skip.IfNot(Browser.Missing is null, Browser.Missing);
        using var served = new ServedBoard(FollowingTests.Board);
        IPage page = await browser.Open(await served.Address);
        await Browser.Until(page, "Boolean(window.housing?.editor)");

        await page.EvaluateAsync(
            """
            (texts) => {
              const files = texts.map((text, i) => new File([text], i === 0 ? 'edge.gbr' : 'parts.pos'));
              const entries = files.map((file) => ({ isFile: true, file: (take) => take(file) }));
              const folders = Array.from({ length: 100 }, () => ({ isFile: false }));
              const parts = [folders, folders, folders, entries, []];
              DataTransferItem.prototype.webkitGetAsEntry = () => (
                { isFile: false, createReader: () => ({ readEntries: (take) => take(parts.shift()) }) });
            }
            """,
            Files.Select(File.ReadAllText).ToArray());
        await LetGo(page, ("folder", ""));
        await page.Locator("#questions").WaitForAsync();
        Assert.Contains("ring: {outer: 60", await page.EvaluateAsync<string>("housing.editor.state.sliceDoc()"), StringComparison.Ordinal);
        await page.Context.CloseAsync();
    }

    [SkippableFact]
    public async Task Dropped_files_are_read_and_one_undo_brings_the_text_back()
    {
        Skip.IfNot(Browser.Missing is null, Browser.Missing);
        using var served = new ServedBoard(FollowingTests.Board);
        IPage page = await browser.Open(await served.Address);
        await Browser.Until(page, "Boolean(window.housing?.editor)");

        await LetGo(page, ("edge.gbr", File.ReadAllText(Files[0])), ("parts.pos", File.ReadAllText(Files[1])));
        await page.Locator("#questions").WaitForAsync();
        Assert.Contains("ring: {outer: 60", await page.EvaluateAsync<string>("housing.editor.state.sliceDoc()"), StringComparison.Ordinal);

        await page.EvaluateAsync("housing.editor.focus()");
        await page.Keyboard.PressAsync("Control+z");
        Assert.Equal(FollowingTests.Board, await page.EvaluateAsync<string>("housing.editor.state.sliceDoc()"));
        await page.Locator("#questions").WaitForAsync(new() { State = WaitForSelectorState.Hidden });
        Assert.Equal(FollowingTests.Board, served.Text);
        await page.Context.CloseAsync();
    }

    // As the browser does it when files are let go over the page.
    private static async Task LetGo(IPage page, params (string Name, string Text)[] files) => await page.EvaluateAsync(
        """
        (files) => {
          const carried = new DataTransfer();
          files.forEach(([name, text]) => carried.items.add(new File([text], name)));
          const drop = new DragEvent('drop', { dataTransfer: carried, bubbles: true, cancelable: true });
          document.getElementById('view').dispatchEvent(drop);
        }
        """,
        files.Select(file => new[] { file.Name, file.Text }).ToArray());

    // What a maker says to the questions of these files; the connector is picked in the picture.
    internal static Dictionary<string, Func<Task>> Said(IPage page) => new()
    {
        ["board.thickness"] = async () => await page.GetByRole(AriaRole.Button, new() { Name = "1.2", Exact = true }).ClickAsync(),
        ["board.holes"] = async () =>
            await page.Locator("#question-0").FillAsync("{circle: 52, count: 3, from: 30, diameter: 2.7}"),
        ["board.parts[J1].faces"] = async () =>
        {
            await page.GetByRole(AriaRole.Button, new() { Name = "270", Exact = true }).ClickAsync();
            await page.Locator("#question-1").FillAsync("1");
        },
        ["housing.cable"] = async () => await page.Locator("#question-picture [data-ref=J1]").First.ClickAsync(),
    };

    // Answers every question that there is an answer for, leaves the others as they stand; gives the paths in the order of the questions.
    internal static async Task<List<string>> Answers(IPage page, Dictionary<string, Func<Task>> answers)
    {
        var asked = new List<string>();
        while (await page.Locator("#questions").IsVisibleAsync() && asked.Count < 20)
        {
            string path = await page.Locator("#question-form").GetAttributeAsync("data-path") ?? "";
            asked.Add(path);
            if (answers.TryGetValue(path, out Func<Task>? answer))
            {
                await answer();
                await page.GetByRole(AriaRole.Button, new() { Name = "Write it", Exact = true }).ClickAsync();
            }
            else
            {
                await page.Locator("#question-stands").ClickAsync();
            }

            await Browser.Until(page, $"document.getElementById('question-form').dataset.path !== '{path}'");
        }

        return asked;
    }

    internal static int Run(string folder, params string[] args) => Cli.ShellForgeCommand.Run(
        args, new Cli.Workbench { Out = TextWriter.Null, Err = TextWriter.Null, Folder = folder });

    internal static async Task Shot(IPage page, string name)
    {
        await page.SetViewportSizeAsync(1280, 1150);
        await page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(Browser.Artefacts, $"{name}.png") });
        await page.SetViewportSizeAsync(390, 1500);
        await page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(Browser.Artefacts, $"{name}-390.png") });
        await page.SetViewportSizeAsync(1280, 900);
    }
}
