using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Booleans;

/// <summary>
/// The result on the lattice: a closed oriented chain of triangles whatever the rounding did. Each triangle comes from an operand as it
/// was or from one planar region of this round.
/// </summary>
internal sealed class RoundedMesh
{
    public required LatticePoint3[] Vertices { get; init; }

    public required int[] Corners { get; init; }

    public required int[] Tags { get; init; }

    /// <summary>See <see cref="Operand.KnownApart"/>.</summary>
    public required int[] KnownApart { get; init; }

    public int TriangleCount => Tags.Length;
}
