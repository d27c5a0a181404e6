namespace ShellForge.Testing;

/// <summary>Files of the repository, found from where the tests run.</summary>
public static class Repository
{
    /// <summary>The folder with the solution.</summary>
    public static string Root { get; } = Above("ShellForge.sln", File.Exists)
        ?? throw new DirectoryNotFoundException("No folder above the tests has ShellForge.sln.");

    /// <summary>Folders of the sample boards with everything made from them.</summary>
    public static IEnumerable<string> Samples => Directory.EnumerateDirectories(At("out-samples"))
        .Where(folder => File.Exists(Path.Combine(folder, "board.yaml"))).Order(StringComparer.Ordinal);

    /// <summary>The folder of boards beside or above the repository; null where there is none.</summary>
    public static string? SharedBoards { get; } = Above(Path.Combine("shared", "boards"), Directory.Exists) is { } folder
        ? Path.Combine(folder, "shared", "boards")
        : null;

    /// <summary>A file or folder of the repository.</summary>
    public static string At(params string[] parts) => Path.Combine([Root, .. parts]);

    private static string? Above(string name, Func<string, bool> exists)
    {
        for (DirectoryInfo? at = new(AppContext.BaseDirectory); at is not null; at = at.Parent)
        {
            if (exists(Path.Combine(at.FullName, name)))
            {
                return at.FullName;
            }
        }

        return null;
    }
}
