using ShellForge.Geometry.Numerics;

namespace ShellForge.Import.Patterns;

/// <summary>Something that may be one of a pattern.</summary>
/// <param name="At">Its middle.</param>
/// <param name="Turn">Its turn, degrees; null for what has none, such as a hole.</param>
internal readonly record struct PlacedThing(Point2 At, double? Turn);
