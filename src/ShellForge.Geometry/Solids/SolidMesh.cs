using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Solids;

/// <summary>
/// A mesh that bounds a solid: closed, oriented outward, one fan of triangles round every vertex, no degenerate triangle, and no
/// two triangles that meet outside a shared vertex or edge. Only an evaluation that has checked all this exactly makes one.
/// </summary>
public sealed class SolidMesh
{
    internal SolidMesh(Mesh mesh) => Mesh = mesh;

    /// <summary>The solid without a point.</summary>
    public static SolidMesh Empty { get; } = new(Mesh.Empty);

    /// <summary>The triangles.</summary>
    public Mesh Mesh { get; }

    /// <summary>The solid as the kernel's operand, kept once made: adjacency and box tree serve every further boolean.</summary>
    internal PreparedOperand? Prepared { get; set; }

    /// <summary>Whether the solid holds no point.</summary>
    public bool IsEmpty => Mesh.TriangleCount == 0;

    /// <summary>How many triangles bound the solid.</summary>
    public int TriangleCount => Mesh.TriangleCount;

    /// <summary>The solid as an operand of further booleans; its lattice vertices are taken as they are.</summary>
    public Solid AsOperand() => new EvaluatedSolid(this);

    /// <summary>The smallest box round the solid, in mm.</summary>
    public Box3 Bounds()
    {
        Box3 box = Box3.Empty;
        foreach (LatticePoint3 vertex in Mesh.Vertices)
        {
            box = box.Including(vertex.ToMillimetres());
        }

        return box;
    }
}
