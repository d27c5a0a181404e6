using ShellForge.Geometry.Booleans.Exact;
using ShellForge.Geometry.Booleans.Meeting;
using ShellForge.Geometry.Booleans.Tables;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Booleans.Arranging;

/// <summary>
/// Stage 2: every sheet cut along everything that meets it. Edges between points are shared by all sheets that contain them; in
/// each sheet the edges bound loops, and all of a loop's inner side has one winding in front and one behind.
/// </summary>
internal sealed class Arrangement
{
    private readonly List<int> _from;
    private readonly List<int> _to;
    private readonly List<int> _segment;
    private readonly List<int> _segmentEdge = [];
    private readonly PairTable _edgeNumber;

    // One more than the segment; 0 for none.
    private readonly int[] _segmentOfEdge;

    private Arrangement(Intersections found, Sheets sheets)
    {
        Found = found;
        Sheets = sheets;
        _segmentOfEdge = new int[3 * found.OperandSet.TriangleCount];
        int expected = found.EdgePoints.Count + found.Intervals.Count;
        _edgeNumber = new PairTable(expected);
        _from = new List<int>(expected);
        _to = new List<int>(expected);
        _segment = new List<int>(expected);
    }

    public Intersections Found { get; }

    public Sheets Sheets { get; }

    public PointStore Points => Found.Points;

    public int EdgeCount => _from.Count;

    /// <summary>The edges in each sheet, each once.</summary>
    public Grouping EdgesOf { get; private set; } = null!;

    /// <summary>For each edge the pieces of <see cref="EdgesOf"/> that it is, one in each sheet that holds it.</summary>
    public Grouping PiecesOf { get; private set; } = null!;

    /// <summary>The points known to lie in each sheet.</summary>
    public Grouping PointsOf { get; private set; } = null!;

    /// <summary>An edge runs from the smaller point number to the larger.</summary>
    public int From(int edge) => _from[edge];

    public int To(int edge) => _to[edge];

    /// <summary>The real edge of the scene that the arrangement's edge is a piece of, or -1 when it comes from two planes.</summary>
    public int SceneEdge(int edge) => _segment[edge] < _segmentEdge.Count ? _segmentEdge[_segment[edge]] : -1;

    /// <summary>What the edge is a piece of: pieces of one segment are collinear.</summary>
    public int Segment(int edge) => _segment[edge];

    public static Arrangement Of(Intersections found, Sheets sheets, CancellationToken ct)
    {
        Arrangement arrangement = new(found, sheets);
        arrangement.CollectPoints();
        List<(int Interval, int Point)> splits = SheetCrossings.Find(found, sheets, arrangement.PointsOf, ct);
        arrangement.CutSegments(splits);
        return arrangement;
    }

    /// <summary>An exact vector along the edge, from its smaller point number to the larger; at most 104 bits a component.</summary>
    public (Int128 X, Int128 Y, Int128 Z) Direction(int edge)
    {
        int segment = _segment[edge];
        (Int128 X, Int128 Y, Int128 Z) d;
        if (segment < _segmentEdge.Count)
        {
            int halfEdge = _segmentEdge[segment];
            LatticePoint3 a = Found.OperandSet.Corner(halfEdge / 3, halfEdge % 3);
            LatticePoint3 b = Found.OperandSet.Corner(halfEdge / 3, ((halfEdge % 3) + 1) % 3);
            d = (b.X - a.X, b.Y - a.Y, b.Z - a.Z);
        }
        else
        {
            Interval interval = Found.Intervals[segment - _segmentEdge.Count];
            d = Plane.NormalCross(Found.OperandSet.PlaneOf(interval.First), Found.OperandSet.PlaneOf(interval.Second));
        }

        Int128 ax = Int128.Abs(d.X), ay = Int128.Abs(d.Y), az = Int128.Abs(d.Z);
        int axis = ax >= ay && ax >= az ? 0 : ay >= az ? 1 : 2;
        Int128 along = axis == 0 ? d.X : axis == 1 ? d.Y : d.Z;
        return Points.Compare(_to[edge], _from[edge], axis) == Int128.Sign(along) ? d : (-d.X, -d.Y, -d.Z);
    }

    /// <summary>Just inside the given side (2i left, 2i + 1 right of piece i of <see cref="EdgesOf"/>), in front of its sheet.</summary>
    public Probe ProbeAt(int side, int sheet)
    {
        int edge = EdgesOf.At(side >> 1);
        (Int128 x, Int128 y, Int128 z) = Direction(edge);
        return (side & 1) == 0
            ? new Probe(_from[edge], (x, y, z), Sheets.Planes[sheet])
            : new Probe(_to[edge], (-x, -y, -z), Sheets.Planes[sheet]);
    }

