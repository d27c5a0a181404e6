using System.Diagnostics;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using ShellForge.Output.Page;
using ShellForge.Testing;

namespace ShellForge.Browser.Tests;

/// <summary>One browser for all tests, and the pages of the samples.</summary>
public sealed class Browser : IAsyncLifetime, IDisposable
{
    private static readonly string[] Places = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];

    private IPlaywright? _playwright;
    private IBrowser? _browser;

    /// <summary>Where pictures of the pages are left to be looked at.</summary>
    public static string Artefacts { get; } = Directory.CreateDirectory(Repository.At("artifacts", "page")).FullName;

    /// <summary>Why no browser can be used; null when one can.</summary>
    public static string? Missing =>
        Executable is null ? "there is no Chromium on this machine"
        : PageAssets.Embedded.Script is null ? "the tool was built without Node, so its pages have no script"
        : null;

    private static string? Executable =>
        Environment.GetEnvironmentVariable("SHELLFORGE_CHROMIUM") ?? Places.FirstOrDefault(File.Exists);

    public async Task InitializeAsync()
    {
        if (Missing is null)
        {
            _playwright = await Playwright.CreateAsync();
            _browser = await _playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
            {
                ExecutablePath = Executable,

                // No graphics card in the test: a software one, always the same.
                Args = ["--no-sandbox", "--use-gl=angle", "--use-angle=swiftshader", "--enable-unsafe-swiftshader",
                    "--force-color-profile=srgb"],
            });
        }
    }

    public async Task DisposeAsync()
    {
        if (_browser is not null)
        {
            await _browser.DisposeAsync();
        }
    }

    public void Dispose()
    {
        _playwright?.Dispose();
    }

    /// <summary>Asserts that axe finds nothing serious on a page, and looked at enough to mean it.</summary>
    /// <param name="page">The page.</param>
    /// <param name="when">How it is shown, for the message.</param>
    public static async Task AxeFindsNothing(IPage page, string when)
    {
        AxeResult result = await page.RunAxe();
        AxeResultItem[] serious = [.. result.Violations.Where(v => v.Impact is "serious" or "critical" or "moderate")];
        Assert.True(
            serious.Length == 0,
            string.Join("\n", serious.Select(v => $"{when}: {v.Id}: {v.Help}: {string.Join(" | ", v.Nodes.Select(n => n.Html))}")));
        Assert.True(result.Passes.Length > 15, "axe looked at too little to mean anything");
    }

    /// <summary>The shipped report page of a sample: the end-to-end tests hold that it is what the board makes.</summary>
    public static string PageOf(string sample) => new Uri(Repository.At("out-samples", sample, "report.html")).AbsoluteUri;

    /// <summary>Opens a page and waits until its view stands.</summary>
    /// <param name="address">Its address.</param>
    /// <param name="options">How the browser is set up.</param>
    /// <param name="before">A script that runs before the page's own.</param>
    public async Task<IPage> Open(string address, BrowserNewContextOptions? options = null, string? before = null)
    {
        IBrowserContext context = await _browser!.NewContextAsync(options ?? new BrowserNewContextOptions
        {
            ViewportSize = new ViewportSize { Width = 1280, Height = 900 },
            ReducedMotion = ReducedMotion.Reduce,
        });
        context.SetDefaultTimeout(120_000);
        IPage page = await context.NewPageAsync();
        if (before is not null)
        {
            await page.AddInitScriptAsync(before);
        }

        await page.GotoAsync(address);
        await Until(page, "document.documentElement.dataset.view !== undefined");
        await Drawn(page);
        return page;
    }

    /// <summary>Opens a page that may run no script.</summary>
    public async Task<IPage> OpenWithoutScript(string address)
    {
        IBrowserContext context = await _browser!.NewContextAsync(new BrowserNewContextOptions
        {
            JavaScriptEnabled = false,
            ViewportSize = new ViewportSize { Width = 1280, Height = 900 },
        });
        IPage page = await context.NewPageAsync();
        await page.GotoAsync(address);
        return page;
    }

    /// <summary>An empty page.</summary>
    public Task<IPage> Blank() => _browser!.NewPageAsync();

    /// <summary>Waits until what was asked of the view has been drawn.</summary>
    public static Task Drawn(IPage page) => page.EvaluateAsync(
        "() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => requestAnimationFrame(done))))");

    /// <summary>Waits for something in a page. Asks from outside: the page itself forbids scripts made of text.</summary>
    /// <param name="page">The page.</param>
    /// <param name="condition">What is to come true.</param>
    /// <param name="minutes">How long it may take.</param>
    public static async Task Until(IPage page, string condition, double minutes = 2)
    {
        long started = Stopwatch.GetTimestamp();
        while (!await page.EvaluateAsync<bool>(condition))
        {
            Assert.True(Stopwatch.GetElapsedTime(started) < TimeSpan.FromMinutes(minutes), $"waited in vain for: {condition}");
            await page.WaitForTimeoutAsync(30);
        }
    }
}

[CollectionDefinition(Name)]
public sealed class SharedBrowser : ICollectionFixture<Browser>
{
    public const string Name = "browser";
}
