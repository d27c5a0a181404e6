using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Measuring;

/// <summary>How far two bodies are from each other.</summary>
/// <param name="Distance">Least distance, mm; negative: how deep they lie in each other.</param>
/// <param name="OnFirst">Where on the first.</param>
/// <param name="OnSecond">Where on the second.</param>
public readonly record struct Gap(double Distance, Point3 OnFirst, Point3 OnSecond);

/// <summary>Gaps between bodies: both trees are walked at once, the nearer pair of branches first.</summary>
public static class Clearance
{
    /// <summary>
    /// The least gap between two surfaces, looking no farther than a reach; null when there is none. Surfaces that cross or touch have
    /// gap 0. Of equal gaps, any.
    /// </summary>
    /// <param name="first">One surface.</param>
    /// <param name="second">The other.</param>
    /// <param name="reach">How far to look, mm.</param>
    public static Gap? Between(SurfaceTree first, SurfaceTree second, double reach = double.PositiveInfinity)
    {
        if (first.IsEmpty || second.IsEmpty)
        {
            return null;
        }

        double best = reach * reach;
        Gap? found = null;
        var open = new Stack<(int First, int Second, double Square)>();
        open.Push((0, 0, SquareDistance(first.Nodes[0].Box, second.Nodes[0].Box)));
        while (open.TryPop(out var pair))
        {
            if (pair.Square > best || (found is not null && pair.Square >= best))
            {
                continue;
            }

            ref readonly BoxNode a = ref first.Nodes[pair.First];
            ref readonly BoxNode b = ref second.Nodes[pair.Second];
            if (a.Right == 0 && b.Right == 0)
            {
                Leaves(first, second, a, b, ref best, ref found);
                continue;
            }

            // The larger of the two is opened, so that boxes stay of like size.
            bool openFirst = b.Right == 0 || (a.Right != 0 && a.Box.HalfArea >= b.Box.HalfArea);
            (int, int, double) left = openFirst ? Pair(first, second, pair.First + 1, pair.Second)
                : Pair(first, second, pair.First, pair.Second + 1);
            (int, int, double) right = openFirst ? Pair(first, second, a.Right, pair.Second) : Pair(first, second, pair.First, b.Right);
            bool leftFirst = left.Item3 <= right.Item3;
            open.Push(leftFirst ? right : left);
            open.Push(leftFirst ? left : right);
        }

        return found;
    }

    /// <summary>
    /// The signed gap between two solids: their distance, or, when they have points in common, less than 0 by their
    /// <see cref="Penetration"/>. Null when one is empty or they are farther apart than the reach.
    /// </summary>
    /// <param name="first">A surface that bounds a solid.</param>
    /// <param name="second">Another.</param>
    /// <param name="reach">How far to look, mm.</param>
    /// <param name="tolerance">How far the depth may be short of the true one, mm.</param>
    public static Gap? SignedGap(
        SurfaceTree first, SurfaceTree second, double reach = double.PositiveInfinity, double tolerance = Penetration.DefaultTolerance)
    {
        Gap? gap = Between(first, second, reach);
        if (gap is { Distance: > 0 } apart && !HoldsAShellOf(first, second) && !HoldsAShellOf(second, first))
        {
            return apart;
        }

        if (gap is null && !HoldsAShellOf(first, second) && !HoldsAShellOf(second, first))
        {
            return null;
        }

        return Penetration.Of(first, second, tolerance) is { } deepest ? deepest : gap;
    }

    // Of surfaces that don't meet, one corner speaks for its whole shell.
    private static bool HoldsAShellOf(SurfaceTree solid, SurfaceTree other)
    {
        var shells = new ShellNumbers(other.Mesh.Vertices.Length, other.Mesh.Triangles.AsSpan());
        var asked = new HashSet<int>();
        foreach (int v in other.Mesh.Triangles)
        {
            if (asked.Add(shells.OfVertex[v]) && PointMembership.Of(solid, other.Places[v]) == Membership.Inside)
            {
                return true;
            }
        }

        return false;
    }

    private static void Leaves(SurfaceTree first, SurfaceTree second, in BoxNode a, in BoxNode b, ref double best, ref Gap? found)
    {
        for (int i = a.First; i < a.End; i++)
        {
            for (int k = b.First; k < b.End; k++)
            {
                (double square, Point3 onFirst, Point3 onSecond) = TrianglePair.Nearest(first.Triangles[i], second.Triangles[k]);
                if (square < best || (found is null && square <= best))
                {
                    best = square;
                    found = new Gap(Math.Sqrt(square), onFirst, onSecond);
                }
            }
        }
    }

    private static (int First, int Second, double Square) Pair(SurfaceTree first, SurfaceTree second, int a, int b) =>
        (a, b, SquareDistance(first.Nodes[a].Box, second.Nodes[b].Box));

    private static double SquareDistance(in FloatBox a, in FloatBox b)
    {
        double x = Math.Max(0, Math.Max((double)a.MinX - b.MaxX, (double)b.MinX - a.MaxX));
        double y = Math.Max(0, Math.Max((double)a.MinY - b.MaxY, (double)b.MinY - a.MaxY));
        double z = Math.Max(0, Math.Max((double)a.MinZ - b.MaxZ, (double)b.MinZ - a.MaxZ));
        return (x * x) + (y * y) + (z * z);
    }
}
