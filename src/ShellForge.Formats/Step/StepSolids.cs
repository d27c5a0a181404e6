using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Formats.Step;

/// <summary>
/// The solids of a mesh: faces, edges and corners once each, shells by connection, voids within the body that holds them.
/// </summary>
internal sealed class StepSolids
{
    private readonly StepText _text;
    private readonly HalfEdges _edges;
    private readonly Transform3 _place;
    private readonly int[] _facets;
    private readonly int[] _patches;
    private readonly List<RoundPatch?> _round = [];
    private readonly Dictionary<int, int> _corners = [];
    private readonly Dictionary<(int Edge, bool), int> _curves = [];

    private StepSolids(StepText text, Mesh mesh, double widen, Transform3 place)
    {
        _text = text;
        _place = place;
        _edges = new HalfEdges(mesh, widen);
        _facets = CoplanarFaces.Of(_edges);
        RoundPatch?[] round = RoundFaces.Of(_edges, _facets);
        _patches = Patches(round);
    }

    /// <summary>Adds the solids.</summary>
    /// <param name="text">Where to.</param>
    /// <param name="mesh">The mesh.</param>
    /// <param name="widen">What x and y are multiplied by first.</param>
    /// <param name="place">Where it goes then: turned and shifted only.</param>
    /// <returns>Their numbers.</returns>
    public static IEnumerable<int> Of(StepText text, Mesh mesh, double widen, Transform3 place) =>
        mesh.TriangleCount == 0 ? [] : new StepSolids(text, mesh, widen, place).Added();

    // Round patches hold many facets, flat ones are a facet each; numbered in the order of the mesh.
    private int[] Patches(RoundPatch?[] round)
    {
        var byFacet = new Dictionary<int, int>();
        var byPiece = new Dictionary<RoundPatch, int>(ReferenceEqualityComparer.Instance);
        int[] patches = new int[_facets.Length];
        for (int t = 0; t < patches.Length; t++)
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

            patches[t] = number;
        }

