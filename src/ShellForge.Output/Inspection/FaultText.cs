using System.Globalization;
using ShellForge.Geometry.Auditing;

namespace ShellForge.Output.Inspection;

/// <summary>Faults of meshes in the workshop's words.</summary>
public static class FaultText
{
    /// <summary>Stable name of a kind in kebab case.</summary>
    public static string Code(MeshFaultKind kind) => kind switch
    {
        MeshFaultKind.NotANumber => "not-a-number",
        MeshFaultKind.OutOfDomain => "out-of-domain",
        MeshFaultKind.DegenerateTriangle => "degenerate-triangle",
        MeshFaultKind.OpenEdge => "open-edge",
        MeshFaultKind.FlippedEdge => "flipped-edge",
        MeshFaultKind.NonManifoldEdge => "non-manifold-edge",
        MeshFaultKind.SplitVertex => "split-vertex",
        MeshFaultKind.CrossingTriangles => "crossing-triangles",
        MeshFaultKind.OverlappingTriangles => "overlapping-triangles",
        MeshFaultKind.InsideOutShell => "inside-out-shell",
        MeshFaultKind.MisnestedShell => "misnested-shell",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a kind of fault."),
    };

    /// <summary>What a kind means.</summary>
    public static string Meaning(MeshFaultKind kind) => kind switch
    {
        MeshFaultKind.NotANumber => "a coordinate is not a finite number",
        MeshFaultKind.OutOfDomain => "a coordinate lies outside \u00B1256 mm",
        MeshFaultKind.DegenerateTriangle => "a triangle has no area",
        MeshFaultKind.OpenEdge => "the surface has a hole here",
        MeshFaultKind.FlippedEdge => "two neighbours face opposite ways: one of them is turned over",
        MeshFaultKind.NonManifoldEdge => "more than two triangles share an edge",
        MeshFaultKind.SplitVertex => "the surface touches itself in a point",
        MeshFaultKind.CrossingTriangles => "two triangles pass through each other",
        MeshFaultKind.OverlappingTriangles => "two triangles lie on each other",
        MeshFaultKind.InsideOutShell => "a surface is inside out or bounds nothing",
        MeshFaultKind.MisnestedShell => "a surface lies inside another body, or a void outside of every body",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a kind of fault."),
    };

    /// <summary>Where a fault is: triangles are counted from 1, as they stand in the file.</summary>
    public static string Where(MeshFault fault)
    {
        string other = fault.Other < 0 ? "" : string.Create(CultureInfo.InvariantCulture, $" and {fault.Other + 1}");
        string triangle = fault.Triangle < 0
            ? ""
            : string.Create(CultureInfo.InvariantCulture, $", triangle {fault.Triangle + 1}{other}");
        return string.Create(
            CultureInfo.InvariantCulture,
            $"at ({fault.Place.X:0.###;-0.###;0}, {fault.Place.Y:0.###;-0.###;0}, {fault.Place.Z:0.###;-0.###;0}) mm{triangle}");
    }
}
