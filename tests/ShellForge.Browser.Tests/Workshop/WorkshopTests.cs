using System.IO.Compression;
using Microsoft.Playwright;
using ShellForge.Testing;

namespace ShellForge.Browser.Tests.Workshop;

/// <summary>
/// The workshop without a server, as <c>.ci/browser</c> makes it: in <c>artifacts/workshop</c>, or where <c>SHELLFORGE_WORKSHOP</c> says.
/// </summary>
public sealed class WorkshopTests(Browser browser) : IClassFixture<Browser>
{
    private const double LongMinutes = 25;

    private static readonly string Made =
        Environment.GetEnvironmentVariable("SHELLFORGE_WORKSHOP") ?? Repository.At("artifacts", "workshop");

    private static readonly string Folder = Path.Combine(Made, "folder");

    private static string? Missing =>
        Browser.Missing ?? (Directory.Exists(Folder) ? null : "the workshop is not made; .ci/browser artifacts/workshop makes it");

    // Side by side: each has its own workers, and the plain runtime takes its time.
    [SkippableFact]
    public async Task The_samples_made_in_the_page_have_the_bytes_of_those_that_are_shipped()
    {
        Skip.IfNot(Missing is null, Missing);
        using var server = new StaticFolder(Folder);
        await Task.WhenAll(new[] { "mooring-beacon", "tide-lamp", "dome-dial" }.Select(sample => Sample(server, sample)));

        Assert.All(server.Asked, asked => Assert.StartsWith("GET /", asked, StringComparison.Ordinal));
        Assert.DoesNotContain(server.Asked, asked => asked.Contains('?', StringComparison.Ordinal));
    }

    private async Task Sample(StaticFolder server, string sample)
    {
        IPage page = await Opened(server.Address);
        string name = char.ToUpperInvariant(sample[0]) + sample[1..].Replace('-', ' ');
        await page.GetByRole(AriaRole.Button, new() { Name = name, Exact = true }).ClickAsync();
        await Browser.Until(page, "document.documentElement.dataset.work === 'Checks'", LongMinutes);
        Assert.Matches("^Checking what would go wrong: [0-9]+ s so far, about [0-9]+ s more$",
            await page.Locator("#work-told").InnerTextAsync());
        await Browser.Until(page, "document.documentElement.dataset.state === 'checked'", LongMinutes);
        Assert.True(await page.Locator("#work").IsHiddenAsync());
        await HandOverTests.Shot(page, $"workshop-{sample}");

        await page.Locator("#list-made").ClickAsync();
        ILocator all = page.GetByRole(AriaRole.Button, new() { Name = "All in one archive" });
        await all.WaitForAsync(new() { Timeout = (float)TimeSpan.FromMinutes(LongMinutes).TotalMilliseconds });
        IDownload taken = await page.RunAndWaitForDownloadAsync(() => all.ClickAsync());
        using ZipArchive archive = await ZipFile.OpenReadAsync(await taken.PathAsync());
        string shipped = Repository.At("out-samples", sample);
        Assert.Equal(
            Directory.GetFiles(shipped).Select(path => Path.GetFileName(path)!).Where(file => file != "board.yaml")
                .Order(StringComparer.Ordinal),
            archive.Entries.Select(entry => entry.FullName).Order(StringComparer.Ordinal));
        foreach (ZipArchiveEntry entry in archive.Entries)
        {
            using var content = new MemoryStream();
            using (Stream stream = await entry.OpenAsync())
            {
                await stream.CopyToAsync(content);
            }

            byte[] expected = await File.ReadAllBytesAsync(Path.Combine(shipped, entry.FullName));
            Assert.True(
                expected.AsSpan().SequenceEqual(content.ToArray()),
                $"{sample}/{entry.FullName} has other bytes than the one that is shipped");
        }

        await page.Context.CloseAsync();
    }

