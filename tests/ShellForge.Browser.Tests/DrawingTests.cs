using Microsoft.Playwright;

namespace ShellForge.Browser.Tests;

[Collection(SharedBrowser.Name)]
public class DrawingTests(Browser browser)
{
    private const string Sample = "dome-dial";

    // Its place among the drawings: after the cuts and the drill template. It is wide, so that it moves sideways when it is large.
    private const int TubByItself = 5;

    [SkippableTheory]
    [InlineData(1280)]
    [InlineData(390)]
    public async Task A_drawing_fits_the_page_and_a_touch_opens_it_large_where_it_was_touched(int width)
    {
        IPage page = await Open(width);
        ILocator small = page.Locator($"#drawing-{TubByItself} .small-sheet");
        Assert.True(
            await page.EvaluateAsync<bool>("[...document.querySelectorAll('figure.drawing')].every((f) => f.scrollWidth <= f.clientWidth)"),
            "a drawing scrolls sideways");
        LocatorBoundingBoxResult box = (await small.BoundingBoxAsync())!;
        Assert.True(box.X >= 0 && box.X + box.Width <= width);

        // Two thirds from the left and in the middle of the height.
        await small.ClickAsync(new LocatorClickOptions { Position = new Position { X = 2 * box.Width / 3, Y = box.Height / 2 } });
        await Browser.Until(page, $"document.querySelector('#sheet-{TubByItself} .room').scrollLeft > 0");
        await page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(Browser.Artefacts, $"{Sample}-{width}-sheet.png") });

        double[] middle = await Middle(page);
        Assert.InRange(middle[0], 0.6, 0.7);
        Assert.InRange(middle[1], 0.4, 0.6);
        double letters = await page.EvaluateAsync<double>(SmallestLetters);
        Assert.True(letters >= 10, $"the smallest letters are {letters:0.0} pixels high");
        await page.Context.CloseAsync();
    }

    [SkippableFact]
    public async Task The_keyboard_opens_a_drawing_moves_and_enlarges_it_and_comes_back()
    {
        IPage page = await Open(1280);
        ILocator open = page.Locator("#drawing-1 .small-sheet button");
        await open.FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await Browser.Until(page, "document.activeElement.matches('#sheet-1 .room')");
        await Browser.Drawn(page);
        double[] middle = await Middle(page);
        Assert.InRange(middle[0], 0.49, 0.51);

        double before = await Width(page);
        await page.Keyboard.PressAsync("+");
        Assert.Equal(1.25, await Width(page) / before, 2);
        Assert.InRange((await Middle(page))[0], 0.49, 0.51);

        double at = await page.EvaluateAsync<double>("document.querySelector('#sheet-1 .room').scrollLeft");
        await page.Keyboard.PressAsync("ArrowRight");
        Assert.Equal(at + 60, await page.EvaluateAsync<double>("document.querySelector('#sheet-1 .room').scrollLeft"), 0);

        await page.Keyboard.PressAsync("Escape");
        Assert.False(await page.Locator("#sheet-1").IsVisibleAsync());
        Assert.True(await page.EvaluateAsync<bool>("document.activeElement.matches('#drawing-1 .small-sheet button')"),
            "the focus got lost");
        await page.Context.CloseAsync();
    }

    [SkippableFact]
    public async Task The_mouse_moves_a_large_drawing_and_paper_never_shows_it()
    {
        IPage page = await Open(1280);
        await page.Locator("#drawing-1 .small-sheet").ClickAsync();
        await Browser.Until(page, "document.querySelector('#sheet-1 .room').scrollLeft > 0");
        double at = await page.EvaluateAsync<double>("document.querySelector('#sheet-1 .room').scrollLeft");

        await page.Mouse.MoveAsync(700, 500);
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(600, 500, new MouseMoveOptions { Steps = 3 });
        await page.Mouse.UpAsync();
        await page.Mouse.MoveAsync(300, 500);
        Assert.Equal(at + 100, await page.EvaluateAsync<double>("document.querySelector('#sheet-1 .room').scrollLeft"), 0);

        await page.EmulateMediaAsync(new PageEmulateMediaOptions { Media = Media.Print });
        Assert.False(await page.Locator("#sheet-1").IsVisibleAsync());
        Assert.True(await page.Locator("#svg-1").IsVisibleAsync());
        await page.Context.CloseAsync();
    }

    // What of the open drawing lies in the middle of its room, as shares of its width and height.
    private static Task<double[]> Middle(IPage page) => page.EvaluateAsync<double[]>("""
        () => {
          const room = document.querySelector('.large-sheet:popover-open .room');
          const sheet = room.firstElementChild.getBoundingClientRect();
          const box = room.getBoundingClientRect();
          return [(box.left + room.clientWidth / 2 - sheet.left) / sheet.width, (box.top + room.clientHeight / 2 - sheet.top) / sheet.height];
        }
        """);

    private static Task<double> Width(IPage page) =>
        page.EvaluateAsync<double>("document.querySelector('.large-sheet:popover-open .room svg').getBoundingClientRect().width");

    // Sizes of letters are in millimetres of the sheet.
    private const string SmallestLetters = """
        () => {
          const sheet = document.querySelector('.large-sheet:popover-open .room svg');
          const perMillimetre = sheet.getBoundingClientRect().width / sheet.viewBox.baseVal.width;
          return perMillimetre * Math.min(...[...document.querySelectorAll('#svg-5 text')].map((t) => Number(t.getAttribute('font-size'))));
        }
        """;

    private async Task<IPage> Open(int width)
    {
        Skip.IfNot(Browser.Missing is null, Browser.Missing);
        IPage page = await browser.Open(Browser.PageOf(Sample), new BrowserNewContextOptions
        {
            ViewportSize = new ViewportSize { Width = width, Height = width < 600 ? 844 : 900 },
            HasTouch = width < 600,
            ReducedMotion = ReducedMotion.Reduce,
        });
        await page.Locator("#drawings summary").ClickAsync();
        return page;
    }
}
