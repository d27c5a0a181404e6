using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Booleans.Tables;

/// <summary>
/// Boxes over the triangles of one mesh: triangles in Morton order, four a leaf, leaves under a complete binary tree kept in an
/// array (children of node i at 2i and 2i + 1). Queries allocate nothing but what they return. Built in linear time for every round, and
/// walked in pairs over whole numbers; the tree of the measuring side costs more to build, is asked for distances and rays of one surface
/// many times over, and holds floats.
/// </summary>
internal sealed class MortonTree
{
    private const int LeafSize = 4;
    private readonly int[] _order;
    private readonly IntBox[] _triangleBoxes;
    private readonly IntBox[] _nodes;
    private readonly int _firstLeaf;
    private readonly int[]? _apart;
    private readonly bool[]? _isUntouched;

    /// <param name="vertices">Corners' places.</param>
    /// <param name="corners">Three vertex numbers a triangle.</param>
    /// <param name="knownApart">A number a triangle: those with the same number of 0 or more meet only in shared corners and edges. Null
    /// when nothing is known.</param>
    public MortonTree(LatticePoint3[] vertices, int[] corners, int[]? knownApart = null)
    {
        int count = corners.Length / 3;
        IntBox all = IntBox.Empty;
        foreach (int corner in corners)
        {
            all.Include(vertices[corner]);
        }

        _order = MortonOrder(vertices, corners, all);
        _triangleBoxes = new IntBox[count];
        for (int i = 0; i < count; i++)
        {
            _triangleBoxes[i] = BoxOf(vertices, corners, _order[i]);
        }

        int leaves = Math.Max(1, (count + LeafSize - 1) / LeafSize);
        _firstLeaf = (int)System.Numerics.BitOperations.RoundUpToPowerOf2((uint)leaves);
        _nodes = new IntBox[2 * _firstLeaf];
        for (int leaf = 0; leaf < _firstLeaf; leaf++)
        {
            IntBox box = IntBox.Empty;
            for (int i = leaf * LeafSize; i < Math.Min(count, (leaf + 1) * LeafSize); i++)
            {
                box.Include(_triangleBoxes[i]);
            }

            _nodes[_firstLeaf + leaf] = box;
        }

        for (int node = _firstLeaf - 1; node >= 1; node--)
        {
            IntBox box = _nodes[2 * node];
            box.Include(_nodes[(2 * node) + 1]);
            _nodes[node] = box;
        }

        if (knownApart is not null)
        {
            _apart = new int[count];
            _isUntouched = new bool[_nodes.Length];
            Array.Fill(_isUntouched, true);
            for (int i = 0; i < count; i++)
            {
                _apart[i] = knownApart[_order[i]];
                for (int node = _firstLeaf + (i / LeafSize); _apart[i] != 0 && _isUntouched[node]; node /= 2)
                {
                    _isUntouched[node] = false;
                }
            }
        }
    }

    /// <summary>The box round everything.</summary>
    public IntBox Bounds => _nodes[1];

    /// <summary>Adds to <paramref name="found"/> the triangles whose boxes share a point with the box.</summary>
    public void Query(in IntBox box, List<int> found)
    {
        Span<int> stack = stackalloc int[64];
        int depth = 0;
        stack[depth++] = 1;
        while (depth > 0)
        {
            int node = stack[--depth];
            if (!_nodes[node].Touches(box))
            {
                continue;
            }

            if (node < _firstLeaf)
            {
                stack[depth++] = (2 * node) + 1;
                stack[depth++] = 2 * node;
                continue;
            }

            (int from, int to) = LeafRange(node);
            for (int i = from; i < to; i++)
            {
                if (_triangleBoxes[i].Touches(box))
                {
                    found.Add(_order[i]);
                }
            }
        }
    }

    /// <summary>Adds the triangles whose boxes, grown by the reach, a segment may meet.</summary>
    public void QuerySegment(LatticePoint3 a, LatticePoint3 b, int reach, List<int> found)
    {
        Span<int> stack = stackalloc int[64];
        int depth = 0;
        stack[depth++] = 1;
        while (depth > 0)
        {
            int node = stack[--depth];
            if (!Meets(_nodes[node].Grown(reach), a, b))
            {
                continue;
            }

            if (node < _firstLeaf)
            {
                stack[depth++] = (2 * node) + 1;
                stack[depth++] = 2 * node;
                continue;
            }

            (int from, int to) = LeafRange(node);
            for (int i = from; i < to; i++)
            {
                if (Meets(_triangleBoxes[i].Grown(reach), a, b))
                {
                    found.Add(_order[i]);
                }
            }
        }
    }

