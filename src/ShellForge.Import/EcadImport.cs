using ShellForge.Import.Files;
using ShellForge.Import.Merging;

namespace ShellForge.Import;

/// <summary>Reads hand-over files of a layout program into one board.</summary>
public static class EcadImport
{
    /// <summary>
    /// Recognises every file by its content, reads it, and puts all together by evidence: holes against the outline, parts
    /// against both. Never throws for what a file holds; whatever is wrong is a diagnostic. Needs at most a few seconds and
    /// 300 MB for any input within <see cref="EcadLimits"/>.
    /// </summary>
    /// <param name="files">The files, in any order.</param>
    /// <param name="options">What a person has settled.</param>
    /// <param name="ct">Stops the work.</param>
    public static ImportResult Run(IReadOnlyList<EcadFile> files, ImportOptions options, CancellationToken ct = default)
    {
        var log = new EcadLog();
        var work = new ImportWork(options, log, ct);
        ImportedBoard board = work.Run([.. files.OrderBy(f => f.Name, StringComparer.Ordinal)]);
        return new ImportResult(board, log.Closed(), options);
    }
}
