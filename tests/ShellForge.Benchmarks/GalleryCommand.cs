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
        var page = new StringBuilder("""
            <!doctype html>
            <html lang="en">
            <head>
            <meta charset="utf-8">
            <meta name="viewport" content="width=device-width">
            <title>Boards and their housings</title>
            <style>
            body{font:16px/1.5 system-ui,sans-serif;margin:2em auto;max-width:75em;padding:0 1em;background:#fafafa;color:#222}
            article{background:#fff;border:1px solid #ddd;border-radius:6px;padding:1em;margin:1em 0}
            .row{display:grid;grid-template-columns:repeat(auto-fit,minmax(18em,1fr));gap:1em;margin-top:.5em}
            .row img{width:100%;height:15em;object-fit:contain}
            .dark{background:#181818;border-radius:4px}
            h2,p{margin:0}
            </style>
            </head>
            <body>
            <h1>Boards and their housings</h1>
            <p>Each housing pulled apart, its front with all LEDs white, and a section through it.</p>

            """);
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
            string why = string.Join(", ", findings.Where(f => f.Severity == Severity.Stop).Select(f => f.Rule).Distinct());
            string light = made.Housing.Light is { } lit ? LightPictures.InWords(lit) : "no light";
            page.Append(CultureInfo.InvariantCulture,
                $"<article>\n<h2>{WebUtility.HtmlEncode(board.Name)}</h2>\n<p>{size}; "
                    + $"{(stops > 0 ? "do not print: " + WebUtility.HtmlEncode(why) : "print it")}; {WebUtility.HtmlEncode(light)}</p>\n");
            page.Append(CultureInfo.InvariantCulture,
                $"<div class=\"row\">\n<img src=\"{name}-apart.png\" alt=\"the parts pulled apart\">\n<img class=\"dark\" "
                    + $"src=\"{name}-light.png\" alt=\"the front with all LEDs white\">\n<img src=\"{name}-section.svg\" "
                    + $"alt=\"section\">\n</div>\n</article>\n");
            Console.WriteLine(
                $"{name}: {size}, {stops} stops, {findings.Count(finding => finding.Severity == Severity.Warn)} warnings, "
                    + $"{string.Join(", ", findings.Where(f => f.Severity != Severity.Note).Select(f => f.Rule).Distinct())}");
        }

        File.WriteAllText(Path.Combine(target, "index.html"), page.Append("</body>\n</html>\n").ToString());
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
        File.WriteAllText(start + "-section.svg", CroppedDrawing.Of(section.Svg));
    }
}
