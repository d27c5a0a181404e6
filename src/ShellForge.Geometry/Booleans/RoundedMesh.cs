using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Booleans;

/// <summary>
/// The result on the lattice: a closed oriented chain of triangles whatever the rounding did. Triangles from
/// <see cref="FirstNew"/> on were made in this round; the ones before come from operands as they were.
/// </summary>
internal sealed class RoundedMesh
{
    public required LatticePoint3[] Vertices { get; init; }

    public required int[] Corners { get; init; }

    public required int[] Tags { get; init; }

    public required int FirstNew { get; init; }

    public int TriangleCount => Tags.Length;
}
