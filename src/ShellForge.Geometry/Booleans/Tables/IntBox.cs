using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Booleans.Tables;

/// <summary>An axis-parallel box in lattice steps, borders included. The fourth lane of both vectors is 0.</summary>
internal struct IntBox
{
    private Vector128<int> _min;
    private Vector128<int> _max;

    public IntBox(int minX, int minY, int minZ, int maxX, int maxY, int maxZ)
    {
        _min = Vector128.Create(minX, minY, minZ, 0);
        _max = Vector128.Create(maxX, maxY, maxZ, 0);
    }

    private IntBox(Vector128<int> min, Vector128<int> max)
    {
        _min = min;
        _max = max;
    }

    public static IntBox Empty => new(int.MaxValue, int.MaxValue, int.MaxValue, int.MinValue, int.MinValue, int.MinValue);

    public readonly int MinX => _min.GetElement(0);

    public readonly int MinY => _min.GetElement(1);

    public readonly int MinZ => _min.GetElement(2);

    public readonly int MaxX => _max.GetElement(0);

    public readonly int MaxY => _max.GetElement(1);

    public readonly int MaxZ => _max.GetElement(2);

    public static IntBox Of(LatticePoint3 a, LatticePoint3 b, LatticePoint3 c)
    {
        Vector128<int> p = Lanes(a), q = Lanes(b), r = Lanes(c);
        return new IntBox(Vector128.Min(p, Vector128.Min(q, r)), Vector128.Max(p, Vector128.Max(q, r)));
    }

    public void Include(LatticePoint3 p)
    {
        _min = Vector128.Min(_min, Lanes(p));
        _max = Vector128.Max(_max, Lanes(p));
    }

    public void Include(in IntBox b)
    {
        _min = Vector128.Min(_min, b._min);
        _max = Vector128.Max(_max, b._max);
    }

    /// <summary>Larger by so many steps on every side; an empty box stays empty.</summary>
    public readonly IntBox Grown(int by)
    {
        Vector128<int> reach = Vector128.Create(by, by, by, 0);
        return MinX > MaxX ? this : new(_min - reach, _max + reach);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly bool Touches(in IntBox b) => Vector128.LessThanOrEqualAll(_min, b._max) && Vector128.LessThanOrEqualAll(b._min, _max);

    private static Vector128<int> Lanes(LatticePoint3 p) => Vector128.Create(p.X, p.Y, p.Z, 0);
}
