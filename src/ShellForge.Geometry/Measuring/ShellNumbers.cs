namespace ShellForge.Geometry.Measuring;

/// <summary>
/// Which shell each vertex belongs to: triangles that share a vertex are of one shell. Shells are numbered by the order in which
/// the triangles meet them first; vertices without a triangle have -1.
/// </summary>
internal sealed class ShellNumbers
{
    private readonly int[] _parent;

    public ShellNumbers(int vertexCount, ReadOnlySpan<int> triangles)
    {
        _parent = new int[vertexCount];
        for (int i = 0; i < vertexCount; i++)
        {
            _parent[i] = i;
        }

        for (int i = 0; i < triangles.Length; i += 3)
        {
            Join(triangles[i], triangles[i + 1]);
            Join(triangles[i], triangles[i + 2]);
        }

        int[] numberOfRoot = new int[vertexCount];
        Array.Fill(numberOfRoot, -1);
        OfVertex = new int[vertexCount];
        Array.Fill(OfVertex, -1);
        foreach (int v in triangles)
        {
            int root = Root(v);
            if (numberOfRoot[root] < 0)
            {
                numberOfRoot[root] = Count++;
            }

            OfVertex[v] = numberOfRoot[root];
        }
    }

    /// <summary>How many shells there are.</summary>
    public int Count { get; }

    /// <summary>The shell of each vertex.</summary>
    public int[] OfVertex { get; }

    private void Join(int a, int b)
    {
        a = Root(a);
        b = Root(b);
        _parent[Math.Max(a, b)] = Math.Min(a, b);
    }

    private int Root(int v)
    {
        while (_parent[v] != v)
        {
            _parent[v] = _parent[_parent[v]];
            v = _parent[v];
        }

        return v;
    }
}
