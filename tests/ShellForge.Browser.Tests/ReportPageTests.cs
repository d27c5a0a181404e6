using System.Globalization;
using Microsoft.Playwright;

namespace ShellForge.Browser.Tests;

[Collection(SharedBrowser.Name)]
public class ReportPageTests(Browser browser)
{
    private const string Sample = "tide-lamp";

    public static TheoryData<string, int> Sizes => new()
    {
        { "tide-lamp", 1280 },
        { "tide-lamp", 390 },
        { "mooring-beacon", 1280 },
        { "mooring-beacon", 390 },
        { "dome-dial", 1280 },
        { "dome-dial", 390 },
    };

    [SkippableTheory]
    [MemberData(nameof(Sizes))]
    public async Task It_fits_a_desk_and_a_phone(string sample, int width)
    {
        IPage page = await Open(sample, width, ColorScheme.Light);

        await Pages(page, $"{sample}-{width}");

        // Nothing wider than the window: what is wide scrolls within its own box.
        Assert.True(await page.EvaluateAsync<int>("document.documentElement.scrollWidth") <= width, "the page scrolls sideways");
        double drawn = await InkShare(page);
        Assert.True(drawn is > 0.04 and < 0.9, $"the housing fills {drawn:0.00} of its stage");
        await page.Context.CloseAsync();
    }

    [SkippableTheory]
    [InlineData(1280)]
    [InlineData(390)]
    public async Task Axe_finds_nothing_serious(int width)
    {
        IPage page = await Open(Sample, width, ColorScheme.Light);
        foreach (ColorScheme scheme in new[] { ColorScheme.Light, ColorScheme.Dark })
        {
            await page.EmulateMediaAsync(new PageEmulateMediaOptions { ColorScheme = scheme });
            await Browser.Drawn(page);

            await Browser.AxeFindsNothing(page, $"{scheme}");
        }

        await page.Context.CloseAsync();
    }

    [SkippableFact]
    public async Task Dark_is_dark_and_its_view_too()
    {
        IPage page = await Open(Sample, 1280, ColorScheme.Dark);

        await Pages(page, $"{Sample}-1280-dark");

        string paper = await page.EvaluateAsync<string>("getComputedStyle(document.body).backgroundColor");
        Assert.True(Channels(paper).Max() < 60, paper);
        string ink = await page.EvaluateAsync<string>("getComputedStyle(document.body).color");
        Assert.True(Channels(ink).Min() > 180, ink);
        await page.Context.CloseAsync();
    }

    [SkippableFact]
    public async Task Nothing_is_fetched_and_nothing_complains()
    {
        Skip.IfNot(Browser.Missing is null, Browser.Missing);
        IPage page = await browser.Blank();
        var asked = new List<string>();
        var complaints = new List<string>();
        page.Request += (_, request) => asked.Add(request.Url);
        page.Console += (_, message) => complaints.Add($"{message.Type}: {message.Text}");
        page.PageError += (_, error) => complaints.Add(error);

        await page.GotoAsync(Browser.PageOf(Sample));
        await Browser.Until(page, "document.documentElement.dataset.view === 'ready'");

        Assert.All(asked.Skip(1), url => Assert.Matches("^(data|blob):", url));
        Assert.DoesNotContain(complaints,
            text => !text.StartsWith("warning: [.WebGL", StringComparison.Ordinal)
                && !text.Contains("GPU stall", StringComparison.Ordinal));
        await page.Context.CloseAsync();
    }

    [SkippableFact]
    public async Task Dragging_turns_it_and_the_wheel_brings_it_nearer()
    {
        IPage page = await Open(Sample, 1280, ColorScheme.Light);
        double[] before = await Eye(page);
        string picture = await Canvas(page);
        LocatorBoundingBoxResult box = (await page.Locator("#canvas").BoundingBoxAsync())!;

        await page.Mouse.MoveAsync(box.X + (box.Width / 2), box.Y + (box.Height / 2));
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(box.X + (box.Width / 2) + 160, box.Y + (box.Height / 2), new MouseMoveOptions { Steps = 4 });
        await page.Mouse.UpAsync();
        await Browser.Drawn(page);
        double[] turned = await Eye(page);

        Assert.Equal(Length(before), Length(turned), 3);
        Assert.True(Distance(before, turned) > 0.2 * Length(before), "it did not turn");
        Assert.NotEqual(picture, await Canvas(page));

        await page.Mouse.WheelAsync(0, -300);
        await Browser.Drawn(page);
        Assert.True(Length(await Eye(page)) < 0.95 * Length(turned), "it came no nearer");
        await page.Context.CloseAsync();
    }

