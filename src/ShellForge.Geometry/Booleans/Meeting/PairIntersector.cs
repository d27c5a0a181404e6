using ShellForge.Geometry.Booleans.Exact;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Booleans.Meeting;

/// <summary>
/// Stage 2a: what two triangles have in common, exactly. Every common point is recorded on all that it lies on (edges, faces), so
/// that later stages never have to look for it again.
/// </summary>
internal sealed class PairIntersector
{
    private readonly Meetings _found;
    private readonly OperandSet _scene;
    private readonly LatticePoint3[] _a = new LatticePoint3[3];
    private readonly LatticePoint3[] _b = new LatticePoint3[3];
    private readonly int[] _sideA = new int[3];
    private readonly int[] _sideB = new int[3];
    private readonly Hit[] _hits = new Hit[24];
    private int _hitCount;
    private Plane _plane;
    private int _planeOf = -1;

    public PairIntersector(OperandSet scene, Meetings found)
    {
        _scene = scene;
        _found = found;
    }

    // A feature is a corner (0..2), an edge (3..5: from corner k - 3) or the face.
    private readonly record struct Hit(int Point, int FeatureA, int FeatureB);

    public void Intersect(int first, int second)
    {
        for (int k = 0; k < 3; k++)
        {
            _a[k] = _scene.Corner(first, k);
            _b[k] = _scene.Corner(second, k);
        }

        // Neighbours in one mesh are joined where they share corners; they must straddle each other with what is left.
        int shared = _scene.OperandOf[first] == _scene.OperandOf[second] ? SharedCorners(first, second) : 0;
        if (_planeOf != first)
        {
            _plane = new Plane(_a[0], _a[1], _a[2]);
            _planeOf = first;
        }

        Plane planeA = _plane;
        if (!Straddles(planeA, _b, _sideB, shared))
        {
            return;
        }

        Plane planeB = new(_b[0], _b[1], _b[2]);
        if (!Straddles(planeB, _a, _sideA, shared))
        {
            return;
        }

        _hitCount = 0;
        if ((_sideB[0] | _sideB[1] | _sideB[2]) == 0)
        {
            IntersectInPlane(first, second, planeA, shared);
        }
        else if (shared < 2)
        {
            IntersectAcross(first, second, planeA, planeB, shared);
        }
    }

    private static bool Straddles(in Plane plane, LatticePoint3[] corners, int[] sides, int shared)
    {
        sides[0] = plane.Side(corners[0]);
        sides[1] = plane.Side(corners[1]);
        sides[2] = plane.Side(corners[2]);
        int sum = Math.Abs(sides[0] + sides[1] + sides[2]);
        return shared == 0 ? sum != 3 : shared == 1 ? sum != 2 : sum == 0;
    }

    private int SharedCorners(int first, int second)
    {
        int shared = 0;
        for (int i = 0; i < 3; i++)
        {
            int v = _scene.VertexNumber(first, i);
            for (int j = 0; j < 3; j++)
            {
                shared += v == _scene.VertexNumber(second, j) ? 1 : 0;
            }
        }

        return shared;
    }

    private void IntersectAcross(int first, int second, in Plane planeA, in Plane planeB, int shared)
    {
        if (shared > 0 || !FindPlainCrossings(first, second, planeA, planeB))
        {
            FindCommonPoints(first, second, planeA, planeB, shared);
        }

        if (_hitCount == 0 || IsSharedCornerOnly(shared))
        {
            return;
        }

        Record(first, second);
        (int from, int to) = Ends();
        if (from == to)
        {
            return;
        }

        bool realInA = ImprintsOf(first, _sideA, second);
        bool realInB = ImprintsOf(second, _sideB, first);
        if (!realInA && !realInB)
        {
            _found.Intervals.Add(new Interval(first, second, from, to));
        }
    }

