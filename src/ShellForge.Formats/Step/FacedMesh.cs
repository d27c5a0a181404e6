using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Step;

/// <summary>The curve that a run of edges stands for.</summary>
internal enum CurveKind
{
    /// <summary>Straight from corner to corner.</summary>
    Line,

    /// <summary>An arc about an upright axis.</summary>
    Arc,

    /// <summary>A part of an ellipse: where an oblique plane cuts an upright cylinder.</summary>
    Ellipse,

    /// <summary>None that both faces have.</summary>
    None,
}

/// <summary>
/// Faces of a mesh as they are written: triangles joined to faces, flat and round, with the loops round them, corners where their faces
/// meet, and a curve for each run. In lattice steps.
/// </summary>
internal sealed class FacedMesh
{
    // An arc strays from its chords by the chord error, and a corner moves along a plane that meets it at an angle: further than this is
    // no rounding.
    public const double FurthestMove = 4 * Tolerances.ChordError / Lattice.Step;

    private readonly Dictionary<int, Point3> _placed = [];
    private readonly Dictionary<int, SortedSet<int>> _meeting = [];
    private readonly Point3[] _normals;

    private FacedMesh(HalfEdges edges, int[] patches, RoundSurface?[] round)
    {
        Edges = edges;
        Patches = patches;
        Round = round;
        Loops = Borders.Of(edges, patches);
        _normals = [.. CoplanarFaces.Normals(edges, patches).Select(normal => 1 / normal.Length * normal)];
    }

    public HalfEdges Edges { get; }

    /// <summary>The face of each triangle.</summary>
    public int[] Patches { get; }

    /// <summary>The surface of each face; null for flat ones.</summary>
    public RoundSurface?[] Round { get; }

    /// <summary>The loops of each face.</summary>
    public List<List<BorderRun>>[] Loops { get; }

    /// <summary>The outward direction of a flat face.</summary>
    public Point3 Normal(int face) => _normals[face];

    /// <summary>Where a corner is.</summary>
    public Point3 Corner(int vertex) => _placed.TryGetValue(vertex, out Point3 at) ? at : Edges.At(vertex);

    /// <summary>The faces as they are written.</summary>
    public List<List<WrittenSide>>[] Written { get; private set; } = [];

    /// <summary>How many faces the check of what is written sent back to flat facets.</summary>
    public int SentBack { get; private set; }

    /// <summary>Puts a corner elsewhere.</summary>
    public void Put(int vertex, Point3 at) => _placed[vertex] = at;

    /// <summary>The boundary with as many round faces as can be had exactly; the rest is flat facets.</summary>
    public static FacedMesh Of(HalfEdges edges) => Of(edges, WrittenCheck.Faults);

    /// <summary>The same by another check.</summary>
    /// <param name="edges">The mesh.</param>
    /// <param name="check">The faces that must not be written as they are.</param>
    internal static FacedMesh Of(HalfEdges edges, Func<FacedMesh, List<List<WrittenSide>>[], IReadOnlySet<int>> check)
    {
        int[] facets = CoplanarFaces.Of(edges);
        List<RoundGroup> groups = RoundGroups.Of(edges, facets);
        int sentBack = 0;
        while (true)
        {
            var boundary = Joined(edges, facets, RoundPieces.Of(edges, facets, groups));
            HashSet<int> faults = boundary.Faults(facets);
            bool checks = faults.Count == 0;
            if (checks)
            {
                boundary.Written = WrittenFaces.Of(boundary);
                ShortSides.Contract(boundary, boundary.Written);
                IReadOnlySet<int> open = check(boundary, boundary.Written);
                sentBack += open.Count;
                faults = boundary.RoundAt(open, facets);
                if (faults.Count == 0 && !boundary.Split(open, facets))
                {
                    // Single triangles close as the mesh does: there is nothing flatter.
                    boundary.SentBack = sentBack;
                    return boundary;
                }
            }

            bool unsure = !checks && groups.Any(group => !group.IsSure && group.Facets.Any(faults.Contains));
            groups =
            [
                .. groups.Select(group => group.IsSure && unsure
                    ? group
                    : group with { Facets = [.. group.Facets.Where(facet => !faults.Contains(facet))] }),
            ];
        }
    }

    // The round facets of faces and of their neighbours.
    private HashSet<int> RoundAt(IReadOnlySet<int> faces, int[] facets)
    {
        HashSet<int> about = [.. faces, .. faces.SelectMany(face => Loops[face]).SelectMany(loop => loop).Select(run => run.Other)];
        return [.. Enumerable.Range(0, facets.Length).Where(t => about.Contains(Patches[t]) && Round[Patches[t]] is not null)
            .Select(t => facets[t])];
    }

