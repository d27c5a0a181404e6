using System.Runtime.CompilerServices;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Booleans;

/// <summary>
/// Tells of most pairs of triangles whose boxes touch that the triangles do not: all corners of one that the other does not share
/// lie strictly on one side of the other's plane. Doubles with an error bound decide; what they leave open may meet.
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
        int a0 = a[0], a1 = a[1], a2 = a[2], b0 = b[0], b1 = b[1], b2 = b[2];
        if (_planeOf != first)
        {
            _plane = new FastPlane(_verticesA[a0], _verticesA[a1], _verticesA[a2]);
            _planeOf = first;
        }

        if (!_isOwn)
        {
            int sum = _plane.Side(_verticesB[b0]) + _plane.Side(_verticesB[b1]) + _plane.Side(_verticesB[b2]);
            if (sum is 3 or -3)
            {
                return false;
            }

            FastPlane other = new(_verticesB[b0], _verticesB[b1], _verticesB[b2]);
            sum = other.Side(_verticesA[a0]) + other.Side(_verticesA[a1]) + other.Side(_verticesA[a2]);
            return sum is not (3 or -3);
        }

        bool shares0 = b0 == a0 || b0 == a1 || b0 == a2, shares1 = b1 == a0 || b1 == a1 || b1 == a2, shares2 = b2 == a0 || b2 == a1 || b2 == a2;
        int left = (shares0 ? 0 : 1) + (shares1 ? 0 : 1) + (shares2 ? 0 : 1);
        int sides = (shares0 ? 0 : _plane.Side(_verticesB[b0])) + (shares1 ? 0 : _plane.Side(_verticesB[b1]))
            + (shares2 ? 0 : _plane.Side(_verticesB[b2]));
        if (left > 0 && Math.Abs(sides) == left)
        {
            return false;
        }

        if (left < 2)
        {
            return true;
        }

        FastPlane back = new(_verticesB[b0], _verticesB[b1], _verticesB[b2]);
        sides = (a0 == b0 || a0 == b1 || a0 == b2 ? 0 : back.Side(_verticesA[a0]))
            + (a1 == b0 || a1 == b1 || a1 == b2 ? 0 : back.Side(_verticesA[a1])) + (a2 == b0 || a2 == b1 || a2 == b2 ? 0 : back.Side(_verticesA[a2]));
        return Math.Abs(sides) != left;
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
