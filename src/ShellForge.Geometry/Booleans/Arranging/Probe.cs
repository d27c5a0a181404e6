using ShellForge.Geometry.Booleans.Exact;
using ShellForge.Geometry.Booleans.Meeting;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Booleans.Arranging;

/// <summary>
/// A place infinitely close to a point: p + e·Along + e²·Across + e³·Up with e as small as it takes. Every sign that is linear in
/// the place is that of the first term which is not zero, so no probe ever lies on anything.
/// </summary>
internal readonly struct Probe
{
    public readonly int Point;
    private readonly Int256 _alongX;
    private readonly Int256 _alongY;
    private readonly Int256 _alongZ;
    private readonly Int256 _acrossX;
    private readonly Int256 _acrossY;
    private readonly Int256 _acrossZ;
    private readonly Int128 _upX;
    private readonly Int128 _upY;
    private readonly Int128 _upZ;

    /// <summary>
    /// Beside an edge with direction <paramref name="along"/> (104 bits), inside the face with this normal (52 bits) that lies left
    /// of it, on the face's front. Across is the product of normal and direction: 157 bits.
    /// </summary>
    public Probe(int point, (Int128 X, Int128 Y, Int128 Z) along, in Plane face)
    {
        Point = point;
        _alongX = Int256.From(along.X);
        _alongY = Int256.From(along.Y);
        _alongZ = Int256.From(along.Z);
        _acrossX = Int256.Product(along.Z, face.Ny) - Int256.Product(along.Y, face.Nz);
        _acrossY = Int256.Product(along.X, face.Nz) - Int256.Product(along.Z, face.Nx);
        _acrossZ = Int256.Product(along.Y, face.Nx) - Int256.Product(along.X, face.Ny);
        _upX = face.Nx;
        _upY = face.Ny;
        _upZ = face.Nz;
    }

    /// <summary>In front of a triangle of the scene, at its first corner.</summary>
    public static Probe InFrontOf(Intersections found, int triangle)
    {
        LatticePoint3 a = found.OperandSet.Corner(triangle, 0), b = found.OperandSet.Corner(triangle, 1);
        return new Probe(found.VertexPoint(triangle, 0), (b.X - a.X, b.Y - a.Y, b.Z - a.Z), found.OperandSet.PlaneOf(triangle));
    }

    /// <summary>1 in front of a plane, -1 behind it, never 0 for a plane with a normal.</summary>
    public int Side(PointStore points, in Plane plane)
    {
        int side = points.Side(Point, plane);
        if (side == 0)
        {
            side = (Int256.Product(_alongX, plane.Nx) + Int256.Product(_alongY, plane.Ny) + Int256.Product(_alongZ, plane.Nz)).Sign;
        }

        if (side == 0)
        {
            side = (Int256.Product(_acrossX, plane.Nx) + Int256.Product(_acrossY, plane.Ny) + Int256.Product(_acrossZ, plane.Nz)).Sign;
        }

        return side != 0 ? side : Int128.Sign((_upX * plane.Nx) + (_upY * plane.Ny) + (_upZ * plane.Nz));
    }

    /// <summary>
    /// 1 when the place, drawn in two coordinates, lies left of a to b; ties that even Up leaves are broken by a shift along the
    /// first coordinate, then the second.
    /// </summary>
    public int Orient(PointStore points, LatticePoint3 a, LatticePoint3 b, int axisU, int axisV)
    {
        int side = points.Orient(a, b, Point, axisU, axisV);
        long du = Drawing.Pick(b, axisU) - Drawing.Pick(a, axisU), dv = Drawing.Pick(b, axisV) - Drawing.Pick(a, axisV);
        if (side == 0)
        {
            side = (Int256.Product(Along(axisV), du) - Int256.Product(Along(axisU), dv)).Sign;
        }

        if (side == 0)
        {
            side = (Int256.Product(Across(axisV), du) - Int256.Product(Across(axisU), dv)).Sign;
        }

        if (side == 0)
        {
            side = Int128.Sign((Up(axisV) * du) - (Up(axisU) * dv));
        }

        return side != 0 ? side : dv != 0 ? -Math.Sign(dv) : Math.Sign(du);
    }

    private Int256 Along(int axis) => axis == 0 ? _alongX : axis == 1 ? _alongY : _alongZ;

    private Int256 Across(int axis) => axis == 0 ? _acrossX : axis == 1 ? _acrossY : _acrossZ;

    private Int128 Up(int axis) => axis == 0 ? _upX : axis == 1 ? _upY : _upZ;
}
