using System.Runtime.InteropServices;

namespace ShellForge.Geometry.Measuring;

/// <summary>An axis-parallel box of floats: lattice counts and float32 coordinates are exact in it.</summary>
[StructLayout(LayoutKind.Sequential)]
internal struct FloatBox
{
    public float MinX;
    public float MinY;
    public float MinZ;
    public float MaxX;
    public float MaxY;
    public float MaxZ;

    public static FloatBox Empty => new()
    {
        MinX = float.PositiveInfinity,
        MinY = float.PositiveInfinity,
        MinZ = float.PositiveInfinity,
        MaxX = float.NegativeInfinity,
        MaxY = float.NegativeInfinity,
        MaxZ = float.NegativeInfinity,
    };

    /// <summary>Half the surface: what decides how often a query has to look inside.</summary>
    public readonly float HalfArea
    {
        get
        {
            float x = MaxX - MinX;
            float y = MaxY - MinY;
            float z = MaxZ - MinZ;
            return (x * y) + (y * z) + (z * x);
        }
    }

    public void Include(in FloatBox other)
    {
        MinX = Math.Min(MinX, other.MinX);
        MinY = Math.Min(MinY, other.MinY);
        MinZ = Math.Min(MinZ, other.MinZ);
        MaxX = Math.Max(MaxX, other.MaxX);
        MaxY = Math.Max(MaxY, other.MaxY);
        MaxZ = Math.Max(MaxZ, other.MaxZ);
    }

    public readonly bool Touches(in FloatBox other) =>
        MinX <= other.MaxX && other.MinX <= MaxX && MinY <= other.MaxY && other.MinY <= MaxY
        && MinZ <= other.MaxZ && other.MinZ <= MaxZ;
}

/// <summary>
/// A node of a box tree. The left child follows its parent in the list, the right one is at <see cref="Right"/>; a leaf has 0
/// there. All items below a node are those from <see cref="First"/> to before <see cref="End"/> in tree order.
/// </summary>
internal struct BoxNode
{
    public FloatBox Box;
    public int Right;
    public int First;
    public int End;
}

/// <summary>
/// A tree of boxes in one flat list, parents before children, for any query that can discard what lies elsewhere. Built by the
/// surface area heuristic over bins; ties and rounding can make it slower, never wrong. Same boxes, same tree.
/// Source: I. Wald, On fast construction of SAH-based bounding volume hierarchies, 2007.
/// </summary>
internal sealed class BoxTree
{
    private const int LeafSize = 4;
    private const int Bins = 16;

    private readonly BoxNode[] _nodes;
    private readonly FloatBox[] _boxes;
    private readonly int[] _order;
    private int _count;

    /// <summary>Builds the tree; the boxes are reordered into tree order.</summary>
    public BoxTree(FloatBox[] boxes)
    {
        _boxes = boxes;
        _order = new int[boxes.Length];
        for (int i = 0; i < _order.Length; i++)
        {
            _order[i] = i;
        }

        _nodes = new BoxNode[Math.Max(1, 2 * boxes.Length)];
        if (boxes.Length > 0)
        {
            Build(0, boxes.Length);
        }
    }

    /// <summary>The nodes; the root first. Without a box there is none.</summary>
    public ReadOnlySpan<BoxNode> Nodes => _nodes.AsSpan(0, _count);

    /// <summary>The item at each place of the tree order.</summary>
    public ReadOnlySpan<int> Order => _order;

    /// <summary>The boxes in tree order.</summary>
    public ReadOnlySpan<FloatBox> Boxes => _boxes;

    /// <summary>How many levels a walk's stack must hold, at most.</summary>
    public int Depth { get; private set; }

    private void Build(int first, int end, int depth = 1)
    {
        Depth = Math.Max(Depth, depth);
        int node = _count++;
        FloatBox box = FloatBox.Empty;
        FloatBox middles = FloatBox.Empty;
        for (int i = first; i < end; i++)
        {
            ref FloatBox b = ref _boxes[i];
            box.Include(b);
            float x = b.MinX + b.MaxX;
            float y = b.MinY + b.MaxY;
            float z = b.MinZ + b.MaxZ;
            middles.Include(new FloatBox { MinX = x, MinY = y, MinZ = z, MaxX = x, MaxY = y, MaxZ = z });
        }

        _nodes[node].Box = box;
        _nodes[node].First = first;
        _nodes[node].End = end;
        if (end - first <= LeafSize)
        {
            return;
        }

        int split = Split(first, end, middles);
        Build(first, split, depth + 1);
        _nodes[node].Right = _count;
        Build(split, end, depth + 1);
    }

    // Puts the items that go left before the others and says where the others begin. Never leaves a side empty.
    private int Split(int first, int end, in FloatBox middles)
    {
        float sizeX = middles.MaxX - middles.MinX;
        float sizeY = middles.MaxY - middles.MinY;
        float sizeZ = middles.MaxZ - middles.MinZ;
        int axis = sizeX >= sizeY && sizeX >= sizeZ ? 0 : sizeY >= sizeZ ? 1 : 2;
        float low = axis == 0 ? middles.MinX : axis == 1 ? middles.MinY : middles.MinZ;
        float size = axis == 0 ? sizeX : axis == 1 ? sizeY : sizeZ;
        float scale = Bins / size;
        if (!(size > 0) || !float.IsFinite(scale))
        {
            return (first + end) / 2;
        }

        Span<FloatBox> bins = stackalloc FloatBox[Bins];
        Span<int> counts = stackalloc int[Bins];
        bins.Fill(FloatBox.Empty);
        counts.Clear();
        for (int i = first; i < end; i++)
        {
            int bin = BinOf(_boxes[i], axis, low, scale);
            bins[bin].Include(_boxes[i]);
            counts[bin]++;
        }

        int best = BestCut(bins, counts);
        int left = first;
        int right = end - 1;
        while (left <= right)
        {
            if (BinOf(_boxes[left], axis, low, scale) < best)
            {
                left++;
            }
            else
            {
                (_boxes[left], _boxes[right]) = (_boxes[right], _boxes[left]);
                (_order[left], _order[right]) = (_order[right], _order[left]);
                right--;
            }
        }

        return left == first || left == end ? (first + end) / 2 : left;
    }

    private static int BestCut(ReadOnlySpan<FloatBox> bins, ReadOnlySpan<int> counts)
    {
        Span<float> rightCost = stackalloc float[Bins];
        FloatBox box = FloatBox.Empty;
        int count = 0;
        for (int i = Bins - 1; i > 0; i--)
        {
            box.Include(bins[i]);
            count += counts[i];
            rightCost[i] = count == 0 ? 0 : count * box.HalfArea;
        }

        box = FloatBox.Empty;
        count = 0;
        int best = Bins / 2;
        float bestCost = float.PositiveInfinity;
        for (int i = 1; i < Bins; i++)
        {
            box.Include(bins[i - 1]);
            count += counts[i - 1];
            float cost = (count == 0 ? 0 : count * box.HalfArea) + rightCost[i];
            if (count > 0 && cost < bestCost)
            {
                bestCost = cost;
                best = i;
            }
        }

        return best;
    }

    private static int BinOf(in FloatBox box, int axis, float low, float scale)
    {
        float middle = axis == 0 ? box.MinX + box.MaxX : axis == 1 ? box.MinY + box.MaxY : box.MinZ + box.MaxZ;
        return Math.Clamp((int)((middle - low) * scale), 0, Bins - 1);
    }
}
