using System.Runtime.CompilerServices;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Booleans.Exact;

/// <summary>
/// The points of an arrangement, each once. A point is a lattice point, or (X, Y, Z) / W with W > 0: an edge through a plane
/// (numerators 104 bits, W 79) or three planes (numerators 182 bits, W 155). Equal points get the same number whatever made them.
/// Every point also carries doubles that are off by less than <see cref="Slack"/> and its exactly rounded lattice point.
/// </summary>
internal sealed class PointStore
{
    /// <summary>
    /// Bound on the error of an approximate coordinate, in steps: numerator, denominator and quotient each err by at most 2^-51
    /// relative, the value is at most 2^24; rounded up generously.
    /// </summary>
    public const double Slack = 1.0 / (1 << 24);

    private LatticePoint3[] _rounded = new LatticePoint3[256];
    private Point3[] _approximate = new Point3[256];
    private int[] _ratio = new int[256];
    private byte[] _whole = new byte[256];
    private int[] _next = new int[256];
    private int[] _buckets = new int[512];
    private readonly List<Narrow> _narrow = [];
    private readonly List<Wide> _wide = [];

    private const int AllWhole = 7;

    public int Count { get; private set; }

    public LatticePoint3 Rounded(int point) => _rounded[point];

    public Point3 Approximate(int point) => _approximate[point];

    public bool IsLattice(int point) => _ratio[point] == 0;

    /// <summary>The number of a lattice point.</summary>
    public int Add(LatticePoint3 p)
    {
        Point3 approximate = new(p.X, p.Y, p.Z);
        for (int i = First(p); i >= 0; i = _next[i])
        {
            if (_ratio[i] == 0 && _rounded[i] == p)
            {
                return i;
            }
        }

        return Append(p, approximate, 0, AllWhole);
    }

    /// <summary>The number here of a point of another store.</summary>
    public int Add(PointStore other, int point)
    {
        LatticePoint3 rounded = other._rounded[point];
        int ratio = other._ratio[point];
        if (ratio == 0)
        {
            return Add(rounded);
        }

        Point3 a = other._approximate[point];
        for (int i = First(rounded); i >= 0; i = _next[i])
        {
            if (Close(a, _approximate[i])
                && (ratio > 0 ? EqualsNarrow(i, other._narrow[ratio - 1]) : EqualsWide(i, other._wide[-ratio - 1])))
            {
                return i;
            }
        }

        if (ratio > 0)
        {
            _narrow.Add(other._narrow[ratio - 1]);
            return Append(rounded, a, _narrow.Count, other._whole[point]);
        }

        _wide.Add(other._wide[-ratio - 1]);
        return Append(rounded, a, -_wide.Count, other._whole[point]);
    }

    /// <summary>Where the edge crosses the plane; the heights of its ends have opposite signs.</summary>
    public int AddCrossing(LatticePoint3 from, LatticePoint3 to, Int128 fromHeight, Int128 toHeight)
    {
        Int128 w = fromHeight - toHeight;
        Int128 x = Fractions.Times(fromHeight, to.X) - Fractions.Times(toHeight, from.X);
        Int128 y = Fractions.Times(fromHeight, to.Y) - Fractions.Times(toHeight, from.Y);
        Int128 z = Fractions.Times(fromHeight, to.Z) - Fractions.Times(toHeight, from.Z);
        if (w < 0)
        {
            (x, y, z, w) = (-x, -y, -z, -w);
        }

        double dw = (double)w;
        Point3 a = new((double)x / dw, (double)y / dw, (double)z / dw);
        Narrow exact = new(x, y, z, w);
        LatticePoint3 rounded = new(Fractions.Round(a.X, x, w), Fractions.Round(a.Y, y, w), Fractions.Round(a.Z, z, w));
        bool wholeX = Near(a.X, rounded.X) && x == rounded.X * w, wholeY = Near(a.Y, rounded.Y) && y == rounded.Y * w;
        bool wholeZ = Near(a.Z, rounded.Z) && z == rounded.Z * w;
        int whole = Whole(ref a, rounded, wholeX, wholeY, wholeZ);
        if (whole == AllWhole)
        {
            return Add(rounded);
        }

        for (int i = First(rounded); i >= 0; i = _next[i])
        {
            if (Close(a, _approximate[i]) && EqualsNarrow(i, exact))
            {
                return i;
            }
        }

        _narrow.Add(exact);
        return Append(rounded, a, _narrow.Count, whole);
    }