    [SkippableFact]
    public async Task From_hand_over_files_to_a_file_for_the_slicer_with_the_bytes_of_the_program()
    {
        Skip.IfNot(Missing is null, Missing);
        using var server = new StaticFolder(Folder);
        IPage page = await Opened(server.Address);
        await Shots(page, "workshop-first");
        await Browser.AxeFindsNothing(page, "first screen");

        // The best of three: other tests run beside this one.
        double[] took = [await Took(page), await Took(page), await Took(page)];
        Assert.True(took.Min() < 1000, $"reading hand-over files took {string.Join(", ", took.Select(ms => $"{ms:0}"))} ms");
        await page.Locator("#questions").WaitForAsync();
        Assert.True(await page.Locator("#first").IsHiddenAsync());
        await Shots(page, "workshop-question");
        Assert.Equal(
            ["board.thickness", "board.holes", "board.parts[J1].faces", "housing.insert", "housing.cable"],
            await HandOverTests.Answers(page, HandOverTests.Said(page)));
        await Browser.Until(page, "document.documentElement.dataset.work !== ''");
        await Browser.Until(page, "document.documentElement.dataset.state === 'checked'", LongMinutes);
        await Browser.AxeFindsNothing(page, "made");
        await Shots(page, "workshop-made");

        await TakesThePlateOfTheProgram(page, await Text(page));

        IDownload saved = await page.RunAndWaitForDownloadAsync(() => page.Locator("#save-file").ClickAsync());
        Assert.Equal("board.yaml", saved.SuggestedFilename);
        Assert.Equal(await Text(page), await File.ReadAllTextAsync(await saved.PathAsync()));
        await Browser.Until(page, "document.getElementById('file-state').textContent === 'As saved.'");

        // What was saved is there again the next time.
        string text = await Text(page);
        await page.ReloadAsync();
        await Browser.Until(page, "Boolean(window.housing?.editor)");
        Assert.Equal(text, await Text(page));
        await page.Context.CloseAsync();
    }

    [SkippableFact]
    public async Task Mistakes_are_told_while_one_types_whatever_else_is_being_made()
    {
        Skip.IfNot(Missing is null, Missing);
        using var server = new StaticFolder(Folder);
        IPage page = await Opened(server.Address);
        await Take(page, FollowingTests.Board);
        await Browser.Until(page, "document.documentElement.dataset.work !== ''", LongMinutes);

        var took = new List<double>();
        foreach (string word in new[] { "snpa", "snpb", "snpc", "snpd", "snpe", "snpf", "snpg" })
        {
            took.Add(await page.EvaluateAsync<double>(
                """
                async (word) => {
                  const { editor } = housing;
                  const at = /closure: (\w+)/d.exec(editor.state.doc.toString()).indices[1];
                  const asked = performance.now();
                  editor.dispatch({ changes: { from: at[0], to: at[1], insert: word } });
                  const told = document.getElementById('live-state');
                  while (!told.textContent.includes(word)) await new Promise((done) => setTimeout(done, 1));
                  return performance.now() - asked;
                }
                """,
                word));
        }

        Assert.Equal("snpg", await page.Locator(".cm-lintRange-error").InnerTextAsync());
        Assert.Contains("board.yaml:13:12", await page.Locator("#live-state").InnerTextAsync(), StringComparison.Ordinal);
        await Shots(page, "workshop-mistake");
        double usual = took.Order().ElementAt(took.Count / 2);
        Assert.True(usual < 100, $"{usual:0} ms to the mistake, of {string.Join(", ", took.Select(ms => $"{ms:0}"))}");
        await page.Context.CloseAsync();
    }

    [SkippableFact]
    public async Task Work_can_be_stopped_and_begun_again()
    {
        Skip.IfNot(Missing is null, Missing);
        using var server = new StaticFolder(Folder);
        IPage page = await Opened(server.Address);
        await Take(page, FollowingTests.Board);
        await Browser.Until(page, "document.documentElement.dataset.work === 'Plan'", LongMinutes);

        await page.Locator("#work-stop").ClickAsync();
        await Browser.Until(page, "document.documentElement.dataset.work === '' && !document.getElementById('work-again').hidden");
        Assert.Contains("Stopped.", await page.Locator("#live-state").InnerTextAsync(), StringComparison.Ordinal);
        Assert.True(await page.EvaluateAsync<bool>("document.documentElement.classList.contains('empty')"), "a housing is shown");

        await page.Locator("#work-again").ClickAsync();
        await Browser.Until(page, "document.documentElement.dataset.state === 'shown'", LongMinutes);
        double height = await FollowingTests.Height(page);

        // Another text ends the work on this one.
        await Take(page, FollowingTests.Board.Replace("floor: 2.0", "floor: 4.0", StringComparison.Ordinal));
        await Browser.Until(page, $"housing.viewer.bounds.max.z > {height} + 1.5", LongMinutes);
        await page.Context.CloseAsync();
    }

