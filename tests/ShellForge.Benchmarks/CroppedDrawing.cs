using System.Globalization;
using System.Text.RegularExpressions;

namespace ShellForge.Benchmarks;

/// <summary>A drawing without its sheet: frame and title block left out, cut to what is drawn.</summary>
internal static partial class CroppedDrawing
{
    // Paper round what is drawn, mm, and how wide a letter is at the most, as a share of its height.
    private const double Margin = 3;
    private const double Letter = 0.6;

    /// <summary>The drawing as a picture of its own.</summary>
    /// <param name="sheet">A whole sheet, line by line one element.</param>
    public static string Of(string sheet)
    {
        string[] lines = sheet.Split('\n');
        int first = Array.FindIndex(lines, line => line.StartsWith("<rect", StringComparison.Ordinal));
        double[][] frames = [.. lines.Where(IsFrame).Select(line => Corners(line).ToArray())];
        double[] title = frames[^1];
        (double left, double top) = (Even(title).Min(), Odd(title).Min());
        string[] drawn = [.. lines.Skip(first + 1).Where(line => !IsFrame(line) && !IsIn(line, left, top) && line != "</svg>")];
        double[][] corners = [.. drawn.Select(line => Corners(line).ToArray()).Where(each => each.Length > 1)];
        double fromX = corners.Min(each => Even(each).Min()) - Margin;
        double fromY = corners.Min(each => Odd(each).Min()) - Margin;
        double toX = corners.Max(each => Even(each).Max()) + Margin;
        double toY = corners.Max(each => Odd(each).Max()) + Margin;
        string head = string.Create(CultureInfo.InvariantCulture,
            $"width=\"{toX - fromX:0.###}mm\" height=\"{toY - fromY:0.###}mm\" "
                + $"viewBox=\"{fromX:0.###} {fromY:0.###} {toX - fromX:0.###} {toY - fromY:0.###}\"");
        string paper = string.Create(CultureInfo.InvariantCulture,
            $"<rect x=\"{fromX:0.###}\" y=\"{fromY:0.###}\" width=\"{toX - fromX:0.###}\" height=\"{toY - fromY:0.###}\" fill=\"#fff\"/>");
        return string.Join('\n', [Size().Replace(lines[0], head, 1), .. lines.Take(first).Skip(1), paper, .. drawn, "</svg>", ""]);
    }

    private static bool IsFrame(string line) => line.StartsWith("<path class=\"f\"", StringComparison.Ordinal);

    private static bool IsIn(string line, double left, double top)
    {
        double[] at = [.. Corners(line)];
        return at.Length > 1 && Even(at).Min() >= left && Odd(at).Min() >= top;
    }

    private static IEnumerable<double> Even(double[] pairs) => pairs.Where((_, i) => i % 2 == 0);

    private static IEnumerable<double> Odd(double[] pairs) => pairs.Where((_, i) => i % 2 == 1);

    // x, y, x, y of everything on a line: corners of a path, both ends of a text.
    private static IEnumerable<double> Corners(string line)
    {
        if (Text().Match(line) is { Success: true } text)
        {
            (double x, double y, double size) = (Number(text, 1), Number(text, 2), Number(text, 3));
            double width = Letter * size * text.Groups[5].Value.Length;
            double start = text.Groups[4].Value switch { "middle" => x - (width / 2), "end" => x - width, _ => x };
            return [start, y - size, start + width, y];
        }

        return Path().Match(line) is { Success: true } path
            ? Pair().Matches(path.Groups[1].Value).SelectMany(pair => new[] { Number(pair, 1), Number(pair, 2) }) : [];
    }

    private static double Number(Match match, int group) => double.Parse(match.Groups[group].Value, CultureInfo.InvariantCulture);

    [GeneratedRegex("width=\"[^\"]*\" height=\"[^\"]*\" viewBox=\"[^\"]*\"")]
    private static partial Regex Size();

    [GeneratedRegex("<text x=\"([-0-9.]+)\" y=\"([-0-9.]+)\" font-size=\"([0-9.]+)\"(?:[^>]*text-anchor=\"([a-z]+)\")?[^>]*>([^<]*)<")]
    private static partial Regex Text();

    [GeneratedRegex("<path [^>]*d=\"([^\"]*)\"")]
    private static partial Regex Path();

    [GeneratedRegex("[ML](-?[0-9.]+) (-?[0-9.]+)")]
    private static partial Regex Pair();
}