    /// <summary>Where three planes meet; their normals must be independent.</summary>
    public int AddThreePlanes(in Plane p, in Plane q, in Plane r)
    {
        (Int128 qrX, Int128 qrY, Int128 qrZ) = Plane.NormalCross(q, r);
        (Int128 rpX, Int128 rpY, Int128 rpZ) = Plane.NormalCross(r, p);
        (Int128 pqX, Int128 pqY, Int128 pqZ) = Plane.NormalCross(p, q);
        Int128 dp = p.Offset, dq = q.Offset, dr = r.Offset;
        Int256 w = Int256.Product(qrX, p.Nx) + Int256.Product(qrY, p.Ny) + Int256.Product(qrZ, p.Nz);
        Int256 x = Int256.Product(qrX, dp) + Int256.Product(rpX, dq) + Int256.Product(pqX, dr);
        Int256 y = Int256.Product(qrY, dp) + Int256.Product(rpY, dq) + Int256.Product(pqY, dr);
        Int256 z = Int256.Product(qrZ, dp) + Int256.Product(rpZ, dq) + Int256.Product(pqZ, dr);
        if (w.Sign < 0)
        {
            (x, y, z, w) = (-x, -y, -z, -w);
        }

        double dw = w.ToDouble();
        Point3 a = new(x.ToDouble() / dw, y.ToDouble() / dw, z.ToDouble() / dw);
        Wide exact = new(x, y, z, w);
        LatticePoint3 rounded = new(Fractions.Round(a.X, x, w), Fractions.Round(a.Y, y, w), Fractions.Round(a.Z, z, w));
        bool wholeX = Near(a.X, rounded.X) && Fractions.IsWhole(x, w, rounded.X), wholeY = Near(a.Y, rounded.Y)
            && Fractions.IsWhole(y, w, rounded.Y);
        bool wholeZ = Near(a.Z, rounded.Z) && Fractions.IsWhole(z, w, rounded.Z);
        int whole = Whole(ref a, rounded, wholeX, wholeY, wholeZ);
        if (whole == AllWhole)
        {
            return Add(rounded);
        }

        for (int i = First(rounded); i >= 0; i = _next[i])
        {
            if (Close(a, _approximate[i]) && EqualsWide(i, exact))
            {
                return i;
            }
        }

        _wide.Add(exact);
        return Append(rounded, a, -_wide.Count, whole);
    }

    /// <summary>1 in front of the plane, -1 behind, 0 in it.</summary>
    public int Side(int point, in Plane plane)
    {
        int ratio = _ratio[point];
        if (ratio == 0)
        {
            return plane.Side(_rounded[point]);
        }

        ref readonly Point3 a = ref _approximate[point];
        double value = (plane.Nx * (a.X - plane.Anchor.X)) + (plane.Ny * (a.Y - plane.Anchor.Y)) + (plane.Nz * (a.Z - plane.Anchor.Z));
        double size = Math.Abs((double)plane.Nx) + Math.Abs((double)plane.Ny) + Math.Abs((double)plane.Nz);

        // The coordinates err by Slack at most, the sums by 2^-50 of a product that is at most 2^25 times the normal.
        if (Math.Abs(value) > size * (2 * Slack))
        {
            return value > 0 ? 1 : -1;
        }

        if (ratio > 0)
        {
            Narrow n = _narrow[ratio - 1];
            return (Int256.Product(n.X, plane.Nx) + Int256.Product(n.Y, plane.Ny) + Int256.Product(n.Z, plane.Nz)
                - Int256.Product(n.W, plane.Offset)).Sign;
        }

        Wide e = _wide[-ratio - 1];
        return (Int256.Product(e.X, plane.Nx) + Int256.Product(e.Y, plane.Ny) + Int256.Product(e.Z, plane.Nz)
            - Int256.Product(e.W, plane.Offset)).Sign;
    }

