using System.Collections.Immutable;

namespace ShellForge.Formats.Soup;

/// <summary>
/// Triangles as a foreign file lists them: three corners each, nothing shared, nothing promised. Coordinates are float32 mm, all
/// finite.
/// </summary>
/// <param name="Name">Name of the body in the file; empty when it has none.</param>
/// <param name="Coordinates">x, y, z of three corners a triangle: nine numbers each.</param>
public sealed record TriangleSoup(string Name, ImmutableArray<float> Coordinates)
{
    /// <summary>Numbers a triangle takes.</summary>
    public const int NumbersPerTriangle = 9;

    /// <summary>How many triangles there are.</summary>
    public int TriangleCount => Coordinates.Length / NumbersPerTriangle;
}

/// <summary>What is wrong with a foreign file, in words, with the place.</summary>
/// <param name="Code">Stable name of the kind of fault in kebab case.</param>
/// <param name="Message">What is wrong and where: byte, line, triangle.</param>
public sealed record FileFault(string Code, string Message);

/// <summary>What was read from a foreign file. Faults and bodies may come together: a truncated file still has its first triangles.</summary>
/// <param name="Kind">The kind of file it was taken for, for people.</param>
/// <param name="Bodies">The bodies that could be read.</param>
/// <param name="Faults">Everything that is wrong with the file as a file.</param>
public sealed record SoupFile(string Kind, ImmutableArray<TriangleSoup> Bodies, ImmutableArray<FileFault> Faults);
