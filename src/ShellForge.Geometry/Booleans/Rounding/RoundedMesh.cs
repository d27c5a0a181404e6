using ShellForge.Geometry.Booleans.Ingest;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Booleans.Rounding;

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

    /// <summary>What its regions enclose by their edges, before they are cut into triangles.</summary>
    public required BoundaryVolume Bounded { get; init; }

    /// <summary>How many short edges went while it was made.</summary>
    public int Collapsed { get; init; }

    /// <summary>Whether faces fell onto each other and went.</summary>
    public bool LostFilm { get; init; }
}
