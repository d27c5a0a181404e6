using System.Collections.Immutable;
using System.Globalization;
using System.Net;
using System.Text;
using ShellForge.Board.Description;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Output.Assembly;
using ShellForge.Output.Drawings;
using ShellForge.Output.Light;
using ShellForge.Output.Looks;
using ShellForge.Pipeline;
using ShellForge.Testing;

namespace ShellForge.Benchmarks;

/// <summary>Makes every board of a folder and writes one page with a picture, the light and a section of each: OUT/index.html.</summary>
internal static class GalleryCommand
{
    /// <summary>Writes the page; 1 when a housing must not be printed.</summary>
    /// <param name="folder">Board files.</param>
    /// <param name="target">Where the page and its pictures go.</param>
    public static int Run(string folder, string target)
    {
        Directory.CreateDirectory(target);
        var page = new StringBuilder(
            "<!doctype html><html lang=\"en\"><meta charset=\"utf-8\"><meta name=\"viewport\" "
                + "content=\"width=device-width\"><title>Boards and their housings</title>"
            + "<style>body{font:16px/1.5 system-ui,sans-serif;margin:2em auto;max-width:70em;padding:0 1em;background:#fafafa;color:#222}"
            + "article{background:#fff;border:1px solid #ddd;border-radius:6px;padding:1em;margin:1em "
            + "0}.row{display:flex;flex-wrap:wrap;gap:1em;align-items:center}"
            + ".row img{max-width:100%;height:16em;object-fit:contain}.dark{background:#181818;padding:.5em}h2{margin:0}p{margin:.3em "
            + "0}</style><h1>Boards and their housings</h1>\n");
        int stopped = 0;
        foreach (string path in Directory.GetFiles(folder, "*.yaml").Order(StringComparer.Ordinal))
        {
            string name = Path.GetFileNameWithoutExtension(path);
            BoardFile board = WrittenBoard.At(path);
            MadeHousing made = HousingPipeline.Make(board);
            ImmutableArray<Finding> findings = made.Report.Findings;
            int stops = findings.Count(finding => finding.Severity == Severity.Stop);
            stopped += stops > 0 ? 1 : 0;
            Write(Path.Combine(target, name), made.Housing);
            string size = string.Create(CultureInfo.InvariantCulture,
                $"{made.Housing.Plan.Shell.Footprint.Bounds.Size.X:0.#} x {made.Housing.Plan.Shell.Footprint.Bounds.Size.Y:0.#} x "
                    + $"{made.Housing.Plan.Stack.Front:0.#} mm");
            string light = made.Housing.Light is { } lit ? LightPictures.InWords(lit) : "no light";
            page.Append(CultureInfo.InvariantCulture,
                $"<article><h2>{WebUtility.HtmlEncode(board.Name)}</h2><p>{size}; "
                    + $"{(stops > 0 ? "do not print: " + WebUtility.HtmlEncode(string.Join(", ", findings.Where(f => f.Severity == Severity.Stop).Select(f => f.Rule).Distinct())) : "print it")}; {WebUtility.HtmlEncode(light)}</p>");
            page.Append(CultureInfo.InvariantCulture,
                $"<div class=\"row\"><img src=\"{name}-apart.png\" alt=\"the parts pulled apart\"><img class=\"dark\" "
                    + $"src=\"{name}-light.png\" alt=\"the front with all LEDs white\"><img src=\"{name}-section.svg\" "
                    + $"alt=\"section\"></div></article>\n");
            Console.WriteLine(
                $"{name}: {size}, {stops} stops, {findings.Count(finding => finding.Severity == Severity.Warn)} warnings, "
                    + $"{string.Join(", ", findings.Where(f => f.Severity != Severity.Note).Select(f => f.Rule).Distinct())}");
        }

        File.WriteAllText(Path.Combine(target, "index.html"), page.Append("</html>\n").ToString());
        return stopped == 0 ? 0 : 1;
    }

    private static void Write(string start, HousingUnderCheck housing)
    {
        HousingLooks looks = HousingLooks.Of(housing);
        File.WriteAllBytes(start + "-apart.png", HousingPictures.Apart(looks));
        if (housing.Light is { } light)
        {
            File.WriteAllBytes(start + "-light.png", LightPictures.SeenPng(light, LightShow.AllWhite));
        }

        DrawingFile section =
            HousingDrawings.Of(housing, looks.Board).First(drawing => drawing.Name.StartsWith("section", StringComparison.Ordinal));
        File.WriteAllText(start + "-section.svg", section.Svg);
    }
}
