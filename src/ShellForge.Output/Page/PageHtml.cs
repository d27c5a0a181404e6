using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using ShellForge.Board.Json;

namespace ShellForge.Output.Page;

/// <summary>
/// The report as one file that works offline: all that can be read stands in the HTML; the script only adds the view in space.
/// Without a script (built without Node) the page says so and the drawings serve.
/// </summary>
public static class PageHtml
{
    /// <summary>The page.</summary>
    /// <param name="content">What it shows.</param>
    /// <param name="assets">Style and script.</param>
    public static string Write(PageContent content, PageAssets assets)
    {
        var html = new StringBuilder(1 << 20);
        html.Append("<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n");
        html.Append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n");
        html.Append("<title>").Append(Text(content.Name)).Append(" - housing report</title>\n");
        html.Append("<link rel=\"icon\" href=\"data:,\">\n<style>").Append(assets.Style).Append("</style>\n</head>\n<body>\n");
        html.Append("<a class=\"skip\" href=\"#findings\">To the findings</a>\n");
        AppendHead(html, content);
        html.Append("<main>\n");
        // Where one works, the file and its housing come first.
        bool isBench = content.Live is not null;
        if (!isBench)
        {
            AppendAnswers(html, content, assets.Script is not null);
        }

        if (assets.Script is not null && content.Live?.Written is { } written)
        {
            PageFileSection.Append(html, written.File);
        }

        PageViewSection.Append(html, content, assets.Script is not null);
        if (isBench)
        {
            AppendAnswers(html, content, assets.Script is not null);
        }

        PageSections.Append(html, content);
        html.Append("</main>\n<footer>Made by ShellForge from the written meshes. No figure here is a certificate of safety.</footer>\n");
        if (assets.Script is not null)
        {
            AppendData(html, content);
            html.Append("<script id=\"page-script\" type=\"text/plain\">").Append(assets.Script).Append("</script>\n");
            html.Append("<script>").Append(Starter).Append("</script>\n");
        }

        return html.Append("</body>\n</html>\n").ToString();
    }

    // The script travels deflated: it is two thirds of the page otherwise. Browsers without DecompressionStream keep the drawings.
    private const string Starter = """
        (async () => {
          try {
            const bytes = Uint8Array.from(atob(document.getElementById('page-script').textContent), (c) => c.charCodeAt(0));
            const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('deflate-raw'));
            const script = document.createElement('script');
            script.textContent = await new Response(stream).text();
            document.body.append(script);
          } catch {
            document.getElementById('view').classList.add('flat');
            document.getElementById('view-status').textContent = 'This browser cannot draw in 3D; the drawings below show the same housing.';
          }
        })();
        """;

    /// <summary>Text made safe for HTML.</summary>
    internal static string Text(string text) => HtmlEncoder.Default.Encode(text);

    private static void AppendHead(StringBuilder html, PageContent content)
    {
        html.Append("<header class=\"top\" id=\"head\" data-refresh>\n<h1>").Append(Text(content.Name)).Append("</h1>\n");
        if (content.Revision.Length > 0)
        {
            html.Append("<span class=\"rev\">revision ").Append(Text(content.Revision)).Append("</span>\n");
        }

        html.Append("<p class=\"verdict ").Append(content.Verdict.Kind).Append("\">").Append(Text(content.Verdict.Words))
            .Append("</p>\n</header>\n");
        if (content.Live is { } live)
        {
            html.Append("<div class=\"strip\" role=\"region\" aria-label=\"The housing in short\">\n");
            AppendLive(html, live);
            AppendFacts(html, content);
            html.Append("</div>\n");
        }
        else
        {
            html.Append("<nav class=\"contents\" aria-label=\"On this page\">");
            foreach ((string id, string title) in PageSections.Contents(content))
            {
                html.Append($"<a href=\"#{id}\">{Text(title)}</a> ");
            }

            html.Append("</nav>\n");
        }
    }

    private static void AppendAnswers(StringBuilder html, PageContent content, bool hasScript)
    {
        html.Append("<ul class=\"answers\" id=\"answers\" data-refresh>\n");
        foreach (PageAnswer answer in content.Answers)
        {
            html.Append("<li><b>").Append(Text(answer.Question)).Append("</b> ").Append(Text(answer.Answer));
            if (answer.At is { } at && hasScript)
            {
                html.Append(CultureInfo.InvariantCulture,
                    $" <button type=\"button\" class=\"plain small\" data-place=\"{at.X:0.###} {at.Y:0.###} {at.Z:0.###}\">Show it<span "
                        + $"class=\"skip\">: {Text(answer.Question)}</span></button>");
            }

            html.Append("</li>\n");
        }

        html.Append("</ul>\n");
    }

    private static void AppendFacts(StringBuilder html, PageContent content)
    {
        html.Append("<dl class=\"facts\" id=\"facts\" data-refresh>");
        foreach ((string what, string value) in content.Facts)
        {
            html.Append($"<div><dt>{Text(what)}</dt><dd>{Text(value)}</dd></div>");
        }

        html.Append("</dl>\n");
    }

    private static void AppendLive(StringBuilder html, PageLive live)
    {
        bool broken = !live.Mistakes.IsDefaultOrEmpty;
        html.Append(CultureInfo.InvariantCulture,
            $"<div class=\"live{(broken ? " broken" : "")}\" id=\"live-state\" role=\"status\" data-version=\"{live.Version}\" "
                + $"data-checked=\"{(live.Checked ? "yes" : "no")}\" data-key=\"{Text(live.Written?.Key ?? "")}\">");
        if (broken)
        {
            html.Append("<p>The file has mistakes. The housing appears here when they are gone.</p><ul>");
            foreach (PageMistake mistake in live.Mistakes)
            {
                html.Append("<li>").Append(Text(mistake.Text)).Append("<code>").Append(Text(mistake.Source)).Append("</code></li>");
            }

            html.Append("</ul>");
        }
        else
        {
            html.Append("Following the file");
        }

        html.Append("</div>\n");
    }

    private static void AppendData(StringBuilder html, PageContent content) =>
        html.Append("<script id=\"housing-data\" type=\"application/json\">")
            .Append(Encoding.UTF8.GetString(JsonText.InPage(PageData.Of(content), PageDataContext.Default.PageData)))
            .Append("</script>\n");
}