    [SkippableFact]
    public async Task Pulled_apart_the_parts_stand_in_their_order_and_the_printed_in_diffuser_stays_in_the_cover()
    {
        IPage page = await Open(Sample, 1280, ColorScheme.Light);

        await page.Locator("#explode").FillAsync("1");
        await Browser.Drawn(page);
        await page.Locator(".stage").ScreenshotAsync(Element($"{Sample}-apart"));

        string order = await page.EvaluateAsync<string>(
            "housing.viewer.parts.map((p) => [p.group.position.z, p.name]).sort((a, b) => a[0] - b[0]).map((p) => p[1]).filter((n) => "
                + "!n.includes('#')).join(' ')");
        Assert.Equal("tub board baffle diffuser cover", order);
        Assert.True(await page.EvaluateAsync<bool>(
            "(() => { const z = (n) => housing.viewer.parts.find((p) => p.name === n).group.position.z; return z('tub') === 0 && "
                + "z('board') > 10 && z('diffuser') === z('cover'); })()"));
        await page.Context.CloseAsync();
    }

    [SkippableFact]
    public async Task Cut_open_it_shows_filled_faces_of_every_part_that_the_plane_meets()
    {
        IPage page = await Open(Sample, 1280, ColorScheme.Light);
        string whole = await Canvas(page);
        foreach (string axis in new[] { "x", "y", "z" })
        {
            await page.Locator("#cut-axis").SelectOptionAsync(axis);
            await Browser.Drawn(page);
            await page.Locator(".stage").ScreenshotAsync(Element($"{Sample}-cut-{axis}"));

            Assert.NotEqual(whole, await Canvas(page));
            int filled = await page.EvaluateAsync<int>(CountCutColour, "tub");
            Assert.True(filled > 150, $"{axis}: {filled} pixels of the tub's cut face");
        }

        await page.Locator("#cut-axis").SelectOptionAsync("none");
        await Browser.Drawn(page);
        Assert.Equal(whole, await Canvas(page));
        await page.Context.CloseAsync();
    }

    [SkippableFact]
    public async Task A_part_can_be_taken_away()
    {
        IPage page = await Open(Sample, 1280, ColorScheme.Light);
        string whole = await Canvas(page);

        await page.GetByLabel("cover", new PageGetByLabelOptions { Exact = true }).UncheckAsync();
        await Browser.Drawn(page);

        Assert.NotEqual(whole, await Canvas(page));
        Assert.False(await page.EvaluateAsync<bool>("housing.viewer.parts.find((p) => p.name === 'cover').group.visible"));
        await page.GetByLabel("cover", new PageGetByLabelOptions { Exact = true }).CheckAsync();
        await Browser.Drawn(page);
        Assert.Equal(whole, await Canvas(page));
        await page.Context.CloseAsync();
    }

    [SkippableFact]
    public async Task Switched_on_the_diffuser_glows_as_computed_and_off_it_is_as_before()
    {
        IPage page = await Open(Sample, 1280, ColorScheme.Light);
        await page.Locator("[data-stand=above]").ClickAsync();
        await Browser.Drawn(page);
        string day = await Canvas(page);

        await page.Locator("#glow").CheckAsync();
        await Browser.Until(page,
            "housing.viewer.parts.find((p) => p.name === 'diffuser').surface.material.emissiveMap?.image?.complete === true");
        await Browser.Drawn(page);
        await page.Locator(".stage").ScreenshotAsync(Element($"{Sample}-glow"));

        // Over an LED (the pitch circle's top) it is bright, at the wall between two cells dim, on the bezel dark.
        double[] seen =
            await page.EvaluateAsync<double[]>(BrightnessAt,
                new double[][] { [0, 38], [38 * Math.Sin(7.5 * Math.PI / 180), 38 * Math.Cos(7.5 * Math.PI / 180)], [0, 26] });
        Assert.True(seen[0] > 150 && seen[1] < 0.65 * seen[0] && seen[2] < 60, string.Join(" ", seen));
        Assert.True(await page.Locator("#glow-caution").IsVisibleAsync());

        await page.Locator("#glow").UncheckAsync();
        await Browser.Drawn(page);
        Assert.Equal(day, await Canvas(page));
        await page.Context.CloseAsync();
    }

