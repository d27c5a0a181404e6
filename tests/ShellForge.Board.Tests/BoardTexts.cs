using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml;
using ShellForge.Board.Yaml.Overriding;

namespace ShellForge.Board.Tests;

/// <summary>Board files as text, read against the shipped profiles.</summary>
internal static class BoardTexts
{
    /// <summary>The shipped profiles.</summary>
    public static ProfileLibrary Shipped { get; } = ProfileLibrary.Load([]).Library;

    /// <summary>A folder of the repository.</summary>
    public static string Folder(params string[] parts)
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "ShellForge.sln")))
        {
            folder = folder.Parent;
        }

        return Path.Combine([folder!.FullName, .. parts]);
    }

    /// <summary>Reads a text as board.yaml.</summary>
    public static BoardReadResult Read(string text, params string[] overrides) =>
        BoardFileReader.Read("board.yaml", text, Shipped, [.. overrides.Select(SetOverride.Parse)]);

    /// <summary>A sample of the repository.</summary>
    public static string Sample(string name) => File.ReadAllText(Folder("out-samples", name, "board.yaml"));
}