    // Flat faces into triangles; false where all are.
    private bool Split(IReadOnlySet<int> faces, int[] facets)
    {
        int[] sizes = new int[Loops.Length];
        foreach (int face in Patches)
        {
            sizes[face]++;
        }

        int next = facets.Max() + 1;
        bool any = false;
        for (int t = 0; t < facets.Length; t++)
        {
            if (faces.Contains(Patches[t]) && sizes[Patches[t]] > 1)
            {
                facets[t] = next++;
                any = true;
            }
        }

        return any;
    }

    private static FacedMesh Joined(HalfEdges edges, int[] facets, RoundPiece?[] pieces)
    {
        int[] patches = new int[facets.Length];
        Array.Fill(patches, -1);
        var round = new List<RoundSurface?>();
        var waiting = new Stack<int>();
        for (int seed = 0; seed < patches.Length; seed++)
        {
            if (patches[seed] >= 0)
            {
                continue;
            }

            RoundPiece? piece = pieces[facets[seed]];
            patches[seed] = round.Count;
            waiting.Push(seed);
            while (waiting.TryPop(out int t))
            {
                for (int e = 3 * t; e < (3 * t) + 3; e++)
                {
                    int other = HalfEdges.TriangleOf(edges.Twin(e));
                    if (patches[other] < 0 && (facets[other] == facets[seed] || (piece is not null && pieces[facets[other]] == piece)))
                    {
                        patches[other] = round.Count;
                        waiting.Push(other);
                    }
                }
            }

            round.Add(piece?.Surface);
        }

        return new FacedMesh(edges, patches, [.. round]);
    }

    // The round facets that can't be: at corners that no point fits, along curves that are none, in loops that meet themselves.
    private HashSet<int> Faults(int[] facets)
    {
        var faults = new HashSet<int>();
        var atCorner = new HashSet<int>();
        for (int face = 0; face < Loops.Length; face++)
        {
            foreach (List<BorderRun> loop in Loops[face])
            {
                for (int i = 0; i < loop.Count; i++)
                {
                    int corner = Edges.From(loop[i].Edges[0]);
                    if (!_meeting.TryGetValue(corner, out SortedSet<int>? meeting))
                    {
                        _meeting.Add(corner, meeting = []);
                    }

                    meeting.Add(face);
                    meeting.Add(loop[i].Other);
                    meeting.Add(loop[(i + loop.Count - 1) % loop.Count].Other);
                }
            }
        }

        foreach ((int corner, SortedSet<int> meeting) in _meeting)
        {
            if (!Place(corner, meeting))
            {
                atCorner.Add(corner);
            }
        }

        if (atCorner.Count > 0)
        {
            for (int e = 0; e < Edges.Count; e++)
            {
                int t = HalfEdges.TriangleOf(e);
                if (atCorner.Contains(Edges.From(e)) && Round[Patches[t]] is not null)
                {
                    faults.Add(facets[t]);
                }
            }
        }

        for (int face = 0; face < Loops.Length; face++)
        {
            foreach (BorderRun run in Loops[face].SelectMany(loop => loop))
            {
                // What ends at a corner without a place is blamed there alone: the rest of an arc may well be one.
                if (!atCorner.Contains(Edges.From(run.Edges[0])) && !atCorner.Contains(Edges.To(run.Edges[^1]))
                    && Curve(face, run) == CurveKind.None)
                {
                    Blame(run, facets, faults);
                }
            }
        }

        if (faults.Count == 0)
        {
            foreach (BorderRun run in LoopCrossings.Of(this))
            {
                Blame(run, facets, faults);
            }
        }

        return faults;
    }

    private void Blame(BorderRun run, int[] facets, HashSet<int> faults)
    {
        foreach (int e in run.Edges)
        {
            foreach (int t in new[] { HalfEdges.TriangleOf(e), HalfEdges.TriangleOf(Edges.Twin(e)) })
            {
                if (Round[Patches[t]] is not null)
                {
                    faults.Add(facets[t]);
                }
            }
        }
    }

    // Onto all round faces at once, within the planes of all flat ones; the planes are those through where the corner was.
    private bool Place(int corner, SortedSet<int> meeting)
    {
        Point3 from = Edges.At(corner);
        RoundSurface[] surfaces = [.. meeting.Select(face => Round[face]).OfType<RoundSurface>().Distinct()];
        if (surfaces.All(surface => surface.Holds(from)))
        {
            return true;
        }

        Point3[] planes = [.. meeting.Where(face => Round[face] is null).Select(face => _normals[face])];
        if (CornerPlace.Of(from, planes, surfaces) is not { } at || Point3.Distance(at, from) > FurthestMove)
        {
            return false;
        }

        _placed.Add(corner, at);
        return true;
    }

