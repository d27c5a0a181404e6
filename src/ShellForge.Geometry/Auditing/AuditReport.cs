using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Auditing;

/// <summary>One fault of a mesh.</summary>
/// <param name="Kind">What is wrong.</param>
/// <param name="Place">Where, in mm (for a foreign mesh in its own unit).</param>
/// <param name="Triangle">Number of a triangle that has it.</param>
/// <param name="Other">Number of the other triangle, -1 when there is none.</param>
public readonly record struct MeshFault(MeshFaultKind Kind, Point3 Place, int Triangle, int Other);

/// <summary>
/// What an exact audit found. Clean means: after welding equal corners every edge has two opposed triangles, every vertex one
/// fan, no triangle is degenerate, triangles meet in common corners and edges only, and shells are nested as bodies and voids.
/// </summary>
public sealed class AuditReport
{
    /// <summary>How many faults of one kind are kept with their places; all are counted.</summary>
    public const int KeptPerKind = 100;

    private readonly ImmutableArray<int> _counts;

    internal AuditReport(IEnumerable<MeshFault> faults, int triangles, int vertices, int shells)
    {
        int[] counts = new int[Enum.GetValues<MeshFaultKind>().Length];
        var kept = new List<MeshFault>();
        foreach (MeshFault fault in faults)
        {
            if (counts[(int)fault.Kind]++ < KeptPerKind)
            {
                kept.Add(fault);
            }
        }

        _counts = [.. counts];
        Faults = [.. kept.OrderBy(f => f.Kind).ThenBy(f => f.Triangle).ThenBy(f => f.Other)];
        TriangleCount = triangles;
        VertexCount = vertices;
        ShellCount = shells;
    }

    /// <summary>The first faults of every kind, ordered by kind and triangle.</summary>
    public ImmutableArray<MeshFault> Faults { get; }

    /// <summary>Whether nothing is wrong.</summary>
    public bool IsClean => Faults.IsEmpty;

    /// <summary>How many triangles were looked at.</summary>
    public int TriangleCount { get; }

    /// <summary>How many vertices there are after welding equal corners.</summary>
    public int VertexCount { get; }

    /// <summary>How many connected surfaces there are.</summary>
    public int ShellCount { get; }

    /// <summary>
    /// How many faults of a kind there are; of crossing and overlapping pairs at least how many, since the search gives up where
    /// it has found thousands in one place.
    /// </summary>
    public int Count(MeshFaultKind kind) => _counts[(int)kind];

    /// <summary>One line: "clean" or the counts of each kind.</summary>
    public override string ToString() => IsClean
        ? "clean"
        : string.Join(", ", Enum.GetValues<MeshFaultKind>().Where(k => Count(k) > 0).Select(k => $"{Count(k)} {k}"));
}
