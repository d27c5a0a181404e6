using System.Runtime.CompilerServices;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Booleans;

/// <summary>An axis-parallel box in lattice steps, borders included.</summary>
internal struct IntBox
{
    public int MinX;
    public int MinY;
    public int MinZ;
    public int MaxX;
    public int MaxY;
    public int MaxZ;

    public static IntBox Empty => new()
    {
        MinX = int.MaxValue,
        MinY = int.MaxValue,
        MinZ = int.MaxValue,
        MaxX = int.MinValue,
        MaxY = int.MinValue,
        MaxZ = int.MinValue,
    };

    public static IntBox Of(LatticePoint3 a, LatticePoint3 b, LatticePoint3 c) => new()
    {
        MinX = Math.Min(a.X, Math.Min(b.X, c.X)),
        MinY = Math.Min(a.Y, Math.Min(b.Y, c.Y)),
        MinZ = Math.Min(a.Z, Math.Min(b.Z, c.Z)),
        MaxX = Math.Max(a.X, Math.Max(b.X, c.X)),
        MaxY = Math.Max(a.Y, Math.Max(b.Y, c.Y)),
        MaxZ = Math.Max(a.Z, Math.Max(b.Z, c.Z)),
    };

    public void Include(LatticePoint3 p)
    {
        MinX = Math.Min(MinX, p.X);
        MinY = Math.Min(MinY, p.Y);
        MinZ = Math.Min(MinZ, p.Z);
        MaxX = Math.Max(MaxX, p.X);
        MaxY = Math.Max(MaxY, p.Y);
        MaxZ = Math.Max(MaxZ, p.Z);
    }

    public void Include(in IntBox b)
    {
        MinX = Math.Min(MinX, b.MinX);
        MinY = Math.Min(MinY, b.MinY);
        MinZ = Math.Min(MinZ, b.MinZ);
        MaxX = Math.Max(MaxX, b.MaxX);
        MaxY = Math.Max(MaxY, b.MaxY);
        MaxZ = Math.Max(MaxZ, b.MaxZ);
    }

    /// <summary>Larger by so many steps on every side; an empty box stays empty.</summary>
    public readonly IntBox Grown(int by) => MinX > MaxX ? this : new()
    {
        MinX = MinX - by,
        MinY = MinY - by,
        MinZ = MinZ - by,
        MaxX = MaxX + by,
        MaxY = MaxY + by,
        MaxZ = MaxZ + by,
    };

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly bool Touches(in IntBox b) =>
        MinX <= b.MaxX && b.MinX <= MaxX && MinY <= b.MaxY && b.MinY <= MaxY && MinZ <= b.MaxZ && b.MinZ <= MaxZ;
}
