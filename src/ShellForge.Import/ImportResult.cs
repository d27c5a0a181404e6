using System.Collections.Immutable;
using ShellForge.Board.Diagnostics;
using ShellForge.Import.Files;
using ShellForge.Import.Merging;

namespace ShellForge.Import;

/// <summary>What an import found, and what it has to say. Nothing may be written while there is an error.</summary>
public sealed class ImportResult
{
    internal ImportResult(ImportedBoard board, IReadOnlyList<Diagnostic> diagnostics, ImportOptions options)
    {
        Board = board;
        Diagnostics = [.. diagnostics];
        Options = options;
    }

    /// <summary>All remarks, in the order in which they were found.</summary>
    public ImmutableArray<Diagnostic> Diagnostics { get; }

    /// <summary>Whether the files can't be used.</summary>
    public bool IsRefused => Diagnostics.Any(d => d.IsError);

    internal ImportedBoard Board { get; }

    internal ImportOptions Options { get; }
}