    [SkippableFact]
    public async Task A_finding_is_flown_to_from_its_row_and_from_its_pin()
    {
        IPage page = await Open("dome-dial", 1280, ColorScheme.Light);
        string place = "(n) => JSON.parse(document.getElementById('housing-data').textContent).findings.find((f) => f.number === n).at";

        ILocator row = page.Locator("[data-fly]").First;
        int number = int.Parse((await row.GetAttributeAsync("data-fly"))!, CultureInfo.InvariantCulture);
        await row.ClickAsync();
        await Browser.Drawn(page);

        double[] at = await page.EvaluateAsync<double[]>(place, number);
        Assert.True(Distance(at, await Target(page)) < 0.01, "the eye looks elsewhere");
        Assert.True(
            await page.EvaluateAsync<double>("housing.viewer.parts.find((p) => p.name === 'tub').surface.material.opacity") < 0.5,
            "the place lies behind plastic");
        Assert.Contains("picked", await page.Locator($"#finding-{number}").GetAttributeAsync("class"), StringComparison.Ordinal);
        await page.Locator(".stage").ScreenshotAsync(Element("dome-dial-finding"));

        ILocator pin = page.Locator(".pin:not([hidden])").Last;
        int other = int.Parse(await pin.InnerTextAsync(), CultureInfo.InvariantCulture);
        await pin.FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await Browser.Drawn(page);
        Assert.True(Distance(await page.EvaluateAsync<double[]>(place, other), await Target(page)) < 0.01, "the pin leads elsewhere");
        await page.Context.CloseAsync();
    }

    [SkippableFact]
    public async Task Pins_never_cover_each_other_and_go_with_their_part()
    {
        IPage page = await Open(Sample, 1280, ColorScheme.Light);
        const string covered =
            """
            (() => { const at = [...document.querySelectorAll('.pin:not([hidden])')].map((p) => p.getBoundingClientRect());
              return at.some((a, i) => at.slice(i + 1).some((b) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom)); })()
            """;
        Assert.True(await page.EvaluateAsync<int>("document.querySelectorAll('.pin:not([hidden])').length") > 2);
        Assert.False(await page.EvaluateAsync<bool>(covered), "pins lie over each other");

        string board = "(() => housing.viewer.project([30, 0, 10], 'board'))()";
        double[] closed = await page.EvaluateAsync<double[]>(board);
        await page.Locator("#explode").FillAsync("1");
        await Browser.Drawn(page);
        double[] apart = await page.EvaluateAsync<double[]>(board);
        Assert.True(Distance(closed, apart) > 5, "the place did not move with the board");
        Assert.False(await page.EvaluateAsync<bool>(covered), "pins lie over each other when pulled apart");
        await page.Context.CloseAsync();
    }

    [SkippableFact]
    public async Task The_keyboard_alone_turns_zooms_and_returns()
    {
        IPage page = await Open(Sample, 1280, ColorScheme.Light);
        for (int i = 0; i < 12 && await page.EvaluateAsync<string>("document.activeElement.id") != "canvas"; i++)
        {
            await page.Keyboard.PressAsync("Tab");
        }

        Assert.Equal("canvas", await page.EvaluateAsync<string>("document.activeElement.id"));
        double[] start = await Eye(page);

        await page.Keyboard.PressAsync("ArrowLeft");
        double[] turned = await Eye(page);
        Assert.True(Distance(start, turned) > 1);
        await page.Keyboard.PressAsync("+");
        Assert.True(Length(await Eye(page)) < Length(turned));
        await page.Keyboard.PressAsync("Home");
        Assert.True(Distance(start, await Eye(page)) < 0.01, "it did not come back");
        await page.Context.CloseAsync();
    }

