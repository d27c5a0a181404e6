using System.Collections.Immutable;
using ShellForge.Geometry.Auditing;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Soup;

/// <summary>A body of a foreign file.</summary>
/// <param name="Name">Its name in the file, printable; empty when it has none.</param>
/// <param name="Triangles">
/// Its triangles in mm and in its own coordinates, in the file's order, those with faults included; the same object wherever the file
/// places one body several times.
/// </param>
/// <param name="Place">Where the file puts it: from its own coordinates to those of the bed.</param>
public sealed record SoupBody(string Name, LooseTriangles Triangles, Transform3 Place);

/// <summary>What is wrong with a foreign file as a file, in words, with the place.</summary>
/// <param name="Code">Stable name of the kind of fault in kebab case.</param>
/// <param name="Message">What is wrong and where: byte, line, triangle.</param>
public sealed record FileFault(string Code, string Message);

/// <summary>
/// What was read from a foreign file. Faults and bodies may come together: a truncated file still has its first triangles.
/// </summary>
/// <param name="Kind">The kind of file it was taken for, for people.</param>
/// <param name="Bodies">The bodies that could be read.</param>
/// <param name="Faults">Everything that is wrong with the file as a file.</param>
public sealed record SoupFile(string Kind, ImmutableArray<SoupBody> Bodies, ImmutableArray<FileFault> Faults);