    private void CollectPoints()
    {
        List<(int, int)> members = new(Found.TrianglePoints.Count);
        foreach ((int triangle, int point) in Found.TrianglePoints)
        {
            members.Add((Sheets.Of(triangle), point));
        }

        PointsOf = Grouping.Distinct(Sheets.Count, members);
    }

    private void CutSegments(List<(int Interval, int Point)> splits)
    {
        List<(int Segment, int Sheet)> membership = RealEdges();
        foreach ((int edge, int triangle) in Found.Imprints)
        {
            membership.Add((_segmentOfEdge[edge] - 1, Sheets.Of(triangle)));
        }

        int edges = _segmentEdge.Count;
        List<(int, int)> inside = new(Found.EdgePoints.Count + splits.Count);
        foreach ((int edge, int point) in Found.EdgePoints)
        {
            inside.Add((_segmentOfEdge[edge] - 1, point));
        }

        for (int i = 0; i < Found.Intervals.Count; i++)
        {
            membership.Add((edges + i, Sheets.Of(Found.Intervals[i].First)));
            membership.Add((edges + i, Sheets.Of(Found.Intervals[i].Second)));
        }

        foreach ((int interval, int point) in splits)
        {
            inside.Add((edges + interval, point));
        }

        int segments = edges + Found.Intervals.Count;
        Grouping pointsIn = Grouping.Distinct(segments, inside);
        Grouping sheetsOf = Grouping.Distinct(segments, membership);
        List<(int Sheet, int Edge)> pieces = new(2 * (segments + inside.Count));
        List<int> row = [];
        for (int segment = 0; segment < segments; segment++)
        {
            (int from, int to) = Ends(segment);
            OrderAlong(from, to, pointsIn[segment], row);
            for (int i = 1; i < row.Count; i++)
            {
                int edge = AddEdge(row[i - 1], row[i], segment);
                foreach (int sheet in sheetsOf[segment])
                {
                    pieces.Add((sheet, edge));
                }
            }
        }

        EdgesOf = Grouping.Distinct(Sheets.Count, pieces);
        PiecesOf = EdgesOf.Inverse(EdgeCount);
    }

    private List<(int Segment, int Sheet)> RealEdges()
    {
        OperandSet scene = Found.OperandSet;
        List<(int Segment, int Sheet)> membership =
            new((3 * Sheets.Triangles.ItemCount) + Found.Imprints.Count + (2 * Found.Intervals.Count));
        for (int i = 0; i < Sheets.Triangles.ItemCount; i++)
        {
            int triangle = Sheets.Triangles.At(i);
            for (int k = 0; k < 3; k++)
            {
                int halfEdge = (3 * triangle) + k;
                if (!scene.IsReal(halfEdge))
                {
                    continue;
                }

                int edge = scene.EdgeOf(halfEdge);
                if (_segmentOfEdge[edge] == 0)
                {
                    _segmentEdge.Add(edge);
                    _segmentOfEdge[edge] = _segmentEdge.Count;
                }

                membership.Add((_segmentOfEdge[edge] - 1, Sheets.Of(triangle)));
            }
        }

        return membership;
    }

    private (int From, int To) Ends(int segment)
    {
        if (segment >= _segmentEdge.Count)
        {
            Interval interval = Found.Intervals[segment - _segmentEdge.Count];
            return (interval.From, interval.To);
        }

        int halfEdge = _segmentEdge[segment];
        return (Found.VertexPoint(halfEdge / 3, halfEdge % 3), Found.VertexPoint(halfEdge / 3, ((halfEdge % 3) + 1) % 3));
    }

    private void OrderAlong(int from, int to, ReadOnlySpan<int> inside, List<int> row)
    {
        row.Clear();
        row.Add(from);
        if (inside.Length > 0)
        {
            int axis = Points.AxisBetween(from, to);
            int sense = Points.Compare(to, from, axis);
            foreach (int point in inside)
            {
                if (point == from || point == to)
                {
                    continue;
                }

                int at = row.Count;
                while (at > 1 && sense * Points.Compare(row[at - 1], point, axis) > 0)
                {
                    at--;
                }

                row.Insert(at, point);
            }
        }

        row.Add(to);
    }

    private int AddEdge(int p, int q, int segment)
    {
        ref int edge = ref _edgeNumber.At(p, q, out bool isNew);
        if (isNew)
        {
            edge = _from.Count;
            _from.Add(Math.Min(p, q));
            _to.Add(Math.Max(p, q));
            _segment.Add(segment);
        }

        return edge;
    }
}