    // How bright the canvas is, 0 to 255, where places on the diffuser's front are drawn.
    private const string BrightnessAt = """
        (places) => {
          const { viewer } = housing;
          const z = viewer.bounds.max.z;
          const { canvas, camera } = viewer;
          const copy = Object.assign(document.createElement('canvas'), { width: canvas.width, height: canvas.height });
          const pen = copy.getContext('2d');
          pen.drawImage(canvas, 0, 0);
          return places.map(([x, y]) => {
            const at = camera.position.clone().set(x, y, z).project(camera);
            const [r, g, b] = pen.getImageData((at.x + 1) / 2 * canvas.width, (1 - at.y) / 2 * canvas.height, 1, 1).data;
            return (r + g + b) / 3;
          });
        }
        """;

    // Pixels of the canvas that have the fill colour of a part's cut face, which nothing else has.
    private const string CountCutColour = """
        (name) => {
          const part = housing.viewer.parts.find((p) => p.name === name);
          const canvas = housing.viewer.canvas;
          const copy = Object.assign(document.createElement('canvas'), { width: canvas.width, height: canvas.height });
          const pen = copy.getContext('2d');
          pen.drawImage(canvas, 0, 0);
          const pixels = pen.getImageData(0, 0, copy.width, copy.height).data;
          const wanted = [1, 3, 5].map((i) => parseInt(part.cutColour.slice(i, i + 2), 16));
          let count = 0;
          for (let i = 0; i < pixels.length; i += 4) {
            if (wanted.every((c, k) => Math.abs(pixels[i + k] - c) < 4) && pixels[i + 3] > 250) count++;
          }
          return count;
        }
        """;

    private async Task<IPage> Open(string sample, int width, ColorScheme scheme)
    {
        Skip.IfNot(Browser.Missing is null, Browser.Missing);
        return await browser.Open(Browser.PageOf(sample), new BrowserNewContextOptions
        {
            ViewportSize = new ViewportSize { Width = width, Height = width < 600 ? 844 : 900 },
            ColorScheme = scheme,
            ReducedMotion = ReducedMotion.Reduce,
        });
    }

    // The whole page, screen by screen: a browser draws a picture of a page this long wrongly. It ends where it began, at the top.
    private static async Task Pages(IPage page, string name)
    {
        const int screen = 2400;
        PageViewportSizeResult window = page.ViewportSize!;
        int height = await page.EvaluateAsync<int>("document.documentElement.scrollHeight");
        await page.SetViewportSizeAsync(window.Width, screen);
        for (int i = 0; i * screen < height; i++)
        {
            await page.EvaluateAsync("(y) => window.scrollTo(0, y)", i * screen);
            await Browser.Drawn(page);
            await page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(Browser.Artefacts, $"{name}-{i + 1}.png") });
        }

        await page.EvaluateAsync("() => window.scrollTo(0, 0)");
        await page.SetViewportSizeAsync(window.Width, window.Height);
        await Browser.Drawn(page);
    }

    private static LocatorScreenshotOptions Element(string name) => new() { Path = Path.Combine(Browser.Artefacts, $"{name}.png") };

    private static Task<string> Canvas(IPage page) => page.EvaluateAsync<string>("housing.viewer.canvas.toDataURL()");

    private static Task<double[]> Eye(IPage page) =>
        page.EvaluateAsync<double[]>("housing.viewer.camera.position.clone().sub(housing.viewer.controls.target).toArray()");

    private static Task<double[]> Target(IPage page) => page.EvaluateAsync<double[]>("housing.viewer.controls.target.toArray()");

    private static Task<double> InkShare(IPage page) => page.EvaluateAsync<double>("""
        () => {
          const canvas = housing.viewer.canvas;
          const copy = Object.assign(document.createElement('canvas'), { width: canvas.width, height: canvas.height });
          const pen = copy.getContext('2d');
          pen.drawImage(canvas, 0, 0);
          const pixels = pen.getImageData(0, 0, copy.width, copy.height).data;
          let ink = 0;
          for (let i = 3; i < pixels.length; i += 4) if (pixels[i] > 128) ink++;
          return (4 * ink) / pixels.length;
        }
        """);

    private static int[] Channels(string colour) =>
        [.. colour[(colour.IndexOf('(', StringComparison.Ordinal) + 1)..].TrimEnd(')').Split(',').Take(3)
            .Select(c => int.Parse(c, CultureInfo.InvariantCulture))];

    private static double Length(double[] v) => Math.Sqrt(v.Sum(c => c * c));

    private static double Distance(double[] a, double[] b) => Length([.. a.Zip(b, (x, y) => x - y)]);
}
