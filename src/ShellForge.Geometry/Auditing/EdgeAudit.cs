using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Auditing;

/// <summary>
/// Edges and vertices: every edge two opposed uses, every vertex one fan. Side s of triangle t is half-edge 3t + s, from corner s
/// to the next.
/// </summary>
internal sealed class EdgeAudit
{
    private readonly AuditSurface _surface;
    private readonly List<MeshFault> _faults;

    // The half-edge on the other side, -1 where there is not exactly one.
    private readonly int[] _twin;

    public EdgeAudit(AuditSurface surface, List<MeshFault> faults)
    {
        _surface = surface;
        _faults = faults;
        _twin = new int[surface.Triangles.Length];
    }

    /// <summary>Finds all faults of edges, then those of vertices that have no faulty edge.</summary>
    public void Run()
    {
        Array.Fill(_twin, -1);
        FindEdges();
        FindFans();
    }

    private int Origin(int h) => _surface.Triangles[h];

    private int Target(int h) => _surface.Triangles[h % 3 == 2 ? h - 2 : h + 1];

    private bool HasRepeatedCorner(int triangle)
    {
        int a = Origin(3 * triangle);
        int b = Origin((3 * triangle) + 1);
        int c = Origin((3 * triangle) + 2);
        return a == b || b == c || c == a;
    }

    // Half-edges gathered by their smaller corner: each heap holds a handful, so uses of one edge are found by looking along it.
    private void FindEdges()
    {
        int[] start = new int[_surface.Points.Length + 1];
        for (int h = 0; h < _twin.Length; h++)
        {
            if (!HasRepeatedCorner(h / 3))
            {
                start[Math.Min(Origin(h), Target(h)) + 1]++;
            }
        }

        for (int v = 0; v < _surface.Points.Length; v++)
        {
            start[v + 1] += start[v];
        }

        int[] heap = new int[start[^1]];
        int[] next = start[..^1];
        for (int h = 0; h < _twin.Length; h++)
        {
            if (!HasRepeatedCorner(h / 3))
            {
                heap[next[Math.Min(Origin(h), Target(h))]++] = h;
            }
        }

        for (int v = 0; v < _surface.Points.Length; v++)
        {
            Span<int> here = heap.AsSpan(start[v], start[v + 1] - start[v]);
            if (here.Length > 64)
            {
                here.Sort((g, h) => Math.Max(Origin(g), Target(g)).CompareTo(Math.Max(Origin(h), Target(h))) is var c && c != 0 ? c
                    : g.CompareTo(h));
                TakeSortedGroups(here);
            }
            else
            {
                TakeGroups(here);
            }
        }
    }

    private void TakeSortedGroups(Span<int> here)
    {
        int from = 0;
        for (int i = 1; i <= here.Length; i++)
        {
            if (i == here.Length || Other(here[i]) != Other(here[from]))
            {
                Take(here[from..i]);
                from = i;
            }
        }
    }

    private void TakeGroups(Span<int> here)
    {
        while (here.Length > 0)
        {
            int other = Other(here[0]);
            int same = 1;
            for (int i = 1; i < here.Length; i++)
            {
                if (Other(here[i]) == other)
                {
                    (here[same], here[i]) = (here[i], here[same]);
                    same++;
                }
            }

            Take(here[..same]);
            here = here[same..];
        }
    }

    private int Other(int h) => Math.Max(Origin(h), Target(h));

    // All uses of one edge.
    private void Take(ReadOnlySpan<int> uses)
    {
        int first = uses[0];
        if (uses.Length == 2 && Origin(first) == Target(uses[1]))
        {
            _twin[first] = uses[1];
            _twin[uses[1]] = first;
            return;
        }

        MeshFaultKind kind = uses.Length switch
        {
            1 => MeshFaultKind.OpenEdge,
            2 => MeshFaultKind.FlippedEdge,
            _ => MeshFaultKind.NonManifoldEdge,
        };
        Point3 middle = 0.5 * (_surface.Points[Origin(first)] + _surface.Points[Target(first)]);
        _faults.Add(new MeshFault(
            kind, _surface.Place(middle), _surface.Source[first / 3], uses.Length > 1 ? _surface.Source[uses[1] / 3] : -1));
    }

    private void FindFans()
    {
        bool[] seen = new bool[_twin.Length];
        int[] fanOf = new int[_surface.Points.Length];
        Array.Fill(fanOf, -1);
        bool[] isFaulty = new bool[_surface.Points.Length];
        for (int h = 0; h < _twin.Length; h++)
        {
            if (_twin[h] < 0 && !HasRepeatedCorner(h / 3))
            {
                isFaulty[Origin(h)] = true;
                isFaulty[Target(h)] = true;
            }
        }

        for (int h = 0; h < _twin.Length; h++)
        {
            int v = Origin(h);
            if (seen[h] || isFaulty[v] || _twin[h] < 0)
            {
                continue;
            }

            if (fanOf[v] >= 0)
            {
                isFaulty[v] = true;
                _faults.Add(new MeshFault(
                    MeshFaultKind.SplitVertex, _surface.Place(_surface.Points[v]), _surface.Source[fanOf[v] / 3], _surface.Source[h / 3]));
                continue;
            }

            fanOf[v] = h;
            for (int g = h; !seen[g]; g = _twin[g % 3 == 0 ? g + 2 : g - 1])
            {
                seen[g] = true;
            }
        }
    }
}
