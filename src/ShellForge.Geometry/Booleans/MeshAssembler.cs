using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Booleans;

/// <summary>Stage 4b: points go to the lattice, all at once; regions become triangles; kept patches join them.</summary>
internal sealed class MeshAssembler
{
    private readonly Arrangement _arrangement;
    private readonly List<LatticePoint3> _vertices = [];
    private readonly Dictionary<LatticePoint3, int> _vertexAt = [];
    private readonly int[] _vertexOfPoint;
    private readonly List<int> _corners = [];
    private readonly List<int> _tags = [];

    private MeshAssembler(Arrangement arrangement)
    {
        _arrangement = arrangement;
        _vertexOfPoint = new int[arrangement.Points.Count];
        Array.Fill(_vertexOfPoint, -1);
    }

    public static RoundedMesh Assemble(Arrangement arrangement, Boundary boundary, Patches patches, Facets facets, CancellationToken ct)
    {
        MeshAssembler assembler = new(arrangement);
        assembler.AddPatches(patches, facets);
        int firstNew = assembler._tags.Count;
        RegionFiller filler = new(assembler._vertices, assembler._corners, assembler._tags);
        foreach (Region region in boundary.Regions)
        {
            ct.ThrowIfCancellationRequested();
            for (int i = 0; i < region.Edges.Count; i++)
            {
                (int from, int to) = region.Edges[i];
                region.Edges[i] = (assembler.VertexOf(from), assembler.VertexOf(to));
            }

            for (int i = 0; i < region.Loose.Count; i++)
            {
                region.Loose[i] = assembler.VertexOf(region.Loose[i]);
            }

            filler.Fill(region);
        }

        return new RoundedMesh
        {
            Vertices = [.. assembler._vertices],
            Corners = [.. assembler._corners],
            Tags = [.. assembler._tags],
            FirstNew = firstNew,
        };
    }

    private int VertexOf(int point)
    {
        ref int vertex = ref _vertexOfPoint[point];
        if (vertex < 0)
        {
            LatticePoint3 p = _arrangement.Points.Rounded(point);
            if (!_vertexAt.TryGetValue(p, out vertex))
            {
                vertex = _vertices.Count;
                _vertices.Add(p);
                _vertexAt.Add(p, vertex);
            }
        }

        return vertex;
    }

    private void AddPatches(Patches patches, Facets facets)
    {
        Intersections found = _arrangement.Found;
        Scene scene = found.Scene;
        for (int operand = 0; operand < scene.Operands.Length; operand++)
        {
            Operand mesh = scene.Operands[operand];
            int[] vertexOf = new int[mesh.Vertices.Length];
            Array.Fill(vertexOf, -1);
            for (int triangle = 0; triangle < mesh.TriangleCount; triangle++)
            {
                int patch = patches.Of(scene.TriangleStart[operand] + triangle);
                int kept = patch < 0 ? 0 : facets.KeptPatch(patch);
                if (kept == 0)
                {
                    continue;
                }

                for (int k = 0; k < 3; k++)
                {
                    int corner = mesh.Corners[(3 * triangle) + (kept > 0 ? k : 2 - k)];
                    if (vertexOf[corner] < 0)
                    {
                        int point = found.PointOfVertex[scene.VertexStart[operand] + corner];
                        vertexOf[corner] = point >= 0 ? VertexOf(point) : _vertices.Count;
                        if (point < 0)
                        {
                            _vertices.Add(mesh.Vertices[corner]);
                        }
                    }

                    _corners.Add(vertexOf[corner]);
                }

                _tags.Add(mesh.Tags[triangle]);
            }
        }
    }
}