    /// <summary>
    /// Sign of (b - a) x (point - a) in the given two coordinates: 1 when the point lies left of a to b.
    /// </summary>
    public int Orient(LatticePoint3 a, LatticePoint3 b, int point, int axisU, int axisV)
    {
        long du = Drawing.Pick(b, axisU) - Drawing.Pick(a, axisU), dv = Drawing.Pick(b, axisV) - Drawing.Pick(a, axisV);
        int au = Drawing.Pick(a, axisU), av = Drawing.Pick(a, axisV);
        int both = (1 << axisU) | (1 << axisV);
        if ((_whole[point] & both) == both)
        {
            LatticePoint3 p = _rounded[point];
            return Math.Sign((du * (Drawing.Pick(p, axisV) - av)) - (dv * (Drawing.Pick(p, axisU) - au)));
        }

        double value = (du * (Approximate(point, axisV) - av)) - (dv * (Approximate(point, axisU) - au));
        if (Math.Abs(value) > (Math.Abs(du) + Math.Abs(dv)) * (2 * Slack))
        {
            return value > 0 ? 1 : -1;
        }

        Wide e = Exact(point);
        Int256 u = e.Pick(axisU) - Int256.Product(e.W, au);
        Int256 v = e.Pick(axisV) - Int256.Product(e.W, av);
        return (Int256.Product(v, du) - Int256.Product(u, dv)).Sign;
    }

    /// <summary>Order of two points along a coordinate axis; 0 when equal there.</summary>
    public int Compare(int p, int q, int axis)
    {
        double difference = Approximate(p, axis) - Approximate(q, axis);
        if (Math.Abs(difference) > 2 * Slack)
        {
            return difference > 0 ? 1 : -1;
        }

        if (p == q)
        {
            return 0;
        }

        // Most points that agree in a coordinate lie in a plane across that axis at a whole number of steps.
        if ((_whole[p] & _whole[q] & (1 << axis)) != 0)
        {
            return Math.Sign(difference);
        }

        Wide a = Exact(p);
        Wide b = Exact(q);
        return Int256.CompareProducts(a.Pick(axis), b.W, b.Pick(axis), a.W);
    }

