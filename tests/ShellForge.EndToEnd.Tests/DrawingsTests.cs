using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using ShellForge.Testing;

namespace ShellForge.EndToEnd.Tests;

/// <summary>The shipped drawings, read as files: what a person would see on paper.</summary>
public class DrawingsTests
{
    private const double Frame = 10;
    private const double TitleWidth = 110;
    private const double TitleHeight = 22;

    // Letters of the fonts named in the file, as shares of the font size: from below to above the base line, and the widest usual run.
    private const double Descent = 0.2;
    private const double Ascent = 0.74;
    private const double Advance = 0.56;

    public static TheoryData<string> Drawings =>
    [
        .. Repository.Samples.SelectMany(folder => Directory.EnumerateFiles(folder, "*.svg"))
            .Select(path => Path.GetRelativePath(Repository.At("out-samples"), path)).Order(StringComparer.Ordinal),
    ];

    private readonly record struct Label(string Text, double Left, double Top, double Right, double Bottom)
    {
        public bool Meets(Label other) => Left < other.Right && other.Left < Right && Top < other.Bottom && other.Top < Bottom;

        public bool Meets((double X, double Y) a, (double X, double Y) b)
        {
            // Clipped to the box, something is left.
            double from = 0;
            double to = 1;
            return Clip(b.X - a.X, Left - a.X, Right - a.X) && Clip(b.Y - a.Y, Top - a.Y, Bottom - a.Y);

            bool Clip(double step, double low, double high)
            {
                if (step == 0)
                {
                    return low < 0 && high > 0;
                }

                double first = Math.Min(low / step, high / step);
                double last = Math.Max(low / step, high / step);
                from = Math.Max(from, first);
                to = Math.Min(to, last);
                return from < to;
            }
        }
    }

    [Fact]
    public void There_is_a_drawing_of_the_assembly_each_way_and_of_every_part()
    {
        foreach (string folder in Repository.Samples)
        {
            string[] parts = [.. Directory.EnumerateFiles(folder, "*.stl").Select(path => Path.GetFileNameWithoutExtension(path)!)];
            Assert.All(parts.Append("plan").Append("section").Append("section-screw"),
                name => Assert.True(File.Exists(Path.Combine(folder, name + ".svg")), $"{folder}: {name}"));
        }
    }

    [Theory]
    [MemberData(nameof(Drawings))]
    public void No_lettering_stands_on_other_lettering_on_an_outline_or_off_the_sheet(string drawing) =>
        IsLegible(Repository.At("out-samples", drawing));

    // Ears stand out on all sides: sizes over them, notes and the ends of the cutting line share the room beside the views.
    [Fact]
    public void Nor_does_it_where_ears_stand_out_over_a_round_wall()
    {
        using var folder = new TemporaryFolder();
        string board = folder.Write("eared.yaml", """
            format: shellforge/1
            name: Eared
            board:
              outline: {disc: 70}
              thickness: 1.6
              pixels: {package: "5050", circle: 40, count: 12}
              parts:
                - {ref: J1, package: usb-c-receptacle, side: bottom, faces: 270, past-edge: 1.0}
            housing: {insert: m2.5x4-od4.6, hold: clamp, closure: screws, cable: {part: J1}}
            power: {brightness: 0.3, capped: true}
            """);
        CommandRun.Run(folder.Path, "make", board, "-o", "made", "-q");
        Assert.All(["plan.svg", "tub.svg", "cover.svg"], name => IsLegible(folder.File($"made/{name}")));
    }

    private static void IsLegible(string drawing)
    {
        XElement sheet = XDocument.Load(drawing).Root!;
        double[] size = Numbers(sheet.Attribute("viewBox")!.Value);
        Label[] labels = [.. sheet.Elements().Where(e => e.Name.LocalName == "text").Select(Read)];
        Assert.True(labels.Length >= 8, $"only {labels.Length} labels");

        for (int i = 0; i < labels.Length; i++)
        {
            Assert.True(
                labels[i].Left > Frame && labels[i].Right < size[2] - Frame && labels[i].Top > Frame && labels[i].Bottom < size[3] - Frame,
                $"'{labels[i].Text}' leaves the frame");
            for (int k = 0; k < i; k++)
            {
                Assert.False(labels[i].Meets(labels[k]), $"'{labels[i].Text}' stands on '{labels[k].Text}'");
            }
        }

        var title = new Label("title block", size[2] - Frame - TitleWidth, size[3] - Frame - TitleHeight, size[2] - Frame, size[3] - Frame);

        // A drill template is no drawing of a part and has no title block: all its lettering is looked at.
        bool titled = !drawing.EndsWith("drill-template.svg", StringComparison.Ordinal);
        Label[] outside = [.. labels.Where(label => !titled || !(label.Left > title.Left && label.Top > title.Top))];
        Assert.All(outside, label => Assert.False(titled && label.Meets(title), $"'{label.Text}' stands on the title block"));
        int lines = 0;
        foreach (((double X, double Y) a, (double X, double Y) b) in Outlines(sheet))
        {
            lines++;
            Assert.All(outside, label => Assert.False(label.Meets(a, b), $"'{label.Text}' stands on an outline"));
        }

        Assert.True(lines > (titled ? 30 : 1), $"only {lines} outline segments were met");
    }

    private static Label Read(XElement text)
    {
        double x = Number(text, "x");
        double y = Number(text, "y");
        double font = Number(text, "font-size");
        double width = text.Value.Length * font * Advance;
        double left = text.Attribute("text-anchor")?.Value switch { "middle" => x - (width / 2), "end" => x - width, _ => x };
        if (text.Attribute("transform") is not { } turn)
        {
            return new Label(text.Value, left, y - (Ascent * font), left + width, y + (Descent * font));
        }

        // Turned by a quarter, to be read from the right.
        Assert.StartsWith("rotate(-90 ", turn.Value, StringComparison.Ordinal);
        double start = y - (left - x);
        return new Label(text.Value, x - (Ascent * font), start - width, x + (Descent * font), start);
    }

    private static IEnumerable<((double X, double Y) From, (double X, double Y) To)> Outlines(XElement sheet)
    {
        foreach (XElement path in sheet.Elements().Where(e => e.Name.LocalName == "path" && e.Attribute("class")?.Value == "o"))
        {
            foreach (string loop in path.Attribute("d")!.Value.Split('M', StringSplitOptions.RemoveEmptyEntries))
            {
                double[] at = Numbers(Regex.Replace(loop, "[LZ]", " "));
                for (int i = 0; i + 1 < at.Length; i += 2)
                {
                    int next = (i + 2) % at.Length;
                    yield return ((at[i], at[i + 1]), (at[next], at[next + 1]));
                }
            }
        }
    }

    private static double Number(XElement element, string name) =>
        double.Parse(element.Attribute(name)!.Value, CultureInfo.InvariantCulture);

    private static double[] Numbers(string text) =>
        [.. text.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(number => double.Parse(number, CultureInfo.InvariantCulture))];
}
