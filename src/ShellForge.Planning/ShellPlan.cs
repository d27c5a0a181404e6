using ShellForge.Geometry.Planar;

namespace ShellForge.Planning;

/// <summary>Walls and floor in plan. Round boards have <see cref="Round"/>; any outline has the regions, which builders use.</summary>
public sealed record ShellPlan
{
    /// <summary>Everything inside the outer wall face, less an open bore.</summary>
    public required Region Footprint { get; init; }

    /// <summary>The room inside the walls: footprint less walls.</summary>
    public required Region Cavity { get; init; }

    /// <summary>Radii of a round shell; null for other outlines.</summary>
    public RoundShell? Round { get; init; }

    /// <summary>Wall thickness, mm.</summary>
    public required double Wall { get; init; }

    /// <summary>Lines of plastic across the wall.</summary>
    public required int WallLines { get; init; }

    /// <summary>Gap between board edge and wall, mm.</summary>
    public required double BoardEdgeGap { get; init; }

    /// <summary>Chamfer on edges that lie on the bed, mm.</summary>
    public required double BedChamfer { get; init; }
}

/// <summary>Radii of a round shell, mm, and the polygon that all its coaxial walls share.</summary>
/// <param name="Outer">Outer face of the outer wall.</param>
/// <param name="Inner">Inner face of the outer wall.</param>
/// <param name="BoreOuter">Face of the bore wall that looks to the board; 0 without an open bore.</param>
/// <param name="BoreInner">Face of the bore wall that looks to the axis; 0 without an open bore.</param>
/// <param name="Count">Corners of every coaxial polygon.</param>
public sealed record RoundShell(double Outer, double Inner, double BoreOuter, double BoreInner, int Count)
{
    /// <summary>Whether the bore is open.</summary>
    public bool HasBore => BoreInner > 0;
}
