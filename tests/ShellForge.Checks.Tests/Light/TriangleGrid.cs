using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Checks.Tests.Light;

/// <summary>
/// Triangles sorted into cubes of space, for the tests' own tracer: a ray walks from cube to cube, tries the plane of each triangle and
/// then its three edges. In doubles, and of no code of the model's.
/// </summary>
internal sealed class TriangleGrid
{
    private const double Side = 1.5;

    private readonly List<(Point3 A, Point3 B, Point3 C, Point3 Normal, int Material)> _triangles = [];
    private int[][] _cubes = [];
    private Point3 _low;
    private (int X, int Y, int Z) _count;

    /// <summary>Adds a triangle, counter-clockwise seen from outside.</summary>
    public void Add(Point3 a, Point3 b, Point3 c, int material)
    {
        Point3 normal = Point3.Cross(b - a, c - a);
        if (normal.Length > 0)
        {
            _triangles.Add((a, b, c, (1 / normal.Length) * normal, material));
        }
    }

    /// <summary>Adds a mesh.</summary>
    public void Add(Mesh mesh, int material)
    {
        Point3[] corners = [.. mesh.Vertices.Select(vertex => vertex.ToMillimetres())];
        for (int i = 0; i < mesh.Triangles.Length; i += 3)
        {
            Add(corners[mesh.Triangles[i]], corners[mesh.Triangles[i + 1]], corners[mesh.Triangles[i + 2]], material);
        }
    }

    /// <summary>An upright box whose corners in plan are given counter-clockwise.</summary>
    public void AddPrism(IReadOnlyList<Point2> plan, double from, double to, int material)
    {
        Point3 At(int i, double z) => new(plan[i % plan.Count].X, plan[i % plan.Count].Y, z);
        for (int i = 0; i < plan.Count; i++)
        {
            Add(At(i, from), At(i + 1, from), At(i + 1, to), material);
            Add(At(i, from), At(i + 1, to), At(i, to), material);
            if (i > 0 && i + 1 < plan.Count)
            {
                Add(At(0, to), At(i, to), At(i + 1, to), material);
                Add(At(0, from), At(i + 1, from), At(i, from), material);
            }
        }
    }

    /// <summary>Sorts what was added; call it once, before the first ray.</summary>
    public void Sort()
    {
        double Least(Func<Point3, double> of) => _triangles.Min(t => Math.Min(of(t.A), Math.Min(of(t.B), of(t.C))));
        double Most(Func<Point3, double> of) => _triangles.Max(t => Math.Max(of(t.A), Math.Max(of(t.B), of(t.C))));
        _low = new Point3(Least(p => p.X) - 0.1, Least(p => p.Y) - 0.1, Least(p => p.Z) - 0.1);
        _count = (
            1 + (int)((Most(p => p.X) + 0.1 - _low.X) / Side), 1 + (int)((Most(p => p.Y) + 0.1 - _low.Y) / Side),
            1 + (int)((Most(p => p.Z) + 0.1 - _low.Z) / Side));
        var lists = new List<int>?[_count.X * _count.Y * _count.Z];
        for (int i = 0; i < _triangles.Count; i++)
        {
            (Point3 a, Point3 b, Point3 c, Point3 normal, _) = _triangles[i];
            (int x0, int x1) = Cells(a.X - _low.X, b.X - _low.X, c.X - _low.X, _count.X);
            (int y0, int y1) = Cells(a.Y - _low.Y, b.Y - _low.Y, c.Y - _low.Y, _count.Y);
            (int z0, int z1) = Cells(a.Z - _low.Z, b.Z - _low.Z, c.Z - _low.Z, _count.Z);
            for (int z = z0; z <= z1; z++)
            {
                for (int y = y0; y <= y1; y++)
                {
                    for (int x = x0; x <= x1; x++)
                    {
                        // Cubes that the triangle's plane passes by are left out.
                        Point3 middle = _low + new Point3((x + 0.5) * Side, (y + 0.5) * Side, (z + 0.5) * Side);
                        double reach = Side / 2 * (Math.Abs(normal.X) + Math.Abs(normal.Y) + Math.Abs(normal.Z));
                        if (Math.Abs(Point3.Dot(normal, middle - a)) <= reach + 1e-6)
                        {
                            (lists[(((z * _count.Y) + y) * _count.X) + x] ??= []).Add(i);
                        }
                    }
                }
            }
        }

        _cubes = [.. lists.Select(list => list?.ToArray() ?? [])];
    }