    // Separating axes of a box and a segment: the three axes and their products with the segment.
    private static bool Meets(in IntBox box, LatticePoint3 a, LatticePoint3 b)
    {
        double dx = (double)b.X - a.X, dy = (double)b.Y - a.Y, dz = (double)b.Z - a.Z;
        double cx = (double)box.MinX + box.MaxX - a.X - b.X, cy = (double)box.MinY + box.MaxY - a.Y
            - b.Y, cz = (double)box.MinZ + box.MaxZ - a.Z - b.Z;
        double hx = (double)box.MaxX - box.MinX, hy = (double)box.MaxY - box.MinY, hz = (double)box.MaxZ - box.MinZ;
        double ax = Math.Abs(dx), ay = Math.Abs(dy), az = Math.Abs(dz);
        return hx >= 0 && Math.Abs(cx) <= hx + ax && Math.Abs(cy) <= hy + ay && Math.Abs(cz) <= hz + az
            && Math.Abs((cy * dz) - (cz * dy)) <= (hy * az) + (hz * ay)
            && Math.Abs((cz * dx) - (cx * dz)) <= (hz * ax) + (hx * az)
            && Math.Abs((cx * dy) - (cy * dx)) <= (hx * ay) + (hy * ax);
    }

    /// <summary>How many leaves hold triangles.</summary>
    public int LeafCount => (_order.Length + LeafSize - 1) / LeafSize;

    /// <summary>Nodes that together hold all triangles, each over at most so many leaves (a power of two).</summary>
    public IEnumerable<int> NodesOf(int leaves)
    {
        int first = Math.Max(1, _firstLeaf / leaves);
        int each = _firstLeaf / first;
        for (int node = first; node < 2 * first && (node - first) * each < LeafCount; node++)
        {
            yield return node;
        }
    }

    /// <summary>Adds the pairs of triangles, one below a node of this tree and one of the other, whose boxes share a point.</summary>
    public void Pairs(int node, MortonTree other, List<(int Mine, int Other)> found)
    {
        Span<(int Mine, int Other)> stack = stackalloc (int, int)[80];
        int depth = 0;
        stack[depth++] = (node, 1);
        while (depth > 0)
        {
            (int mine, int theirs) = stack[--depth];
            if (!_nodes[mine].Touches(other._nodes[theirs]))
            {
                continue;
            }

            bool mineIsLeaf = mine >= _firstLeaf;
            bool otherIsLeaf = theirs >= other._firstLeaf;
            if (mineIsLeaf && otherIsLeaf)
            {
                LeafPairs(mine, other, theirs, found);
            }
            else if (!mineIsLeaf && (otherIsLeaf || IsLarger(_nodes[mine], other._nodes[theirs])))
            {
                stack[depth++] = (2 * mine, theirs);
                stack[depth++] = ((2 * mine) + 1, theirs);
            }
            else
            {
                stack[depth++] = (mine, 2 * theirs);
                stack[depth++] = (mine, (2 * theirs) + 1);
            }
        }
    }

    /// <summary>
    /// Adds the pairs of different triangles whose boxes share a point, one below each of two nodes of one level (or both below one node),
    /// less those that are known to be apart.
    /// </summary>
    public void OwnPairs(int first, int second, List<(int First, int Second)> found)
    {
        Span<(int, int)> stack = stackalloc (int, int)[128];
        int depth = 0;
        stack[depth++] = (first, second);
        while (depth > 0)
        {
            (int a, int b) = stack[--depth];
            if (!MayHavePairs(a, b))
            {
                continue;
            }

            if (a >= _firstLeaf)
            {
                OwnLeafPairs(a, b, found);
                continue;
            }

            stack[depth++] = ((2 * a) + 1, (2 * b) + 1);
            if (a != b)
            {
                stack[depth++] = ((2 * a) + 1, 2 * b);
            }

            stack[depth++] = (2 * a, (2 * b) + 1);
            stack[depth++] = (2 * a, 2 * b);
        }
    }

    /// <summary>False when no two triangles below the nodes make a pair for <see cref="OwnPairs"/>.</summary>
    public bool MayHavePairs(int first, int second) =>
        _nodes[first].Touches(_nodes[second]) && (_isUntouched is null || !_isUntouched[first] || !_isUntouched[second]);

