using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.ThreeMf;

/// <summary>
/// Lays print jobs out in rows, in their order, none above another and all in the positive octant. A plate too full for a bed is
/// for the slicer to split: what matters here is that opening the file never shows parts inside one another.
/// </summary>
public static class PlateLayout
{
    /// <summary>Places jobs.</summary>
    /// <param name="jobs">The jobs, each standing on z = 0.</param>
    /// <param name="rowLength">Length after which a new row begins, mm.</param>
    /// <param name="spacing">Free distance between jobs, mm.</param>
    public static ImmutableArray<PlacedJob> Place(ImmutableArray<PrintJob> jobs, double rowLength, double spacing)
    {
        var placed = ImmutableArray.CreateBuilder<PlacedJob>(jobs.Length);
        double x = 0;
        double y = 0;
        double rowDepth = 0;
        foreach (PrintJob job in jobs)
        {
            Box3 bounds = BoundsOf(job);
            Point3 size = bounds.Size;
            if (x > 0 && x + size.X > rowLength)
            {
                x = 0;
                y += rowDepth + spacing;
                rowDepth = 0;
            }

            Point3 min = bounds.IsEmpty ? default : bounds.Min;
            placed.Add(new PlacedJob(job, new Point3(x - min.X, y - min.Y, -min.Z)));
            x += size.X + spacing;
            rowDepth = Math.Max(rowDepth, size.Y);
        }

        return placed.ToImmutable();
    }

    private static Box3 BoundsOf(PrintJob job)
    {
        Box3 bounds = Box3.Empty;
        foreach (PrintBody body in job.Bodies)
        {
            foreach (LatticePoint3 vertex in body.Mesh.Vertices)
            {
                bounds = bounds.Including(vertex.ToMillimetres());
            }
        }

        return bounds;
    }
}
