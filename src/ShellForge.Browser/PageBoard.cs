using System.Collections.Immutable;
using ShellForge.Bench;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml;
using ShellForge.Board.Yaml.Overriding;

namespace ShellForge.Browser;

/// <summary>A board file that stands on the page alone: its text comes with every request, the profiles are the shipped ones.</summary>
internal sealed class PageBoard : IBenchBoard
{
    private ProfileLibrary? _profiles;

    /// <inheritdoc />
    public string Name => "board.yaml";

    /// <inheritdoc />
    public long Version => 0;

    /// <inheritdoc />
    public bool IsBegun => true;

    /// <inheritdoc />
    public BenchReading Read(string? draft, ImmutableArray<string> tried)
    {
        BoardReadResult read = BoardFileReader.Read(Name, draft ?? "", Profiles(), [.. tried.Select(SetOverride.Parse)]);
        return new BenchReading(
            draft ?? "", read.Diagnostics.Any(diagnostic => diagnostic.IsError) ? null : read.File?.NamingFilesBare(), read.Diagnostics);
    }

    /// <inheritdoc />
    public ProfileLibrary Profiles() => _profiles ??= ProfileLibrary.Load([]).Library;
}
