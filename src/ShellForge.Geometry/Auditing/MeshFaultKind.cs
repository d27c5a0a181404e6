namespace ShellForge.Geometry.Auditing;

/// <summary>What can be wrong with a triangle mesh that should bound a solid.</summary>
public enum MeshFaultKind
{
    /// <summary>A coordinate is not a finite number. Nothing else is looked at in that triangle.</summary>
    NotANumber,

    /// <summary>A coordinate lies outside ±256 mm, where lattice values stop being exact in float32.</summary>
    OutOfDomain,

    /// <summary>Two corners at one place, or three on one line.</summary>
    DegenerateTriangle,

    /// <summary>An edge with a triangle on one side only: a hole in the surface.</summary>
    OpenEdge,

    /// <summary>An edge whose two triangles run the same way: one of them is turned over, or it is there twice.</summary>
    FlippedEdge,

    /// <summary>An edge with more than two triangles.</summary>
    NonManifoldEdge,

    /// <summary>A vertex where the surface touches itself: more than one fan of triangles.</summary>
    SplitVertex,

    /// <summary>Two triangles in different planes that meet outside a common corner or edge.</summary>
    CrossingTriangles,

    /// <summary>Two triangles in one plane that meet outside a common corner or edge.</summary>
    OverlappingTriangles,

    /// <summary>A shell that bounds no volume, or looks inward with nothing round it.</summary>
    InsideOutShell,

    /// <summary>A shell that looks outward inside another body, or inward outside of every body.</summary>
    MisnestedShell,
}