    private void OwnLeafPairs(int a, int b, List<(int First, int Second)> found)
    {
        (int from, int to) = LeafRange(a);
        (int otherFrom, int otherTo) = LeafRange(b);
        for (int i = from; i < to; i++)
        {
            int apart = _apart is null ? -1 : _apart[i];
            for (int j = a == b ? i + 1 : otherFrom; j < otherTo; j++)
            {
                if ((apart < 0 || _apart![j] != apart) && _triangleBoxes[i].Touches(_triangleBoxes[j]))
                {
                    found.Add((_order[i], _order[j]));
                }
            }
        }
    }

    private static bool IsLarger(in IntBox a, in IntBox b) =>
        (long)a.MaxX - a.MinX + (a.MaxY - a.MinY) + (a.MaxZ - a.MinZ) >= (long)b.MaxX - b.MinX + (b.MaxY - b.MinY) + (b.MaxZ - b.MinZ);

    private (int From, int To) LeafRange(int node)
    {
        int from = (node - _firstLeaf) * LeafSize;
        return (from, Math.Min(_order.Length, from + LeafSize));
    }

    private void LeafPairs(int mine, MortonTree other, int theirs, List<(int, int)> found)
    {
        (int from, int to) = LeafRange(mine);
        (int otherFrom, int otherTo) = other.LeafRange(theirs);
        for (int i = from; i < to; i++)
        {
            for (int j = otherFrom; j < otherTo; j++)
            {
                if (_triangleBoxes[i].Touches(other._triangleBoxes[j]))
                {
                    found.Add((_order[i], other._order[j]));
                }
            }
        }
    }

    private static IntBox BoxOf(LatticePoint3[] vertices, int[] corners, int triangle) =>
        IntBox.Of(vertices[corners[3 * triangle]], vertices[corners[(3 * triangle) + 1]], vertices[corners[(3 * triangle) + 2]]);

    private static int[] MortonOrder(LatticePoint3[] vertices, int[] corners, in IntBox all)
    {
        ulong[] keys = new ulong[corners.Length / 3];
        int[] order = new int[keys.Length];
        for (int t = 0; t < keys.Length; t++)
        {
            // Sums of two coordinates below 2^26 relative to the corner; the top 16 bits of each are interleaved.
            IntBox box = BoxOf(vertices, corners, t);
            uint x = (uint)(box.MinX + box.MaxX - (2 * all.MinX));
            uint y = (uint)(box.MinY + box.MaxY - (2 * all.MinY));
            uint z = (uint)(box.MinZ + box.MaxZ - (2 * all.MinZ));
            keys[t] = Spread(x >> 6) | (Spread(y >> 6) << 1) | (Spread(z >> 6) << 2);
            order[t] = t;
        }

        return Sorted(keys, order);
    }

    // By 12 bits a pass, from the lowest up; equal keys keep their order.
    private static int[] Sorted(ulong[] keys, int[] order)
    {
        const int Bits = 12;
        ulong[] otherKeys = new ulong[keys.Length];
        int[] otherOrder = new int[keys.Length];
        int[] start = new int[1 << Bits];
        for (int shift = 0; shift < 60; shift += Bits)
        {
            Array.Clear(start);
            foreach (ulong key in keys)
            {
                start[(int)(key >> shift) & ((1 << Bits) - 1)]++;
            }

            int sum = 0;
            for (int digit = 0; digit < start.Length; digit++)
            {
                (start[digit], sum) = (sum, sum + start[digit]);
            }

            for (int i = 0; i < keys.Length; i++)
            {
                int at = start[(int)(keys[i] >> shift) & ((1 << Bits) - 1)]++;
                otherKeys[at] = keys[i];
                otherOrder[at] = order[i];
            }

            (keys, otherKeys) = (otherKeys, keys);
            (order, otherOrder) = (otherOrder, order);
        }

        return order;
    }

    private static ulong Spread(uint value)
    {
        ulong v = value & 0x1FFFFF;
        v = (v | (v << 32)) & 0x001F00000000FFFF;
        v = (v | (v << 16)) & 0x001F0000FF0000FF;
        v = (v | (v << 8)) & 0x100F00F00F00F00F;
        v = (v | (v << 4)) & 0x10C30C30C30C30C3;
        return (v | (v << 2)) & 0x1249249249249249;
    }
}
