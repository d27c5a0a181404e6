using System.Runtime.CompilerServices;
using ShellForge.Geometry.Booleans.Exact;
using ShellForge.Geometry.Booleans.Ingest;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Booleans.Meeting;

/// <summary>
/// Tells of most pairs of triangles whose boxes touch that the triangles do not: by the sides on which the corners of each lie of the
/// other's plane. Doubles with an error bound decide most; where corners lie in the other's plane, as in most pairs of one mesh and of
/// solids that touch, integers do.
/// </summary>
internal sealed class PairFilter
{
    private readonly LatticePoint3[] _verticesA;
    private readonly LatticePoint3[] _verticesB;
    private readonly int[] _cornersA;
    private readonly int[] _cornersB;
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
    }

    /// <summary>False when the two certainly have nothing in common but shared corners and edges.</summary>
    public bool MayMeet(int first, int second)
    {
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

        int at = -1, otherAt = -1, shared = 0, sum = 0, otherSum = 0;
        for (int k = 0; k < 3; k++)
        {
            int v = a[k];
            int where = v == b0 ? 0 : v == b1 ? 1 : v == b2 ? 2 : -1;
            if (where >= 0)
            {
                (at, otherAt) = (k, where);
                sum += k;
                otherSum += where;
                shared++;
            }
        }

        return shared switch
        {
            0 => MayMeetApart(a, b),
            1 => MayMeetAtCorner(a, b, at, otherAt),
            2 => MayMeetOverEdge(a, b, sum, otherSum),
            _ => true,
        };
    }

    // Where a triangle only touches the other's plane, with a corner or an edge, it is looked for in that plane; where both reach to both
    // sides, or lie in one plane, they may meet.
    private bool MayMeetApart(ReadOnlySpan<int> a, ReadOnlySpan<int> b)
    {
        LatticePoint3 p = _verticesB[b[0]], q = _verticesB[b[1]], r = _verticesB[b[2]];
        int sideP = _plane.Side(p), sideQ = _plane.Side(q), sideR = _plane.Side(r);
        if (sideP + sideQ + sideR is 3 or -3)
        {
            return false;
        }

        LatticePoint3 c = _verticesA[a[0]], d = _verticesA[a[1]], e = _verticesA[a[2]];
        if (sideP * sideQ * sideR == 0)
        {
            (sideP, sideQ, sideR) = (_plane.ExactSide(p), _plane.ExactSide(q), _plane.ExactSide(r));
            if (OnlyTouches(sideP, sideQ, sideR))
            {
                return _plane.MayMeet(c, d, e, sideP == 0 ? p : sideQ == 0 ? q : r, sideR == 0 ? r : sideQ == 0 ? q : p);
            }
        }

        FastPlane other = new(p, q, r);
        int sideC = other.Side(c), sideD = other.Side(d), sideE = other.Side(e);
        if (sideC + sideD + sideE is 3 or -3)
        {
            return false;
        }

        if (sideC * sideD * sideE == 0)
        {
            (sideC, sideD, sideE) = (other.ExactSide(c), other.ExactSide(d), other.ExactSide(e));
            if (OnlyTouches(sideC, sideD, sideE))
            {
                return other.MayMeet(p, q, r, sideC == 0 ? c : sideD == 0 ? d : e, sideE == 0 ? e : sideD == 0 ? d : c);
            }
        }

        return true;
    }

    // One corner or two in the plane, the rest on one side; all on one side counts too.
    private static bool OnlyTouches(int p, int q, int r) =>
        Math.Abs(p + q + r) is var sum && sum > 0 && sum == Math.Abs(p) + Math.Abs(q) + Math.Abs(r);

    // Over a common edge only two of one plane can meet, and don't when they lie on its two sides.
    private bool MayMeetOverEdge(ReadOnlySpan<int> a, ReadOnlySpan<int> b, int sum, int otherSum)
    {
        LatticePoint3 apex = _verticesA[a[3 - sum]], otherApex = _verticesB[b[3 - otherSum]];
        LatticePoint3 p = _verticesA[a[(4 - sum) % 3]], q = _verticesA[a[(5 - sum) % 3]];
        return _plane.ExactSide(otherApex) == 0 && Math.Sign(_plane.Orient(p, q, apex)) * Math.Sign(_plane.Orient(p, q, otherApex)) >= 0;
    }

    // Triangles (v, p, q) and (v, r, s). Where each reaches to both sides of the other's plane, the planes' common line runs from v
    // into each of them: into both on one side of v exactly when q's side and r's are the same. (With v as origin, let the line leave
    // the second triangle at f = cr + ds, c and d positive, and f = ep + gq in the first one's plane; then e·det(p, q, r) =
    // det(f, q, r) = d·det(q, r, s), and e > 0 says that f lies in the first one's angle.) Where only one edge at v lies in the other's
    // plane, they meet when it runs in the other's angle; of two in one plane some edge runs in the other's angle when they meet.
    private bool MayMeetAtCorner(ReadOnlySpan<int> a, ReadOnlySpan<int> b, int at, int otherAt)
    {
        LatticePoint3 v = _verticesA[a[at]], r = _verticesB[b[(otherAt + 1) % 3]], s = _verticesB[b[(otherAt + 2) % 3]];
        int sideR = _plane.ExactSide(r), sideS = _plane.ExactSide(s);
        if (sideR * sideS > 0)
        {
            return false;
        }

        LatticePoint3 p = _verticesA[a[(at + 1) % 3]], q = _verticesA[a[(at + 2) % 3]];
        if ((sideR | sideS) == 0)
        {
            FastPlane same = new(v, r, s);
            return _plane.IsInAngle(v, p, q, r) || _plane.IsInAngle(v, p, q, s) || same.IsInAngle(v, r, s, p) || same.IsInAngle(v, r, s, q);
        }

        if (sideR * sideS == 0)
        {
            return _plane.IsInAngle(v, p, q, sideR == 0 ? r : s);
        }

        FastPlane other = new(v, r, s);
        int sideP = other.ExactSide(p), sideQ = other.ExactSide(q);
        return sideP * sideQ == 0
            ? other.IsInAngle(v, r, s, sideP == 0 ? p : q)
            : sideP * sideQ < 0 && sideQ == sideR;
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

        /// <summary>The side for certain.</summary>
        public int ExactSide(LatticePoint3 p)
        {
            double x = _x * (p.X - _anchor.X), y = _y * (p.Y - _anchor.Y), z = _z * (p.Z - _anchor.Z);
            double height = x + y + z;
            double size = Math.Abs(x) + Math.Abs(y) + Math.Abs(z);

            // As in Plane.Side.
            if (size < 9007199254740992.0 || Math.Abs(height) > size * Tolerances.ThreeProductShare)
            {
                return height > 0 ? 1 : height < 0 ? -1 : 0;
            }

            return Plane.DotSign((long)_x, (long)_y, (long)_z, p.X - _anchor.X, p.Y - _anchor.Y, p.Z - _anchor.Z);
        }

        /// <summary>
        /// Twice the area of three points of the plane as drawn along the axis that the normal leans to most; positive counter-clockwise.
        /// </summary>
        public long Orient(LatticePoint3 a, LatticePoint3 b, LatticePoint3 c) => Area(Lean, a, b, c);

        /// <summary>
        /// Whether a point of the plane lies in the angle that opens at v counter-clockwise from p to q and is less than half a turn;
        /// borders count.
        /// </summary>
        public bool IsInAngle(LatticePoint3 v, LatticePoint3 p, LatticePoint3 q, LatticePoint3 point)
        {
            int lean = Lean;
            return Area(lean, v, p, point) >= 0 && Area(lean, v, point, q) >= 0;
        }

        /// <summary>
        /// Whether the triangle that made the plane and a segment in it (or a point, twice) have a point in common: unless a side of the
        /// triangle or the segment's line parts them.
        /// </summary>
        public bool MayMeet(LatticePoint3 a, LatticePoint3 b, LatticePoint3 c, LatticePoint3 p, LatticePoint3 q)
        {
            int lean = Lean;
            if ((Area(lean, a, b, p) < 0 && Area(lean, a, b, q) < 0) || (Area(lean, b, c, p) < 0 && Area(lean, b, c, q) < 0)
                || (Area(lean, c, a, p) < 0 && Area(lean, c, a, q) < 0))
            {
                return false;
            }

            int sum = Math.Sign(Area(lean, p, q, a)) + Math.Sign(Area(lean, p, q, b)) + Math.Sign(Area(lean, p, q, c));
            return sum is not (3 or -3);
        }

        // The axis that the normal leans to most, from 1; below zero when it leans backwards.
        private int Lean
        {
            get
            {
                double x = Math.Abs(_x), y = Math.Abs(_y), z = Math.Abs(_z);
                return z >= x && z >= y ? (_z > 0 ? 3 : -3) : x >= y ? (_x > 0 ? 1 : -1) : _y > 0 ? 2 : -2;
            }
        }

        private static long Area(int lean, LatticePoint3 a, LatticePoint3 b, LatticePoint3 c)
        {
            long bx = b.X - a.X, by = b.Y - a.Y, bz = b.Z - a.Z, cx = c.X - a.X, cy = c.Y - a.Y, cz = c.Z - a.Z;
            long area = lean is 3 or -3 ? (bx * cy) - (by * cx) : lean is 1 or -1 ? (by * cz) - (bz * cy) : (bz * cx) - (bx * cz);
            return lean > 0 ? area : -area;
        }
    }
}
