using System.Text;

namespace ShellForge.Output.Page;

/// <summary>The board file, to be written in beside its housing.</summary>
internal static class PageFileSection
{
    public static void Append(StringBuilder html, string file) => html.Append(
        $"""
        <section id="file" aria-labelledby="file-title">
        <h2 id="file-title">{PageHtml.Text(file)}</h2>
        <p class="bar"><button type="button" class="plain" id="save-file" disabled>Save</button>
        <span id="file-state" role="status"></span></p>
        <div id="file-clash" class="live broken" role="alert" hidden><p></p>
        <p><button type="button" class="plain" id="take-theirs">Take the file's text</button>
        <button type="button" class="plain" id="keep-mine">Keep mine</button></p></div>
        <div id="editor"></div>
        <p class="hint">Ctrl+Space lists what can stand here, the pointer on a key tells what it means, Ctrl+S saves, Ctrl+Z takes back.</p>
        </section>

        """);
}
