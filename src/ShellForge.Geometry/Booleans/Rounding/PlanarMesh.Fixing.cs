namespace ShellForge.Geometry.Booleans.Rounding;

/// <content>Edges that must be there, and what they bound.</content>
internal sealed partial class PlanarMesh
{
    private readonly Queue<(int, int)> _crossing = new();

    /// <summary>What keeps an edge from being fixed.</summary>
    internal enum Obstacle
    {
        None,
        Vertex,
        Edge,
    }

    /// <summary>
    /// Fixes the edge from a to b and adds to the net count of boundary edges that run along it. When a vertex lies on it or a
    /// fixed edge crosses it, nothing changes and what stands in the way is returned.
    /// </summary>
    public Obstacle Fix(int a, int b, int net, out int obstacleFrom, out int obstacleTo)
    {
        obstacleFrom = obstacleTo = -1;
        int h = FindEdge(a, b);
        if (h < 0)
        {
            Obstacle obstacle = CollectCrossing(a, b, out obstacleFrom, out obstacleTo);
            if (obstacle != Obstacle.None)
            {
                return obstacle;
            }

            FlipThrough(a, b);
            h = FindEdge(a, b);
        }

        _fixed[h] = true;
        int own = Math.Sign(_corner[h] == a ? 1 : -1) * net;
        _net[h] += own;
        int twin = _twin[h];
        if (twin >= 0)
        {
            _fixed[twin] = true;
            _net[twin] -= own;
        }

        return Obstacle.None;
    }

    /// <summary>How often each triangle is inside the boundary: the sum of the nets crossed from outside.</summary>
    public int[] Multiplicity()
    {
        int[] multiplicity = new int[TriangleCount];
        bool[] seen = new bool[TriangleCount];
        Stack<int> open = new();
        int hull = 0;
        while (_twin[hull] >= 0)
        {
            hull++;
        }

        multiplicity[hull / 3] = _net[hull];
        seen[hull / 3] = true;
        open.Push(hull / 3);
        while (open.TryPop(out int t))
        {
            for (int h = 3 * t; h < (3 * t) + 3; h++)
            {
                int neighbour = _twin[h] / 3;
                if (_twin[h] >= 0 && !seen[neighbour])
                {
                    seen[neighbour] = true;
                    multiplicity[neighbour] = multiplicity[t] - _net[h];
                    open.Push(neighbour);
                }
            }
        }

        return multiplicity;
    }

    // The half-edge from a to b, or from b to a when a to b is outside the hull; -1 when they are not joined.
    private int FindEdge(int a, int b)
    {
        int start = _leaving[a];
        int h = start;
        do
        {
            if (_corner[Next(h)] == b)
            {
                return h;
            }

            int back = Previous(h);
            if (_corner[back] == b)
            {
                return back;
            }

            h = _twin[back];
        }
        while (h >= 0 && h != start);

        // The fan is open: go the other way round.
        h = start;
        while (h >= 0)
        {
            if (_corner[Next(h)] == b)
            {
                return h;
            }

            h = _twin[h] < 0 ? -1 : Next(_twin[h]);
            if (h == start)
            {
                break;
            }
        }

        return -1;
    }

    private Obstacle CollectCrossing(int a, int b, out int from, out int to)
    {
        _crossing.Clear();
        from = to = -1;
        int h = FirstCrossed(a, b, out int vertex);
        if (h < 0)
        {
            from = vertex;
            return Obstacle.Vertex;
        }

        while (true)
        {
            if (_fixed[h])
            {
                from = _corner[h];
                to = _corner[Next(h)];
                return Obstacle.Edge;
            }

            _crossing.Enqueue((_corner[h], _corner[Next(h)]));
            int g = _twin[h];
            int apex = _corner[Previous(g)];
            if (apex == b)
            {
                return Obstacle.None;
            }

            long side = Orient(a, b, apex);
            if (side == 0)
            {
                from = apex;
                return Obstacle.Vertex;
            }

            // h runs from the right of a-b to its left; g the other way: next of g starts at h's right end.
            h = side > 0 ? Next(g) : Previous(g);
        }
    }

    // The edge opposite a that a-b crosses first, running from the right of a-b to its left.
    private int FirstCrossed(int a, int b, out int vertex)
    {
        vertex = -1;
        int start = _leaving[a];
        int h = start;
        bool forward = true;
        while (true)
        {
            int x = _corner[Next(h)], y = _corner[Previous(h)];
            long sx = Orient(a, b, x), sy = Orient(a, b, y);
            if (sx == 0 && IsAhead(a, b, x))
            {
                vertex = x;
                return -1;
            }

            if (sy == 0 && IsAhead(a, b, y))
            {
                vertex = y;
                return -1;
            }

            if (sx < 0 && sy > 0)
            {
                return Next(h);
            }

            int next = forward ? _twin[Previous(h)] : _twin[h] < 0 ? -1 : Next(_twin[h]);
            if (next < 0 && forward)
            {
                forward = false;
                next = _twin[start] < 0 ? -1 : Next(_twin[start]);
            }

            if (next < 0 || next == start)
            {
                throw new InvalidOperationException("A point of a triangulation does not see its hull.");
            }

            h = next;
        }
    }

    private bool IsAhead(int a, int b, int x) =>
        ((_u[b] - _u[a]) * (_u[x] - _u[a])) + ((_v[b] - _v[a]) * (_v[x] - _v[a])) > 0;

    private void FlipThrough(int a, int b)
    {
        while (_crossing.TryDequeue(out (int X, int Y) edge))
        {
            int h = FindEdge(edge.X, edge.Y);
            int g = _twin[h];
            int x = _corner[h], y = _corner[g], c = _corner[Previous(h)], d = _corner[Previous(g)];
            if (Orient(d, y, c) <= 0 || Orient(c, x, d) <= 0)
            {
                _crossing.Enqueue(edge);
                continue;
            }

            Flip(h);
            if (c != a && c != b && d != a && d != b && Math.Sign(Orient(a, b, c)) * Math.Sign(Orient(a, b, d)) < 0)
            {
                _crossing.Enqueue((c, d));
            }
        }
    }
}
