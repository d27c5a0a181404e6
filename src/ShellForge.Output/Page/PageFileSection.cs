using System.Text;

namespace ShellForge.Output.Page;

/// <summary>The board file, to be written in beside its housing.</summary>
internal static class PageFileSection
{
    public static void Append(StringBuilder html, string file) => html.Append(
        $"""
        <section id="questions" aria-labelledby="questions-title" hidden>
        <div><h2 id="questions-title">Still to say</h2>
        <form id="question-form" autocomplete="off"><p id="question-what" role="status"></p><p class="hint" id="question-line"></p>
        <div id="question-fields"></div>
        <p class="bar"><button type="submit" class="plain">Write it</button>
        <button type="button" class="plain" id="question-stands">It is right as it stands</button>
        <button type="button" class="plain" id="question-later">Later</button></p></form></div>
        <div id="question-picture"></div>
        </section>
        <section id="file" aria-labelledby="file-title">
        <h2 id="file-title">{PageHtml.Text(file)}</h2>
        <p class="bar"><button type="button" class="plain" id="save-file" disabled>Save</button>
        <span id="file-state" role="status"></span></p>
        <div id="file-clash" class="live broken" role="alert" hidden><p></p>
        <p><button type="button" class="plain" id="take-theirs">Take the file's text</button>
        <button type="button" class="plain" id="keep-mine">Keep mine</button></p></div>
        <div id="hand-over"><p class="bar"><label class="plain" for="hand-over-files">Read hand-over files</label>
        <input type="file" id="hand-over-files" multiple> or drop them anywhere here.</p>
        <p id="hand-over-state" role="status"></p>
        <ul id="hand-over-told" tabindex="0" aria-label="What was told about the files" hidden></ul>
        <details id="hand-over-again" hidden><summary>Size or places are wrong</summary>
        <p><label for="hand-over-unit">Unit of a drawing that names none</label>
        <select id="hand-over-unit"><option value="">as the file says</option>
        <option value="1">mm</option><option value="25.4">inch</option><option value="0.0254">mil</option></select></p>
        <p><label for="hand-over-x">Parts moved by x</label> <input id="hand-over-x" type="number" step="any" value="0">
        <label for="hand-over-y">and y, mm</label> <input id="hand-over-y" type="number" step="any" value="0"></p>
        <p><button type="button" class="plain">Read them again</button></p></details></div>
        <div id="editor"></div>
        <p class="bar"><button type="button" class="plain" id="list-made">Files to take</button>
        <span id="made-state" role="status"></span></p>
        <ul id="made-files" hidden></ul>
        <p class="hint">Ctrl+Space lists what can stand here, the pointer on a key tells what it means, Ctrl+S saves, Ctrl+Z takes back.</p>
        </section>

        """);
}
