using System.Collections.Immutable;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Tree;

namespace ShellForge.Board.Yaml.Vocabulary;

/// <summary>What kinds need while they read: where faults go, and which names there are.</summary>
/// <param name="Sink">Takes what is wrong.</param>
/// <param name="Profiles">Names that may be referred to; null while the profiles themselves are read.</param>
internal sealed record ReadingContext(DiagnosticSink Sink, ProfileLibrary? Profiles)
{
    /// <summary>Short names of sources by file.</summary>
    public ImmutableDictionary<(string File, string Name), string> Sources { get; init; } =
        ImmutableDictionary<(string, string), string>.Empty;
}
