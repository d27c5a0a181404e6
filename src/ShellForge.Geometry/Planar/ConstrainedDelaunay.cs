using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Planar;

/// <summary>
/// Triangles of a polygon with holes: the constrained Delaunay triangulation of its corners, without a corner of its own.
/// Exact integers decide everything, so any region gives triangles that cover it once, and the same ones on every machine.
/// </summary>
internal static class ConstrainedDelaunay
{
    /// <summary>
    /// The triangles inside loops by the even-odd rule, counter-clockwise, three numbers a triangle into
    /// <paramref name="corners"/>: the distinct corners in the order in which the loops meet them first.
    /// </summary>
    public static ImmutableArray<int> Triangulate(
        IReadOnlyList<ImmutableArray<Point2>> loops, out ImmutableArray<Point2> corners)
    {
        var number = new Dictionary<Point2, int>();
        var distinct = new List<Point2>();
        var sides = new List<(int From, int To)>();
        foreach (ImmutableArray<Point2> loop in loops)
        {
            int[] numbers = [.. loop.Select(p => NumberOf(p, number, distinct))];
            for (int i = 0; i < numbers.Length; i++)
            {
                sides.Add((numbers[i], numbers[(i + 1) % numbers.Length]));
            }
        }

        corners = [.. distinct];
        var mesh = new DelaunayMesh(
            [.. distinct.Select(p => Lattice.ToSteps(p.X))], [.. distinct.Select(p => Lattice.ToSteps(p.Y))]);
        if (mesh.HalfEdgeCount == 0)
        {
            return [];
        }

        var odd = new HashSet<(int, int)>();
        foreach ((int from, int to) in sides)
        {
            Insert(mesh, from, to, odd);
        }

        return Inside(mesh, odd);
    }

    private static int NumberOf(Point2 p, Dictionary<Point2, int> number, List<Point2> distinct)
    {
        if (!number.TryGetValue(p, out int n))
        {
            n = distinct.Count;
            number.Add(p, n);
            distinct.Add(p);
        }

        return n;
    }

    // Makes from-to an edge, or several when corners lie on it; notes the edges that sides ran along an odd number of times.
    private static void Insert(DelaunayMesh mesh, int from, int to, HashSet<(int, int)> odd)
    {
        while (from != to)
        {
            var crossed = new Queue<(int, int)>();
            int reached = Walk(mesh, from, to, crossed);
            if (crossed.Count > 0)
            {
                FlipAway(mesh, from, reached, crossed);
            }

            int edge = EdgeBetween(mesh, from, reached);
            mesh.Fixed[edge] = true;
            if (mesh.Twin[edge] >= 0)
            {
                mesh.Fixed[mesh.Twin[edge]] = true;
            }

            (int, int) key = Key(from, reached);
            if (!odd.Remove(key))
            {
                odd.Add(key);
            }

            from = reached;
        }
    }

    // From a corner towards another: the edges crossed up to the first corner on the way, which may be the goal.
    private static int Walk(DelaunayMesh mesh, int from, int to, Queue<(int, int)> crossed)
    {
        int edge = -1;
        foreach (int h in mesh.Fan(from))
        {
            int right = mesh.Target(h);
            int left = mesh.Origin[DelaunayMesh.Prev(h)];
            if (mesh.IsAhead(from, to, right))
            {
                return right;
            }

            if (mesh.IsAhead(from, to, left))
            {
                return left;
            }

            if (mesh.Orient(from, to, right) < 0 && mesh.Orient(from, to, left) > 0)
            {
                edge = DelaunayMesh.Next(h);
            }
        }

        while (true)
        {
            // The crossed edge starts right of the line and ends left of it; so does the one by which the line leaves the next triangle.
            crossed.Enqueue((mesh.Origin[edge], mesh.Target(edge)));
            int t = mesh.Twin[edge];
            int tip = mesh.Origin[DelaunayMesh.Prev(t)];
            long side = mesh.Orient(from, to, tip);
            if (side == 0)
            {
                return tip;
            }

            edge = side > 0 ? DelaunayMesh.Next(t) : DelaunayMesh.Prev(t);
        }
    }

