using System.Globalization;
using System.Text;

namespace ShellForge.Sweep.Index;

/// <summary>
/// Small plots: what each value of an axis does to a figure. A bar from the least to the greatest over all other values, a dot at the mean.
/// One row of plots an axis; figures that an axis doesn't move are left out.
/// </summary>
internal static class IndexPlots
{
    private const int Width = 180;
    private const int Height = 92;
    private const int Left = 8;
    private const int Top = 20;
    private const int Bottom = 74;

    // A figure that moves by less than this share of its size is as good as still.
    private const double LeastMove = 0.002;

    public static string Of(IndexSurvey survey)
    {
        var html = new StringBuilder();
        foreach ((string axis, IReadOnlyList<string> values) in survey.PlottedAxes)
        {
            var plots = new StringBuilder();
            for (int i = 0; i < IndexColumn.All.Length; i++)
            {
                Spread?[] spreads = [.. values.Select(value => survey.SpreadOf(axis, value, i))];
                if (Moves(spreads))
                {
                    plots.Append(Plot(IndexColumn.All[i], values, spreads));
                }
            }

            html.Append("<h3>").Append(Html.Text(axis)).Append("</h3>\n<div class=\"plots\">")
                .Append(plots.Length == 0 ? "<p class=\"soft\">moves none of the figures</p>" : plots).Append("</div>\n");
        }

        return html.ToString();
    }

    private static bool Moves(Spread?[] spreads)
    {
        double[] means = [.. spreads.OfType<Spread>().Select(spread => spread.Mean)];
        return means.Length > 1 && means.Max() - means.Min() > LeastMove * Math.Max(1, Math.Abs(means.Max()));
    }

    private static string Plot(IndexColumn column, IReadOnlyList<string> values, Spread?[] spreads)
    {
        double least = spreads.OfType<Spread>().Min(s => s.Least);
        double greatest = spreads.OfType<Spread>().Max(s => s.Greatest);
        double step = (double)(Width - (2 * Left)) / values.Count;
        double Y(double figure) => greatest > least ? Bottom - ((Bottom - Top) * (figure - least) / (greatest - least))
            : (Top + Bottom) / 2.0;
        var svg = new StringBuilder();
        svg.Append(CultureInfo.InvariantCulture,
            $"<svg class=\"plot\" viewBox=\"0 0 {Width} {Height}\" role=\"img\"><title>{Html.Text(column.Title)}: ")
            .AppendJoin(", ",
                values.Select(
                    (value, i) => spreads[i] is { } s
                        ? $"{Html.Text(value)} {s.Mean.ToString(column.Format, CultureInfo.InvariantCulture)}"
                            : $"{Html.Text(value)} none"))
            .Append("</title>")
            .Append(CultureInfo.InvariantCulture,
                $"<text x=\"{Left}\" y=\"12\" "
                    + $"class=\"name\">{Html.Text(column.Title)}{(column.Unit.Length == 0 ? "" : ", " + Html.Text(column.Unit))}</text>")
            .Append(CultureInfo.InvariantCulture,
                $"<text x=\"{Width - Left}\" y=\"12\" class=\"end\">{least.ToString(column.Format, CultureInfo.InvariantCulture)} to "
                    + $"{greatest.ToString(column.Format, CultureInfo.InvariantCulture)}</text>");
        var line = new StringBuilder();
        for (int i = 0; i < values.Count; i++)
        {
            double x = Left + (step * (i + 0.5));
            if (spreads[i] is { } s)
            {
                svg.Append(CultureInfo.InvariantCulture,
                    $"<line x1=\"{x:0.#}\" x2=\"{x:0.#}\" y1=\"{Y(s.Least):0.#}\" y2=\"{Y(s.Greatest):0.#}\" class=\"bar\"/>");
                line.Append(CultureInfo.InvariantCulture, $"{x:0.#},{Y(s.Mean):0.#} ");
                svg.Append(CultureInfo.InvariantCulture, $"<circle cx=\"{x:0.#}\" cy=\"{Y(s.Mean):0.#}\" r=\"3\"/>");
            }

            int letters = (int)(step / 5.5);
            string value = values[i].Length <= letters ? values[i] : letters < 3 ? "" : values[i][..(letters - 1)] + "\u2026";
            svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{x:0.#}\" y=\"{Height - 4}\" class=\"value\">{Html.Text(value)}</text>");
        }

        return svg.Append(CultureInfo.InvariantCulture, $"<polyline points=\"{line.ToString().TrimEnd()}\"/></svg>\n").ToString();
    }
}
