using System.Diagnostics;
using System.Globalization;
using System.IO.Compression;
using System.Text;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using ShellForge.Testing;

namespace ShellForge.Cli.Tests.Verbs;

/// <summary>Templates on paper, measured back from the written files.</summary>
public sealed partial class PaperTests
{
    private const double Point = 25.4 / 72;

    private static Bench Made(params string[] set)
    {
        var bench = new Bench();
        File.WriteAllText(bench.Folder.File("buoy.yaml"), Bench.SmallBoard.Replace("housing:",
            "  parts:\n    - {ref: C1, size: [6, 4, 5], side: bottom, at: [7, 3]}\nhousing:\n  label: {text: \"BUOY\"}\n  mount: keyhole",
            StringComparison.Ordinal));
        bench.Run(["make", "buoy.yaml", "-o", "out", "-q", "--formats", "paper", .. set.SelectMany(one => new[] { "--set", one })]);
        return bench;
    }

    private static string PathOf(Bench bench, string name) => bench.Folder.File(System.IO.Path.Combine("out", name));

    [Fact]
    public void The_board_is_drawn_at_its_size_from_both_sides_the_back_mirrored_and_up_is_up()
    {
        using Bench bench = Made("up=0");
        Drawn front = Drawn.OfSvg(PathOf(bench, "paper-led-side.svg"));
        Drawn back = Drawn.OfSvg(PathOf(bench, "paper-back.svg"));

        Assert.Equal((210, 297), front.Sheet);
        foreach (Drawn sheet in new[] { front, back })
        {
            (double FromX, double FromY, double ToX, double ToY) board = Largest(sheet);
            Assert.Equal(40, board.ToX - board.FromX, 0.02);
            Assert.Equal(40, board.ToY - board.FromY, 0.02);
            Assert.Equal(2, sheet.Circles.Count(circle => Math.Abs((2 * circle.R) - 2.2) < 0.002));
        }

        // The board's +x points up: the part at [7, 3] lies 7 above the middle, and 3 to the left of it, from the back to the right.
        (double x, double y) = Middle(Largest(back));
        var part = back.Loops.Single(loop => Near(loop.ToX - loop.FromX, 4) && Near(loop.ToY - loop.FromY, 6));
        Assert.Equal((3, -7), (Math.Round(Middle(part).X - x, 2), Math.Round(Middle(part).Y - y, 2)));
        Assert.DoesNotContain(front.Loops, loop => Near(loop.ToX - loop.FromX, 4) && Near(loop.ToY - loop.FromY, 6));
    }

    [Fact]
    public void Holes_to_drill_lie_as_far_apart_as_on_the_template_for_the_wall_and_the_label_is_read_from_below()
    {
        using Bench bench = Made();
        double[] paper = [.. Drawn.OfSvg(PathOf(bench, "paper-drill.svg")).Circles.Select(circle => circle.X)];
        double[] wall = [.. Drawn.OfSvg(PathOf(bench, "drill-template.svg")).Circles.Select(circle => circle.X)];

        Assert.NotEmpty(paper);
        Assert.Equal(wall.Max() - wall.Min(), paper.Max() - paper.Min(), 0.002);
        Assert.True(File.Exists(PathOf(bench, "paper-label.svg")));
    }

    [Fact]
    public void The_pages_of_the_PDF_have_the_same_sizes_and_bars_of_100_mm_along_both_edges()
    {
        using Bench bench = Made();
        string[] pages = PagesOf(PathOf(bench, "paper.pdf"));
        Assert.Equal(4, pages.Length);
        foreach (string page in pages)
        {
            (double FromX, double FromY, double ToX, double ToY)[] lines = [.. PathsOf(page)];
            Assert.Single(lines, line => Math.Abs(line.ToX - line.FromX - 100) < 0.01 && line.ToY - line.FromY < 0.01);
            Assert.Single(lines, line => Math.Abs(line.ToY - line.FromY - 100) < 0.01 && line.ToX - line.FromX < 0.01);
        }

        Assert.Contains(PathsOf(pages[0]), path => Near(path.ToX - path.FromX, 40) && Near(path.ToY - path.FromY, 40));
        Assert.Contains(PathsOf(pages[0]), path => Near(path.ToX - path.FromX, 2.2));
    }

    [Fact]
    public void A_board_larger_than_a_page_goes_over_pages_that_lap_and_its_SVG_is_as_large_as_it_is()
    {
        using Bench bench = Made("board.outline={disc: 200}", "board.holes[0].circle=190");
        string[] pages = PagesOf(PathOf(bench, "paper.pdf"));
        Drawn svg = Drawn.OfSvg(PathOf(bench, "paper-led-side.svg"));

        // With room for texts 208: wider than 180 and higher than 204.
        Assert.True(svg.Sheet.Width > 210);
        Assert.Contains(svg.Loops, loop => Near(loop.ToX - loop.FromX, 200));
        string[] ledSide = [.. pages.Where(page => page.Contains("LED side", StringComparison.Ordinal))];
        Assert.Equal(4, ledSide.Length);
        double[] lefts = [.. ledSide.Select(page => PathsOf(page).MaxBy(path => path.ToX - path.FromX).FromX).Distinct().Order()];

        // The same outline on two pages beside each other, shifted by a page less what they share.
        Assert.Equal([170.0], lefts.Zip(lefts.Skip(1), (a, b) => Math.Round(b - a, 1)));
    }

