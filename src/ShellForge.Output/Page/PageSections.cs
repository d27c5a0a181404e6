using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using ShellForge.Planning.Hands;

namespace ShellForge.Output.Page;

/// <summary>The readable part of the page, in the order in which a maker needs it.</summary>
internal static class PageSections
{
    public static void Append(StringBuilder html, PageContent content)
    {
        AppendFindings(html, content);
        if (content.Live is { Checked: false })
        {
            return;
        }

        AppendShopping(html, content);
        AppendParts(html, content);
        AppendSteps(html, content);
        AppendLight(html, content);
        AppendDrawings(html, content);
        AppendResolved(html, content);
    }

    /// <summary>The sections that the page has, in their order.</summary>
    public static IEnumerable<(string Id, string Title)> Contents(PageContent content)
    {
        yield return ("view", "Turn it round");
        yield return ("findings", "Findings");
        yield return ("shopping", "What to buy");
        yield return ("parts", "How to print");
        yield return ("assembly", "Put it together");
        if (HasLight(content))
        {
            yield return ("light", "Light, heat and power");
        }

        yield return ("drawings", "Drawings");
        yield return ("resolved", "Every value");
    }

    private static bool HasLight(PageContent content) => !content.Pictures.IsEmpty || !content.Figures.IsEmpty;

    private static void Section(StringBuilder html, string id, string title, Action body)
    {
        html.Append(
            $"<section id=\"{id}\" data-refresh aria-labelledby=\"{id}-title\">\n<h2 id=\"{id}-title\">{PageHtml.Text(title)}</h2>\n");
        body();
        html.Append("</section>\n");
    }

    private static void AppendFindings(StringBuilder html, PageContent content) => Section(html, "findings", "Findings", () =>
    {
        if (content.Findings.IsEmpty)
        {
            html.Append(content.Live is { Checked: false }
                ? "<p>The rules are being run.</p>\n"
                : "<p>Nothing was found that needs your hand.</p>\n");
        }

        foreach (PageFinding finding in content.Findings)
        {
            html.Append(CultureInfo.InvariantCulture, $"<article class=\"finding {finding.Severity}\" id=\"finding-{finding.Number}\">\n");
            html.Append(CultureInfo.InvariantCulture,
                $"<p class=\"what\"><span class=\"weight\">{finding.Number} {finding.Severity}</span> {PageHtml.Text(finding.Subject)}: "
                    + $"{PageHtml.Text(finding.Message)}</p>\n");
            if (finding.Remedy.Length > 0)
            {
                html.Append($"<p class=\"remedy\">What to do: {PageHtml.Text(finding.Remedy)}</p>\n");
            }

            if (finding.Accepted.Length > 0)
            {
                html.Append($"<p class=\"accepted\">Accepted in the file: {PageHtml.Text(finding.Accepted)}</p>\n");
            }

            html.Append(
                $"<p class=\"data\">{PageHtml.Text(string.Join("; ", new[] { finding.Data, $"rule {finding.Rule}" }.Where(text => text.Length > 0)))}");
            if (finding.At is not null)
            {
                html.Append(CultureInfo.InvariantCulture,
                    $" <button type=\"button\" class=\"plain\" data-fly=\"{finding.Number}\">Show the place<span class=\"skip\"> of "
                        + $"finding {finding.Number}</span></button>");
            }

            html.Append("</p>\n</article>\n");
        }
    });

    private static void AppendDrawings(StringBuilder html, PageContent content) => Section(html, "drawings", "Drawings", () =>
    {
        html.Append(CultureInfo.InvariantCulture,
            $"<details><summary>{content.Drawings.Length} drawings, each to be opened large</summary>\n<div class=\"drawings\">\n");
        for (int i = 0; i < content.Drawings.Length; i++)
        {
            PageDrawings.Append(html, content.Drawings[i], i + 1);
        }

        html.Append("</div>\n</details>\n");
    });

