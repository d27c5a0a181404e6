using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Formats.Rendering;

/// <summary>
/// The edges of bodies that the eye sees in parallel projection behind an upright cut: creases and limbs, hidden stretches left out.
/// What hides is looked up in a depth buffer, so an edge ends within a cell of the truth.
/// </summary>
public static class VisibleEdges
{
    // Cells a mm, and the most of them along a side: a cell is a line's width on paper.
    private const double CellsPerMillimetre = 6;
    private const int MostCells = 3000;

    // Cosine of the turn between neighbouring faces from which an edge is seen: 24 degrees, as in pictures.
    private const double Crease = 0.9135;

    // An edge lies on what it bounds: so much nearer a surface must be to hide it, mm.
    private const double Nearer = 0.05;

    // Shorter stretches are not drawn, mm.
    private const double Shortest = 0.3;

    /// <summary>The edges as segments in the plane of the cut, mm.</summary>
    /// <param name="bodies">Closed meshes.</param>
    /// <param name="right">Direction of the plane through the origin that becomes x, of length 1.</param>
    /// <param name="up">Direction that becomes y, of length 1 and square to it; the eye is where <c>right x up</c> points.</param>
    public static ImmutableArray<(Point2 From, Point2 To)> Behind(IEnumerable<Mesh> bodies, Point3 right, Point3 up)
    {
        Point3 towards = Point3.Cross(right, up);
        Mesh[] meshes = [.. bodies];
        var seen = new Point3[meshes.Length][];
        Box2 box = Box2.Empty;
        for (int b = 0; b < meshes.Length; b++)
        {
            seen[b] = new Point3[meshes[b].Vertices.Length];
            for (int i = 0; i < seen[b].Length; i++)
            {
                Point3 at = meshes[b].Vertices[i].ToMillimetres();
                seen[b][i] = new Point3(Point3.Dot(right, at), Point3.Dot(up, at), Point3.Dot(towards, at));
                box = box.Including(seen[b][i].XY);
            }
        }

        if (box.IsEmpty)
        {
            return [];
        }

        double perMillimetre = Math.Min(CellsPerMillimetre, MostCells / Math.Max(1, Math.Max(box.Size.X, box.Size.Y)));
        using var grid = new Grid(box, perMillimetre);
        for (int b = 0; b < meshes.Length; b++)
        {
            grid.Draw(meshes[b], seen[b]);
        }

        var found = new List<(Point2, Point2)>();
        for (int b = 0; b < meshes.Length; b++)
        {
            foreach ((int a, int c) in Edges(meshes[b], seen[b]))
            {
                grid.Append(found, seen[b][a], seen[b][c]);
            }
        }

        return LineJoining.Joined(found, Shortest);
    }

    // Edges between faces that turn sharply or of which one looks here and one away, one end at least behind the plane.
    private static IEnumerable<(int A, int B)> Edges(Mesh mesh, Point3[] at)
    {
        // Keys that lie close hash apart; halves of a number joined by exclusive-or, as the runtime does, would not for neighbours.
        long vertices = mesh.Vertices.Length;
        var faces = new Dictionary<long, Point3>();
        ReadOnlyMemory<int> corners = mesh.Triangles.AsMemory();
        for (int t = 0; t < corners.Length; t += 3)
        {
            (int first, int second, int third) = (corners.Span[t], corners.Span[t + 1], corners.Span[t + 2]);
            if (at[first].Z >= 0 && at[second].Z >= 0 && at[third].Z >= 0)
            {
                continue;
            }

            Point3 normal = Point3.Cross(at[second] - at[first], at[third] - at[first]);
            if (normal.Length == 0)
            {
                continue;
            }

            normal = (1 / normal.Length) * normal;
            for (int i = 0; i < 3; i++)
            {
                (int a, int b) = i == 0 ? (first, second) : i == 1 ? (second, third) : (third, first);
                if (!faces.Remove((b * vertices) + a, out Point3 other))
                {
                    faces[(a * vertices) + b] = normal;
                }
                else if ((normal.Z > 0 || other.Z > 0) && (Point3.Dot(normal, other) < Crease || normal.Z > 0 != other.Z > 0))
                {
                    yield return (a, b);
                }
            }
        }
    }

    private sealed class Grid : IDisposable
    {
        private readonly DepthBuffer _buffer;
        private readonly Box2 _box;
        private readonly double _perMillimetre;

        public Grid(Box2 box, double perMillimetre)
        {
            _box = box;
            _perMillimetre = perMillimetre;
            _buffer = new DepthBuffer((int)Math.Ceiling(box.Size.X * perMillimetre) + 1, (int)Math.Ceiling(box.Size.Y * perMillimetre) + 1);
        }

        public void Dispose() => _buffer.Dispose();

        public void Draw(Mesh mesh, Point3[] at)
        {
            ReadOnlySpan<int> corners = mesh.Triangles.AsSpan();
            for (int t = 0; t < corners.Length; t += 3)
            {
                (Point3 a, Point3 b, Point3 c) = (at[corners[t]], at[corners[t + 1]], at[corners[t + 2]]);
                if (Math.Min(a.Z, Math.Min(b.Z, c.Z)) < 0)
                {
                    _buffer.Draw(0, Cell(a), Cell(b), Cell(c), (0, 0, 1, 0));
                }
            }
        }

        // The stretches of an edge behind the plane that nothing hides.
        public void Append(List<(Point2 From, Point2 To)> found, Point3 from, Point3 to)
        {
            if (from.Z > 0 || to.Z > 0)
            {
                if (from.Z >= 0 && to.Z >= 0)
                {
                    return;
                }

                Point3 crossing = from + (from.Z / (from.Z - to.Z) * (to - from));
                (from, to) = from.Z > 0 ? (crossing, to) : (from, crossing);
            }

            int steps = Math.Max(1, (int)Math.Ceiling(_perMillimetre * (to - from).XY.Length));
            int? start = null;
            for (int i = 0; i <= steps; i++)
            {
                bool visible = i < steps && IsSeen(from + ((i + 0.5) / steps * (to - from)));
                if (visible)
                {
                    start ??= i;
                }
                else if (start is int first)
                {
                    found.Add(((from + ((double)first / steps * (to - from))).XY, (from + ((double)i / steps * (to - from))).XY));
                    start = null;
                }
            }
        }

        private Point3 Cell(Point3 at) => new((at.X - _box.Min.X) * _perMillimetre, (_box.Max.Y - at.Y) * _perMillimetre, at.Z);

        // Seen where one of the cells around shows nothing nearer: the edge of a body has the open to its side.
        private bool IsSeen(Point3 at)
        {
            Point3 cell = Cell(at);
            for (int down = -1; down <= 1; down++)
            {
                for (int across = -1; across <= 1; across++)
                {
                    int x = (int)Math.Floor(cell.X) + across;
                    int y = (int)Math.Floor(cell.Y) + down;
                    if (x < 0 || y < 0 || x >= _buffer.Width || y >= _buffer.Height
                        || _buffer.Near[(y * _buffer.Width) + x] <= at.Z + Nearer)
                    {
                        return true;
                    }
                }
            }

            return false;
        }
    }
}
