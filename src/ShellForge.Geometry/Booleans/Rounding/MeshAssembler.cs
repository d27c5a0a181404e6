using System.Runtime.InteropServices;
using ShellForge.Geometry.Booleans.Arranging;
using ShellForge.Geometry.Booleans.Classifying;
using ShellForge.Geometry.Booleans.Exact;
using ShellForge.Geometry.Booleans.Ingest;
using ShellForge.Geometry.Booleans.Meeting;
using ShellForge.Geometry.Booleans.Tables;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Booleans.Rounding;

/// <summary>Stage 4b: points go to the lattice, all at once; regions become triangles; kept patches join them.</summary>
internal sealed class MeshAssembler
{
    private readonly Arrangement _arrangement;
    private readonly int _mergeSteps;
    private readonly List<LatticePoint3> _vertices = [];
    private readonly Dictionary<LatticePoint3, int> _vertexAt = [];
    private readonly VertexGrid? _grid;
    private readonly int[] _vertexOfPoint;
    private readonly List<int> _patchCorners = [];
    private readonly List<int> _patchTags = [];
    private readonly HashSet<int> _held = [];
    private Dictionary<long, List<int>>? _patchTrianglesOfEdge;

    private MeshAssembler(Arrangement arrangement, int mergeSteps)
    {
        _arrangement = arrangement;
        _mergeSteps = mergeSteps;
        _grid = mergeSteps > 0 ? new VertexGrid(mergeSteps) : null;
        _vertexOfPoint = new int[arrangement.Points.Count];
        Array.Fill(_vertexOfPoint, -1);
    }

    // Within mergeSteps a constructed point takes an existing vertex instead of making one; 0: never.
    public static RoundedMesh Assemble(ExactResult exact, int mergeSteps, bool tidies, int threads, CancellationToken ct)
    {
        MeshAssembler assembler = new(exact.Arrangement, mergeSteps);
        assembler.AddPatches(exact.Patches, exact.Facets);
        List<PlanarRegion> rounded = assembler.NumberVertices(exact.Boundary);
        var bounded = BoundaryVolume.Of(
            CollectionsMarshal.AsSpan(assembler._vertices), rounded, CollectionsMarshal.AsSpan(assembler._patchCorners));
        int collapsed = tidies ? ShortEdges.Collapse(rounded, assembler._vertices, assembler._held.Contains) : 0;
        List<int> corners = [];
        List<int> tags = [];
        RegionSet regions = new(assembler._vertices, rounded, assembler.Release, assembler._held.Contains)
        {
            CrossingReach = mergeSteps > 0 ? 2 * mergeSteps : double.PositiveInfinity,
        };
        if (mergeSteps > 0)
        {
            regions.ImprintNearEdges(mergeSteps);
            regions.LeadThroughNearVertices(mergeSteps);
        }

        List<int> apart = [];
        regions.Fill(corners, tags, apart, threads, ct);
        bool lostFilm = CollapsedFilms.Remove(corners, tags, apart);
        assembler.KeepPatches();
        return new RoundedMesh
        {
            Vertices = [.. assembler._vertices],
            Corners = [.. assembler._patchCorners, .. corners],
            Tags = [.. assembler._patchTags, .. tags],
            Bounded = bounded,
            Collapsed = collapsed,
            LostFilm = lostFilm,
            KnownApart = [.. new int[assembler._patchTags.Count], .. apart],
        };
    }

    private List<PlanarRegion> NumberVertices(Boundary boundary)
    {
        if (_grid is not null)
        {
            // Lattice points stay where they are and are there to be merged with before any other point looks for company.
            foreach (PlanarRegion region in boundary.Regions)
            {
                foreach ((int from, int to) in region.Edges)
                {
                    NumberIfLattice(from);
                    NumberIfLattice(to);
                }
            }
        }

        List<PlanarRegion> rounded = new(boundary.Regions.Count);
        foreach (PlanarRegion region in boundary.Regions)
        {
            PlanarRegion copy = new(region.Plane, region.Tag);
            foreach ((int from, int to) in region.Edges)
            {
                copy.Edges.Add((VertexOf(from), VertexOf(to)));
            }

            foreach (int point in region.Loose)
            {
                copy.Loose.Add(VertexOf(point));
            }

            rounded.Add(copy);
        }

        return rounded;
    }

