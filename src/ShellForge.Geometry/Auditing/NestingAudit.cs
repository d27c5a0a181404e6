using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Auditing;

/// <summary>
/// Whether shells bound bodies and voids in turn: one that looks outward lies inside an even number of others, one that looks
/// inward inside an odd number. Asked of meshes whose edges are sound and whose triangles meet properly, so that one corner of a
/// shell speaks for all of it.
/// </summary>
internal sealed class NestingAudit<TOrientation>
    where TOrientation : struct, IOrientation
{
    private readonly AuditSurface _surface;
    private readonly int[][] _trianglesOf;
    private readonly Box3[] _boxes;
    private readonly int[] _sides;

    public NestingAudit(AuditSurface surface)
    {
        _surface = surface;
        var numbers = new ShellNumbers(surface.Points.Length, surface.Triangles);
        var lists = new List<int>[numbers.Count];
        for (int i = 0; i < lists.Length; i++)
        {
            lists[i] = [];
        }

        for (int t = 0; t < surface.Count; t++)
        {
            lists[numbers.OfVertex[surface.Triangles[3 * t]]].Add(t);
        }

        _trianglesOf = [.. lists.Select(l => l.ToArray())];
        _boxes = [.. _trianglesOf.Select(BoxOf)];
        _sides = [.. _trianglesOf.Select(SideOf)];
    }

    /// <summary>How many shells there are.</summary>
    public int ShellCount => _trianglesOf.Length;

    /// <summary>Adds a fault for each shell that lies wrongly.</summary>
    public void Run(List<MeshFault> faults, CancellationToken ct)
    {
        for (int shell = 0; shell < ShellCount; shell++)
        {
            ct.ThrowIfCancellationRequested();
            int triangle = _trianglesOf[shell][0];
            Point3 corner = _surface.Corner(triangle, 0);
            int depth = 0;
            for (int other = 0; other < ShellCount; other++)
            {
                if (other != shell && Holds(_boxes[other], corner) && IsInside(corner, _trianglesOf[other]))
                {
                    depth++;
                }
            }

            bool fits = _sides[shell] != 0 && (_sides[shell] > 0 == (depth % 2 == 0));
            if (!fits)
            {
                bool alone = depth == 0 || _sides[shell] == 0;
                faults.Add(new MeshFault(
                    alone ? MeshFaultKind.InsideOutShell : MeshFaultKind.MisnestedShell,
                    _surface.Place(corner),
                    _surface.Source[triangle],
                    -1));
            }
        }
    }

    private static bool Holds(in Box3 box, in Point3 p) =>
        p.X >= box.Min.X && p.X <= box.Max.X && p.Y >= box.Min.Y && p.Y <= box.Max.Y && p.Z >= box.Min.Z && p.Z <= box.Max.Z;

    private Box3 BoxOf(int[] triangles)
    {
        Box3 box = Box3.Empty;
        foreach (int t in triangles)
        {
            box = box.Including(_surface.Corner(t, 0)).Including(_surface.Corner(t, 1)).Including(_surface.Corner(t, 2));
        }

        return box;
    }

    // The sign of the volume: +1 when the shell looks outward, -1 inward, 0 when it bounds nothing. Plain sums tell nearly always;
    // their error is below 2^-53 times the terms' sizes for each of the few operations a term goes through and each sum.
    private int SideOf(int[] triangles)
    {
        double sum = 0;
        double size = 0;
        foreach (int t in triangles)
        {
            ref readonly Point3 a = ref _surface.Corner(t, 0);
            ref readonly Point3 b = ref _surface.Corner(t, 1);
            ref readonly Point3 c = ref _surface.Corner(t, 2);
            sum += Point3.Dot(a, Point3.Cross(b, c));
            size += (Math.Abs(a.X) * ((Math.Abs(b.Y) * Math.Abs(c.Z)) + (Math.Abs(b.Z) * Math.Abs(c.Y))))
                + (Math.Abs(a.Y) * ((Math.Abs(b.Z) * Math.Abs(c.X)) + (Math.Abs(b.X) * Math.Abs(c.Z))))
                + (Math.Abs(a.Z) * ((Math.Abs(b.X) * Math.Abs(c.Y)) + (Math.Abs(b.Y) * Math.Abs(c.X))));
        }

        double bound = (8 + triangles.Length) * FloatingOrientation.Unit * size;
        return Math.Abs(sum) > bound ? Math.Sign(sum) : ExactSideOf(triangles);
    }

    private int ExactSideOf(int[] triangles)
    {
        Span<double> term = stackalloc double[FloatingOrientation.VolumeTerms];
        var sum = new double[FloatingOrientation.VolumeTerms];
        int count = 0;
        foreach (int t in triangles)
        {
            int terms = FloatingOrientation.SixVolumes(
                _surface.Corner(t, 0), _surface.Corner(t, 1), _surface.Corner(t, 2), Point3.Zero, term);
            var next = new double[count + terms];
            count = Expansion.Sum(sum.AsSpan(0, count), term[..terms], minus: false, next);
            sum = next;
        }

        // Seen from the origin below its counter-clockwise face a tetrahedron counts negative.
        return -Expansion.Sign(sum.AsSpan(0, count));
    }

    private bool IsInside(in Point3 p, int[] triangles)
    {
        bool inside = false;
        foreach (int t in triangles)
        {
            inside ^= UpwardRay<TOrientation>.Crossing(p, _surface.Corner(t, 0), _surface.Corner(t, 1), _surface.Corner(t, 2)) != 0;
        }

        return inside;
    }
}