    [SkippableFact]
    public void A_foreign_reader_finds_A4_pages_and_the_board_at_its_size()
    {
        Skip.If(
            ForeignRun.Find("pdftocairo") is null || ForeignRun.Find("pdfinfo") is null,
            "no foreign reader of PDF is installed: poppler-utils");
        using Bench bench = Made();
        string pdf = PathOf(bench, "paper.pdf");

        Assert.Matches("Page size: +595.2[0-9]* x 841.[0-9]* pts \\(A4\\)", Run("pdfinfo", pdf));
        string svg = PathOf(bench, "read-back.svg");
        Run("pdftocairo", $"-svg -f 1 -l 1 {pdf} {svg}");
        Drawn read = Drawn.OfSvg(svg);
        Assert.Contains(read.Loops, loop =>
            Math.Abs(((loop.ToX - loop.FromX) * Point) - 40) < 0.05 && Math.Abs(((loop.ToY - loop.FromY) * Point) - 40) < 0.05);
    }

    // The bars are longer than a small board, but have no area.
    private static (double FromX, double FromY, double ToX, double ToY) Largest(Drawn sheet) =>
        sheet.Loops.MaxBy(loop => (loop.ToX - loop.FromX) * (loop.ToY - loop.FromY));

    private static bool Near(double a, double b) => Math.Abs(a - b) < 0.02;

    private static (double X, double Y) Middle((double FromX, double FromY, double ToX, double ToY) box) =>
        ((box.FromX + box.ToX) / 2, (box.FromY + box.ToY) / 2);

    private static string Run(string program, string arguments)
    {
        using Process process = Process.Start(
            new ProcessStartInfo(ForeignRun.Find(program)!, arguments) { RedirectStandardOutput = true })!;
        string told = process.StandardOutput.ReadToEnd();
        Assert.True(process.WaitForExit(30_000));
        return told;
    }

    // The contents of the pages, unpacked, in their order.
    private static string[] PagesOf(string pdf)
    {
        byte[] bytes = File.ReadAllBytes(pdf);
        string text = Encoding.Latin1.GetString(bytes);
        return
        [
            .. Streams().Matches(text).Select(match =>
            {
                using var packed = new MemoryStream(bytes, match.Index + match.Length,
                    int.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture));
                using var zlib = new ZLibStream(packed, CompressionMode.Decompress);
                using var unpacked = new MemoryStream();
                zlib.CopyTo(unpacked);
                return Encoding.Latin1.GetString(unpacked.ToArray());
            }),
        ];
    }

    // Boxes of the painted paths, mm.
    private static IEnumerable<(double FromX, double FromY, double ToX, double ToY)> PathsOf(string page)
    {
        var points = new List<(double X, double Y)>();
        foreach (string line in page.Split('\n'))
        {
            string[] words = line.Split(' ', StringSplitOptions.RemoveEmptyEntries);
            if (words is [.., "m" or "l" or "c"])
            {
                points.Add((Point * Number(words[^3]), Point * Number(words[^2])));
            }
            else if (words is ["S" or "f*" or "B*"] && points.Count > 0)
            {
                yield return (points.Min(p => p.X), points.Min(p => p.Y), points.Max(p => p.X), points.Max(p => p.Y));
                points.Clear();
            }
        }
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    [GeneratedRegex("/Filter/FlateDecode/Length ([0-9]+)>>\\nstream\\n")]
    private static partial Regex Streams();

    [GeneratedRegex("[MLC]([^MLCZ]*)")]
    private static partial Regex Steps();

    // What an SVG draws: boxes of its closed loops, its circles.
    private sealed record Drawn(
        (double Width, double Height) Sheet, (double FromX, double FromY, double ToX, double ToY)[] Loops,
        (double X, double Y, double R)[] Circles)
    {
        public static Drawn OfSvg(string path)
        {
            XElement root = XDocument.Load(path).Root!;
            double[] view = [.. root.Attribute("viewBox")!.Value.Split(' ').Select(Number)];
            return new Drawn(
                (view[2], view[3]),
                [
                    .. Shown(root).Where(e => e.Name.LocalName == "path" && e.Attribute("d") is not null)
                        .SelectMany(e => e.Attribute("d")!.Value.Split('Z', StringSplitOptions.RemoveEmptyEntries))
                        .Select(Box).Where(box => box.ToX > box.FromX),
                ],
                [
                    .. Shown(root).Where(e => e.Name.LocalName == "circle")
                        .Select(e => (Number(e.Attribute("cx")!.Value), Number(e.Attribute("cy")!.Value), Number(e.Attribute("r")!.Value))),
                ]);
        }

        // Hatches and letters stand among the definitions.
        private static IEnumerable<XElement> Shown(XElement root) =>
            root.Descendants().Where(e => !e.Ancestors().Any(above => above.Name.LocalName == "defs"));

        private static (double FromX, double FromY, double ToX, double ToY) Box(string loop)
        {
            (double X, double Y)[] ends =
            [
                .. Steps().Matches(loop).Select(step => step.Groups[1].Value.Split(' ', StringSplitOptions.RemoveEmptyEntries))
                    .Where(words => words.Length >= 2).Select(words => (Number(words[^2]), Number(words[^1]))),
            ];
            return ends.Length == 0 ? default : (ends.Min(p => p.X), ends.Min(p => p.Y), ends.Max(p => p.X), ends.Max(p => p.Y));
        }
    }
}
