using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Geometry.Auditing;

/// <summary>
/// Looks whether a mesh bounds a solid, by exact arithmetic alone: a clean report is a proof for the very values that a file
/// holds, and a fault is one. Nothing is repaired.
/// </summary>
/// <remarks>
/// Equal corners are welded first. Pairs of triangles are looked at whatever else is wrong; nesting only when edges and pairs
/// are sound, since otherwise a shell has no inside.
/// </remarks>
public static class MeshAudit
{
    /// <summary>Audits a mesh on the lattice.</summary>
    public static AuditReport Run(Mesh mesh, CancellationToken ct = default)
    {
        var faults = new List<MeshFault>();
        var corners = new Point3[mesh.Vertices.Length];
        bool[] isOutside = new bool[corners.Length];
        for (int i = 0; i < corners.Length; i++)
        {
            LatticePoint3 v = mesh.Vertices[i];
            corners[i] = new Point3(v.X, v.Y, v.Z);
            isOutside[i] = !(Fits(v.X) && Fits(v.Y) && Fits(v.Z));
        }

        // What lies outside has no exact arithmetic here: it is a fault by itself and is left out.
        var source = new List<int>(mesh.TriangleCount);
        var triangles = new List<int>(mesh.Triangles.Length);
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            ReadOnlySpan<int> corner = mesh.Triangles.AsSpan(3 * t, 3);
            int outside = isOutside[corner[0]] ? 0 : isOutside[corner[1]] ? 1 : isOutside[corner[2]] ? 2 : -1;
            if (outside >= 0)
            {
                Point3 place = mesh.Vertices[corner[outside]].ToMillimetres();
                faults.Add(new MeshFault(MeshFaultKind.OutOfDomain, place, t, -1));
                continue;
            }

            source.Add(t);
            triangles.AddRange(corner);
        }

        AuditSurface surface = AuditSurface.Weld(
            corners, System.Runtime.InteropServices.CollectionsMarshal.AsSpan(triangles), [.. source], Lattice.Step);
        return Run<LatticeOrientation>(surface, faults, mesh.TriangleCount, ct);
    }

    /// <summary>
    /// Audits triangles of a foreign file, to the bit as they stand there. The size of the coordinates is no fault here; places are
    /// in the file's unit.
    /// </summary>
    public static AuditReport Run(LooseTriangles soup, CancellationToken ct = default)
    {
        var faults = new List<MeshFault>();
        var corners = new List<Point3>(3 * soup.TriangleCount);
        var source = new List<int>(soup.TriangleCount);
        for (int t = 0; t < soup.TriangleCount; t++)
        {
            ReadOnlySpan<float> c = soup.Coordinates.AsSpan(9 * t, 9);
            if (!AreFinite(c))
            {
                faults.Add(new MeshFault(MeshFaultKind.NotANumber, FinitePlace(c), t, -1));
                continue;
            }

            source.Add(t);
            for (int k = 0; k < 9; k += 3)
            {
                corners.Add(new Point3(c[k], c[k + 1], c[k + 2]));
            }
        }

        AuditSurface surface = AuditSurface.Weld(
            System.Runtime.InteropServices.CollectionsMarshal.AsSpan(corners), [.. Enumerable.Range(0, corners.Count)], [.. source], 1);
        return Run<FloatingOrientation>(surface, faults, soup.TriangleCount, ct);
    }

    /// <summary>The mesh as a solid when its audit is clean; null otherwise, and the report says why.</summary>
    public static SolidMesh? Accept(Mesh mesh, out AuditReport report, CancellationToken ct = default)
    {
        report = Run(mesh, ct);
        return report.IsClean ? new SolidMesh(mesh) : null;
    }

    private static AuditReport Run<TOrientation>(AuditSurface surface, List<MeshFault> faults, int triangleCount, CancellationToken ct)
        where TOrientation : struct, IOrientation
    {
        var sound = new List<int>(surface.Count);
        for (int t = 0; t < surface.Count; t++)
        {
            if (TriangleMeeting<TOrientation>.IsFlat(surface.Corner(t, 0), surface.Corner(t, 1), surface.Corner(t, 2)))
            {
                faults.Add(new MeshFault(
                    MeshFaultKind.DegenerateTriangle, surface.Place(surface.Corner(t, 0)), surface.Source[t], -1));
            }
            else
            {
                sound.Add(t);
            }
        }

        new EdgeAudit(surface, faults).Run();
        ct.ThrowIfCancellationRequested();
        faults.AddRange(new MeetingAudit<TOrientation>(surface, sound).Run(ct));
        var nesting = new NestingAudit<TOrientation>(surface);
        if (faults.Count == 0)
        {
            nesting.Run(faults, ct);
        }

        return new AuditReport(faults, triangleCount, surface.Points.Length, nesting.ShellCount);
    }

    private static bool Fits(int count) => count is >= -Lattice.Limit and <= Lattice.Limit;

    private static bool AreFinite(ReadOnlySpan<float> values)
    {
        foreach (float value in values)
        {
            if (!float.IsFinite(value))
            {
                return false;
            }
        }

        return true;
    }

    // The first corner that is one, so that a place can be given at all.
    private static Point3 FinitePlace(ReadOnlySpan<float> c)
    {
        for (int k = 0; k < 9; k += 3)
        {
            if (AreFinite(c.Slice(k, 3)))
            {
                return new Point3(c[k], c[k + 1], c[k + 2]);
            }
        }

        return Point3.Zero;
    }
}
