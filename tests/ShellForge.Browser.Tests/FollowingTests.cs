using System.Diagnostics;
using Microsoft.Playwright;

namespace ShellForge.Browser.Tests;

[Collection(SharedBrowser.Name)]
public class FollowingTests(Browser browser)
{
    internal const string Board =
        """
        format: shellforge/1
        name: Buoy
        board:
          outline: {disc: 40}
          thickness: 1.6
          holes:
            - {circle: 33, count: 2, from: 0, diameter: 2.2}
          pixels: {package: "5050", circle: 20, count: 4, from: 90, direction: cw}
        housing:
          insert: m2x3-od3.6
          floor: 2.0
          cable: {round: 3.5, angle: 270, relief: tie}
          closure: snap
          light: {through: front, look: pixels, evenness: soft}
        power: {supply: usb-c-1.5A, brightness: 0.2, capped: true}
        print: {printer: fdm-0.4, shell: petg-black, diffuser: petg-white}
        """;

    [SkippableFact]
    public async Task The_page_follows_the_file_keeps_the_last_good_housing_and_tells_mistakes_at_their_lines()
    {
        Skip.IfNot(Browser.Missing is null, Browser.Missing);
        using var served = new ServedBoard(Board);
        IPage page = await browser.Open(await served.Address);
        await State(page, "checked");
        double height = await Height(page);

        long saved = Stopwatch.GetTimestamp();
        served.Save(Board.Replace("floor: 2.0", "floor: 4.0", StringComparison.Ordinal));
        await Browser.Until(page, $"housing.viewer.bounds.max.z > {height} + 1.5");
        TimeSpan took = Stopwatch.GetElapsedTime(saved);
        await State(page, "checked");
        await page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(Browser.Artefacts, "view-followed.png") });

        // The machine may be busy with other tests; alone it takes a fraction of this.
        Assert.True(took < TimeSpan.FromSeconds(20), $"{took.TotalSeconds:0.0} s from save to picture");

        double higher = await Height(page);
        served.Save(Board.Replace("closure: snap", "closure: snpa", StringComparison.Ordinal));
        await State(page, "broken");
        string told = await page.Locator("#live-state").InnerTextAsync();
        Assert.Contains("board.yaml:13:12", told, StringComparison.Ordinal);
        Assert.Contains("closure: snpa", told, StringComparison.Ordinal);
        Assert.Equal(higher, await Height(page));
        Assert.Equal("Shown: the last good housing", await page.Locator(".verdict").InnerTextAsync());
        await page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(Browser.Artefacts, "view-broken.png") });

        served.Save(Board);
        await Browser.Until(page, $"Math.abs(housing.viewer.bounds.max.z - {height}) < 0.01");
        await State(page, "checked");
        Assert.DoesNotContain("snpa", await page.Locator("#live-state").InnerTextAsync(), StringComparison.Ordinal);
        await page.Context.CloseAsync();
    }

    [SkippableFact]
    public async Task A_slider_changes_the_housing_and_gives_a_line_to_copy()
    {
        Skip.IfNot(Browser.Missing is null, Browser.Missing);
        using var served = new ServedBoard(Board);
        IPage page = await browser.Open(await served.Address);
        await State(page, "checked");
        double height = await Height(page);
        ILocator floor = page.Locator("[data-path='housing.floor']");

        await floor.FillAsync("3");
        await Browser.Until(page, $"housing.viewer.bounds.max.z > {height} + 0.5");
        await State(page, "checked");

        string facts = await page.Locator("#facts").InnerTextAsync();
        Assert.Matches("height\\s+[0-9.]+ mm \u2192 [0-9.]+ mm", facts);
        Assert.True(
            await page.EvaluateAsync<bool>(
                "document.querySelector('#tries').getBoundingClientRect().top < "
                    + "document.querySelector('.stage').getBoundingClientRect().bottom"),
            "sliders and housing are not on one screen");
        await page.EvaluateAsync("window.scrollTo(0, 2000)");
        Assert.True(await page.EvaluateAsync<bool>("document.querySelector('#facts').getBoundingClientRect().bottom < innerHeight"),
            "the figures went out of sight");
        Assert.Equal("--set housing.floor=3", await page.Locator("#set-line").InputValueAsync());
        Assert.Equal(Board, served.Text);
        Assert.True(await page.Locator("#assembly li").CountAsync() > 4);
        Assert.True(await page.Locator("#drawings svg").CountAsync() >= 2);
        await page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(Browser.Artefacts, "view-tried.png"), FullPage = true });

        await page.Locator("#forget-set").ClickAsync();
        await Browser.Until(page, $"Math.abs(housing.viewer.bounds.max.z - {height}) < 0.01");
        Assert.Equal("", await page.Locator("#set-line").InputValueAsync());
        await Browser.Until(page, "document.querySelector(\"[data-path='housing.floor']\").value === '2'");
        await page.Context.CloseAsync();
    }

    [SkippableFact]
    public async Task A_drawing_that_is_open_stays_open_where_it_was_and_is_the_new_one()
    {
        Skip.IfNot(Browser.Missing is null, Browser.Missing);
        using var served = new ServedBoard(Board);
        IPage page = await browser.Open(await served.Address);
        await State(page, "checked");
        double height = await Height(page);
        await page.Locator("#drawings summary").ClickAsync();
        await page.Locator("#drawing-2 .small-sheet button").ClickAsync();
        await Browser.Until(page, "document.activeElement.matches('#sheet-2 .room')");
        await Browser.Drawn(page);
        await page.Keyboard.PressAsync("+");
        await page.Keyboard.PressAsync("+");
        await page.Keyboard.PressAsync("ArrowDown");
        double[] at = await page.EvaluateAsync<double[]>(Scrolled);
        string drawn = await page.Locator("#svg-2").InnerHTMLAsync();

        served.Save(Board.Replace("floor: 2.0", "floor: 4.0", StringComparison.Ordinal));
        await Browser.Until(page, $"housing.viewer.bounds.max.z > {height} + 1.5");
        await State(page, "checked");

        Assert.True(await page.Locator("#sheet-2").IsVisibleAsync());
        Assert.NotEqual(drawn, await page.Locator("#svg-2").InnerHTMLAsync());
        await Browser.Drawn(page);
        Assert.True(at[0] > 0 && at[1] > 60);
        Assert.Equal(at, await page.EvaluateAsync<double[]>(Scrolled));
        await page.Context.CloseAsync();
    }

    private const string Scrolled =
        "(() => { const room = document.querySelector('#sheet-2 .room'); return [room.scrollLeft, room.scrollTop]; })()";

    [SkippableFact]
    public async Task A_file_that_is_broken_from_the_start_comes_to_life_when_it_is_mended()
    {
        Skip.IfNot(Browser.Missing is null, Browser.Missing);
        using var served = new ServedBoard(Board.Replace("disc: 40", "disc: forty", StringComparison.Ordinal));
        IPage page = await browser.Open(await served.Address);
        await State(page, "broken");
        Assert.Contains("disc: forty", await page.Locator("#live-state").InnerTextAsync(), StringComparison.Ordinal);

        served.Save(Board);
        await State(page, "checked");

        Assert.True(await Height(page) > 5);
        Assert.True(await page.Locator("#show-parts input").CountAsync() >= 4);
        await page.Context.CloseAsync();
    }

    [SkippableFact]
    public async Task A_page_that_is_open_in_too_many_tabs_says_so_and_not_that_the_command_has_stopped()
    {
        Skip.IfNot(Browser.Missing is null, Browser.Missing);
        using var served = new ServedBoard(Board);
        IPage page = await browser.Open(await served.Address);
        await State(page, "checked");
        string? key = await page.Locator("#live-state").GetAttributeAsync("data-key");
        var events = new Uri(new Uri(await served.Address), $"/events?key={key}");
        using var others = new HttpClient();
        var open = new List<HttpResponseMessage>();
        try
        {
            // The page's own place is free as soon as it is left; then others take all.
            await page.GotoAsync("about:blank");
            for (int refused = 0; refused < 3;)
            {
                Assert.True(open.Count < 300, "nobody was refused");
                open.Add(await others.GetAsync(events, HttpCompletionOption.ResponseHeadersRead));
                refused = open[^1].IsSuccessStatusCode ? 0 : refused + 1;
                await Task.Delay(open[^1].IsSuccessStatusCode ? 0 : 500);
            }

            await page.GotoAsync(await served.Address);
            await Browser.Until(page, "document.getElementById('live-apart')?.textContent.includes('open in too many tabs') === true");
            await State(page, "checked");
            Assert.DoesNotContain("stopped", await page.Locator("#live-state").InnerTextAsync(), StringComparison.Ordinal);
            await page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(Browser.Artefacts, "view-too-many-tabs.png") });
        }
        finally
        {
            open.ForEach(each => each.Dispose());
        }

        // As soon as others have closed theirs, a page follows again.
        await page.ReloadAsync();
        await State(page, "checked");
        Assert.Equal(0, await page.Locator("#live-apart").CountAsync());
        await page.Context.CloseAsync();
    }

    internal static Task State(IPage page, string state) =>
        Browser.Until(page, $"document.documentElement.dataset.state === '{state}'");

    internal static Task<double> Height(IPage page) => page.EvaluateAsync<double>("housing.viewer.bounds.max.z");
}
