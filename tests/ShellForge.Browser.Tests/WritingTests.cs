using Microsoft.Playwright;

namespace ShellForge.Browser.Tests;

/// <summary>The board file, written in on the page that shows its housing.</summary>
[Collection(SharedBrowser.Name)]
public class WritingTests(Browser browser)
{
    [SkippableFact]
    public async Task What_is_typed_is_shown_at_once_and_written_when_it_is_saved()
    {
        Skip.IfNot(Browser.Missing is null, Browser.Missing);
        using var served = new ServedBoard(FollowingTests.Board);
        IPage page = await Opened(served);
        double height = await FollowingTests.Height(page);

        await Type(page, "floor: 2.0", "floor: 4.0");
        await Browser.Until(page, $"housing.viewer.bounds.max.z > {height} + 1.5");
        await FollowingTests.State(page, "checked");
        Assert.Equal(FollowingTests.Board, served.Text);
        Assert.Contains("Not saved yet", await page.Locator("#file-state").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Matches("height\\s+[0-9.]+ mm \u2192 [0-9.]+ mm", await page.Locator("#facts").InnerTextAsync());
        await page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(Browser.Artefacts, "bench-written.png") });
        await Browser.AxeFindsNothing(page, "written in");

        await page.Keyboard.PressAsync("Control+s");
        await Browser.Until(page, "document.getElementById('file-state').textContent === 'As saved.'");
        Assert.Equal(FollowingTests.Board.Replace("floor: 2.0", "floor: 4.0", StringComparison.Ordinal), served.Text);
        await FollowingTests.State(page, "checked");
        Assert.True(await FollowingTests.Height(page) > height + 1.5);
        Assert.True(await page.Locator("#file-clash").IsHiddenAsync());

