using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Formats.Step;

/// <summary>
/// The solids of a mesh: faces, edges and corners once each, shells by connection, voids within the body that holds them.
/// </summary>
internal sealed class StepSolids
{
    private readonly StepText _text;
    private readonly FacedMesh _boundary;
    private readonly HalfEdges _edges;
    private readonly Transform3 _place;
    private readonly Dictionary<int, int> _corners = [];
    private readonly Dictionary<int, int> _curves = [];
    private readonly Dictionary<(int Direction, long Along), (int Number, double Level)> _planes = [];

    private StepSolids(StepText text, Mesh mesh, double widen, Transform3 place)
    {
        _text = text;
        _place = place;
        _edges = new HalfEdges(mesh, widen);
        _boundary = FacedMesh.Of(_edges);
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
        int[] faces = [.. _boundary.Written.Select((loops, face) => loops.Count == 0 ? 0 : Face(face, loops))];
        return StepShells.Of(_text, _edges, _boundary.Patches, faces);
    }

    private int Face(int face, List<List<WrittenSide>> loops)
    {
        // The longest way round is the outer one of a flat face.
        IEnumerable<int> bounds = loops.OrderByDescending(Span).Select((loop, i) =>
            _text.Add($"{(i == 0 ? "FACE_OUTER_BOUND" : "FACE_BOUND")}('',#{Loop(loop)},.T.)"));
        string list = StepText.List([.. bounds]);
        RoundSurface? round = _boundary.Round[face];
        (int surface, bool same) = round is null
            ? (Plane(_boundary.Normal(face), loops), true)
            : (Round(round.From(LowestArc(loops) ?? round.Level)), round.FacesOut);
        return _text.Add($"ADVANCED_FACE('',{list},#{surface},{Flag(same)})");
    }

    // A surface placed where an arc of it lies shares the arc's frame.
    private double? LowestArc(List<List<WrittenSide>> loops) => loops.SelectMany(loop => loop)
        .Where(side => side.Kind == CurveKind.Arc).Min(side => (double?)_boundary.Corner(side.From).Z);

    private double Span(List<WrittenSide> loop)
    {
        Box3 box = Box3.Empty;
        foreach (Point3 p in loop.SelectMany(side => side.Points(_boundary)))
        {
            box = box.Including(p);
        }

        return box.Size.Length;
    }

    private int Loop(List<WrittenSide> loop) => _text.Add($"EDGE_LOOP('',{StepText.List([.. loop.Select(Oriented)])})");

    private int Oriented(WrittenSide side)
    {
        if (!_curves.TryGetValue(side.Key, out int edge))
        {
            (int curve, bool along) = side.Kind switch
            {
                CurveKind.Arc => (Circle(side.Round!, side.From), true),
                CurveKind.Ellipse => (Ellipse(side.Round!, side.From, side.Plane), true),
                _ => Line(side.From, side.To),
            };
            edge = _text.Add($"EDGE_CURVE('',#{Corner(side.From)},#{Corner(side.To)},#{curve},{Flag(along)})");
            _curves.Add(side.Key, edge);
        }

        return _text.Add($"ORIENTED_EDGE('',*,*,#{edge},{Flag(side.Ahead)})");
    }

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
        int along = _text.Shared($"VECTOR('',#{_text.Direction(sign < 0 ? -1 * way : way, way.Length).Number},1.)");
        return (_text.Shared($"LINE('',#{_text.Point(start)},#{along})"), sign > 0);
    }

    private int Circle(RoundSurface round, int on)
    {
        double z = _boundary.Corner(on).Z;
        return _text.Shared($"CIRCLE('',#{Upright(round, z, 1)},{Radius(round.RadiusAt(z))})");
    }

    // Its longer half axis runs along the steepest way up the plane; seen from above it turns as circles do.
    private int Ellipse(RoundSurface round, int on, Point3 normal)
    {
        Point3 up = normal.Z < 0 ? -1 * normal : normal;
        Point3 corner = _boundary.Corner(on);
        double z = corner.Z - (Point2.Dot(up.XY, round.Axis - corner.XY) / up.Z);
        Point3 steepest = new Point3(0, 0, 1) - (up.Z * up);
        int frame = _text.Frame(
            _place.Apply(Lattice.Step * new Point3(round.Axis.X, round.Axis.Y, z)), _place.ApplyDirection(up),
            _place.ApplyDirection(steepest));
        return _text.Shared($"ELLIPSE('',#{frame},{Radius(round.Radius / up.Z)},{Radius(round.Radius)})");
    }

    // Faces of one plane share it, wherever it was placed first, as far as all their corners lie in it.
    private int Plane(Point3 normal, List<List<WrittenSide>> loops)
    {
        Point3[] corners = [.. loops.SelectMany(loop => loop).Select(side => Placed(side.From))];
        (int direction, Point3 unit) = _text.Direction(_place.ApplyDirection(normal), Lattice.Step * loops.Max(Span));
        (int, long) key = (direction, (long)Math.Round(Point3.Dot(unit, corners[0]) / (Tolerances.FlatnessSteps * Lattice.Step)));
        if (_planes.TryGetValue(key, out (int Number, double Level) before)
            && corners.All(p => Math.Abs(Point3.Dot(unit, p) - before.Level) <= WrittenCheck.Off * Lattice.Step))
        {
            return before.Number;
        }

        int plane = _text.Add($"PLANE('',#{_text.Frame(corners[0], direction)})");
        _planes[key] = (plane, Point3.Dot(unit, corners[0]));
        return plane;
    }

    // A cone opens along its axis: where it narrows upward the axis looks down.
    private int Round(RoundSurface round)
    {
        int frame = Upright(round, round.Level, round.Slope < 0 ? -1 : 1);
        string half = StepText.Share(Angle.Of(new Point2(1, Math.Abs(round.Slope))).Radians);
        return _text.Shared(round.IsCylinder
            ? $"CYLINDRICAL_SURFACE('',#{frame},{Radius(round.Radius)})"
            : $"CONICAL_SURFACE('',#{frame},{Radius(round.Radius)},{half})");
    }

    private int Upright(RoundSurface round, double z, double way) => _text.Frame(
        _place.Apply(Lattice.Step * new Point3(round.Axis.X, round.Axis.Y, z)), _place.ApplyDirection(new Point3(0, 0, way)),
        _place.ApplyDirection(new Point3(1, 0, 0)));

    private Point3 Placed(int vertex) => _place.Apply(Lattice.Step * _boundary.Corner(vertex));

    private static string Radius(double steps) => StepText.Length(Lattice.Step * steps);

    private static string Flag(bool value) => value ? ".T." : ".F.";
}
