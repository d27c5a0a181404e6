using ShellForge.Board.Diagnostics;

namespace ShellForge.Import.Files;

/// <summary>Collects the diagnostics of one import, at most a fixed number per file so that a hostile file can't fill the memory.</summary>
internal sealed class EcadLog
{
    private readonly List<Diagnostic> entries = [];
    private readonly Dictionary<string, int> perFile = new(StringComparer.Ordinal);

    public IReadOnlyList<Diagnostic> Entries => entries;

    public bool HasErrors { get; private set; }

    public void Note(string file, int line, string code, string message, string? expected = null) =>
        Add(new Diagnostic(file, line, line > 0 ? 1 : 0, code, DiagnosticSeverity.Note, message, expected));

    public void Warn(string file, int line, string code, string message, string? expected = null) =>
        Add(new Diagnostic(file, line, line > 0 ? 1 : 0, code, DiagnosticSeverity.Warning, message, expected));

    public void Error(string file, int line, string code, string message, string? expected = null) =>
        Add(new Diagnostic(file, line, line > 0 ? 1 : 0, code, DiagnosticSeverity.Error, message, expected));

    public void Add(Diagnostic diagnostic)
    {
        HasErrors |= diagnostic.IsError;
        perFile.TryGetValue(diagnostic.File, out int count);
        perFile[diagnostic.File] = count + 1;
        if (count < EcadLimits.DiagnosticsPerFile)
        {
            entries.Add(diagnostic);
        }
        else if (diagnostic.IsError && !entries.Exists(d => d.IsError))
        {
            // The first error is kept whatever came before it: it is why nothing is written.
            entries.Add(diagnostic);
        }
    }

    /// <summary>All entries, followed by one line per file whose list was cut.</summary>
    public IReadOnlyList<Diagnostic> Closed()
    {
        var all = new List<Diagnostic>(entries);
        foreach ((string file, int count) in perFile.OrderBy(p => p.Key, StringComparer.Ordinal))
        {
            if (count > EcadLimits.DiagnosticsPerFile)
            {
                all.Add(new Diagnostic(
                    file, 0, 0, "ecad-more", DiagnosticSeverity.Note, $"{count - EcadLimits.DiagnosticsPerFile} more remarks like these"));
            }
        }

        return all;
    }
}
