using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Formats.Step;

/// <summary>
/// The solids of a mesh: faces, edges and corners once each, shells by connection, voids within the body that holds them.
/// </summary>
internal sealed class StepSolids
{
    private readonly StepText _text;
    private readonly StepFaces _faces;
    private readonly Transform3 _place;
    private readonly Dictionary<int, int> _corners = [];
    private readonly Dictionary<int, int> _edges = [];

    private StepSolids(StepText text, Mesh mesh, double widen, Transform3 place)
    {
        _text = text;
        _place = place;
        _faces = StepFaces.Of(new HalfEdges(mesh, widen));
    }

    /// <summary>Adds the solids.</summary>
    /// <param name="text">Where to.</param>
    /// <param name="mesh">The mesh.</param>
    /// <param name="widen">What x and y are multiplied by first.</param>
    /// <param name="place">Where it goes then: turned and shifted only.</param>
    /// <returns>Their numbers.</returns>
    public static IEnumerable<int> Of(StepText text, Mesh mesh, double widen, Transform3 place) =>
        mesh.TriangleCount == 0 ? [] : new StepSolids(text, mesh, widen, place).Added();

    private IEnumerable<int> Added()
    {
        int[] faces = [.. _faces.Borders.Select((loops, face) => Face(loops, face))];
        return StepShells.Of(_text, _faces.Edges, _faces.Patches, faces);
    }

    private int Face(List<List<BorderRun>> loops, int face)
    {
        // The longest way round is the outer one of a flat face.
        IEnumerable<int> bounds = loops.OrderByDescending(Span).Select((loop, i) =>
            _text.Add($"{(i == 0 ? "FACE_OUTER_BOUND" : "FACE_BOUND")}('',#{Loop(loop)},.T.)"));
        string list = StepText.List([.. bounds]);
        (int surface, bool same) = _faces.Surfaces[face] is FlatSurface flat
            ? (Plane(flat), true) : (Round(_faces.Round(face)!.Surface), _faces.Round(face)!.FacesOut);
        return _text.Add($"ADVANCED_FACE('',{list},#{surface},{Flag(same)})");
    }

    private double Span(List<BorderRun> loop)
    {
        Box3 box = Box3.Empty;
        foreach (int e in loop.SelectMany(run => run.Edges))
        {
            box = box.Including(_faces.Edges.Start(e));
        }

        return box.Size.Length;
    }

    private int Loop(List<BorderRun> loop) => _text.Add($"EDGE_LOOP('',{StepText.List([.. loop.Select(Oriented)])})");

    private int Oriented(BorderRun run)
    {
        (int Key, bool Ahead) key = _faces.KeyOf(run);
        int from = _faces.Edges.From(run.Edges[0]), to = _faces.Edges.To(run.Edges[^1]);
        if (!_edges.TryGetValue(key.Key, out int edge))
        {
            (int start, int end) = key.Ahead ? (from, to) : (to, from);
            (int curve, bool along) = Curve(_faces.Curves[(key.Key, true)], start, end);
            edge = _text.Add($"EDGE_CURVE('',#{Corner(start)},#{Corner(end)},#{curve},{Flag(along)})");
            _edges.Add(key.Key, edge);
        }

        return _text.Add($"ORIENTED_EDGE('',*,*,#{edge},{Flag(key.Ahead)})");
    }

    private (int Curve, bool Along) Curve(BorderCurve curve, int start, int end) => curve switch
    {
        ArcCurve arc => (Circle(arc), arc.Ahead),
        _ => Line(start, end),
    };

    private int Corner(int vertex)
    {
        if (!_corners.TryGetValue(vertex, out int number))
        {
            number = _text.Add($"VERTEX_POINT('',#{_text.Point(Placed(_faces.Corners[vertex]))})");
            _corners.Add(vertex, number);
        }

        return number;
    }

    // Lines that run the one way or the other share a direction; the edge says whether it goes along it.
    private (int Curve, bool Along) Line(int from, int to)
    {
        Point3 start = Placed(_faces.Corners[from]);
        Point3 way = Placed(_faces.Corners[to]) - start;
        double sign = way.X != 0 ? way.X : way.Y != 0 ? way.Y : way.Z;
        int along = _text.Shared($"VECTOR('',#{_text.Direction(sign < 0 ? -1 * way : way)},1.)");
        return (_text.Shared($"LINE('',#{_text.Point(start)},#{along})"), sign > 0);
    }

    private int Circle(ArcCurve arc) =>
        _text.Shared($"CIRCLE('',#{Frame(arc.Round, arc.Height, 1)},{Radius(arc.Round.RadiusAt(arc.Height))})");

    private int Plane(FlatSurface flat) =>
        _text.Shared($"PLANE('',#{_text.Frame(Placed(flat.Origin), _place.ApplyDirection(flat.Outward))})");

    private int Round(RoundSurface round)
    {
        if (round.Slope == 0)
        {
            return _text.Shared($"CYLINDRICAL_SURFACE('',#{Frame(round, 0, 1)},{Radius(round.Radius)})");
        }

        // A cone opens along its axis: where it narrows, the axis looks the other way.
        double half = Angle.Of(new Point2(1, Math.Abs(round.Slope))).Radians;
        return _text.Shared(
            $"CONICAL_SURFACE('',#{Frame(round, 0, round.Slope > 0 ? 1 : -1)},{Radius(round.Radius)},{StepText.Share(half)})");
    }

    private int Frame(RoundSurface round, double height, double way)
    {
        (Point3 right, _) = RoundSurface.Frame(round.Axis);
        return _text.Frame(Placed(round.OnAxis(height)), _place.ApplyDirection(way * round.Axis), _place.ApplyDirection(right));
    }

    private Point3 Placed(Point3 steps) => _place.Apply(Lattice.Step * steps);

    // Corners were rounded by up to a step: a radius that close to a tenth of a micrometre was made that large.
    private static string Radius(double steps)
    {
        double radius = steps * Lattice.Step;
        double made = Math.Round(radius, 4);
        return StepText.Length(Math.Abs(made - radius) <= Lattice.Step ? made : radius);
    }

    private static string Flag(bool value) => value ? ".T." : ".F.";
}
