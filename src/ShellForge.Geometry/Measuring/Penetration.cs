using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Measuring;

/// <summary>
/// How deep two solids lie in each other: the largest distance of a point of one solid's surface, where it lies inside the other,
/// from the other's surface; the larger of both ways. For a peg in a wall that is how far the peg has gone in.
/// </summary>
public static class Penetration
{
    /// <summary>How far a depth may be short of the true one unless asked otherwise, mm.</summary>
    public const double DefaultTolerance = 0.002;

    // Bodies that lie all along each other at nearly one depth would be cut ever finer; by then the depth is good to a few micrometres.
    private const int MostPieces = 100_000;

    /// <summary>
    /// The deepest place, with a negative distance; null when no surface point of either lies inside the other.
    /// </summary>
    /// <param name="first">A surface that bounds a solid.</param>
    /// <param name="second">Another.</param>
    /// <param name="tolerance">How far the depth may be short of the true one, mm; more than 0. After 100,000 pieces of surface the search
    /// ends where it is.</param>
    /// <exception cref="ArgumentOutOfRangeException">A tolerance that is not positive: the search would not end.</exception>
    public static Gap? Of(SurfaceTree first, SurfaceTree second, double tolerance = DefaultTolerance)
    {
        if (!(tolerance > 0))
        {
            throw new ArgumentOutOfRangeException(nameof(tolerance), tolerance, "A tolerance must be positive.");
        }

        if (first.IsEmpty || second.IsEmpty)
        {
            return null;
        }

        Deepest inSecond = Search(first, second, 0, tolerance);
        Deepest inFirst = Search(second, first, inSecond.Depth, tolerance);
        return inFirst.Depth > inSecond.Depth
            ? new Gap(-inFirst.Depth, inFirst.Foot, inFirst.At)
            : inSecond.Depth > 0 ? new Gap(-inSecond.Depth, inSecond.At, inSecond.Foot) : null;
    }

    // Branch and bound over pieces of triangles. No point of a piece is deeper than the middle's depth plus the way to its farthest
    // corner, nor farther from the surface than its farthest corner is from the triangle nearest to its middle.
    private static Deepest Search(SurfaceTree mover, SurfaceTree solid, double atLeast, double tolerance)
    {
        var best = new Deepest(atLeast, default, default);
        var open = new PriorityQueue<Triangle3, double>();
        for (int t = 0; t < mover.Triangles.Length; t++)
        {
            Visit(solid, mover.Triangles[t], ref best, open, tolerance);
        }

        for (int pieces = 0; pieces < MostPieces && open.TryDequeue(out Triangle3 piece, out double bound)
            && -bound > best.Depth + tolerance; pieces += 4)
        {
            Point3 ab = 0.5 * (piece.A + piece.B);
            Point3 bc = 0.5 * (piece.B + piece.C);
            Point3 ca = 0.5 * (piece.C + piece.A);
            Visit(solid, new Triangle3(piece.A, ab, ca), ref best, open, tolerance);
            Visit(solid, new Triangle3(ab, piece.B, bc), ref best, open, tolerance);
            Visit(solid, new Triangle3(ca, bc, piece.C), ref best, open, tolerance);
            Visit(solid, new Triangle3(ab, bc, ca), ref best, open, tolerance);
        }

        return best;
    }

    private static void Visit(
        SurfaceTree solid, in Triangle3 piece, ref Deepest best, PriorityQueue<Triangle3, double> open, double tolerance)
    {
        FloatBox box = piece.Box();
        if (!box.Touches(solid.Nodes[0].Box))
        {
            return;
        }

        Point3 middle = piece.Middle;
        double radius = Math.Max(Point3.Distance(middle, piece.A),
            Math.Max(Point3.Distance(middle, piece.B), Point3.Distance(middle, piece.C)));
        SurfacePlace near = ClosestPoint.On(solid, middle)!.Value;
        bool inside = PointMembership.Of(solid, middle) == Membership.Inside;
        double depth = inside ? near.Distance : -near.Distance;
        if (depth > best.Depth)
        {
            best = new Deepest(depth, middle, near.At);
        }

        Triangle3 wall = solid.TriangleOf(near.Triangle);
        double fromWall = Math.Max(Away(wall, piece.A), Math.Max(Away(wall, piece.B), Away(wall, piece.C)));
        double bound = Math.Min(depth + radius, fromWall);
        if (bound > best.Depth + tolerance)
        {
            open.Enqueue(piece, -bound);
        }
    }

    private static double Away(in Triangle3 wall, in Point3 p) => Point3.Distance(wall.Nearest(p), p);

    private readonly record struct Deepest(double Depth, Point3 At, Point3 Foot);
}
