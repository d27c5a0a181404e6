using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using ShellForge.Board.Json;
using ShellForge.Sweep.Folder;
using ShellForge.Sweep.Rows;
using ShellForge.Sweep.Seeking;

namespace ShellForge.Sweep.Index;

/// <summary>
/// The index for people: one page that works offline and can be read without its script. The script sorts, filters and puts two
/// variants side by side.
/// </summary>
internal static class IndexPage
{
    /// <summary>Variants on the page; a longer table is for a spreadsheet, and the page says so.</summary>
    public const int MostShown = 2000;

    /// <summary>The style sheet of the pages.</summary>
    public static string Style => Read("index.css");

    public static void Write(Stream stream, IndexContent content)
    {
        using var html = new StreamWriter(stream, new UTF8Encoding(false), leaveOpen: true) { NewLine = "\n" };
        IndexSurvey survey = content.Survey;
        html.Write(
            "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width, "
                + "initial-scale=1\">\n");
        html.Write(Policy());
        html.Write($"<title>{Html.Text(content.Title)}</title>\n<style>\n{Style}</style>\n</head>\n<body>\n");
        html.Write($"<header><h1>{Html.Text(content.Title)}</h1>\n<p class=\"sum\">{Sum(survey)}</p></header>\n<main>\n");
        WriteBest(html, content.Folder);
        WriteTable(html, content);
        html.Write("<section id=\"two\" hidden><h2>Two side by side</h2><div id=\"two-body\"></div></section>\n");
        string plots = IndexPlots.Of(survey);
        if (plots.Length > 0)
        {
            html.Write(
                $"<section><h2>What each value does</h2>\n<p class=\"soft\">Bars reach from the least to the greatest over all variants "
                    + $"with that value, dots stand at the mean.</p>\n{plots}</section>\n");
        }

        IndexBatch.Write(html, content);
        html.Write("</main>\n");
        WriteData(html, content);
        html.Write($"<script>{Script()}</script>\n</body>\n</html>\n");
    }

    private static string Script() => $"\n{Read("index.js")}";

