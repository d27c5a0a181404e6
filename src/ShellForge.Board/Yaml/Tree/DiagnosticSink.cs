using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Board.Diagnostics;

namespace ShellForge.Board.Yaml.Tree;

/// <summary>Collects what is wrong, up to a bound, so that all mistakes of a file are told at once.</summary>
internal sealed class DiagnosticSink
{
    private readonly List<Diagnostic> _found = [];
    private int _left;

    /// <summary>Whether anything was an error.</summary>
    public bool HasErrors { get; private set; }

    /// <summary>Notes an error.</summary>
    public void Error(FilePlace place, string code, string message, string? expected = null, string? nearest = null) =>
        Add(place, code, DiagnosticSeverity.Error, message, expected, nearest);

    /// <summary>Notes something that a person should look at.</summary>
    public void Warning(FilePlace place, string code, string message, string? expected = null) =>
        Add(place, code, DiagnosticSeverity.Warning, message, expected, null);

    /// <summary>Notes something for information.</summary>
    public void Note(FilePlace place, string code, string message) =>
        Add(place, code, DiagnosticSeverity.Note, message, null, null);

    /// <summary>All of them in the order of their places, each once; files keep the order in which they first spoke.</summary>
    public ImmutableArray<Diagnostic> InOrder()
    {
        string[] files = [.. _found.Select(d => d.File).Distinct()];
        IEnumerable<Diagnostic> ordered = _found
            .Distinct()
            .OrderBy(d => Array.IndexOf(files, d.File))
            .ThenBy(d => d.Line)
            .ThenBy(d => d.Column);
        return _left == 0
            ? [.. ordered]
            : [.. ordered,
                new Diagnostic(files[^1], 0, 0, "more-diagnostics", DiagnosticSeverity.Error, $"{_left} more mistakes are not shown")];
    }

    private void Add(
        FilePlace place, string code, DiagnosticSeverity severity, string message, string? expected, string? nearest)
    {
        HasErrors |= severity == DiagnosticSeverity.Error;
        if (_found.Count >= YamlLimits.Diagnostics)
        {
            _left++;
            return;
        }

        _found.Add(new Diagnostic(place.File, place.Line, place.Column, code, severity, message, expected, nearest));
    }
}
