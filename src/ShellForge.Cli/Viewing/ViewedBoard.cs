using System.Collections.Immutable;
using ShellForge.Bench;
using ShellForge.Board.Profiles;
using ShellForge.Cli.Reading;

namespace ShellForge.Cli.Viewing;

/// <summary>The board file on disk as the page works on it, read again at each save.</summary>
/// <param name="name">Its name as the user gave it.</param>
/// <param name="set">Numbers in place of the file's from the command line.</param>
/// <param name="isNew">Whether it may begin with no file.</param>
/// <param name="versions">Its saves.</param>
/// <param name="bench">The workbench.</param>
internal sealed class ViewedBoard(string name, ImmutableArray<string> set, bool isNew, SavedVersions versions, Workbench bench)
    : IBenchBoard
{
    /// <inheritdoc />
    public string Name => name;

    /// <inheritdoc />
    public long Version => versions.Version;

    /// <inheritdoc />
    public bool IsBegun => isNew && !File.Exists(bench.FullPath(name));

    /// <inheritdoc />
    public BenchReading Read(string? draft, ImmutableArray<string> tried)
    {
        BoardSource source = draft is null
            ? BoardSource.Read(name, [.. set, .. tried], bench)
            : BoardSource.Of(name, bench.FullPath(name), draft, [.. set, .. tried], bench);
        return new BenchReading(source.Text, source.File, source.Diagnostics);
    }

    /// <inheritdoc />
    public ProfileLibrary Profiles() => UserProfiles.Load(Path.GetDirectoryName(bench.FullPath(name)), bench).Library;
}
