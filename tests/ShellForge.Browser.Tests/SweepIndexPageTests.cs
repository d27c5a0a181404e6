using System.Collections.Immutable;
using System.Globalization;
using Microsoft.Playwright;
using ShellForge.Sweep.Comparing;
using ShellForge.Testing;

namespace ShellForge.Browser.Tests;

[Collection(SharedBrowser.Name)]
public sealed class SweepIndexPageTests(Browser browser) : IDisposable
{
    private const string Codes = "[...document.querySelectorAll('#variants tbody tr')].filter(r => !r.hidden).map(r => r.dataset.row)";

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [SkippableTheory]
    [InlineData("index")]
    [InlineData("compare")]
    public async Task It_fits_a_desk_a_phone_and_paper_and_axe_finds_nothing(string which)
    {
        IPage page = await Open(which == "index" ? null : Compared());
        foreach (int width in new[] { 1280, 390 })
        {
            await page.SetViewportSizeAsync(width, 900);
            foreach (ColorScheme scheme in new[] { ColorScheme.Light, ColorScheme.Dark })
            {
                await page.EmulateMediaAsync(new PageEmulateMediaOptions { ColorScheme = scheme });
                await page.ScreenshotAsync(new PageScreenshotOptions
                {
                    FullPage = true,
                    Path = Path.Combine(Browser.Artefacts, $"sweep-{which}-{width}-{scheme}.png"),
                });
                Assert.True(
                    await page.EvaluateAsync<int>("document.documentElement.scrollWidth") <= width, $"{width}: it scrolls sideways");

                await Browser.AxeFindsNothing(page, $"{width} {scheme}");
            }
        }

        // A4 across, less its margins.
        const int paper = 1031;
        await page.SetViewportSizeAsync(paper, 700);
        await page.EmulateMediaAsync(new PageEmulateMediaOptions { Media = Media.Print, ColorScheme = ColorScheme.Light });
        Assert.True(
            await page.EvaluateAsync<int>("Math.max(...[...document.querySelectorAll('table')].map(t => t.getBoundingClientRect().right))")
                <= paper, "a table is cut off on paper");
        await page.PdfAsync(new PagePdfOptions { Path = Path.Combine(Browser.Artefacts, $"sweep-{which}.pdf"), PreferCSSPageSize = true });
        await page.Context.CloseAsync();
    }

    [SkippableFact]
    public async Task A_click_on_a_title_sorts_by_it_and_what_has_no_figure_comes_last()
    {
        IPage page = await Open();
        ILocator height = page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "height" });

        await height.ClickAsync();
        string[] up = await page.EvaluateAsync<string[]>(Codes);
        await height.ClickAsync();
        string[] down = await page.EvaluateAsync<string[]>(Codes);

        // As the sweep was written: the height follows from the number, and row 4 has none.
        int[] Of(string[] rows) =>
            [.. rows.Where(row => row != "4").Select(row => (int.Parse(row, CultureInfo.InvariantCulture) + 1) * 5 % 7)];
        Assert.Equal(12, up.Length);
        Assert.Equal(Of(up).Order(), Of(up));
        Assert.Equal(Of(up).OrderDescending(), Of(down));
        Assert.Equal(("4", "4"), (up[^1], down[^1]));
        Assert.Equal(1, await page.Locator("th[aria-sort=descending]").CountAsync());
        await page.Context.CloseAsync();
    }

    [SkippableFact]
    public async Task Words_and_a_verdict_leave_the_lines_that_have_them()
    {
        IPage page = await Open();

        await page.Locator("#words").FillAsync("pc-black 0.8");
        Assert.Equal(["3", "7", "11"], await page.EvaluateAsync<string[]>(Codes));
        Assert.Equal("3 of 12", await page.GetByRole(AriaRole.Status).InnerTextAsync());
        await page.Locator("#verdict").SelectOptionAsync("mind warnings");
        Assert.Equal(["3"], await page.EvaluateAsync<string[]>(Codes));
        await page.Locator("#words").FillAsync("");
        await page.Locator("#verdict").SelectOptionAsync("can't be made");
        Assert.Equal(["4"], await page.EvaluateAsync<string[]>(Codes));
        await page.Context.CloseAsync();
    }

    [SkippableFact]
    public async Task Two_ticked_stand_side_by_side_with_what_differs_and_a_third_takes_the_firsts_place()
    {
        IPage page = await Open();
        ILocator boxes = page.Locator("#variants input[type=checkbox]");
        await boxes.Nth(0).CheckAsync();
        Assert.False(await page.Locator("#two").IsVisibleAsync());

        await boxes.Nth(2).CheckAsync();

        Assert.True(await page.Locator("#two").IsVisibleAsync());
        string told = await page.Locator("#two").InnerTextAsync();
        foreach (string wanted in new[] { "petg-black", "pc-black", "stack.floor", "stop too-thin, tub", "screw M2 x 8 (m2-pan)" })
        {
            Assert.Contains(wanted, told, StringComparison.Ordinal);
        }

        Assert.DoesNotContain("tightest gap", told, StringComparison.Ordinal);
        await Browser.Until(page, "[...document.querySelectorAll('.laid img')].every(i => i.complete && i.naturalWidth > 0)");
        Assert.Equal(4, await page.Locator(".laid img").CountAsync());
        await page.Locator("#two").ScreenshotAsync(
            new LocatorScreenshotOptions { Path = Path.Combine(Browser.Artefacts, "sweep-two.png") });

        await boxes.Nth(7).CheckAsync();
        bool[] ticked = await page.EvaluateAsync<bool[]>("[0, 2, 7].map(i => document.querySelectorAll('#variants input')[i].checked)");
        Assert.Equal([false, true, true], ticked);
        await page.Context.CloseAsync();
    }

    [SkippableFact]
    public async Task Without_its_script_everything_but_the_tools_is_there()
    {
        Skip.IfNot(Browser.Missing is null, Browser.Missing);
        IPage page = await browser.OpenWithoutScript(SweptLamps.Write(_folder));

        Assert.Equal(12, await page.Locator("#variants tbody tr").CountAsync());
        Assert.False(await page.Locator("#tools").IsVisibleAsync());
        Assert.Contains("no hole is where the screw goes", await page.Locator("#variants").InnerTextAsync(), StringComparison.Ordinal);
        Assert.True(await page.GetByText("To have at hand").IsVisibleAsync());
        await page.Context.CloseAsync();
    }

    private string Compared()
    {
        static ImmutableArray<Change> Changes(string what) => [new Change(what, "4.6", "5.2", "C9 costs 0.6")];
        var comparison = new HousingComparison
        {
            Whole = [new Change("verdict", "print", "do-not-print", "")],
            Said = Changes("housing.floor"),
            Follows = Changes("stack.below-board"),
            Findings = [new Change("stop too-thin, tub", "", "its floor has one layer, and two are wanted", "")],
            Parts = Changes("tub"),
            Shopping = Changes("screw M2 x 6 (m2-pan)"),
        };
        string path = _folder.File("compare.html");
        File.WriteAllBytes(path, ComparisonPage.Of("lamp-a", "lamp-b", comparison));
        return new Uri(path).AbsoluteUri;
    }

    private async Task<IPage> Open(string? address = null)
    {
        Skip.IfNot(Browser.Missing is null, Browser.Missing);
        IPage page = await browser.Blank();
        await page.SetViewportSizeAsync(1280, 900);
        await page.GotoAsync(address ?? SweptLamps.Write(_folder));
        return page;
    }
}
