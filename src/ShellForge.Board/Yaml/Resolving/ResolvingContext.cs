using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Tree;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Board.Yaml.Resolving;

/// <summary>What every step needs that turns what was said into the board.</summary>
/// <param name="Sink">Takes what is wrong.</param>
/// <param name="Profiles">Profiles.</param>
/// <param name="Paths">Dotted paths of nodes.</param>
/// <param name="Origin">Where plans have their origin, in the file's coordinates.</param>
/// <param name="Centre">The board's centre, about which circles and polar places are counted, seen from that origin.</param>
internal sealed record ResolvingContext(DiagnosticSink Sink, ProfileLibrary Profiles, NodePaths Paths, Point2 Origin, Point2 Centre);