    /// <summary>
    /// An axis along which two different points differ; the one along which they differ most unless they nearly coincide.
    /// </summary>
    public int AxisBetween(int p, int q)
    {
        double x = Math.Abs(_approximate[p].X - _approximate[q].X);
        double y = Math.Abs(_approximate[p].Y - _approximate[q].Y);
        double z = Math.Abs(_approximate[p].Z - _approximate[q].Z);
        int axis = x >= y && x >= z ? 0 : y >= z ? 1 : 2;
        return Math.Max(x, Math.Max(y, z)) > 2 * Slack || Compare(p, q, axis) != 0 ? axis
            : Compare(p, q, 0) != 0 ? 0 : Compare(p, q, 1) != 0 ? 1 : 2;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public double Approximate(int point, int axis)
    {
        ref readonly Point3 a = ref _approximate[point];
        return axis == 0 ? a.X : axis == 1 ? a.Y : a.Z;
    }

    private Wide Exact(int point)
    {
        int ratio = _ratio[point];
        if (ratio < 0)
        {
            return _wide[-ratio - 1];
        }

        if (ratio > 0)
        {
            Narrow n = _narrow[ratio - 1];
            return new Wide(Int256.From(n.X), Int256.From(n.Y), Int256.From(n.Z), Int256.From(n.W));
        }

        LatticePoint3 p = _rounded[point];
        return new Wide(Int256.From(p.X), Int256.From(p.Y), Int256.From(p.Z), Int256.From(1));
    }

    private bool EqualsNarrow(int point, in Narrow e)
    {
        int ratio = _ratio[point];
        if (ratio <= 0)
        {
            return ratio < 0 && EqualsWide(
                point, new Wide(Int256.From(e.X), Int256.From(e.Y), Int256.From(e.Z), Int256.From(e.W)));
        }

        Narrow n = _narrow[ratio - 1];
        return (Int256.Product(n.X, e.W) - Int256.Product(e.X, n.W)).Sign == 0
            && (Int256.Product(n.Y, e.W) - Int256.Product(e.Y, n.W)).Sign == 0
            && (Int256.Product(n.Z, e.W) - Int256.Product(e.Z, n.W)).Sign == 0;
    }

    private bool EqualsWide(int point, in Wide e)
    {
        if (_ratio[point] == 0)
        {
            return false;
        }

        Wide n = Exact(point);
        return Int256.CompareProducts(n.X, e.W, e.X, n.W) == 0
            && Int256.CompareProducts(n.Y, e.W, e.Y, n.W) == 0
            && Int256.CompareProducts(n.Z, e.W, e.Z, n.W) == 0;
    }

    private int First(LatticePoint3 p) => _buckets[Hash(p) & (_buckets.Length - 1)] - 1;

    private int Append(LatticePoint3 rounded, in Point3 approximate, int ratio, int whole)
    {
        if (Count == _rounded.Length)
        {
            Grow();
        }

        int index = Count++;
        _rounded[index] = rounded;
        _approximate[index] = approximate;
        _ratio[index] = ratio;
        _whole[index] = (byte)whole;
        ref int head = ref _buckets[Hash(rounded) & (_buckets.Length - 1)];
        _next[index] = head - 1;
        head = index + 1;
        return index;
    }

    private void Grow()
    {
        int size = Count * 2;
        Array.Resize(ref _rounded, size);
        Array.Resize(ref _approximate, size);
        Array.Resize(ref _ratio, size);
        Array.Resize(ref _whole, size);
        Array.Resize(ref _next, size);
        _buckets = new int[size * 2];
        for (int i = 0; i < Count; i++)
        {
            ref int head = ref _buckets[Hash(_rounded[i]) & (_buckets.Length - 1)];
            _next[i] = head - 1;
            head = i + 1;
        }
    }

    internal static int Hash(LatticePoint3 p)
    {
        ulong h = ((ulong)(uint)p.X * 0x9E3779B97F4A7C15UL) ^ ((ulong)(uint)p.Y * 0xC2B2AE3D27D4EB4FUL)
            ^ ((ulong)(uint)p.Z * 0x165667B19E3779F9UL);
        h ^= h >> 29;
        h *= 0xBF58476D1CE4E5B9UL;
        return (int)(h >> 33);
    }

    private static bool Close(in Point3 a, in Point3 b) =>
        Math.Abs(a.X - b.X) <= 2 * Slack && Math.Abs(a.Y - b.Y) <= 2 * Slack && Math.Abs(a.Z - b.Z) <= 2 * Slack;

    private static bool Near(double a, int p) => Math.Abs(a - p) <= Slack;

    // Bits 0 to 2 for coordinates that are whole numbers of steps; their approximations are made exact.
    private static int Whole(ref Point3 a, LatticePoint3 rounded, bool x, bool y, bool z)
    {
        a = new Point3(x ? rounded.X : a.X, y ? rounded.Y : a.Y, z ? rounded.Z : a.Z);
        return (x ? 1 : 0) | (y ? 2 : 0) | (z ? 4 : 0);
    }

    private readonly record struct Narrow(Int128 X, Int128 Y, Int128 Z, Int128 W);

    private readonly record struct Wide(Int256 X, Int256 Y, Int256 Z, Int256 W)
    {
        public Int256 Pick(int axis) => axis == 0 ? X : axis == 1 ? Y : Z;
    }
}
