using ShellForge.Geometry.Booleans.Exact;

namespace ShellForge.Geometry.Booleans.Rounding;

/// <summary>A planar region of the result: directed edges with the region to their left, seen from the plane's front.</summary>
internal sealed class PlanarRegion
{
    public PlanarRegion(Plane plane, int tag)
    {
        Plane = plane;
        Tag = tag;
    }

    public Plane Plane { get; }

    public int Tag { get; }

    public List<(int From, int To)> Edges { get; } = [];

    /// <summary>Points of the plane that may lie inside.</summary>
    public List<int> Loose { get; } = [];

    /// <summary>Whether its triangles, drawn in the plane, lie side by side: they then cannot meet in space either.</summary>
    public bool IsPlanar { get; set; }

    public void Add(int from, int to, bool forward) => Edges.Add(forward ? (from, to) : (to, from));
}
