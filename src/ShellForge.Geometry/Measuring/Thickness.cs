using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Measuring;

/// <summary>How thick a solid is at a place of its surface.</summary>
/// <param name="Thickness">mm.</param>
/// <param name="At">The place of the surface that was asked about.</param>
/// <param name="Opposite">The place of the surface on the other side.</param>
/// <param name="Triangle">The triangle on the other side, by its number.</param>
public readonly record struct ThicknessReading(double Thickness, Point3 At, Point3 Opposite, int Triangle);

/// <summary>Thickness of solids, by two methods that differ at edges and steps.</summary>
public static class Thickness
{
    private const int MostShrinks = 64;

    // A ball that loses less than this share of its radius in a step has come to rest; far below what a lattice step shows.
    private const double Rested = 1e-12;

    /// <summary>
    /// Along a ray: how far it is straight inward from a place to where the solid ends. Walls read true; where the opposite face
    /// slopes, the reading is longer than the least way through. Null when nothing is met within reach.
    /// </summary>
    /// <param name="solid">A surface that bounds a solid.</param>
    /// <param name="triangle">The triangle that the place lies on.</param>
    /// <param name="at">The place, mm.</param>
    /// <param name="reach">How far to look, mm.</param>
    public static ThicknessReading? AlongRay(SurfaceTree solid, int triangle, Point3 at, double reach = double.PositiveInfinity)
    {
        Point3 inward = -1 * solid.TriangleOf(triangle).DoubleNormal;
        return RayCast.First(solid, at, inward, RayFaces.Leaving, reach) is { } hit
            ? new ThicknessReading(hit.Distance, at, hit.At, hit.Triangle)
            : null;
    }

    /// <summary>
    /// In a sphere: the diameter of the largest ball inside the solid that touches the surface at a place. Near a convex edge it goes
    /// to 0. Found by shrinking: the surface point nearest to the ball's centre, if it is in the ball, gives the next ball.
    /// Source: J. Ma, S. W. Bae, S. Choi, 3D medial axis point approximation using nearest neighbors, 2012.
    /// </summary>
    /// <param name="solid">A surface that bounds a solid.</param>
    /// <param name="triangle">The triangle that the place lies on.</param>
    /// <param name="at">The place, mm.</param>
    /// <returns>The reading, its opposite side where the ball touches again; null when no ray from the place leaves the solid.</returns>
    public static ThicknessReading? InSphere(SurfaceTree solid, int triangle, Point3 at)
    {
        Point3 normal = solid.TriangleOf(triangle).DoubleNormal;
        Point3 inward = (-1 / normal.Length) * normal;
        if (AlongRay(solid, triangle, at) is not { } through)
        {
            return null;
        }

        double radius = through.Thickness / 2;
        Point3 opposite = through.Opposite;
        int touched = through.Triangle;
        for (int i = 0; i < MostShrinks && radius > 0; i++)
        {
            Point3 centre = at + (radius * inward);
            SurfacePlace near = ClosestPoint.On(solid, centre)!.Value;
            if (near.Distance >= radius * (1 - Rested))
            {
                break;
            }

            // The ball through the place, tangent to its face, and through the nearest point.
            Point3 way = near.At - at;
            double along = Point3.Dot(way, inward);
            double next = along > 0 ? Point3.Dot(way, way) / (2 * along) : 0;
            if (next >= radius * (1 - Rested))
            {
                break;
            }

            (radius, opposite, touched) = (next, near.At, near.Triangle);
        }

        return new ThicknessReading(2 * radius, at, opposite, touched);
    }

    /// <summary>
    /// The thinnest place between faces that look away from each other: rays from a net of places on every triangle, each no longer
    /// than the thinnest found so far. Edges, where faces meet, are no thickness. Null when nothing is thinner than the reach.
    /// </summary>
    /// <param name="solid">A surface that bounds a solid.</param>
    /// <param name="spacing">Distance between places, mm; a thin spot smaller than that may be missed.</param>
    /// <param name="reach">Only what is thinner counts, mm.</param>
    /// <param name="opposing">How far the two faces may be from parallel.</param>
    /// <param name="from">Which faces are looked at, by their outward normals of any length; null: all.</param>
    /// <param name="counts">Whether a reading counts; null: all do.</param>
    public static ThicknessReading? Thinnest(
        SurfaceTree solid, double spacing, double reach, Angle opposing, Func<Point3, bool>? from = null,
        Func<ThicknessReading, bool>? counts = null)
    {
        ThicknessReading? thinnest = null;
        double least = opposing.Cos;
        for (int t = 0; t < solid.Mesh.TriangleCount; t++)
        {
            Triangle3 triangle = solid.TriangleOf(t);
            Point3 normal = triangle.DoubleNormal;
            if (from is not null && !from(normal))
            {
                continue;
            }

            foreach (Point3 at in Net(triangle, spacing))
            {
                if (AlongRay(solid, t, at, reach) is not { } reading || reading.Thickness >= reach)
                {
                    continue;
                }

                Point3 other = solid.TriangleOf(reading.Triangle).DoubleNormal;
                if (-Point3.Dot(normal, other) >= least * normal.Length * other.Length && (counts is null || counts(reading)))
                {
                    (thinnest, reach) = (reading, reading.Thickness);
                }
            }
        }

        return thinnest;
    }

    /// <summary>
    /// Places inside a triangle, no farther apart than a spacing: rows along its longest side, so that a sliver takes few.
    /// </summary>
    internal static IEnumerable<Point3> Net(Triangle3 t, double spacing)
    {
        double ab = Point3.Distance(t.A, t.B);
        double bc = Point3.Distance(t.B, t.C);
        double ca = Point3.Distance(t.C, t.A);
        double longest = Math.Max(ab, Math.Max(bc, ca));
        (Point3 from, Point3 to, Point3 tip) = longest == ab ? (t.A, t.B, t.C) : longest == bc ? (t.B, t.C, t.A) : (t.C, t.A, t.B);
        int rows = Math.Max(1, (int)Math.Ceiling(t.DoubleNormal.Length / longest / spacing));
        for (int row = 0; row < rows; row++)
        {
            double rise = (row + 0.5) / rows;
            Point3 start = from + (rise * (tip - from));
            Point3 along = (1 - rise) * (to - from);
            int places = Math.Max(1, (int)Math.Ceiling(longest * (1 - rise) / spacing));
            for (int i = 0; i < places; i++)
            {
                yield return start + (((i + 0.5) / places) * along);
            }
        }
    }
}
