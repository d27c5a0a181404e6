using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Step;

/// <summary>Where planes and round surfaces meet.</summary>
internal static class CornerPlace
{
    private const int Rounds = 20;

    // Two planes that are nearly one leave their corner free along both: it stays where it is, except for what the others ask.
    private const double Stay = 1e-9;

    // How far off each the point may lie in the end, steps: the file's coordinates are coarser.
    private const double Close = 1;

    /// <summary>The nearest point on all surfaces and in all planes; null where there is none.</summary>
    /// <param name="from">Where to start, a point of all planes.</param>
    /// <param name="planes">Directions of the planes, of length one.</param>
    /// <param name="surfaces">The round surfaces.</param>
    public static Point3? Of(Point3 from, Point3[] planes, RoundSurface[] surfaces)
    {
        Point3 at = from;
        for (int round = 0; round < Rounds; round++)
        {
            // Newton by least squares: the sum over all of n nT, and of n times the distance.
            double xx = Stay, xy = 0, xz = 0, yy = Stay, yz = 0, zz = Stay;
            Point3 right = Point3.Zero;
            foreach ((Point3 n, double off) in planes.Select(n => (n, Point3.Dot(n, at - from)))
                .Concat(surfaces.Select(surface => (surface.Outward(at), surface.Off(at)))))
            {
                xx += n.X * n.X;
                xy += n.X * n.Y;
                xz += n.X * n.Z;
                yy += n.Y * n.Y;
                yz += n.Y * n.Z;
                zz += n.Z * n.Z;
                right -= off * n;
            }

            var first = new Point3(xx, xy, xz);
            var second = new Point3(xy, yy, yz);
            var third = new Point3(xz, yz, zz);
            Point3 across = Point3.Cross(second, third);
            double whole = Point3.Dot(first, across);
            var by = new Point3(
                Point3.Dot(right, across) / whole, Point3.Dot(right, Point3.Cross(third, first)) / whole,
                Point3.Dot(right, Point3.Cross(first, second)) / whole);
            at += by;
            if (!(by.Length > Close / 1000))
            {
                break;
            }
        }

        return planes.All(n => Math.Abs(Point3.Dot(n, at - from)) <= Close) && surfaces.All(surface => Math.Abs(surface.Off(at)) <= Close)
            ? at
            : null;
    }
}
