using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Geometry.Booleans.Ingest;

/// <summary>
/// Stage 0: the tree of a solid becomes operands on the lattice and an expression over them. Maps are composed and applied once to
/// the double source, then snapped. One source under one map is one operand, however often the tree names it.
/// </summary>
internal sealed class SolidFlattener
{
    private readonly List<Operand> _operands = [];
    private readonly Dictionary<(Solid Source, Transform3 Map, int Tag), int> _known = [];
    private readonly CancellationToken _ct;

    private SolidFlattener(CancellationToken ct) => _ct = ct;

    /// <exception cref="ArgumentException">A source is not a closed oriented mesh, or leaves the domain of ±256 mm.</exception>
    public static (Operand[] Operands, Expression Root) Flatten(Solid solid, CancellationToken ct)
    {
        SolidFlattener flattener = new(ct);
        Expression root = flattener.Visit(solid, Transform3.Identity, 0);
        return ([.. flattener._operands], root);
    }

    private Expression Visit(Solid solid, Transform3 map, int tag) => solid switch
    {
        MovedSolid moved => Visit(moved.Operand, moved.Map.Then(map), tag),
        TaggedSolid tagged => Visit(tagged.Operand, map, tagged.Tag.Id == 0 ? tag : tagged.Tag.Id),
        UnionSolid union => Expression.Any(VisitAll(union.Operands, map, tag)),
        IntersectionSolid { Operands.Length: 0 } => Expression.Nothing,
        IntersectionSolid common => Expression.All(VisitAll(common.Operands, map, tag)),
        DifferenceSolid cut => Expression.Less(Visit(cut.Body, map, tag), VisitAll(cut.Cutters, map, tag)),
        _ => Expression.Leaf(Number(solid, map, tag)),
    };

    private ImmutableArray<Expression> VisitAll(ImmutableArray<Solid> operands, Transform3 map, int tag) =>
        [.. operands.Select(operand => Visit(operand, map, tag))];

    private int Number(Solid leaf, Transform3 map, int tag)
    {
        if (_known.TryGetValue((leaf, map, tag), out int number))
        {
            return number;
        }

        _ct.ThrowIfCancellationRequested();
        Operand operand = leaf switch
        {
            SourceSolid source => FromSource(source, map, tag),
            EvaluatedSolid evaluated => FromEvaluated(evaluated.Result, map, tag),
            _ => throw new ArgumentException($"Unknown solid {leaf.GetType().Name}.", nameof(leaf)),
        };
        _operands.Add(operand);
        _known.Add((leaf, map, tag), _operands.Count - 1);
        return _operands.Count - 1;
    }

    private static Operand FromSource(SourceSolid source, Transform3 map, int tag)
    {
        RequireClosed(source.Triangles, source.Vertices.Length);
        LatticePoint3[] points = new LatticePoint3[source.Vertices.Length];
        for (int v = 0; v < points.Length; v++)
        {
            points[v] = Lattice.ToLattice(map.Apply(source.Vertices[v]));
        }

        int[] tags = new int[source.Triangles.Length / 3];
        Array.Fill(tags, tag);
        return Welded(points, [.. source.Triangles], tags, map.Determinant < 0, isClean: false);
    }

    private static Operand FromEvaluated(SolidMesh solid, Transform3 map, int tag)
    {
        Mesh mesh = solid.Mesh;
        int[] tags = [.. mesh.Tags.Select(own => own.Id == 0 ? tag : own.Id)];
        if (map == Transform3.Identity)
        {
            return tag == 0 || solid.IsEmpty || !mesh.Tags.Contains(FaceTag.None)
                ? (Operand)(solid.Prepared ??= Operand.Of([.. mesh.Vertices], [.. mesh.Triangles], tags, isClean: true))
                : Operand.Of([.. mesh.Vertices], [.. mesh.Triangles], tags, isClean: true);
        }

        LatticePoint3[] points = [.. mesh.Vertices.Select(v => Lattice.ToLattice(map.Apply(v.ToMillimetres())))];
        return Welded(points, [.. mesh.Triangles], tags, map.Determinant < 0, isClean: false);
    }

    // Snapping may bring corners together; equal lattice points become one vertex, numbered by first appearance.
    private static Operand Welded(LatticePoint3[] points, int[] corners, int[] tags, bool mirrored, bool isClean)
    {
        Dictionary<LatticePoint3, int> first = new(points.Length);
        int[] number = new int[points.Length];
        List<LatticePoint3> vertices = new(points.Length);
        for (int v = 0; v < points.Length; v++)
        {
            if (!first.TryGetValue(points[v], out number[v]))
            {
                number[v] = vertices.Count;
                first.Add(points[v], number[v]);
                vertices.Add(points[v]);
            }
        }

        for (int i = 0; i < corners.Length; i++)
        {
            corners[i] = number[corners[i]];
        }

        if (mirrored)
        {
            for (int t = 0; t < corners.Length; t += 3)
            {
                (corners[t + 1], corners[t + 2]) = (corners[t + 2], corners[t + 1]);
            }
        }

        return Operand.Of([.. vertices], corners, tags, isClean);
    }

    private static void RequireClosed(ImmutableArray<int> triangles, int vertexCount)
    {
        if (triangles.Length % 3 != 0)
        {
            throw new ArgumentException("A solid needs three vertex numbers a triangle.");
        }

        int[] start = new int[vertexCount + 1];
        for (int h = 0; h < triangles.Length; h++)
        {
            if ((uint)triangles[h] >= (uint)vertexCount)
            {
                throw new ArgumentException($"Vertex number {triangles[h]} is not one of {vertexCount}.");
            }
        }

        for (int h = 0; h < triangles.Length; h++)
        {
            start[Math.Min(triangles[h], triangles[Operand.Next(h)]) + 1]++;
        }

        for (int v = 0; v < vertexCount; v++)
        {
            start[v + 1] += start[v];
        }

        // For each vertex the other ends of the edges to higher ones, those that run to it complemented.
        int[] ends = new int[triangles.Length];
        int[] fill = start[..^1];
        for (int h = 0; h < triangles.Length; h++)
        {
            int from = triangles[h], to = triangles[Operand.Next(h)];
            ends[fill[Math.Min(from, to)]++] = from <= to ? to : ~from;
        }

        for (int v = 0; v < vertexCount; v++)
        {
            ReadOnlySpan<int> own = ends.AsSpan(start[v], start[v + 1] - start[v]);
            foreach (int end in own)
            {
                int other = end < 0 ? ~end : end;
                if (other != v && own.Count(other) != own.Count(~other))
                {
                    throw new ArgumentException($"The mesh is not closed along the edge between vertices {v} and {other}.");
                }
            }
        }
    }
}