    // Triangles that cross with all corners off each other's plane: each has two edges through the other's plane, those at the corner
    // that is alone on its side. Four signs of an edge of one about an edge of the other tell all. False when doubles leave one open.
    private bool FindPlainCrossings(int first, int second, in Plane planeA, in Plane planeB)
    {
        if (_sideA[0] * _sideA[1] * _sideA[2] * _sideB[0] * _sideB[1] * _sideB[2] == 0)
        {
            return false;
        }

        int i = Lone(_sideA), j = Lone(_sideB);
        int i2 = (i + 2) % 3, j2 = (j + 2) % 3;
        int s = Volume.Sign(_a[i], _a[(i + 1) % 3], _b[j], _b[(j + 1) % 3]), t = Volume.Sign(_a[i], _a[(i + 1) % 3], _b[j2], _b[j]);
        int u = Volume.Sign(_a[i2], _a[i], _b[j], _b[(j + 1) % 3]), v = Volume.Sign(_a[i2], _a[i], _b[j2], _b[j]);
        if (s * t * u * v == 0)
        {
            return false;
        }

        AddPlainCrossing(s == t, _a[i], _a[(i + 1) % 3], planeB, 3 + i, TriangleFeature.Face);
        AddPlainCrossing(u == v, _a[i2], _a[i], planeB, 3 + i2, TriangleFeature.Face);
        AddPlainCrossing(s == u, _b[j], _b[(j + 1) % 3], planeA, TriangleFeature.Face, 3 + j);
        AddPlainCrossing(t == v, _b[j2], _b[j], planeA, TriangleFeature.Face, 3 + j2);
        return true;
    }

    private void AddPlainCrossing(bool crosses, LatticePoint3 from, LatticePoint3 to, in Plane plane, int featureA, int featureB)
    {
        if (crosses)
        {
            _hits[_hitCount++] = new Hit(_found.Points.AddCrossing(from, to, plane.Height(from), plane.Height(to)), featureA, featureB);
        }
    }

    private static int Lone(int[] sides) => sides[0] == sides[1] ? 2 : sides[1] == sides[2] ? 0 : 1;

    private void FindCommonPoints(int first, int second, in Plane planeA, in Plane planeB, int shared)
    {
        Drawing drawingA = new(planeA);
        Drawing drawingB = new(planeB);
        for (int k = 0; k < 3; k++)
        {
            if (_sideA[k] == 0)
            {
                AddCorner(first, k, TriangleFeature.At(_a[k], _b, drawingB), second, true);
            }

            if (_sideB[k] == 0)
            {
                AddCorner(second, k, TriangleFeature.At(_b[k], _a, drawingA), first, false);
            }
        }

        if (shared > 0 && _hitCount == 0)
        {
            return;
        }

        for (int k = 0; k < 3; k++)
        {
            int next = (k + 1) % 3;
            if (_sideA[k] * _sideA[next] < 0)
            {
                AddCrossing(k, (_a[k], _a[next]), planeB, second, isFirst: true);
            }

            if (_sideB[k] * _sideB[next] < 0)
            {
                AddCrossing(k, (_b[k], _b[next]), planeA, first, isFirst: false);
            }
        }
    }

    private void IntersectInPlane(int first, int second, in Plane plane, int shared)
    {
        Drawing drawing = new(plane);
        if (shared == 2 && AreNeighbours(first, second, drawing))
        {
            return;
        }

        bool sameSense = drawing.Orient(_b[0], _b[1], _b[2]) > 0;
        if (Separated(_a, _b, drawing, 1) || Separated(_b, _a, drawing, sameSense ? 1 : -1))
        {
            return;
        }

        for (int k = 0; k < 3; k++)
        {
            AddCorner(first, k, TriangleFeature.At(_a[k], _b, drawing), second, true);
            AddCorner(second, k, TriangleFeature.At(_b[k], _a, drawing), first, false);
        }

        bool crosses = false;
        for (int i = 0; i < 3; i++)
        {
            for (int j = 0; j < 3; j++)
            {
                crosses |= AddPlanarCrossing(first, i, second, j, drawing);
            }
        }

        if (!crosses && IsSharedCornerOnly(shared))
        {
            return;
        }

        Record(first, second);
        _found.Coplanar.Add((first, second));
    }

    // Two triangles of one operand and plane over a common edge that lie on its two sides.
    private bool AreNeighbours(int first, int second, in Drawing drawing)
    {
        int apexA = 0, apexB = 0;
        for (int k = 0; k < 3; k++)
        {
            int point = k;
            apexA = Array.TrueForAll(_b, b => b != _a[point]) ? k : apexA;
            apexB = Array.TrueForAll(_a, a => a != _b[point]) ? k : apexB;
        }

        LatticePoint3 p = _a[(apexA + 1) % 3], q = _a[(apexA + 2) % 3];
        return Math.Sign(drawing.Orient(p, q, _a[apexA])) * Math.Sign(drawing.Orient(p, q, _b[apexB])) < 0;
    }

    private static bool Separated(LatticePoint3[] a, LatticePoint3[] b, in Drawing drawing, int sense)
    {
        for (int k = 0; k < 3; k++)
        {
            LatticePoint3 p = a[k], q = a[(k + 1) % 3];
            if (sense * Math.Sign(drawing.Orient(p, q, b[0])) < 0 && sense * Math.Sign(drawing.Orient(p, q, b[1])) < 0
                && sense * Math.Sign(drawing.Orient(p, q, b[2])) < 0)
            {
                return true;
            }
        }

        return false;
    }