    private static void AppendLight(StringBuilder html, PageContent content)
    {
        if (!HasLight(content))
        {
            return;
        }

        Section(html, "light", "Light, heat and power", () =>
        {
            html.Append("<div class=\"pictures\">\n");
            foreach (PagePicture picture in content.Pictures)
            {
                html.Append(
                    $"<figure{(picture.Dark ? " class=\"dark\"" : "")}><img alt=\"{PageHtml.Text(picture.Alternative)}\" "
                        + $"src=\"data:image/png;base64,{Convert.ToBase64String(picture.Png)}\"><figcaption>{PageHtml.Text(picture.Caption)}</figcaption></figure>\n");
            }

            html.Append("</div>\n");
            Table(html, "What was computed", ["what", "value", "what it means"],
                content.Figures.Select(f => new[] { f.What, f.Value, f.Meaning }));
            if (content.Temperatures is { } warm)
            {
                html.Append($"<details><summary>{PageHtml.Text(warm.Caption)}</summary>\n");
                Table(html, warm.Caption, [.. warm.Heads], warm.Rows.Select(row => row.ToArray()));
                html.Append("</details>\n");
            }
        });
    }

    private static void AppendShopping(StringBuilder html, PageContent content) => Section(html, "shopping", "What to buy", () =>
        Table(html, "To have at hand before you start", ["item", "count"],
            content.Shopping.Select(s => new[] { s.Item, s.Count.ToString(CultureInfo.InvariantCulture) })));

    private static void AppendParts(StringBuilder html, PageContent content) => Section(html, "parts", "How to print", () =>
    {
        Table(
            html,
            "Time is an estimate from the lines of every layer.",
            ["part", "file", "filament", "size", "mass", "time", "lies on the bed"],
            content.Parts.Select(p => new[] { p.Name, p.File, p.Filament, p.Size, p.Mass, p.Time, p.Orientation }));
        if (content.Sliced is { } sliced)
        {
            Table(html, sliced.Caption, [.. sliced.Heads], sliced.Rows.Select(row => row.ToArray()));
        }

        html.Append(content.Parts.All(p => p.Pauses == content.Parts[0].Pauses) ? "<details>" : "<details open>")
            .Append("<summary>What to set in your slicer: layers, walls, fill, pauses</summary>\n");
        Table(html, content.Live is null ? "Part by part; print.json has the same for scripts" : "Part by part",
            ["part", "layers", "walls", "fill", "pauses"],
            content.Parts.Select(p => new[] { p.Name, p.Layers, p.Walls, p.Fill, p.Pauses }));
        if (content.Parts.Any(p => !p.Solid.IsEmpty))
        {
            Table(html, "Places to print solid, in the part's own file", ["part", "place"],
                content.Parts.SelectMany(p => p.Solid.Select(place => new[] { p.Name, place })));
        }

        Paragraphs(html, content.PrintNotes);
        html.Append("</details>\n");
        Paragraphs(html, content.PrintAdvice);
    });

    private static void Paragraphs(StringBuilder html, ImmutableArray<string> sentences)
    {
        foreach (string sentence in sentences)
        {
            html.Append($"<p>{PageHtml.Text(sentence)}</p>\n");
        }
    }

    private static void AppendSteps(StringBuilder html, PageContent content) => Section(html, "assembly", "Put it together", () =>
    {
        Cautions(html, content.Cautions);
        html.Append("<ol class=\"steps\">\n");
        foreach (PageStep step in content.Steps)
        {
            html.Append($"<li><div><h3>{PageHtml.Text(step.Title)}</h3><p>{PageHtml.Text(step.Text)}</p>");
            Cautions(html, step.Cautions);
            if (!step.Tools.IsEmpty)
            {
                html.Append($"<p class=\"tools\">Tools: {PageHtml.Text(string.Join(", ", step.Tools))}</p>");
            }

            html.Append(step.Check.Length == 0 ? "</div>" : $"<p class=\"check\">Check: {PageHtml.Text(step.Check)}</p></div>");
            if (step.Png is not null)
            {
                html.Append(
                    $"<img alt=\"{PageHtml.Text(step.Alternative)}\" src=\"data:image/png;base64,{Convert.ToBase64String(step.Png)}\">");
            }

            html.Append("</li>\n");
        }

        html.Append("</ol>\n");
    });

    private static void AppendResolved(StringBuilder html, PageContent content) =>
        Section(html, "resolved", "Every value and where it comes from", () =>
    {
        html.Append(CultureInfo.InvariantCulture, $"<details><summary>{content.Resolved.Length} values</summary>\n");
        Table(html, "Lengths in millimetres", ["value", "is", "from", "because"],
            content.Resolved.Select(r => new[] { r.Path, r.Value, r.From, r.Why }));
        html.Append("</details>\n");
    });

    // One box a place, a line a risk.
    private static void Cautions(StringBuilder html, ImmutableArray<HandCaution> cautions)
    {
        if (!cautions.IsEmpty)
        {
            html.Append(
                $"<p class=\"caution\">{string.Join("<br>", cautions.Select(each => $"<b>{PageHtml.Text(each.Risk)}.</b> {PageHtml.Text(each.Text)}"))}</p>\n");
        }
    }

    private static void Table(StringBuilder html, string caption, string[] heads, IEnumerable<string[]> rows)
    {
        html.Append(
            $"<div class=\"wide\" tabindex=\"0\" role=\"group\" aria-label=\"{PageHtml.Text(caption)}\"><table "
                + $"class=\"of{heads.Length}\"><caption>{PageHtml.Text(caption)}</caption>\n<thead><tr>");
        foreach (string head in heads)
        {
            html.Append($"<th scope=\"col\">{PageHtml.Text(head)}</th>");
        }

        html.Append("</tr></thead>\n<tbody>\n");
        foreach (string[] row in rows)
        {
            html.Append("<tr>");
            foreach (string cell in row)
            {
                html.Append($"<td>{PageHtml.Text(cell)}</td>");
            }

            html.Append("</tr>\n");
        }

        html.Append("</tbody></table></div>\n");
    }
}
