using System.Text;
using ShellForge.Sweep.Index;

namespace ShellForge.Sweep.Comparing;

/// <summary>What differs between two housings, as a page that works offline.</summary>
public static class ComparisonPage
{
    /// <summary>The page.</summary>
    /// <param name="before">What the first is called.</param>
    /// <param name="after">What the second is called.</param>
    /// <param name="comparison">What differs.</param>
    public static byte[] Of(string before, string after, HousingComparison comparison)
    {
        string title = $"{before} and {after}";
        var html =
            new StringBuilder(
                "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" "
                    + "content=\"width=device-width, initial-scale=1\">\n")
            .Append("<title>").Append(Html.Text(title)).Append("</title>\n<style>\n").Append(IndexPage.Style)
                .Append("</style>\n</head>\n<body>\n<header><h1>")
            .Append(Html.Text(title)).Append("</h1>\n<p class=\"sum\">").Append(comparison.IsEmpty ? "Nothing differs." : "What differs.")
                .Append("</p></header>\n<main>\n");
        foreach ((string name, var changes) in comparison.All)
        {
            if (changes.IsEmpty)
            {
                continue;
            }

            html.Append("<section><h2>").Append(Html.Text(name))
                .Append("</h2>\n<div class=\"wide\" tabindex=\"0\" role=\"region\" aria-label=\"").Append(Html.Text(name))
                .Append("\"><table><thead><tr><th>what</th><th>").Append(Html.Text(before)).Append("</th><th>").Append(Html.Text(after))
                    .Append("</th><th>why</th></tr></thead><tbody>\n");
            foreach (Change change in changes)
            {
                html.AppendJoin("", "<tr>", Cell(change.What), Cell(change.Before), Cell(change.After), Cell(change.Why), "</tr>\n");
            }

            html.Append("</tbody></table></div></section>\n");
        }

        return Encoding.UTF8.GetBytes(html.Append("</main>\n</body>\n</html>\n").ToString());
    }

    private static string Cell(string text) => $"<td>{Html.Text(text.Length == 0 ? "\u2013" : text)}</td>";
}