    /// <summary>The first triangle ahead: distance (infinite without one), its outward normal and material.</summary>
    public (double Distance, Point3 Normal, int Material) First(Point3 from, Point3 along)
    {
        (double Distance, Point3 Normal, int Material) found = (double.PositiveInfinity, default, -1);
        Point3 start = from - _low;
        double enter = 0;
        double leave = double.PositiveInfinity;
        foreach ((double at, double step, int cells) in ((double, double, int)[])[(start.X, along.X, _count.X),
            (start.Y, along.Y, _count.Y), (start.Z, along.Z, _count.Z)])
        {
            double end = cells * Side;
            if (step == 0)
            {
                leave = at < 0 || at > end ? -1 : leave;
                continue;
            }

            enter = Math.Max(enter, Math.Min(-at / step, (end - at) / step));
            leave = Math.Min(leave, Math.Max(-at / step, (end - at) / step));
        }

        if (enter > leave)
        {
            return found;
        }

        Point3 first = start + ((enter + 1e-9) * along);
        int x = Math.Clamp((int)(first.X / Side), 0, _count.X - 1);
        int y = Math.Clamp((int)(first.Y / Side), 0, _count.Y - 1);
        int z = Math.Clamp((int)(first.Z / Side), 0, _count.Z - 1);
        (double nextX, double stepX) = Walk(start.X, along.X, x);
        (double nextY, double stepY) = Walk(start.Y, along.Y, y);
        (double nextZ, double stepZ) = Walk(start.Z, along.Z, z);
        while (true)
        {
            foreach (int i in _cubes[(((z * _count.Y) + y) * _count.X) + x])
            {
                Try(i, from, along, ref found);
            }

            double next = Math.Min(nextX, Math.Min(nextY, nextZ));
            if (found.Distance <= next)
            {
                return found;
            }

            if (next == nextX)
            {
                x += along.X > 0 ? 1 : -1;
                nextX += stepX;
            }
            else if (next == nextY)
            {
                y += along.Y > 0 ? 1 : -1;
                nextY += stepY;
            }
            else
            {
                z += along.Z > 0 ? 1 : -1;
                nextZ += stepZ;
            }

            if (x < 0 || y < 0 || z < 0 || x >= _count.X || y >= _count.Y || z >= _count.Z)
            {
                return found;
            }
        }
    }

    private static (double Next, double Step) Walk(double at, double along, int cell) => along == 0
        ? (double.PositiveInfinity, 0)
        : (((along > 0 ? cell + 1 : cell) * Side - at) / along, Side / Math.Abs(along));

    private static (int From, int To) Cells(double a, double b, double c, int cells) => (
        Math.Clamp((int)((Math.Min(a, Math.Min(b, c)) - 1e-6) / Side), 0, cells - 1),
        Math.Clamp((int)((Math.Max(a, Math.Max(b, c)) + 1e-6) / Side), 0, cells - 1));

    private void Try(int index, Point3 from, Point3 along, ref (double Distance, Point3 Normal, int Material) found)
    {
        (Point3 a, Point3 b, Point3 c, Point3 normal, int material) = _triangles[index];
        double down = Point3.Dot(normal, along);
        if (down == 0)
        {
            return;
        }

        double distance = Point3.Dot(normal, a - from) / down;
        if (distance <= 1e-7 || distance >= found.Distance)
        {
            return;
        }

        const double seam = -1e-9;
        Point3 at = from + (distance * along);
        if (Point3.Dot(Point3.Cross(b - a, at - a), normal) >= seam
            && Point3.Dot(Point3.Cross(c - b, at - b), normal) >= seam
            && Point3.Dot(Point3.Cross(a - c, at - c), normal) >= seam)
        {
            found = (distance, normal, material);
        }
    }
}
