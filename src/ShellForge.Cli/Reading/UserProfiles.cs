using ShellForge.Board.Profiles;

namespace ShellForge.Cli.Reading;

/// <summary>Finds the user's own profiles: <c>profiles/*.yaml</c> next to the board file, then in the configuration folder.</summary>
internal static class UserProfiles
{
    /// <summary>Name of the folder beside a board file, and in the configuration folder.</summary>
    public const string FolderName = "profiles";

    private const int MostFiles = 200;

    /// <summary>The shipped profiles with the user's in their place.</summary>
    /// <param name="boardFolder">Folder of the board file; null for none.</param>
    /// <param name="bench">The workbench.</param>
    /// <exception cref="IOException">A file can't be read, or there are too many.</exception>
    public static ProfileLoadResult Load(string? boardFolder, Workbench bench) => LoadWithTexts(boardFolder, bench).Loaded;

    /// <summary>The same, with the user's files, name and text.</summary>
    public static (ProfileLoadResult Loaded, IReadOnlyList<(string Name, string Text)> Texts) LoadWithTexts(string? boardFolder,
        Workbench bench)
    {
        var files = new List<(string, string)>();
        foreach (string? folder in new[] { boardFolder, bench.ConfigFolder })
        {
            if (folder is not null)
            {
                files.AddRange(FilesIn(Path.Combine(folder, FolderName), bench));
            }
        }

        return (ProfileLibrary.Load(files), files);
    }

    private static IEnumerable<(string Name, string Text)> FilesIn(string folder, Workbench bench)
    {
        if (!Directory.Exists(folder))
        {
            yield break;
        }

        string[] paths = [.. Directory.EnumerateFiles(folder, "*.yaml").Take(MostFiles + 1).Order(StringComparer.Ordinal)];
        if (paths.Length > MostFiles)
        {
            throw new IOException($"{folder}: more than {MostFiles} profile files");
        }

        foreach (string path in paths)
        {
            string shown = Path.GetRelativePath(bench.Folder, path);
            yield return (shown, TextFile.Read(path, shown));
        }
    }
}