    // Sloan's way: flip every crossed edge whose quadrilateral is strictly convex until none crosses, then restore what was made.
    private static void FlipAway(DelaunayMesh mesh, int from, int to, Queue<(int From, int To)> crossed)
    {
        var made = new List<(int From, int To)>();
        while (crossed.TryDequeue(out (int From, int To) pair))
        {
            int h = EdgeBetween(mesh, pair.From, pair.To);
            int t = mesh.Twin[h];
            int a = mesh.Origin[h];
            int b = mesh.Origin[t];
            int c = mesh.Origin[DelaunayMesh.Prev(h)];
            int d = mesh.Origin[DelaunayMesh.Prev(t)];
            if (mesh.Orient(d, b, c) <= 0 || mesh.Orient(d, c, a) <= 0)
            {
                crossed.Enqueue(pair);
                continue;
            }

            mesh.Flip(h);
            bool meetsEnd = c == from || c == to || d == from || d == to;
            bool stillCrosses = !meetsEnd
                && long.Sign(mesh.Orient(from, to, c)) * long.Sign(mesh.Orient(from, to, d)) < 0;
            (stillCrosses ? (Action<(int, int)>)crossed.Enqueue : made.Add)((d, c));
        }

        made.RemoveAll(pair => Key(pair.From, pair.To) == Key(from, to));
        int wanted = EdgeBetween(mesh, from, to);
        mesh.Fixed[wanted] = true;
        mesh.Fixed[mesh.Twin[wanted]] = true;
        mesh.Restore(made.Select(pair => EdgeBetween(mesh, pair.From, pair.To)).Where(h => h >= 0));
    }

    // A half-edge between two corners, from the first when there is one.
    private static int EdgeBetween(DelaunayMesh mesh, int from, int to)
    {
        foreach (int h in mesh.Fan(from))
        {
            if (mesh.Target(h) == to)
            {
                return h;
            }

            if (mesh.Origin[DelaunayMesh.Prev(h)] == to)
            {
                int back = DelaunayMesh.Prev(h);
                return mesh.Twin[back] >= 0 ? mesh.Twin[back] : back;
            }
        }

        return -1;
    }

    private static (int, int) Key(int a, int b) => a < b ? (a, b) : (b, a);

    // Crossing an odd edge changes sides; beyond the hull is outside.
    private static ImmutableArray<int> Inside(DelaunayMesh mesh, HashSet<(int, int)> odd)
    {
        int count = mesh.HalfEdgeCount / 3;
        var state = new sbyte[count];
        var open = new Stack<int>();
        for (int h = 0; h < mesh.HalfEdgeCount; h++)
        {
            if (mesh.Twin[h] < 0 && state[h / 3] == 0)
            {
                Reach(h / 3, odd.Contains(Key(mesh.Origin[h], mesh.Target(h))));
            }
        }

        void Reach(int triangle, bool isInside)
        {
            state[triangle] = isInside ? (sbyte)1 : (sbyte)-1;
            open.Push(triangle);
            while (open.TryPop(out int t))
            {
                for (int h = 3 * t; h < (3 * t) + 3; h++)
                {
                    int next = mesh.Twin[h] / 3;
                    if (mesh.Twin[h] >= 0 && state[next] == 0)
                    {
                        bool flips = odd.Contains(Key(mesh.Origin[h], mesh.Target(h)));
                        state[next] = state[t] > 0 != flips ? (sbyte)1 : (sbyte)-1;
                        open.Push(next);
                    }
                }
            }
        }

        var triangles = ImmutableArray.CreateBuilder<int>();
        for (int t = 0; t < count; t++)
        {
            if (state[t] > 0)
            {
                triangles.AddRange(mesh.Origin[3 * t], mesh.Origin[(3 * t) + 1], mesh.Origin[(3 * t) + 2]);
            }
        }

        return triangles.ToImmutable();
    }
}
