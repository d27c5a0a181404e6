namespace ShellForge.Architecture.Tests;

/// <summary>The source tree, found from where the tests run.</summary>
internal static class Repository
{
    /// <summary>The folder with the solution.</summary>
    public static string Root { get; } = FindRoot();

    /// <summary>All projects under src by name, such as <c>Geometry</c>.</summary>
    public static IReadOnlyDictionary<string, string> SourceProjects { get; } =
        Directory.EnumerateDirectories(Path.Combine(Root, "src"), "ShellForge.*")
            .ToDictionary(folder => Path.GetFileName(folder)["ShellForge.".Length..], StringComparer.Ordinal);

    /// <summary>All C# files under src, written by hand.</summary>
    public static IEnumerable<string> SourceFiles => CSharpUnder("src");

    /// <summary>All C# files under tests, written by hand.</summary>
    public static IEnumerable<string> TestFiles => CSharpUnder("tests");

    /// <summary>A file's name from the root, with forward slashes.</summary>
    public static string Relative(string path) => Path.GetRelativePath(Root, path).Replace('\\', '/');

    private static IEnumerable<string> CSharpUnder(string folder) =>
        Directory.EnumerateFiles(Path.Combine(Root, folder), "*.cs", SearchOption.AllDirectories)
            .Where(path => !Relative(path).Split('/').Any(part => part is "bin" or "obj" or "node_modules"))
            .Order(StringComparer.Ordinal);

    private static string FindRoot()
    {
        for (DirectoryInfo? at = new(AppContext.BaseDirectory); at is not null; at = at.Parent)
        {
            if (File.Exists(Path.Combine(at.FullName, "ShellForge.sln")))
            {
                return at.FullName;
            }
        }

        throw new DirectoryNotFoundException("No folder above the tests has ShellForge.sln.");
    }
}