        await page.Keyboard.PressAsync("Control+z");
        await Browser.Until(page, $"Math.abs(housing.viewer.bounds.max.z - {height}) < 0.01");
        await page.Context.CloseAsync();
    }

    [SkippableFact]
    public async Task Mistakes_are_marked_where_they_stand_and_the_last_good_housing_stays()
    {
        Skip.IfNot(Browser.Missing is null, Browser.Missing);
        using var served = new ServedBoard(FollowingTests.Board);
        IPage page = await Opened(served);

        await Type(page, "closure: snap", "closure: snpa");
        await FollowingTests.State(page, "broken");
        Assert.Equal("snpa", await page.Locator(".cm-lintRange-error").InnerTextAsync());
        Assert.Equal("Shown: the last good housing", await page.Locator(".verdict").InnerTextAsync());
        await page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(Browser.Artefacts, "bench-mistake.png") });

        await Type(page, "closure: snpa", "closure: snap");
        await FollowingTests.State(page, "checked");
        Assert.Equal(0, await page.Locator(".cm-lintRange-error").CountAsync());
        await page.Context.CloseAsync();
    }

    [SkippableTheory]
    [InlineData("closure: snap", "clos", "closure, closure-screws", "closure: ")]
    [InlineData("closure: snap", "closure: tw", "twist", "closure: twist")]
    [InlineData("shell: petg-black", "shell: petg-n", "petg-natural", "shell: petg-natural")]
    [InlineData("package: \"5050\"", "package: 505", "5050, 5050-12ma, 5050-rgbw", "package: \"5050\"")]
    [InlineData("relief: tie}", "relief: tie, ang", "angle", "relief: tie, angle: ")]
    [InlineData("supply: usb-c-1.5A, brightness", "supply: usb-c-1.5A, capped: f", "false", "supply: usb-c-1.5A, capped: false")]
    public async Task What_can_stand_there_is_offered(string line, string typed, string offered, string taken)
    {
        Skip.IfNot(Browser.Missing is null, Browser.Missing);
        using var served = new ServedBoard(FollowingTests.Board);
        IPage page = await Opened(served);

        await Type(page, line, typed[..^1]);
        await page.Keyboard.TypeAsync(typed[^1..]);
        await page.Locator(".cm-tooltip-autocomplete li").First.WaitForAsync();
        string[] labels = [.. await page.Locator(".cm-tooltip-autocomplete .cm-completionLabel").AllInnerTextsAsync()];
        await page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(Browser.Artefacts, "bench-offered.png") });
        await Task.Delay(150);
        await page.Keyboard.PressAsync("Enter");

        Assert.Equal(offered.Split(", "), labels);
        Assert.Contains(taken, await Text(page), StringComparison.Ordinal);
        await page.Context.CloseAsync();
    }

    [SkippableFact]
    public async Task A_number_that_was_tried_is_put_into_the_text_and_all_else_is_kept()
    {
        Skip.IfNot(Browser.Missing is null, Browser.Missing);
        string board = "# A remark before all else.\n"
            + FollowingTests.Board.Replace("floor: 2.0", "floor: 2.0   # as thin as it goes", StringComparison.Ordinal);
        using var served = new ServedBoard(board);
        IPage page = await Opened(served);

        await page.Locator("[data-path='housing.floor']").FillAsync("3");
        await page.Locator("[data-path='housing.walls']").FillAsync("5");
        await page.Locator("#write-set").ClickAsync();
        await FollowingTests.State(page, "checked");

        string expected = board.Replace("floor: 2.0 ", "floor: 3 ", StringComparison.Ordinal)
            .Replace("evenness: soft}", "evenness: soft}\n  walls: 5", StringComparison.Ordinal);
        Assert.Equal(expected, await Text(page));
        Assert.Equal("", await page.Locator("#set-line").InputValueAsync());
        await page.Locator("#save-file").ClickAsync();
        await Browser.Until(page, "document.getElementById('file-state').textContent === 'As saved.'");
        Assert.Equal(expected, served.Text);
        await page.Context.CloseAsync();
    }

    [SkippableFact]
    public async Task A_file_that_another_program_changes_is_taken_over_or_asked_about()
    {
        Skip.IfNot(Browser.Missing is null, Browser.Missing);
        using var served = new ServedBoard(FollowingTests.Board);
        IPage page = await Opened(served);
        string theirs = FollowingTests.Board.Replace("name: Buoy", "name: Their buoy", StringComparison.Ordinal);

        served.Save(theirs);
        await Browser.Until(page, "housing.editor.state.sliceDoc().includes('Their buoy')");
        await Type(page, "floor: 2.0", "floor: 3.0");
        served.Save(FollowingTests.Board);
        await page.Locator("#file-clash").WaitForAsync();
        await page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(Browser.Artefacts, "bench-clash.png") });
        Assert.Contains("floor: 3.0", await Text(page), StringComparison.Ordinal);

        await page.Locator("#keep-mine").ClickAsync();
        await page.Locator("#save-file").ClickAsync();
        await Browser.Until(page, "document.getElementById('file-state').textContent === 'As saved.'");
        Assert.Equal(theirs.Replace("floor: 2.0", "floor: 3.0", StringComparison.Ordinal), served.Text);

        await Type(page, "floor: 3.0", "floor: 5.0");
        served.Save(FollowingTests.Board);
        await page.Locator("#file-clash").WaitForAsync();
        await page.Locator("#take-theirs").ClickAsync();
        Assert.Equal(FollowingTests.Board, await Text(page));
        await FollowingTests.State(page, "checked");
        await page.Context.CloseAsync();
    }

    [SkippableFact]
    public async Task Without_3D_the_file_is_written_in_all_the_same()
    {
        Skip.IfNot(Browser.Missing is null, Browser.Missing);
        using var served = new ServedBoard(FollowingTests.Board);
        IPage page = await browser.Open(await served.Address, before: "HTMLCanvasElement.prototype.getContext = () => null");
        await FollowingTests.State(page, "checked");
        await Browser.Until(page, "Boolean(window.housing?.editor)");

        await Type(page, "floor: 2.0", "floor: 4.0");
        await Browser.Until(page, "document.getElementById('live-state').textContent === 'With what you wrote, not saved yet'");
        await page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(Browser.Artefacts, "bench-flat.png") });
        await page.Locator("#save-file").ClickAsync();
        await Browser.Until(page, "document.getElementById('file-state').textContent === 'As saved.'");

        Assert.Contains("floor: 4.0", served.Text, StringComparison.Ordinal);
        Assert.Contains("cannot draw in 3D", await page.Locator("#view-status").InnerTextAsync(), StringComparison.Ordinal);
        await page.Context.CloseAsync();
    }

    private async Task<IPage> Opened(ServedBoard served)
    {
        IPage page = await browser.Open(await served.Address);
        await FollowingTests.State(page, "checked");
        await Browser.Until(page, "Boolean(window.housing?.editor)");
        return page;
    }

    private static Task<string> Text(IPage page) => page.EvaluateAsync<string>("housing.editor.state.sliceDoc()");

    // As a person would: the old piece chosen, the new one typed over it.
    private static async Task Type(IPage page, string old, string text)
    {
        await page.EvaluateAsync(
            """
            (old) => {
              const { editor } = housing;
              const at = editor.state.doc.toString().indexOf(old);
              editor.dispatch({ selection: { anchor: at, head: at + old.length }, scrollIntoView: true });
              editor.focus();
            }
            """,
            old);
        await page.Keyboard.InsertTextAsync(text);
    }
}