    // The page's own script alone runs, and only pictures from files beside it are shown, whatever a row says.
    private static string Policy()
    {
        string script = Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(Script())));
        return $"<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; script-src 'sha256-{script}'; "
            + "style-src 'unsafe-inline'; img-src 'self' file:; base-uri 'none'; form-action 'none'\">\n";
    }

    private static string Sum(IndexSurvey survey)
    {
        (int print, int minds, int stops, int without) = survey.Outcomes;
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{survey.Count} variant{(survey.Count == 1 ? "" : "s")}: <b class=\"good\">{print} to print</b>, <b class=\"warn\">{minds} "
                + $"to print with warnings in mind</b>, <b class=\"stop\">{stops} not to "
                + $"print</b>{(without == 0 ? "" : $", <b class=\"stop\">{without} that can't be made</b>")}");
    }

    private static void WriteBest(StreamWriter html, SweepFolder folder)
    {
        if (folder.Head.Best is not { } wish)
        {
            return;
        }

        var choice = BestChoice.Of(wish, folder.Rows());
        string best = choice.Row is null ? "None of them can be printed." : $"<b>{Html.Text(choice.Row.Folder)}</b>";
        html.Write($"<section><h2>The best by {Html.Text(BestChoice.Words(wish))}</h2>\n<p>{best}</p>\n");
        if (choice.Limit is not null)
        {
            html.Write($"<p>What limits it: {Html.Text(choice.Limit)}</p>\n");
        }

        if (choice.Front.Length > 1)
        {
            html.Write(
                $"<p>None beats these in all that is wished: {Html.Text(string.Join(", ", choice.Front.Select(row => row.Folder)))}</p>\n");
        }

        html.Write("</section>\n");
    }

    private static void WriteTable(StreamWriter html, IndexContent content)
    {
        IndexSurvey survey = content.Survey;
        html.Write("<section><h2>Variants</h2>\n<div id=\"tools\" hidden></div>\n");
        if (survey.Count > MostShown)
        {
            html.Write(
                string.Create(CultureInfo.InvariantCulture,
                    $"<p>The first {MostShown} of {survey.Count} are shown; <a href=\"index.csv\">index.csv</a> holds all.</p>\n"));
        }

        html.Write(
            "<div class=\"wide\" tabindex=\"0\" role=\"region\" aria-label=\"Variants\"><table "
                + "id=\"variants\">\n<thead><tr><th>housing</th>");
        html.Write(string.Concat(Told(survey).Select(name => $"<th>{Html.Path(name)}</th>")));
        html.Write($"<th>verdict</th>{string.Concat(survey.Columns.Select(Titled))}</tr></thead>\n<tbody>\n");
        int number = 0;
        foreach (VariantRow row in content.Folder.Rows().Take(MostShown))
        {
            html.Write(Row(row, survey, number++, content.Folder.HasFilesOf(row)));
        }

        html.Write("</tbody></table></div></section>\n");
    }

    private static string Titled(IndexColumn column)
    {
        string unit = column.Unit.Length == 0 ? "" : $" <span class=\"unit\">{Html.Text(column.Unit)}</span>";
        return $"<th class=\"number\">{Html.Text(column.Title)}{unit}</th>";
    }

    private static IEnumerable<string> Told(IndexSurvey survey) =>
    [
        .. survey.HasBoards ? ["board"] : (string[])[], .. survey.HasCases ? ["case"] : (string[])[], .. survey.Axes.Select(axis => axis),
    ];

    private static string Row(VariantRow row, IndexSurvey survey, int number, bool hasFiles)
    {
        var html = new StringBuilder();
        string folder = Html.Text(row.Folder);
        html.Append(CultureInfo.InvariantCulture, $"<tr data-row=\"{number}\"><td class=\"look\">");
        html.Append(hasFiles
            ? $"<a href=\"./{folder}/report.html\"><img src=\"./{folder}/apart.png\" alt=\"housing pulled apart\" "
                + $"width=\"72\" height=\"72\" loading=\"lazy\"><span>{Html.Text(row.Code)}</span></a>"
            : $"<span>{Html.Text(row.Code)}</span>");
        html.Append("</td>");
        IEnumerable<string> told =
        [
            .. survey.HasBoards ? [row.Board] : (string[])[], .. survey.HasCases ? [row.Case ?? ""] : (string[])[],
            .. survey.Axes.Select(axis => row.Values.FirstOrDefault(value => value.Name == axis)?.Text ?? ""),
        ];
        html.AppendJoin("", told.Select(text => $"<td>{Html.Text(text)}</td>"));
        if (row.Housing is not { } housing)
        {
            return html.Append(CultureInfo.InvariantCulture,
                $"<td class=\"stop\">can't be made</td><td "
                    + $"colspan=\"{survey.Columns.Count()}\">{Html.Text(string.Join(" ", row.Faults))}</td></tr>\n").ToString();
        }

        (string word, string mark) = housing.Verdict switch
        {
            "print" => ("print", "good"),
            "mind-warnings" => ("mind warnings", "warn"),
            _ => ("do not print", "stop"),
        };
        html.Append(CultureInfo.InvariantCulture, $"<td class=\"{mark}\">{word}</td>");
        html.AppendJoin("", survey.Columns.Select(column => $"<td class=\"number\">{column.Shown(housing)}</td>"));
        return html.Append("</tr>\n").ToString();
    }

    private static void WriteData(StreamWriter html, IndexContent content)
    {
        html.Write("<script type=\"application/json\" id=\"data\">[\n");
        int number = 0;
        foreach (VariantRow row in content.Folder.Rows().Take(MostShown))
        {
            // Only what differs somewhere is worth a look side by side.
            VariantRow shown = row with
            {
                Housing = row.Housing is null ? null
                    : row.Housing with
                    {
                        Resolved = [.. row.Housing.Resolved.Where(d => content.Survey.Differing.Contains(d.Name))],
                        Parts = []
                    },
            };
            html.Write(number++ == 0 ? "" : ",\n");
            html.Flush();
            html.BaseStream.Write(JsonText.InPage(shown, RowJson.Default.VariantRow));
        }

        html.Write("]</script>\n");
    }

    private static string Read(string name)
    {
        using Stream stream = typeof(IndexPage).Assembly.GetManifestResourceStream($"index/{name}")!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }
}
