using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Booleans;

/// <summary>
/// Boxes over the triangles of one mesh: triangles in Morton order, four a leaf, leaves under a complete binary tree kept in an
/// array (children of node i at 2i and 2i + 1). Queries allocate nothing but what they return.
/// </summary>
internal sealed class BoxTree
{
    private const int LeafSize = 4;
    private readonly int[] _order;
    private readonly IntBox[] _triangleBoxes;
    private readonly IntBox[] _nodes;
    private readonly int _firstLeaf;

    public BoxTree(LatticePoint3[] vertices, int[] corners)
    {
        int count = corners.Length / 3;
        IntBox[] boxes = new IntBox[count];
        IntBox all = IntBox.Empty;
        for (int t = 0; t < count; t++)
        {
            boxes[t] = IntBox.Of(vertices[corners[3 * t]], vertices[corners[(3 * t) + 1]], vertices[corners[(3 * t) + 2]]);
            all.Include(boxes[t]);
        }

        _order = MortonOrder(boxes, all);
        _triangleBoxes = new IntBox[count];
        for (int i = 0; i < count; i++)
        {
            _triangleBoxes[i] = boxes[_order[i]];
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
        double cx = (double)box.MinX + box.MaxX - a.X - b.X, cy = (double)box.MinY + box.MaxY - a.Y - b.Y, cz = (double)box.MinZ + box.MaxZ - a.Z - b.Z;
        double hx = (double)box.MaxX - box.MinX, hy = (double)box.MaxY - box.MinY, hz = (double)box.MaxZ - box.MinZ;
        double ax = Math.Abs(dx), ay = Math.Abs(dy), az = Math.Abs(dz);
        return hx >= 0 && Math.Abs(cx) <= hx + ax && Math.Abs(cy) <= hy + ay && Math.Abs(cz) <= hz + az
            && Math.Abs((cy * dz) - (cz * dy)) <= (hy * az) + (hz * ay)
            && Math.Abs((cz * dx) - (cx * dz)) <= (hz * ax) + (hx * az)
            && Math.Abs((cx * dy) - (cy * dx)) <= (hx * ay) + (hy * ax);
    }

    /// <summary>Adds the pairs of triangles, one of each tree, whose boxes share a point.</summary>
    public void Pairs(BoxTree other, List<(int Mine, int Other)> found)
    {
        Stack<(int, int)> stack = new();
        stack.Push((1, 1));
        while (stack.TryPop(out (int Mine, int Other) pair))
        {
            if (!_nodes[pair.Mine].Touches(other._nodes[pair.Other]))
            {
                continue;
            }

            bool mineIsLeaf = pair.Mine >= _firstLeaf;
            bool otherIsLeaf = pair.Other >= other._firstLeaf;
            if (mineIsLeaf && otherIsLeaf)
            {
                LeafPairs(pair.Mine, other, pair.Other, found);
            }
            else if (!mineIsLeaf && (otherIsLeaf || IsLarger(_nodes[pair.Mine], other._nodes[pair.Other])))
            {
                stack.Push((2 * pair.Mine, pair.Other));
                stack.Push(((2 * pair.Mine) + 1, pair.Other));
            }
            else
            {
                stack.Push((pair.Mine, 2 * pair.Other));
                stack.Push((pair.Mine, (2 * pair.Other) + 1));
            }
        }
    }

    /// <summary>Adds the pairs of different triangles of this tree whose boxes share a point, each once.</summary>
    public void OwnPairs(List<(int First, int Second)> found)
    {
        Stack<(int, int)> stack = new();
        stack.Push((1, 1));
        while (stack.TryPop(out (int A, int B) pair))
        {
            if (pair.A != pair.B && !_nodes[pair.A].Touches(_nodes[pair.B]))
            {
                continue;
            }

            if (pair.A >= _firstLeaf)
            {
                OwnLeafPairs(pair.A, pair.B, found);
            }
            else if (pair.A == pair.B)
            {
                stack.Push((2 * pair.A, 2 * pair.A));
                stack.Push(((2 * pair.A) + 1, (2 * pair.A) + 1));
                stack.Push((2 * pair.A, (2 * pair.A) + 1));
            }
            else
            {
                stack.Push((2 * pair.A, 2 * pair.B));
                stack.Push((2 * pair.A, (2 * pair.B) + 1));
                stack.Push(((2 * pair.A) + 1, 2 * pair.B));
                stack.Push(((2 * pair.A) + 1, (2 * pair.B) + 1));
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

    private void LeafPairs(int mine, BoxTree other, int theirs, List<(int, int)> found)
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

    private void OwnLeafPairs(int a, int b, List<(int, int)> found)
    {
        (int from, int to) = LeafRange(a);
        (int otherFrom, int otherTo) = LeafRange(b);
        for (int i = from; i < to; i++)
        {
            for (int j = a == b ? i + 1 : otherFrom; j < otherTo; j++)
            {
                if (_triangleBoxes[i].Touches(_triangleBoxes[j]))
                {
                    found.Add((_order[i], _order[j]));
                }
            }
        }
    }

    private static int[] MortonOrder(IntBox[] boxes, in IntBox all)
    {
        ulong[] keys = new ulong[boxes.Length];
        int[] order = new int[boxes.Length];
        for (int t = 0; t < boxes.Length; t++)
        {
            // Sums of two coordinates below 2^26 relative to the corner; the top 16 bits of each are interleaved.
            uint x = (uint)(boxes[t].MinX + boxes[t].MaxX - (2 * all.MinX));
            uint y = (uint)(boxes[t].MinY + boxes[t].MaxY - (2 * all.MinY));
            uint z = (uint)(boxes[t].MinZ + boxes[t].MaxZ - (2 * all.MinZ));
            keys[t] = Spread(x >> 6) | (Spread(y >> 6) << 1) | (Spread(z >> 6) << 2);
            order[t] = t;
        }

        Array.Sort(keys, order);
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
