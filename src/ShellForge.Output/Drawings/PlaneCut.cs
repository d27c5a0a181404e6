using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Output.Drawings;

/// <summary>
/// The outlines in which a plane cuts a closed mesh. Every vertex counts as above or below, one that lies on the plane as above, so
/// each crossed triangle gives one segment between two of its edges and the segments close into loops by the mesh's own
/// neighbourhoods: nothing has to be matched by coordinates. Good for drawing; measuring has exact slices.
/// </summary>
internal static class PlaneCut
{
    /// <summary>The loops, with the solid on the left as seen against the plane's normal.</summary>
    /// <param name="mesh">A closed mesh.</param>
    /// <param name="origin">A point of the plane, mm.</param>
    /// <param name="right">Unit vector in the plane that becomes x.</param>
    /// <param name="up">Unit vector in the plane that becomes y.</param>
    public static ImmutableArray<ImmutableArray<Point2>> Loops(Mesh mesh, Point3 origin, Point3 right, Point3 up)
    {
        Point3 normal = Point3.Cross(right, up);
        var points = new Point3[mesh.Vertices.Length];
        double[] height = new double[points.Length];
        for (int v = 0; v < points.Length; v++)
        {
            points[v] = mesh.Vertices[v].ToMillimetres();
            height[v] = Point3.Dot(normal, points[v] - origin);
        }

        // From the edge where a segment begins to the edge where it ends; an edge is named from its upper to its lower end.
        var next = new Dictionary<(int Above, int Below), (int Above, int Below)>();
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            AddSegment(mesh.Triangles.AsSpan(3 * t, 3), height, next);
        }

        return Linked(next, edge =>
        {
            double share = height[edge.Above] / (height[edge.Above] - height[edge.Below]);
            Point3 cut = points[edge.Above] + (share * (points[edge.Below] - points[edge.Above])) - origin;
            return new Point2(Point3.Dot(right, cut), Point3.Dot(up, cut));
        });
    }

    private static void AddSegment(
        ReadOnlySpan<int> corners, double[] height, Dictionary<(int Above, int Below), (int Above, int Below)> next)
    {
        (int, int)? down = null;
        (int, int)? up = null;
        for (int i = 0; i < 3; i++)
        {
            int from = corners[i];
            int to = corners[(i + 1) % 3];
            bool fromAbove = height[from] >= 0;
            bool toAbove = height[to] >= 0;
            if (fromAbove && !toAbove)
            {
                down = (from, to);
            }
            else if (!fromAbove && toAbove)
            {
                up = (to, from);
            }
        }

        if (down is { } begin && up is { } end)
        {
            next[end] = begin;
        }
    }

    private static ImmutableArray<ImmutableArray<Point2>> Linked(
        Dictionary<(int Above, int Below), (int Above, int Below)> next, Func<(int Above, int Below), Point2> place)
    {
        var loops = ImmutableArray.CreateBuilder<ImmutableArray<Point2>>();
        while (next.Count > 0)
        {
            (int, int) start = next.Keys.Min();
            var loop = ImmutableArray.CreateBuilder<Point2>();
            (int, int) at = start;
            while (next.Remove(at, out (int, int) following))
            {
                loop.Add(place(at));
                at = following;
            }

            loops.Add(Simplified(loop));
        }

        return loops.ToImmutable();
    }

    // Points that fall together on paper, then corners on a straight run between two triangles of one face.
    private static ImmutableArray<Point2> Simplified(ImmutableArray<Point2>.Builder loop)
    {
        var apart = new List<Point2>();
        foreach (Point2 point in loop)
        {
            if (apart.Count == 0 || Point2.Distance(apart[^1], point) > DrawingSheet.Invisible)
            {
                apart.Add(point);
            }
        }

        while (apart.Count > 1 && Point2.Distance(apart[^1], apart[0]) <= DrawingSheet.Invisible)
        {
            apart.RemoveAt(apart.Count - 1);
        }

        var kept = ImmutableArray.CreateBuilder<Point2>();
        for (int i = 0; i < apart.Count; i++)
        {
            Point2 before = kept.Count > 0 ? kept[^1] : apart[^1];
            Point2 chord = apart[(i + 1) % apart.Count] - before;
            double length = chord.Length;
            if (length == 0 || Math.Abs(Point2.Cross(chord, apart[i] - before)) > DrawingSheet.Invisible * length)
            {
                kept.Add(apart[i]);
            }
        }

        return kept.ToImmutable();
    }
}
