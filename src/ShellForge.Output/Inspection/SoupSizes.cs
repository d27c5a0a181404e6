using System.Collections.Immutable;
using ShellForge.Formats.Soup;
using ShellForge.Geometry.Auditing;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Output.Inspection;

/// <summary>
/// Sizes of a triangle soup where its file puts it, in double precision: good to a millionth, which is what a foreign file deserves.
/// </summary>
/// <param name="Bounds">Box round all finite triangles.</param>
/// <param name="Area">Surface, mm2.</param>
/// <param name="Volume">Signed volume, mm3; says something for closed meshes only.</param>
/// <param name="OverhangArea">Surface that leans outward beyond the limit, the faces on the bed left out, mm2.</param>
internal readonly record struct SoupSizes(Box3 Bounds, double Area, double Volume, double OverhangArea)
{
    public static SoupSizes Of(SoupBody body, Angle overhangLimit)
    {
        LooseTriangles soup = body.Triangles;
        Box3 bounds = Box3.Empty;
        for (int t = 0; t < soup.TriangleCount; t++)
        {
            if (IsFinite(soup, t))
            {
                bounds = bounds.Including(Corner(body, t, 0)).Including(Corner(body, t, 1)).Including(Corner(body, t, 2));
            }
        }

        double area = 0;
        double volume = 0;
        double overhang = 0;
        double steepest = overhangLimit.Sin;

        // Taken from a corner of the box, so that a body far from the origin loses no digits.
        Point3 origin = bounds.IsEmpty ? default : bounds.Min;
        for (int t = 0; t < soup.TriangleCount; t++)
        {
            if (!IsFinite(soup, t))
            {
                continue;
            }

            Point3 a = Corner(body, t, 0) - origin;
            Point3 b = Corner(body, t, 1) - origin;
            Point3 c = Corner(body, t, 2) - origin;
            Point3 cross = Point3.Cross(b - a, c - a);
            double twice = cross.Length;
            area += twice / 2;
            volume += Point3.Dot(a, Point3.Cross(b, c)) / 6;
            bool onBed = a.Z == 0 && b.Z == 0 && c.Z == 0;
            if (!onBed && -cross.Z > steepest * twice)
            {
                overhang += twice / 2;
            }
        }

        return new SoupSizes(bounds, area, volume, overhang);
    }

    private static Point3 Corner(SoupBody body, int triangle, int corner)
    {
        int at = (9 * triangle) + (3 * corner);
        ImmutableArray<float> numbers = body.Triangles.Coordinates;
        return body.Place.Apply(new Point3(numbers[at], numbers[at + 1], numbers[at + 2]));
    }

    private static bool IsFinite(LooseTriangles soup, int triangle)
    {
        foreach (float value in soup.Coordinates.AsSpan(9 * triangle, 9))
        {
            if (!float.IsFinite(value))
            {
                return false;
            }
        }

        return true;
    }
}
