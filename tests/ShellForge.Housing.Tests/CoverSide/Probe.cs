using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Housing.Tests.CoverSide;

/// <summary>
/// A gauge: where a straight line goes in and out of a mesh. Plain arithmetic on triangles, nothing of the builders or the kernel.
/// </summary>
public static class Probe
{
    /// <summary>Distances along a ray at which it crosses the mesh, rising.</summary>
    public static double[] Crossings(Mesh mesh, Point3 from, Point3 direction)
    {
        var found = new List<double>();
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            Point3 a = Corner(mesh, t, 0);
            Point3 ab = Corner(mesh, t, 1) - a;
            Point3 ac = Corner(mesh, t, 2) - a;
            Point3 p = Cross(direction, ac);
            double det = Dot(ab, p);
            if (det == 0)
            {
                continue;
            }

            Point3 s = from - a;
            double u = Dot(s, p) / det;
            Point3 q = Cross(s, ab);
            double v = Dot(direction, q) / det;
            if (u >= 0 && v >= 0 && u + v <= 1)
            {
                double along = Dot(ac, q) / det;
                if (along > 0)
                {
                    found.Add(along);
                }
            }
        }

        found.Sort();
        return [.. found];
    }

    /// <summary>Crossings of a ray from the axis outward at a height: radii.</summary>
    public static double[] Radii(Mesh mesh, double degrees, double z)
    {
        Angle angle = Angle.FromDegrees(degrees);
        return Crossings(mesh, new Point3(0, 0, z), new Point3(angle.Cos, angle.Sin, 0));
    }

    /// <summary>Crossings of a ray upwards from far below: heights.</summary>
    public static double[] Heights(Mesh mesh, double radius, double degrees)
    {
        Point2 at = Point2.Polar(radius, Angle.FromDegrees(degrees));
        return [.. Crossings(mesh, new Point3(at.X, at.Y, -100), new Point3(0, 0, 1)).Select(z => z - 100)];
    }

    /// <summary>Whether a point lies inside, by counting crossings upwards.</summary>
    public static bool IsInside(Mesh mesh, Point3 point) => Crossings(mesh, point, new Point3(0.0123, 0.0217, 1)).Length % 2 == 1;

    /// <summary>Corner of a triangle in mm.</summary>
    public static Point3 Corner(Mesh mesh, int triangle, int corner) =>
        mesh.Vertices[mesh.Triangles[(3 * triangle) + corner]].ToMillimetres();

    /// <summary>Outward normal times twice the area.</summary>
    public static Point3 Normal(Mesh mesh, int triangle)
    {
        Point3 a = Corner(mesh, triangle, 0);
        return Cross(Corner(mesh, triangle, 1) - a, Corner(mesh, triangle, 2) - a);
    }

    private static double Dot(Point3 a, Point3 b) => (a.X * b.X) + (a.Y * b.Y) + (a.Z * b.Z);

    private static Point3 Cross(Point3 a, Point3 b) =>
        new((a.Y * b.Z) - (a.Z * b.Y), (a.Z * b.X) - (a.X * b.Z), (a.X * b.Y) - (a.Y * b.X));
}
