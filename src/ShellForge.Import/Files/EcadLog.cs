using ShellForge.Board.Diagnostics;

namespace ShellForge.Import.Files;

/// <summary>Collects the diagnostics of one import, at most a fixed number per file so that a hostile file can't fill the memory.</summary>
internal sealed class EcadLog
{
    private readonly List<Diagnostic> _entries = [];
    private readonly Dictionary<string, int> _perFile = new(StringComparer.Ordinal);

    public IReadOnlyList<Diagnostic> Entries => _entries;

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
        _perFile.TryGetValue(diagnostic.File, out int count);
        _perFile[diagnostic.File] = count + 1;
        if (count < EcadLimits.DiagnosticsPerFile)
        {
            _entries.Add(diagnostic);
        }
        else if (diagnostic.IsError && !_entries.Exists(d => d.IsError))
        {
            // The first error is kept whatever came before it: it is why nothing is written.
            _entries.Add(diagnostic);
        }
    }

    /// <summary>All entries, followed by one line per file whose list was cut.</summary>
    public IReadOnlyList<Diagnostic> Closed()
    {
        var all = new List<Diagnostic>(_entries);
        foreach ((string file, int count) in _perFile.OrderBy(p => p.Key, StringComparer.Ordinal))
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
