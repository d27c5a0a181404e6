using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Geometry.Measuring;

/// <summary>
/// The smallest convex solid round lattice points: points are added one by one, the farthest of each face's outer points first, and
/// faces that strictly see it give way to a fan from their border. Signs are exact, so the result bounds a solid always; points in
/// one plane with a face, or on one line with an edge, may stay as vertices that lie flat. Source: C. B. Barber, D. P. Dobkin,
/// H. Huhdanpaa, The Quickhull algorithm for convex hulls, 1996.
/// </summary>
public static class ConvexHull
{
    /// <summary>The hull of a mesh's vertices.</summary>
    public static Mesh Of(Mesh mesh) => Of([.. mesh.Triangles.Distinct().Order().Select(v => mesh.Vertices[v])]);

    /// <summary>The hull of points; the empty mesh when all lie in one plane.</summary>
    public static Mesh Of(IReadOnlyList<LatticePoint3> points)
    {
        LatticePoint3[] distinct = [.. points.Distinct().Order()];
        return FirstFour(distinct) is { } four ? new Growth(distinct).From(four) : Mesh.Empty;
    }

    private static Point3 Counts(LatticePoint3 p) => new(p.X, p.Y, p.Z);

    private static int[]? FirstFour(LatticePoint3[] points)
    {
        if (points.Length < 4)
        {
            return null;
        }

        Point3[] p = [.. points.Select(Counts)];
        int a = 0;
        int b = Enumerable.Range(0, p.Length).MaxBy(i => Point3.Distance(p[a], p[i]));
        int c = Enumerable.Range(0, p.Length).MaxBy(i => Point3.Cross(p[b] - p[a], p[i] - p[a]).Length);
        if (Point3.Cross(p[b] - p[a], p[c] - p[a]) == Point3.Zero)
        {
            return null;
        }

        Point3 n = Point3.Cross(p[b] - p[a], p[c] - p[a]);
        int d = Enumerable.Range(0, p.Length).MaxBy(i => Math.Abs(Point3.Dot(n, p[i] - p[a])));
        int side = LatticeOrientation.Sign3(p[a], p[b], p[c], p[d]);
        if (side == 0)
        {
            // The largest of rounded heights may be one of many tiny ones: any point off the plane will do.
            d = Array.FindIndex(p, q => LatticeOrientation.Sign3(p[a], p[b], p[c], q) != 0);
            side = d < 0 ? 0 : LatticeOrientation.Sign3(p[a], p[b], p[c], p[d]);
        }

        return side == 0 ? null : side < 0 ? [a, b, c, d] : [a, c, b, d];
    }

    private sealed class Face(int a, int b, int c)
    {
        public readonly int[] Corners = [a, b, c];
        public readonly Face[] Across = new Face[3];
        public readonly List<int> Outer = [];
        public bool Gone;
        public bool Seen;
    }

    private sealed class Growth(LatticePoint3[] lattice)
    {
        private readonly Point3[] _points = [.. lattice.Select(Counts)];
        private readonly List<Face> _faces = [];
        private readonly Stack<Face> _open = [];

        public Mesh From(int[] four)
        {
            // The fourth point lies behind the first three.
            Face[] first =
            [
                new(four[0], four[1], four[2]), new(four[0], four[3], four[1]), new(four[1], four[3], four[2]),
                new(four[2], four[3], four[0]),
            ];
            Join(first);
            _faces.AddRange(first);
            Share(Enumerable.Range(0, _points.Length).Where(p => !four.Contains(p)), first);
            while (_open.TryPop(out Face? face))
            {
                if (!face.Gone && face.Outer.Count > 0)
                {
                    Add(face);
                }
            }

            return Result();
        }

        private static void Join(IEnumerable<Face> all)
        {
            var edges = new Dictionary<(int From, int To), (Face Face, int Edge)>();
            foreach (Face face in all)
            {
                for (int e = 0; e < 3; e++)
                {
                    edges[(face.Corners[e], face.Corners[(e + 1) % 3])] = (face, e);
                }
            }

            foreach (((int from, int to), (Face face, int edge)) in edges)
            {
                face.Across[edge] = edges[(to, from)].Face;
            }
        }

        private bool Sees(int p, Face face) =>
            LatticeOrientation.Sign3(_points[face.Corners[0]], _points[face.Corners[1]], _points[face.Corners[2]], _points[p]) > 0;

        private void Share(IEnumerable<int> outer, IReadOnlyList<Face> among)
        {
            foreach (int p in outer)
            {
                among.FirstOrDefault(face => Sees(p, face))?.Outer.Add(p);
            }

            foreach (Face face in among.Where(face => face.Outer.Count > 0))
            {
                _open.Push(face);
            }
        }

        private void Add(Face from)
        {
            Point3 corner = _points[from.Corners[0]];
            Point3 normal = Point3.Cross(_points[from.Corners[1]] - corner, _points[from.Corners[2]] - corner);
            int apex = from.Outer.MaxBy(p => Point3.Dot(normal, _points[p] - corner));

            var seen = new List<Face>();
            var border = new List<(Face Outside, int From, int To)>();
            var next = new Stack<Face>([from]);
            from.Seen = true;
            while (next.TryPop(out Face? face))
            {
                seen.Add(face);
                for (int e = 0; e < 3; e++)
                {
                    Face other = face.Across[e];
                    if (other.Seen)
                    {
                        continue;
                    }

                    if (Sees(apex, other))
                    {
                        other.Seen = true;
                        next.Push(other);
                    }
                    else
                    {
                        border.Add((other, face.Corners[e], face.Corners[(e + 1) % 3]));
                    }
                }
            }

            var byStart = new Dictionary<int, Face>();
            var fan = new List<Face>();
            foreach ((Face outside, int start, int end) in border)
            {
                var face = new Face(start, end, apex);
                face.Across[0] = outside;
                int edge = Array.FindIndex([0, 1, 2], e => outside.Corners[e] == end && outside.Corners[(e + 1) % 3] == start);
                outside.Across[edge] = face;
                byStart.Add(start, face);
                fan.Add(face);
            }

            foreach (Face face in fan)
            {
                Face follower = byStart[face.Corners[1]];
                face.Across[1] = follower;
                follower.Across[2] = face;
            }

            _faces.AddRange(fan);
            foreach (Face face in seen)
            {
                face.Gone = true;
            }

            Share(seen.SelectMany(face => face.Outer).Where(p => p != apex), fan);
        }

        private Mesh Result()
        {
            Face[] kept = [.. _faces.Where(face => !face.Gone)];
            int[] used = [.. kept.SelectMany(face => face.Corners).Distinct().Order()];
            var numberOf = used.Select((vertex, number) => (vertex, number)).ToDictionary(pair => pair.vertex, pair => pair.number);
            return new Mesh(
                [.. used.Select(v => lattice[v])],
                [.. kept.SelectMany(face => face.Corners.Select(v => numberOf[v]))],
                ImmutableArray.CreateRange(new FaceTag[kept.Length]));
        }
    }
}
