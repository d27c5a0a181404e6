using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;

namespace ShellForge.Output.Looks;

/// <summary>Meshes of bodies that are closed as they are made, for pictures: putting them on the lattice is all that they need.</summary>
internal static class SimpleMesh
{
    /// <summary>The mesh of a region drawn upright; empty where nothing is left of it.</summary>
    public static Mesh Upright(Region region, double fromZ, double toZ) => Of(Shapes.Extrude(region, fromZ, toZ));

    /// <summary>The mesh of a plain body; empty for an empty one.</summary>
    public static Mesh Of(Solid body) => body is not SourceSolid source
        ? Mesh.Empty
        : new Mesh([.. source.Vertices.Select(Lattice.ToLattice)], source.Triangles, [.. new FaceTag[source.Triangles.Length / 3]]);

    /// <summary>A round disc in plan.</summary>
    public static Region Disc(Point2 at, double diameter)
    {
        double radius = diameter / 2;
        return Region.Disc(at, new Ring(radius, RingSide.Outside, Ring.CountFor(radius), Angle.Zero));
    }
}