    /// <summary>The curve of a run along a face.</summary>
    public CurveKind Curve(int face, BorderRun run)
    {
        int first = Edges.From(run.Edges[0]), last = Edges.To(run.Edges[^1]);
        Point3 from = Corner(first), to = Corner(last);
        RoundSurface? own = Round[face], other = Round[run.Other];
        if (_placed.ContainsKey(first) || _placed.ContainsKey(last))
        {
            Point3 before = Edges.At(last) - Edges.At(first);
            if (Point3.Dot(to - from, before) <= 0 || Point3.Distance(from, to) < 4 * Tolerances.FlatnessSteps)
            {
                return CurveKind.None;
            }
        }

        if (own is null && other is null)
        {
            return CurveKind.Line;
        }

        Point3 middle = 0.5 * (from + to);
        if (own?.Holds(middle) != false && other?.Holds(middle) != false && IsStraight(run, from, to))
        {
            return CurveKind.Line;
        }

        RoundSurface round = own ?? other!;
        bool level = RoundSurface.IsLevel(from.Z, to.Z) && run.Edges.All(e => RoundSurface.IsLevel(Edges.Start(e).Z, from.Z));
        bool shared = own is null ? IsLevelPlane(face) : other is null ? IsLevelPlane(run.Other) : own.Meets(other, from.Z);
        if (!round.Holds(from) || !round.Holds(to))
        {
            return CurveKind.None;
        }

        return level && shared ? CurveKind.Arc : IsOblique(face, run.Other) ? CurveKind.Ellipse : CurveKind.None;
    }

    /// <summary>Whether an end of a run lies elsewhere than in the mesh.</summary>
    public bool IsMoved(BorderRun run) => _placed.ContainsKey(Edges.From(run.Edges[0])) || _placed.ContainsKey(Edges.To(run.Edges[^1]));

    /// <summary>The curve of a run in parts as good as straight, each with the edge it stands for.</summary>
    public IEnumerable<(Point3 From, Point3 To, BorderRun Part)> Path(int face, BorderRun run)
    {
        const double straight = Tolerances.ChordError / 20 / Lattice.Step;
        CurveKind curve = Curve(face, run);
        Point3 at = Corner(Edges.From(run.Edges[0])), last = Corner(Edges.To(run.Edges[^1]));
        if (curve is not CurveKind.Arc and not CurveKind.Ellipse)
        {
            yield return (at, last, run);
            yield break;
        }

        RoundSurface round = Round[face] ?? Round[run.Other]!;
        int plane = curve == CurveKind.Ellipse ? (Round[face] is null ? face : run.Other) : -1;
        Point3 on = at;
        Point3 Raised(Point3 p) => plane < 0 ? p : p with { Z = on.Z - (Point2.Dot(_normals[plane].XY, p.XY - on.XY) / _normals[plane].Z) };
        foreach (int e in run.Edges)
        {
            BorderRun part = run.Edges.Count == 1 ? run : new BorderRun([e], run.Other);
            Point3 from = Edges.Start(e), to = Edges.At(Edges.To(e));
            double chord = Point2.Distance(from.XY, to.XY);
            double parts = Math.Max(1, Math.Ceiling(Math.Sqrt(chord * chord / (8 * round.RadiusAt(from.Z)) / straight)));
            for (int i = 1; i <= parts; i++)
            {
                Point3 next = e == run.Edges[^1] && i == parts ? last : Raised(OnCircle(round, from + (i / parts * (to - from))));
                yield return (at, next, part);
                at = next;
            }
        }
    }

    private static Point3 OnCircle(RoundSurface round, Point3 p)
    {
        Point2 away = p.XY - round.Axis;
        Point2 at = round.Axis + (round.RadiusAt(p.Z) / away.Length * away);
        return new Point3(at.X, at.Y, p.Z);
    }

    // Steeper planes make ellipses so long that their ends say nothing about them.
    private bool IsOblique(int face, int other)
    {
        const double steepest = 0.05;
        (RoundSurface? round, int plane) = Round[face] is { } own ? (own, other) : (Round[other], face);
        return round!.IsCylinder && Round[plane] is null && Math.Abs(_normals[plane].Z) > steepest;
    }

    private bool IsLevelPlane(int face) => _normals[face] is { X: 0, Y: 0 };

    private bool IsStraight(BorderRun run, Point3 from, Point3 to)
    {
        const double little = 1.01;
        double length = run.Edges.Sum(e => Point3.Distance(Edges.Start(e), Edges.At(Edges.To(e))));
        return length <= (little * Point3.Distance(from, to)) + (8 * Tolerances.ChordError / Lattice.Step);
    }
}
