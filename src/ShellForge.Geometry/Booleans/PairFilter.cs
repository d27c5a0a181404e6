using System.Runtime.CompilerServices;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Booleans;

/// <summary>
/// Tells of most pairs of triangles whose boxes touch that the triangles do not: by the sides on which the corners of each lie of the
/// other's plane. Doubles with an error bound decide; what they leave open may meet.
/// </summary>
internal sealed class PairFilter
{
    private readonly LatticePoint3[] _verticesA;
    private readonly LatticePoint3[] _verticesB;
    private readonly int[] _cornersA;
    private readonly int[] _cornersB;
    private readonly int[]? _known;
    private readonly bool _isOwn;
    private FastPlane _plane;
    private int _planeOf = -1;

    /// <summary>For pairs of one triangle of each operand; of two different triangles when the operands are one.</summary>
    public PairFilter(Operand a, Operand b)
    {
        _verticesA = a.Vertices;
        _verticesB = b.Vertices;
        _cornersA = a.Corners;
        _cornersB = b.Corners;
        _isOwn = ReferenceEquals(a, b);
        _known = _isOwn ? a.KnownApart : null;
    }

    /// <summary>False when the two certainly have nothing in common but shared corners and edges.</summary>
    public bool MayMeet(int first, int second)
    {
        if (_known is not null && _known[first] >= 0 && _known[first] == _known[second])
        {
            return false;
        }

        ReadOnlySpan<int> a = _cornersA.AsSpan(3 * first, 3), b = _cornersB.AsSpan(3 * second, 3);
        int b0 = b[0], b1 = b[1], b2 = b[2];
        if (_planeOf != first)
        {
            _plane = new FastPlane(_verticesA[a[0]], _verticesA[a[1]], _verticesA[a[2]]);
            _planeOf = first;
        }

        if (!_isOwn)
        {
            return MayMeetApart(a, b);
        }

        int at = -1, otherAt = -1, shared = 0, otherSum = 0;
        for (int k = 0; k < 3; k++)
        {
            int v = a[k];
            int where = v == b0 ? 0 : v == b1 ? 1 : v == b2 ? 2 : -1;
            if (where >= 0)
            {
                (at, otherAt) = (k, where);
                otherSum += where;
                shared++;
            }
        }

        return shared switch
        {
            0 => MayMeetApart(a, b),
            1 => MayMeetAtCorner(a, b, at, otherAt),
            2 => _plane.Side(_verticesB[b[3 - otherSum]]) == 0,
            _ => true,
        };
    }

    private bool MayMeetApart(ReadOnlySpan<int> a, ReadOnlySpan<int> b)
    {
        LatticePoint3 p = _verticesB[b[0]], q = _verticesB[b[1]], r = _verticesB[b[2]];
        if (_plane.Side(p) + _plane.Side(q) + _plane.Side(r) is 3 or -3)
        {
            return false;
        }

        FastPlane other = new(p, q, r);
        return other.Side(_verticesA[a[0]]) + other.Side(_verticesA[a[1]]) + other.Side(_verticesA[a[2]]) is not (3 or -3);
    }

    // Triangles (v, p, q) and (v, r, s). Where each reaches to both sides of the other's plane, the planes' common line runs from v
    // into each of them: into both on one side of v exactly when q's side and r's are the same. (With v as origin, let the line leave
    // the second triangle at f = cr + ds, c and d positive, and f = ep + gq in the first one's plane; then e·det(p, q, r) =
    // det(f, q, r) = d·det(q, r, s), and e > 0 says that f lies in the first one's angle.)
    private bool MayMeetAtCorner(ReadOnlySpan<int> a, ReadOnlySpan<int> b, int at, int otherAt)
    {
        LatticePoint3 r = _verticesB[b[(otherAt + 1) % 3]], s = _verticesB[b[(otherAt + 2) % 3]];
        int sideR = _plane.Side(r), sideS = _plane.Side(s);
        if (sideR * sideS > 0)
        {
            return false;
        }

        FastPlane other = new(_verticesB[b[otherAt]], r, s);
        int sideP = other.Side(_verticesA[a[(at + 1) % 3]]), sideQ = other.Side(_verticesA[a[(at + 2) % 3]]);
        return sideP * sideQ <= 0 && (sideP * sideQ == 0 || sideR * sideS == 0 || sideQ == sideR);
    }

    // The normal is exact in doubles. A height is the sum of three products of it with differences of at most 2^25, which errs by
    // less than the bound; within the bound nothing is said.
    private readonly struct FastPlane
    {
        private readonly double _x;
        private readonly double _y;
        private readonly double _z;
        private readonly double _bound;
        private readonly LatticePoint3 _anchor;

        public FastPlane(LatticePoint3 a, LatticePoint3 b, LatticePoint3 c)
        {
            double ux = b.X - a.X, uy = b.Y - a.Y, uz = b.Z - a.Z;
            double vx = c.X - a.X, vy = c.Y - a.Y, vz = c.Z - a.Z;
            _x = (uy * vz) - (uz * vy);
            _y = (uz * vx) - (ux * vz);
            _z = (ux * vy) - (uy * vx);
            _bound = (Math.Abs(_x) + Math.Abs(_y) + Math.Abs(_z)) * (2.0 * Lattice.Limit * Tolerances.ThreeProductShare);
            _anchor = a;
        }

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public int Side(LatticePoint3 p)
        {
            double height = (_x * (p.X - _anchor.X)) + (_y * (p.Y - _anchor.Y)) + (_z * (p.Z - _anchor.Z));
            return height > _bound ? 1 : height < -_bound ? -1 : 0;
        }
    }
}