        return patches;
    }

    private IEnumerable<int> Added()
    {
        List<List<BorderRun>>[] borders = Borders.Of(_edges, _patches);
        Point3[] normals = [.. CoplanarFaces.Normals(_edges, _patches)];
        int[] faces = [.. borders.Select((loops, patch) => Face(loops, normals[patch], _round[patch]))];
        return StepShells.Of(_text, _edges, _patches, faces);
    }

    private int Face(List<List<BorderRun>> loops, Point3 normal, RoundPatch? round)
    {
        // The longest way round is the outer one of a flat face.
        IEnumerable<int> bounds = loops.OrderByDescending(Span).Select((loop, i) =>
            _text.Add($"{(i == 0 ? "FACE_OUTER_BOUND" : "FACE_BOUND")}('',#{Loop(loop, round)},.T.)"));
        string list = StepText.List([.. bounds]);
        Point3 origin = Placed(_edges.From(loops[0][0].Edges[0]));
        (int surface, bool same) = round is null ? (Plane(origin, normal), true) : (Round(round), round.FacesOut);
        return _text.Add($"ADVANCED_FACE('',{list},#{surface},{Flag(same)})");
    }

    private double Span(List<BorderRun> loop)
    {
        Box3 box = Box3.Empty;
        foreach (int e in loop.SelectMany(run => run.Edges))
        {
            box = box.Including(_edges.Start(e));
        }

        return box.Size.Length;
    }

    private int Loop(List<BorderRun> loop, RoundPatch? round) =>
        _text.Add($"EDGE_LOOP('',{StepText.List([.. loop.Select(run => Oriented(run, round ?? _round[run.Other]))])})");

    // Arcs run counter-clockwise about their axis; lines along the half-edge with the smaller number. Either way both faces find one edge.
    private int Oriented(BorderRun run, RoundPatch? round)
    {
        int first = run.Edges[0];
        int last = run.Edges[^1];

        // A sliver that went to a neighbour may leave a level jog of some steps in an upright edge.
        Point3 start = _edges.At(_edges.From(first)), end = _edges.At(_edges.To(last));
        bool isArc = round is not null && RoundPatch.IsLevel(start.Z, end.Z)
            && Point3.Distance(start, end) > 2 * Tolerances.FlatnessSteps;
        bool ahead = isArc ? RunsCounterClockwise(first, round!.Axis) : first < _edges.Twin(last);
        (int from, int to) = ahead ? (_edges.From(first), _edges.To(last)) : (_edges.To(last), _edges.From(first));
        int key = Math.Min(run.Edges.Min(), run.Edges.Min(_edges.Twin));
        if (!_curves.TryGetValue((key, isArc), out int edge))
        {
            (int curve, bool along) = isArc ? (Circle(round!, from), true) : Line(from, to);
            edge = _text.Add($"EDGE_CURVE('',#{Corner(from)},#{Corner(to)},#{curve},{Flag(along)})");
            _curves.Add((key, isArc), edge);
        }

        return _text.Add($"ORIENTED_EDGE('',*,*,#{edge},{Flag(ahead)})");
    }

    private bool RunsCounterClockwise(int e, Point2 axis) =>
        Point2.Cross(_edges.At(_edges.From(e)).XY - axis, _edges.At(_edges.To(e)).XY - axis) > 0;

    private int Corner(int vertex)
    {
        if (!_corners.TryGetValue(vertex, out int number))
        {
            number = _text.Add($"VERTEX_POINT('',#{_text.Point(Placed(vertex))})");
            _corners.Add(vertex, number);
        }

        return number;
    }

    // Lines that run the one way or the other share a direction; the edge says whether it goes along it.
    private (int Curve, bool Along) Line(int from, int to)
    {
        Point3 start = Placed(from);
        Point3 way = Placed(to) - start;
        double sign = way.X != 0 ? way.X : way.Y != 0 ? way.Y : way.Z;
        int along = _text.Shared($"VECTOR('',#{_text.Direction(sign < 0 ? -1 * way : way)},1.)");
        return (_text.Shared($"LINE('',#{_text.Point(start)},#{along})"), sign > 0);
    }

    private int Circle(RoundPatch round, int on)
    {
        bool low = RoundPatch.IsLevel(_edges.At(on).Z, round.Low);
        (double z, double radius) = low ? (round.Low, round.LowRadius) : (round.High, round.HighRadius);
        return _text.Shared($"CIRCLE('',#{AxisAt(round, z)},{Radius(radius)})");
    }

    private int Plane(Point3 at, Point3 normal) => _text.Shared($"PLANE('',#{_text.Frame(at, _place.ApplyDirection(normal))})");

    private int Round(RoundPatch round)
    {
        if (round.IsCylinder)
        {
            return _text.Shared($"CYLINDRICAL_SURFACE('',#{AxisAt(round, round.Low)},{Radius(round.LowRadius)})");
        }

        // A cone opens along its axis: where it narrows upward the axis looks down.
        bool opensUp = round.HighRadius > round.LowRadius;
        (double z, double radius) = opensUp ? (round.Low, round.LowRadius) : (round.High, round.HighRadius);
        double half = Angle.Of(new Point2(round.High - round.Low, Math.Abs(round.HighRadius - round.LowRadius))).Radians;
        int frame = Upright(round, z, opensUp ? 1 : -1);
        return _text.Shared($"CONICAL_SURFACE('',#{frame},{Radius(radius)},{StepText.Share(half)})");
    }

    private int AxisAt(RoundPatch round, double z) => Upright(round, z, 1);

    private int Upright(RoundPatch round, double z, double way) => _text.Frame(
        AxisPoint(round, z), _place.ApplyDirection(new Point3(0, 0, way)), _place.ApplyDirection(new Point3(1, 0, 0)));

    private Point3 AxisPoint(RoundPatch round, double z) => _place.Apply(Lattice.Step * new Point3(round.Axis.X, round.Axis.Y, z));

    private Point3 Placed(int vertex) => _place.Apply(Lattice.Step * _edges.At(vertex));

    // Corners were rounded by up to a step: a radius that close to a tenth of a micrometre was made that large.
    private static string Radius(double steps)
    {
        double radius = steps * Lattice.Step;
        double made = Math.Round(radius, 4);
        return StepText.Length(Math.Abs(made - radius) <= Lattice.Step ? made : radius);
    }

    private static string Flag(bool value) => value ? ".T." : ".F.";
}
