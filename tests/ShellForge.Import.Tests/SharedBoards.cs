using ShellForge.Import.Files;

namespace ShellForge.Import.Tests;

/// <summary>
/// Hand-over files of others, which stay outside this repository. Tests that need them are skipped where they are missing.
/// </summary>
internal static class SharedBoards
{
    public static string? Folder { get; } = Find(Path.Combine("shared", "boards"));

    public static string Own { get; } = Find(Path.Combine("tests", "boards", "ecad"))
        ?? throw new DirectoryNotFoundException("tests/boards/ecad is part of this repository");

    public static IEnumerable<string> Cases() =>
        Folder is null ? [] : Directory.EnumerateDirectories(Folder).Select(d => Path.GetFileName(d)!).Order(StringComparer.Ordinal);

    public static ImportResult Import(string folder, ImportOptions? options = null)
    {
        (IReadOnlyList<EcadFile> files, IReadOnlyList<ShellForge.Board.Diagnostics.Diagnostic> diagnostics) = EcadFileLoader.Load([folder]);
        Assert.Empty(diagnostics);
        return EcadImport.Run(files, options ?? new ImportOptions());
    }

    private static string? Find(string below)
    {
        for (DirectoryInfo? at = new(AppContext.BaseDirectory); at is not null; at = at.Parent)
        {
            string candidate = Path.Combine(at.FullName, below);
            if (Directory.Exists(candidate))
            {
                return candidate;
            }
        }

        return null;
    }
}
