using System.Globalization;
using System.Text;

namespace ShellForge.Output.Page;

/// <summary>The view in space with its controls; and, when the page follows a file, the numbers to try.</summary>
internal static class PageViewSection
{
    public static void Append(StringBuilder html, PageContent content, bool hasScript)
    {
        html.Append("<section id=\"view\"").Append(hasScript ? "" : " class=\"flat\"")
            .Append(" aria-labelledby=\"view-title\">\n<h2 id=\"view-title\">Turn it round</h2>\n");
        html.Append(
            "<div class=\"stage\"><canvas id=\"canvas\" tabindex=\"0\" role=\"application\" aria-label=\"The housing in 3D. Arrow keys "
                + "turn it, plus and minus zoom, Home goes back.\"></canvas><div id=\"pins\"></div>");
        if (content.Still is { } still)
        {
            html.Append(
                $"<img class=\"still\" alt=\"The housing pulled apart\" src=\"data:image/png;base64,{Convert.ToBase64String(still)}\">");
        }

        html.Append("</div>\n");
        html.Append("<p id=\"view-status\" role=\"status\">").Append(hasScript
            ? "Drag to turn, wheel or two fingers to zoom. Numbers are the findings below."
            : "This report was made without the 3D script; the drawings below show the same housing.").Append("</p>\n");
        if (hasScript)
        {
            AppendControls(html, content);
        }

        html.Append("</section>\n");
        if (content.Live is { } live)
        {
            AppendTries(html, live);
        }
    }

    private static void AppendControls(StringBuilder html, PageContent content)
    {
        html.Append("<div class=\"controls\">\n");
        html.Append("<fieldset><legend>Look from</legend>");
        foreach ((string stand, string label) in new[] { ("front", "The front"), ("above", "Above"), ("below", "Below"),
            ("side", "The side") })
        {
            html.Append($"<button type=\"button\" class=\"plain\" data-stand=\"{stand}\">{label}</button> ");
        }

        html.Append(
            "</fieldset>\n<div><label class=\"label\" for=\"explode\">Pull apart</label><input id=\"explode\" type=\"range\" min=\"0\" "
                + "max=\"1\" step=\"0.01\" value=\"0\"></div>\n");
        html.Append(
            "<div><label class=\"label\" for=\"cut-axis\">Cut open</label><select id=\"cut-axis\"><option value=\"none\">not "
                + "cut</option><option value=\"x\">across x</option><option value=\"y\">across y</option><option "
                + "value=\"z\">level</option></select>\n");
        html.Append(
            "<input id=\"cut-place\" type=\"range\" min=\"0\" max=\"1\" step=\"0.002\" value=\"0.5\" disabled aria-label=\"Place of the "
                + "cut\"></div>\n");
        html.Append("<fieldset id=\"show-parts\"><legend>Show</legend>");
        foreach (PageBody body in content.Bodies.DistinctBy(b => b.BelongsTo))
        {
            string label = body.BelongsTo == body.Name ? body.Label : body.BelongsTo;
            html.Append(
                $"<label class=\"tick\"><input type=\"checkbox\" checked "
                    + $"value=\"{PageHtml.Text(body.BelongsTo)}\">{PageHtml.Text(label)}</label>");
        }

        html.Append("</fieldset>\n");
        // A page that follows a file gets its light when the rules are through.
        if (content.Light is not null || content.Live is not null)
        {
            html.Append(
                $"<fieldset id=\"light-switch\"{(content.Light is null ? " hidden" : "")}><legend>Light</legend><label "
                    + $"class=\"tick\"><input type=\"checkbox\" id=\"glow\" aria-describedby=\"glow-caution\">switched on, as "
                    + $"computed</label>");
            html.Append(
                "<p id=\"glow-caution\" class=\"hint\">A screen shows how even the light is, not how bright. Never look closely into LEDs "
                    + "at full brightness; flicker can trigger seizures.</p></fieldset>\n");
        }

        html.Append("</div>\n");
    }

    private static void AppendTries(StringBuilder html, PageLive live)
    {
        html.Append(
            "<section id=\"tries\" aria-labelledby=\"tries-title\">\n<h2 id=\"tries-title\">Try a number</h2>\n<p>Nothing is written "
                + "until you say so.</p>\n");
        for (int i = 0; i < live.Tries.Length; i++)
        {
            PageTry number = live.Tries[i];
            html.Append(CultureInfo.InvariantCulture, $"<div class=\"try\"><label for=\"try-{i}\">{PageHtml.Text(number.Label)}</label>");
            html.Append(CultureInfo.InvariantCulture,
                $"<input id=\"try-{i}\" type=\"range\" data-path=\"{PageHtml.Text(number.Path)}\" min=\"{number.Least}\" "
                    + $"max=\"{number.Most}\" step=\"{number.Step}\" value=\"{number.Value}\">");
            html.Append(CultureInfo.InvariantCulture, $"<output for=\"try-{i}\">{number.Value}</output></div>\n");
        }

        html.Append("<label class=\"label\" for=\"set-line\">For the command line</label>\n<input id=\"set-line\" readonly value=\"\">\n");
        html.Append(
            "<p><button type=\"button\" class=\"plain\" id=\"copy-set\">Copy</button> <button type=\"button\" class=\"plain\" "
                + "id=\"write-set\">Write into the text</button> <button type=\"button\" class=\"plain\" id=\"forget-set\">Back to the "
                + "file</button></p>\n</section>\n");
    }
}