    private void NumberIfLattice(int point)
    {
        if (_arrangement.Points.IsLattice(point))
        {
            VertexOf(point);
        }
    }

    private int VertexOf(int point)
    {
        ref int vertex = ref _vertexOfPoint[point];
        if (vertex < 0)
        {
            LatticePoint3 p = _arrangement.Points.Rounded(point);
            if (_grid is not null && !_arrangement.Points.IsLattice(point))
            {
                vertex = _grid.Nearest(p, _mergeSteps);
                if (vertex >= 0)
                {
                    return vertex;
                }
            }

            if (!_vertexAt.TryGetValue(p, out vertex))
            {
                vertex = _vertices.Count;
                _vertices.Add(p);
                _vertexAt.Add(p, vertex);
                _grid?.Add(p, vertex);
            }
        }

        return vertex;
    }

    private void AddPatches(Patches patches, Facets facets)
    {
        Intersections found = _arrangement.Found;
        OperandSet scene = found.OperandSet;
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
                        else
                        {
                            _held.Add(vertexOf[corner]);
                        }
                    }

                    _patchCorners.Add(vertexOf[corner]);
                }

                _patchTags.Add(mesh.Tags[triangle]);
            }
        }
    }

    // The untouched triangle with this edge, as a region; its place in the patches is marked empty.
    private PlanarRegion? Release(int from, int to)
    {
        if (_patchTrianglesOfEdge is null)
        {
            _patchTrianglesOfEdge = new(PairComparer.Instance);
            for (int h = 0; h < _patchCorners.Count; h++)
            {
                int p = _patchCorners[h], q = _patchCorners[Operand.Next(h)];
                if (_held.Contains(p) && _held.Contains(q))
                {
                    long key = Key(p, q);
                    if (!_patchTrianglesOfEdge.TryGetValue(key, out List<int>? triangles))
                    {
                        triangles = [];
                        _patchTrianglesOfEdge.Add(key, triangles);
                    }

                    triangles.Add(h / 3);
                }
            }
        }

        if (!_patchTrianglesOfEdge.TryGetValue(Key(from, to), out List<int>? found))
        {
            return null;
        }

        foreach (int t in found)
        {
            if (_patchCorners[3 * t] >= 0)
            {
                int a = _patchCorners[3 * t], b = _patchCorners[(3 * t) + 1], c = _patchCorners[(3 * t) + 2];
                PlanarRegion region = new(new Plane(_vertices[a], _vertices[b], _vertices[c]), _patchTags[t]);
                region.Edges.AddRange([(a, b), (b, c), (c, a)]);
                _patchCorners[3 * t] = -1;
                return region;
            }
        }

        return null;
    }

    private void KeepPatches()
    {
        int kept = 0;
        for (int t = 0; t < _patchTags.Count; t++)
        {
            if (_patchCorners[3 * t] >= 0)
            {
                (_patchCorners[3 * kept], _patchCorners[(3 * kept) + 1], _patchCorners[(3 * kept) + 2]) =
                    (_patchCorners[3 * t], _patchCorners[(3 * t) + 1], _patchCorners[(3 * t) + 2]);
                _patchTags[kept++] = _patchTags[t];
            }
        }

        _patchCorners.RemoveRange(3 * kept, _patchCorners.Count - (3 * kept));
        _patchTags.RemoveRange(kept, _patchTags.Count - kept);
    }

    private static long Key(int p, int q) => ((long)Math.Min(p, q) << 32) | (uint)Math.Max(p, q);
}
