using ShellForge.Geometry.Booleans.Arranging;
using ShellForge.Geometry.Booleans.Classifying;
using ShellForge.Geometry.Booleans.Exact;
using ShellForge.Geometry.Booleans.Meeting;
using ShellForge.Geometry.Booleans.Tables;

namespace ShellForge.Geometry.Booleans.Rounding;

/// <summary>
/// Stage 4a: the boundary of the result as planar regions before rounding. A region is what is kept of one sheet facing one way
/// under one tag, given by its directed edges. Edges inside a region vanish, and so do points where a straight edge merely goes on.
/// </summary>
internal sealed class Boundary
{
    private readonly Arrangement _arrangement;
    private readonly Loops _loops;
    private readonly Coverage _coverage;
    private readonly Facets _facets;
    private readonly Patches _patches;
    private readonly int[] _polarity;
    private readonly int[] _regionOfLoop;
    private readonly Dictionary<(int Group, bool Forward, int Tag), int> _regionNumber = [];
    private readonly List<int> _groupOfRegion = [];

    private Boundary(in CellComplex complex, Facets facets, int[] polarity)
    {
        (_arrangement, _loops, _coverage, _patches) = complex;
        _facets = facets;
        _polarity = polarity;
        _regionOfLoop = new int[_loops.Count];
    }

    public List<PlanarRegion> Regions { get; } = [];

    public static Boundary Of(in CellComplex complex, Facets facets, int[] polarity, CancellationToken ct)
    {
        Boundary boundary = new(complex, facets, polarity);
        boundary.NumberRegions();
        List<Use> uses = boundary.Uses(out bool[] isUsed);
        ct.ThrowIfCancellationRequested();
        StraightChains chains = StraightChains.Of(complex.Arrangement, isUsed, boundary.PinnedPoints());
        foreach (Use use in uses)
        {
            if (isUsed[use.Edge])
            {
                chains.Emit(use.Edge, use.Forward, boundary.Regions[use.Region].Edges);
            }
        }

        boundary.AddLoosePoints(chains);
        return boundary;
    }

    // A region lies left of the edge walked in this sense.
    private readonly record struct Use(int Edge, int Region, bool Forward);

    private void NumberRegions()
    {
        Sheets sheets = _arrangement.Sheets;
        for (int loop = 0; loop < _loops.Count; loop++)
        {
            int kept = _facets.KeptLoop(loop);
            if (kept == 0)
            {
                _regionOfLoop[loop] = -1;
                continue;
            }

            int sheet = _loops.SheetOf[loop];
            int group = sheets.GroupOf[sheet];
            Plane plane = sheets.GroupPlanes[group];
            bool forward = (kept > 0) == (Plane.NormalDotSign(plane, sheets.Planes[sheet]) > 0);
            int tag = TagOf(loop, kept);
            if (!_regionNumber.TryGetValue((group, forward, tag), out _regionOfLoop[loop]))
            {
                _regionOfLoop[loop] = Regions.Count;
                _regionNumber.Add((group, forward, tag), Regions.Count);
                _groupOfRegion.Add(group);
                Regions.Add(new PlanarRegion(forward ? plane : plane.Flipped(), tag));
            }
        }
    }

    // All uses of edges by regions. An edge is used by the result unless one region merely goes on across it.
    private List<Use> Uses(out bool[] isUsed)
    {
        Grouping around = _arrangement.PiecesOf;
        isUsed = new bool[_arrangement.EdgeCount];
        List<Use> uses = new(around.ItemCount);
        for (int edge = 0; edge < isUsed.Length; edge++)
        {
            int boundaries = 0;
            Use first = default, second = default;
            foreach (int piece in around[edge])
            {
                int left = _loops.LoopOfSide[2 * piece], right = _loops.LoopOfSide[(2 * piece) + 1];
                int regionLeft = _regionOfLoop[left], regionRight = _regionOfLoop[right];
                bool isBoundary = regionLeft != regionRight;
                if (regionLeft >= 0)
                {
                    Add(new Use(edge, regionLeft, _facets.KeptLoop(left) > 0), isBoundary);
                }

                if (regionRight >= 0)
                {
                    Add(new Use(edge, regionRight, _facets.KeptLoop(right) < 0), isBoundary);
                }
            }

            bool goesOn = boundaries == 2 && first.Region == second.Region && first.Forward != second.Forward;
            isUsed[edge] = (boundaries > 0 && !goesOn) || BoundsKeptPatch(edge);

            void Add(in Use use, bool isBoundary)
            {
                uses.Add(use);
                if (isBoundary)
                {
                    first = boundaries == 0 ? use : first;
                    second = boundaries == 1 ? use : second;
                    boundaries++;
                }
            }
        }

        return uses;
    }

    private bool BoundsKeptPatch(int edge)
    {
        int sceneEdge = _arrangement.SceneEdge(edge);
        return sceneEdge >= 0 && (IsKept(sceneEdge) || IsKept(_arrangement.Found.OperandSet.Partner(sceneEdge)));
    }

    private bool IsKept(int halfEdge) =>
        halfEdge >= 0 && _patches.Of(halfEdge / 3) is int patch and >= 0 && _facets.KeptPatch(patch) != 0;

    // Corners of untouched triangles that stay.
    private bool[] PinnedPoints()
    {
        bool[] isPinned = new bool[_arrangement.Points.Count];
        Intersections found = _arrangement.Found;
        OperandSet scene = found.OperandSet;
        for (int operand = 0; operand < scene.Operands.Length; operand++)
        {
            int[] corners = scene.Operands[operand].Corners;
            for (int i = 0; i < corners.Length; i++)
            {
                int point = found.PointOfVertex[scene.VertexStart[operand] + corners[i]];
                if (point >= 0 && IsKept((3 * scene.TriangleStart[operand]) + i))
                {
                    isPinned[point] = true;
                }
            }
        }

        return isPinned;
    }

    // A point that the result uses elsewhere may lie inside a region here: it must become a vertex of it.
    private void AddLoosePoints(StraightChains chains)
    {
        List<(int, int)> members = [];
        for (int sheet = 0; sheet < _arrangement.Sheets.Count; sheet++)
        {
            members.Add((_arrangement.Sheets.GroupOf[sheet], sheet));
        }

        Grouping sheetsOf = Grouping.Of(_arrangement.Sheets.GroupPlanes.Count, members);
        for (int r = 0; r < Regions.Count; r++)
        {
            foreach (int sheet in sheetsOf[_groupOfRegion[r]])
            {
                foreach (int point in _arrangement.PointsOf[sheet])
                {
                    if (chains.IsCorner(point))
                    {
                        Regions[r].Loose.Add(point);
                    }
                }
            }
        }
    }

    // Of the faces that look where the result's face looks: a cutter's before a body's, then the lowest operand's.
    private int TagOf(int loop, int kept)
    {
        int best = int.MaxValue;
        int tag = 0;
        foreach (Coverage.Cover cover in _coverage[loop])
        {
            int polarity = _polarity[cover.Operand];
            int rank = cover.Operand + (cover.Sense * polarity != kept ? 1 << 20 : polarity > 0 ? 1 << 18 : 0);
            if (rank < best)
            {
                best = rank;
                tag = cover.Tag;
            }
        }

        return tag;
    }
}