    private void AddCorner(int triangle, int k, int feature, int other, bool isFirst)
    {
        if (feature == TriangleFeature.Outside)
        {
            return;
        }

        int point = _found.VertexPoint(triangle, k);
        AddHit(point, isFirst ? k : feature, isFirst ? feature : k, triangle, other, isFirst);
    }

    private void AddHit(int point, int featureA, int featureB, int triangle, int other, bool isFirst)
    {
        // A corner of the other triangle is the same vertex: both then name one point.
        int feature = isFirst ? featureB : featureA;
        if (feature < 3)
        {
            _found.SetVertexPoint(_scene.VertexNumber(other, feature), point);
        }

        _hits[_hitCount++] = new Hit(point, featureA, featureB);
    }

    // The edge k of one triangle against the plane of the other.
    private void AddCrossing(int k, (LatticePoint3 From, LatticePoint3 To) edge, in Plane plane, int other, bool isFirst)
    {
        (LatticePoint3 from, LatticePoint3 to) = edge;
        LatticePoint3[] corners = isFirst ? _b : _a;
        int s0 = new Plane(from, to, corners[0]).Side(corners[1]);
        int s1 = new Plane(from, to, corners[1]).Side(corners[2]);
        int s2 = new Plane(from, to, corners[2]).Side(corners[0]);
        int feature = TriangleFeature.Of(s0, s1, s2);
        if (feature == TriangleFeature.Outside)
        {
            return;
        }

        int point = feature < 3
            ? _found.VertexPoint(other, feature)
            : _found.Points.AddCrossing(from, to, plane.Height(from), plane.Height(to));
        _hits[_hitCount++] = new Hit(point, isFirst ? 3 + k : feature, isFirst ? feature : 3 + k);
    }

    private bool AddPlanarCrossing(int first, int i, int second, int j, in Drawing drawing)
    {
        LatticePoint3 p = _a[i], q = _a[(i + 1) % 3], r = _b[j], s = _b[(j + 1) % 3];
        long sideP = drawing.Orient(r, s, p), sideQ = drawing.Orient(r, s, q);
        if (Math.Sign(sideP) * Math.Sign(sideQ) >= 0
            || Math.Sign(drawing.Orient(p, q, r)) * Math.Sign(drawing.Orient(p, q, s)) >= 0)
        {
            return false;
        }

        if (_scene.IsReal((3 * first) + i) && _scene.IsReal((3 * second) + j))
        {
            _hits[_hitCount++] = new Hit(_found.Points.AddCrossing(p, q, sideP, sideQ), 3 + i, 3 + j);
        }

        return true;
    }

    private bool IsSharedCornerOnly(int shared)
    {
        if (shared == 0)
        {
            return false;
        }

        for (int i = 0; i < _hitCount; i++)
        {
            if (_hits[i].FeatureA > 2 || _hits[i].FeatureB > 2)
            {
                return false;
            }
        }

        // All common points are corners of both: one vertex, or an edge's two.
        return shared <= 2;
    }

    private void Record(int first, int second)
    {
        for (int i = 0; i < _hitCount; i++)
        {
            Hit hit = _hits[i];
            RecordOn(first, hit.FeatureA, hit.Point);
            RecordOn(second, hit.FeatureB, hit.Point);
        }

    }

    private void RecordOn(int triangle, int feature, int point)
    {
        _found.TrianglePoints.Add((triangle, point));
        if (feature is >= 3 and < TriangleFeature.Face && _scene.IsReal((3 * triangle) + feature - 3))
        {
            _found.EdgePoints.Add((_scene.EdgeOf((3 * triangle) + feature - 3), point));
        }
    }

    private (int From, int To) Ends()
    {
        int from = _hits[0].Point;
        for (int i = 1; i < _hitCount; i++)
        {
            if (_hits[i].Point != from)
            {
                return (from, _hits[i].Point);
            }
        }

        return (from, from);
    }

    // Whether a real edge of the triangle lies in the other's plane; such an edge is drawn into the other's face.
    private bool ImprintsOf(int triangle, int[] sides, int other)
    {
        for (int k = 0; k < 3; k++)
        {
            if (sides[k] == 0 && sides[(k + 1) % 3] == 0)
            {
                if (!_scene.IsReal((3 * triangle) + k))
                {
                    return false;
                }

                _found.Imprints.Add((_scene.EdgeOf((3 * triangle) + k), other));
                return true;
            }
        }

        return false;
    }
}
