using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Step;

/// <summary>
/// The faces that a mesh becomes: round ones where facets stand for a round surface and their borders can be drawn on it, flat ones
/// elsewhere; corners where the surfaces meet; curves between them.
/// </summary>
internal sealed class StepFaces
{
    private readonly FacetGraph _graph;
    private readonly int[] _facets;
    private readonly RoundSurface?[] _surfaces;
    private readonly List<RoundPatch?> _round = [];

    private StepFaces(HalfEdges edges)
    {
        Edges = edges;
        _facets = CoplanarFaces.Of(edges);
        _graph = new FacetGraph(edges, _facets);
        _surfaces = RoundFinder.Of(_graph);
        Patches = [];
        Borders = [];
        Surfaces = [];
        Corners = new Dictionary<int, Point3>();
        Curves = new Dictionary<(int, bool), BorderCurve>();
    }

    /// <summary>The mesh.</summary>
    public HalfEdges Edges { get; }

    /// <summary>The face of each triangle.</summary>
    public int[] Patches { get; private set; }

    /// <summary>The loops round each face.</summary>
    public List<List<BorderRun>>[] Borders { get; private set; }

    /// <summary>The surface of each face.</summary>
    public ISurface[] Surfaces { get; private set; }

    /// <summary>Where corners of faces lie, by the vertex of the mesh.</summary>
    public Dictionary<int, Point3> Corners { get; private set; }

    /// <summary>The curve of each run, by its smaller half-edge, as it runs for one of its two faces.</summary>
    public Dictionary<(int Key, bool Ahead), BorderCurve> Curves { get; private set; }

    /// <summary>The round patch of a face; null for a flat one.</summary>
    public RoundPatch? Round(int face) => _round[face];

    /// <summary>The faces of a closed mesh.</summary>
    public static StepFaces Of(HalfEdges edges)
    {
        var faces = new StepFaces(edges);
        while (!faces.Drawn())
        {
        }

        return faces;
    }

    /// <summary>What a run of half-edges is known by to both of its faces, and whether this face runs along it as it was drawn.</summary>
    public (int Key, bool Ahead) KeyOf(BorderRun run)
    {
        int here = run.Edges.Min(), there = run.Edges.Min(Edges.Twin);
        return (Math.Min(here, there), here < there);
    }

    // One attempt; facets whose borders can't be drawn on their round surface become flat, and it has to be tried again.
    private bool Drawn()
    {
        RoundPatch?[] round = RoundPieces.Of(_graph, _surfaces);
        Number(round);
        Borders = Step.Borders.Of(Edges, Patches);
        Point3[] normals = [.. CoplanarFaces.Normals(Edges, Patches)];
        Surfaces = [.. _round.Select((patch, face) => patch is not null
            ? (ISurface)patch.Surface
            : new FlatSurface(Edges.Start(Borders[face][0][0].Edges[0]), 1 / normals[face].Length * normals[face]))];
        bool[] wide = [.. _round.Select((patch, face) => patch is not null || IsWide(face, normals[face]))];
        var flattened = new HashSet<int>();
        Corners = Met(flattened);
        Curves = [];
        foreach ((List<BorderRun> loop, int face) in Borders.SelectMany((loops, face) => loops.Select(loop => (loop, face))))
        {
            foreach (BorderRun run in loop)
            {
                (int Key, bool Ahead) key = KeyOf(run);
                if (!key.Ahead)
                {
                    continue;
                }

                BorderCurve? curve = BorderCurve.Of(this, run, face);
                if (curve is null || (curve is not LineCurve && !(wide[face] && wide[run.Other])))
                {
                    Flatten(run, flattened);
                }
                else
                {
                    Curves.Add(key, curve);
                }
            }
        }

        foreach (int facet in flattened)
        {
            _surfaces[facet] = null;
        }

        return flattened.Count == 0;
    }

    private void Flatten(BorderRun run, HashSet<int> flattened)
    {
        foreach (int facet in run.Edges.SelectMany(e => new[] { e, Edges.Twin(e) }).Select(e => _facets[HalfEdges.TriangleOf(e)]))
        {
            if (_surfaces[facet] is not null)
            {
                flattened.Add(facet);
            }
        }
    }

    // An arc strays from its chords by the chord error: across a strip that is hardly wider it would meet the other side.
    private bool IsWide(int face, Point3 normal)
    {
        const double leastWidth = 4 * Tolerances.ChordError / Lattice.Step;
        double around = Borders[face].SelectMany(loop => loop).SelectMany(run => run.Edges)
            .Sum(e => Point3.Distance(Edges.Start(e), Edges.At(Edges.To(e))));
        return normal.Length >= leastWidth * around;
    }

    // Corners that a cut made on a chord go to where the surfaces meet.
    private Dictionary<int, Point3> Met(HashSet<int> flattened)
    {
        var beside = new Dictionary<int, SortedSet<int>>();
        var facets = new Dictionary<int, HashSet<int>>();
        foreach (int e in Borders.SelectMany(loops => loops).SelectMany(loop => loop).Select(run => run.Edges[0]))
        {
            beside.TryAdd(Edges.From(e), []);
            facets.TryAdd(Edges.From(e), []);
        }

        for (int e = 0; e < Edges.Count; e++)
        {
            if (beside.TryGetValue(Edges.From(e), out SortedSet<int>? faces))
            {
                faces.Add(Patches[HalfEdges.TriangleOf(e)]);
                facets[Edges.From(e)].Add(_facets[HalfEdges.TriangleOf(e)]);
            }
        }

        var corners = new Dictionary<int, Point3>();
        foreach ((int vertex, SortedSet<int> faces) in beside)
        {
            Point3 at = Edges.At(vertex);
            corners.Add(vertex, at);
            if (!faces.Any(face => _round[face] is not null))
            {
                continue;
            }

            if (SurfaceMeeting.Of(at, [.. faces.Select(face => Surfaces[face])]) is { } met)
            {
                corners[vertex] = met;
            }
            else
            {
                flattened.UnionWith(facets[vertex].Where(facet => _surfaces[facet] is not null));
            }
        }

        return corners;
    }

    // Round pieces hold many facets, flat faces are a facet each; numbered in the order of the mesh.
    private void Number(RoundPatch?[] round)
    {
        var byFacet = new Dictionary<int, int>();
        var byPiece = new Dictionary<RoundPatch, int>(ReferenceEqualityComparer.Instance);
        Patches = new int[_facets.Length];
        _round.Clear();
        for (int t = 0; t < Patches.Length; t++)
        {
            RoundPatch? piece = round[_facets[t]];
            bool known = piece is null ? byFacet.TryGetValue(_facets[t], out int number) : byPiece.TryGetValue(piece, out number);
            if (!known)
            {
                number = _round.Count;
                _round.Add(piece);
                if (piece is null)
                {
                    byFacet.Add(_facets[t], number);
                }
                else
                {
                    byPiece.Add(piece, number);
                }
            }

            Patches[t] = number;
        }
    }
}
