using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Tree;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Board.Yaml.Resolving;

/// <summary>What every step needs that turns what was said into the board.</summary>
/// <param name="Sink">Takes what is wrong.</param>
/// <param name="Profiles">Profiles.</param>
/// <param name="Paths">Dotted paths of nodes.</param>
/// <param name="Centre">The board's centre in the file's coordinates.</param>
internal sealed record ResolvingContext(DiagnosticSink Sink, ProfileLibrary Profiles, NodePaths Paths, Point2 Centre);
