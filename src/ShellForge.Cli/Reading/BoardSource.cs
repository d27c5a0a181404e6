using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Board.Diagnostics;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml;
using ShellForge.Board.Yaml.Overriding;
using ShellForge.Checks.Sliced;

namespace ShellForge.Cli.Reading;

/// <summary>A board file as it was read, with everything there is to say about it.</summary>
/// <param name="Path">Its full name.</param>
/// <param name="Text">Its text.</param>
/// <param name="File">The board; null when there was an error.</param>
/// <param name="Diagnostics">Diagnostics of profiles and board file.</param>
internal sealed record BoardSource(string Path, string Text, BoardFile? File, ImmutableArray<Diagnostic> Diagnostics)
{
    /// <summary>What no rule will tell: everything of a file that can't be used, otherwise what is not said of the board itself.</summary>
    public ImmutableArray<Diagnostic> NotAmongFindings => File is null ? Diagnostics : Diagnostics.RemoveRange(OfBoard);

    /// <summary>The folder for its housing where none is named.</summary>
    public string HousingFolder(Workbench bench) =>
        System.IO.Path.Combine(System.IO.Path.GetDirectoryName(Path) ?? bench.Folder, "housing");

    /// <summary>The maker's G-code; empty where none was given.</summary>
    public ImmutableArray<SlicedFile> Sliced { get; private init; } = [];

    private ImmutableArray<Diagnostic> OfBoard { get; init; } = [];

    /// <summary>Reads a board file and the maker's G-code of its parts: what can't be used of either keeps both from it.</summary>
    /// <exception cref="IOException">A file can't be read.</exception>
    public static BoardSource ReadWithGcode(string name, IReadOnlyList<string> overrides, IReadOnlyList<string> gcode, Workbench bench)
    {
        BoardSource source = Read(name, overrides, bench);
        SlicedFiles sliced = SlicedFiles.Read(gcode, bench);
        return sliced.Diagnostics.IsEmpty
            ? source with { Sliced = sliced.Files }
            : source with { File = null, Diagnostics = [.. source.Diagnostics, .. sliced.Diagnostics] };
    }

    /// <summary>Reads a board file with the profiles that hold for it.</summary>
    /// <exception cref="IOException">A file can't be read.</exception>
    public static BoardSource Read(string name, IReadOnlyList<string> overrides, Workbench bench)
    {
        string path = bench.FullPath(name);
        return Of(name, path, TextFile.Read(path, name), overrides, bench);
    }

    /// <summary>The text of a board file that may not be saved yet, with the profiles that hold for it.</summary>
    /// <exception cref="IOException">A profile can't be read.</exception>
    public static BoardSource Of(string name, string path, string text, IReadOnlyList<string> overrides, Workbench bench)
    {
        ProfileLoadResult profiles = UserProfiles.Load(System.IO.Path.GetDirectoryName(path), bench);
        BoardReadResult read = BoardFileReader.Read(name, text, profiles.Library, [.. overrides.Select(SetOverride.Parse)]);

        // A broken profile may be the very one that the board means: nothing is made from what is left.
        ImmutableArray<Diagnostic> all = [.. profiles.Diagnostics, .. read.Diagnostics];
        return new BoardSource(path, text, all.Any(diagnostic => diagnostic.IsError) ? null : read.File?.NamingFilesBare(),
            all)
        { OfBoard = read.Diagnostics };
    }
}
