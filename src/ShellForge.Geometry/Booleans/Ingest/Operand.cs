using System.Collections.Immutable;
using ShellForge.Geometry.Booleans.Exact;
using ShellForge.Geometry.Booleans.Tables;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Geometry.Booleans.Ingest;

/// <summary>
/// One operand on the lattice: triangles without degenerate ones, each half-edge's partner, and the box tree. Half-edge 3t + k
/// runs from corner k of triangle t to the next corner. The triangles are a closed oriented chain; they may cross each other
/// unless <see cref="IsClean"/> says that somebody has checked.
/// </summary>
internal sealed class Operand : PreparedOperand
{
    private Operand(LatticePoint3[] vertices, int[] corners, int[] tags, bool isClean, int[]? knownApart)
    {
        Vertices = vertices;
        Corners = corners;
        Tags = tags;
        IsClean = isClean;
        KnownApart = knownApart;
        Partner = new int[corners.Length];
        IsReal = new bool[corners.Length];
        Pair();
        Tree = new MortonTree(vertices, corners, knownApart);
    }

    public LatticePoint3[] Vertices { get; }

    public int[] Corners { get; }

    public int[] Tags { get; }

    /// <summary>The half-edge on the other side, or -1 where the edge has not exactly two opposed uses.</summary>
    public int[] Partner { get; }

    /// <summary>False for a half-edge between two triangles of one plane, one orientation and one tag.</summary>
    public bool[] IsReal { get; }

    public MortonTree Tree { get; }

    /// <summary>No two triangles meet outside shared vertices and edges.</summary>
    public bool IsClean { get; }

    /// <summary>
    /// Triangles with the same number of 0 or more here have nothing in common but shared corners and edges: 0 those that were
    /// untouched so far, more those of one planar region that was triangulated at once. Null when nothing is known.
    /// </summary>
    public int[]? KnownApart { get; }

    public int TriangleCount => Tags.Length;

    public LatticePoint3 Corner(int triangle, int k) => Vertices[Corners[(3 * triangle) + k]];

    public Plane PlaneOf(int triangle) => new(Corner(triangle, 0), Corner(triangle, 1), Corner(triangle, 2));

    /// <summary>
    /// Drops triangles without area; their neighbours then have no partner along them and are split by the arrangement itself.
    /// Equal lattice points must have one vertex number.
    /// </summary>
    public static Operand Of(LatticePoint3[] vertices, int[] corners, int[] tags, bool isClean, int[]? knownApart = null)
    {
        int kept = 0;
        int[] keptCorners = new int[corners.Length];
        int[] keptTags = new int[tags.Length];
        int[]? keptApart = knownApart is null ? null : new int[tags.Length];
        for (int t = 0; t < tags.Length; t++)
        {
            int a = corners[3 * t], b = corners[(3 * t) + 1], c = corners[(3 * t) + 2];
            if (a == b || b == c || c == a || new Plane(vertices[a], vertices[b], vertices[c]).IsDegenerate)
            {
                continue;
            }

            keptCorners[3 * kept] = a;
            keptCorners[(3 * kept) + 1] = b;
            keptCorners[(3 * kept) + 2] = c;
            if (keptApart is not null)
            {
                keptApart[kept] = knownApart![t];
            }

            keptTags[kept++] = tags[t];
        }

        Array.Resize(ref keptCorners, 3 * kept);
        Array.Resize(ref keptTags, kept);
        return new Operand(vertices, keptCorners, keptTags, isClean, keptApart);
    }

    /// <summary>The operand as a mesh, without the vertices that no triangle uses.</summary>
    public Mesh ToMesh()
    {
        int[] number = new int[Vertices.Length];
        foreach (int corner in Corners)
        {
            number[corner] = 1;
        }

        ImmutableArray<LatticePoint3>.Builder vertices = ImmutableArray.CreateBuilder<LatticePoint3>(Vertices.Length);
        for (int v = 0; v < number.Length; v++)
        {
            if (number[v] > 0)
            {
                number[v] = vertices.Count;
                vertices.Add(Vertices[v]);
            }
        }

        ImmutableArray<int>.Builder corners = ImmutableArray.CreateBuilder<int>(Corners.Length);
        foreach (int corner in Corners)
        {
            corners.Add(number[corner]);
        }

        ImmutableArray<FaceTag>.Builder tags = ImmutableArray.CreateBuilder<FaceTag>(Tags.Length);
        foreach (int tag in Tags)
        {
            tags.Add(new FaceTag(tag));
        }

        return new Mesh(vertices.ToImmutable(), corners.MoveToImmutable(), tags.MoveToImmutable());
    }

    private void Pair()
    {
        int[] start = new int[Vertices.Length + 1];
        for (int h = 0; h < Corners.Length; h++)
        {
            start[Math.Min(Corners[h], Corners[Next(h)]) + 1]++;
        }

        for (int v = 0; v < Vertices.Length; v++)
        {
            start[v + 1] += start[v];
        }

        int[] sorted = new int[Corners.Length];
        int[] fill = start[..^1];
        for (int h = 0; h < Corners.Length; h++)
        {
            sorted[fill[Math.Min(Corners[h], Corners[Next(h)])]++] = h;
        }

        Array.Fill(Partner, -1);
        Array.Fill(IsReal, true);
        for (int v = 0; v < Vertices.Length; v++)
        {
            Span<int> around = sorted.AsSpan(start[v], start[v + 1] - start[v]);
            for (int i = 0; i < around.Length; i++)
            {
                PairFirst(around, i);
            }
        }
    }

    private void PairFirst(ReadOnlySpan<int> around, int i)
    {
        int h = around[i];
        int high = Math.Max(Corners[h], Corners[Next(h)]);
        int match = -1;
        for (int j = 0; j < around.Length; j++)
        {
            int g = around[j];
            if (j != i && Math.Max(Corners[g], Corners[Next(g)]) == high)
            {
                if (match >= 0)
                {
                    return;
                }

                match = g;
            }
        }

        if (match < 0 || Corners[match] == Corners[h])
        {
            return;
        }

        Partner[h] = match;
        if (match < h)
        {
            bool real = Partner[match] < 0 || IsCorner(h, match);
            IsReal[h] = real;
            IsReal[match] = real;
        }
    }

    private bool IsCorner(int h, int g)
    {
        if (Tags[h / 3] != Tags[g / 3])
        {
            return true;
        }

        Plane plane = PlaneOf(h / 3);
        return plane.Side(Vertices[Corners[Next(Next(g))]]) != 0 || Plane.NormalDotSign(plane, PlaneOf(g / 3)) < 0;
    }

    public static int Next(int halfEdge) => halfEdge % 3 == 2 ? halfEdge - 2 : halfEdge + 1;
}
