using Microsoft.Playwright;

namespace ShellForge.Browser.Tests;

/// <summary>The page as a thing to read: its order, its length, on paper, without a script.</summary>
[Collection(SharedBrowser.Name)]
public class PageFormTests(Browser browser)
{
    private const string Sample = "tide-lamp";

    [SkippableFact]
    public async Task The_page_is_in_the_order_of_use_and_not_long()
    {
        IPage page = await Open();

        Assert.Equal(
            "view findings shopping parts assembly light drawings resolved",
            await page.EvaluateAsync<string>("[...document.querySelectorAll('main > section')].map((s) => s.id).join(' ')"));
        Assert.Equal(
            "view findings shopping parts assembly light drawings resolved",
            await page.EvaluateAsync<string>("[...document.querySelectorAll('nav.contents a')].map((a) => a.hash.slice(1)).join(' ')"));
        int height = await page.EvaluateAsync<int>("document.documentElement.scrollHeight");
        Assert.True(height < 6000, $"{height} pixels");
        await page.Context.CloseAsync();
    }

    [SkippableFact]
    public async Task Without_a_script_a_picture_stands_in_the_stage_and_no_button_is_dead()
    {
        Skip.IfNot(Browser.Missing is null, Browser.Missing);
        IPage page = await browser.OpenWithoutScript(Browser.PageOf(Sample));

        Assert.True(await page.Locator(".still").IsVisibleAsync());
        Assert.False(await page.Locator(".controls").IsVisibleAsync());
        await page.Context.CloseAsync();
    }

    [SkippableFact]
    public async Task On_paper_it_has_everything_but_the_view()
    {
        IPage page = await Open();

        foreach (string paper in new[] { "A4", "Letter" })
        {
            byte[] pdf =
                await page.PdfAsync(new PagePdfOptions
                {
                    Format = paper,
                    Path = Path.Combine(Browser.Artefacts, $"{Sample}-{paper}.pdf"),
                    PreferCSSPageSize = false
                });
            Assert.True(pdf.Length > 20_000);
        }

        await page.EmulateMediaAsync(new PageEmulateMediaOptions { Media = Media.Print });
        Assert.True(await page.Locator(".still").IsVisibleAsync(), "paper lacks the housing's picture");
        Assert.All(
            new[] { "#canvas", ".controls", "nav.contents", "[data-fly]" },
            hidden => Assert.False(page.Locator(hidden).First.IsVisibleAsync().GetAwaiter().GetResult(), hidden));
        Assert.True(await page.Locator("#resolved td").First.IsVisibleAsync(), "the values are folded away on paper");
        Assert.True(await page.Locator("#assembly").IsVisibleAsync());
        Assert.True(await page.Locator("#shopping").IsVisibleAsync());
        await page.Context.CloseAsync();
    }

    private async Task<IPage> Open()
    {
        Skip.IfNot(Browser.Missing is null, Browser.Missing);
        return await browser.Open(Browser.PageOf(Sample));
    }
}