    [SkippableFact]
    public async Task Once_loaded_it_works_without_a_network_and_may_never_ask_another_host()
    {
        Skip.IfNot(Missing is null, Missing);
        using var other = new StaticFolder(Folder);
        IPage page;
        using (var server = new StaticFolder(Folder))
        {
            page = await Opened(server.Address);
            await Browser.Until(page, "navigator.serviceWorker.controller !== null");
            await Take(page, FollowingTests.Board);
            await Browser.Until(page, "document.documentElement.dataset.work === 'Plan'", LongMinutes);
            string fetches = $"fetch('{other.Address}index.html', {{ mode: 'no-cors' }}).then(() => 'fetched', () => 'refused')";
            Assert.Equal("refused", await page.EvaluateAsync<string>(fetches));
            Assert.Equal("refused", await page.Workers[0].EvaluateAsync<string>(fetches));
        }

        await page.ReloadAsync();
        await Browser.Until(page, "Boolean(window.workshop) && Boolean(window.housing?.editor)");
        await Take(page, FollowingTests.Board);
        await Browser.Until(page, "document.documentElement.dataset.state === 'shown'", LongMinutes);
        Assert.Empty(other.Asked);
        await page.Context.CloseAsync();
    }

    [SkippableFact]
    public async Task One_file_from_disk_is_the_whole_workshop()
    {
        Skip.IfNot(Missing is null, Missing);
        IPage page = await Opened(new Uri(Path.Combine(Made, "shellforge-workshop.html")).AbsoluteUri);
        await Take(page, FollowingTests.Board);
        await Browser.Until(page, "document.documentElement.dataset.state === 'checked'", LongMinutes);

        await TakesThePlateOfTheProgram(page, FollowingTests.Board);
        await page.Context.CloseAsync();
    }

    private async Task<IPage> Opened(string address)
    {
        IPage page = await browser.Open(address);
        await Browser.Until(page, "Boolean(window.workshop) && Boolean(window.housing?.editor)", LongMinutes);
        return page;
    }

    private static async Task Take(IPage page, string text) => await page.EvaluateAsync("(text) => workshop.take(text)", text);

    private static Task<string> Text(IPage page) => page.EvaluateAsync<string>("housing.editor.state.sliceDoc()");

    // From the files chosen to their text and picture on the page, ms by the page's own clock.
    private static async Task<double> Took(IPage page)
    {
        await page.EvaluateAsync(
            """
            () => {
              window.took = undefined;
              const state = document.getElementById('hand-over-state');
              document.getElementById('hand-over-files').addEventListener('change', async () => {
                const began = performance.now();
                while (!state.textContent.startsWith('Read. ')) await new Promise((done) => setTimeout(done, 2));
                window.took = performance.now() - began;
              }, { once: true });
            }
            """);
        await page.Locator("#hand-over-files").SetInputFilesAsync(HandOverTests.Files);
        await Browser.Until(page, "window.took !== undefined");
        return await page.EvaluateAsync<double>("window.took");
    }

    private static async Task TakesThePlateOfTheProgram(IPage page, string text)
    {
        await page.Locator("#list-made").ClickAsync();
        ILocator plate = page.Locator("#made-files button").Filter(new() { HasText = ".3mf" }).First;
        await plate.WaitForAsync();
        IDownload taken = await page.RunAndWaitForDownloadAsync(() => plate.ClickAsync());
        using var folder = new TemporaryFolder();
        folder.Write("board.yaml", text);
        Assert.Equal(0, HandOverTests.Run(folder.Path, "make", "board.yaml", "-o", "out", "--quiet") & ~1);
        byte[] expected = await File.ReadAllBytesAsync(folder.File(Path.Combine("out", taken.SuggestedFilename)));
        byte[] made = await File.ReadAllBytesAsync(await taken.PathAsync());
        Assert.True(expected.AsSpan().SequenceEqual(made), $"{taken.SuggestedFilename} has other bytes than the program's");
    }

    private static async Task Shots(IPage page, string name)
    {
        await HandOverTests.Shot(page, name);
        await page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Dark });
        await HandOverTests.Shot(page, $"{name}-dark");
        await page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Light });
    }
}
