using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Step;

/// <summary>
/// The centre of the circle that points lie on, by least squares on the squared distances, which is linear. Source: I. Kasa, A circle
/// fitting procedure and its error analysis, IEEE Trans. Instrum. Meas. 25 (1976).
/// </summary>
internal static class CircleCentre
{
    public static Point2 Of(IReadOnlyList<Point2> points)
    {
        var mean = new Point2(points.Average(p => p.X), points.Average(p => p.Y));
        double xx = 0, xy = 0, yy = 0, xq = 0, yq = 0;
        double square = points.Average(p => Square(p - mean));
        foreach (Point2 point in points)
        {
            Point2 p = point - mean;
            double q = Square(p) - square;
            xx += p.X * p.X;
            xy += p.X * p.Y;
            yy += p.Y * p.Y;
            xq += p.X * q;
            yq += p.Y * q;
        }

        double twice = 2 * ((xx * yy) - (xy * xy));
        return mean + new Point2(((xq * yy) - (yq * xy)) / twice, ((yq * xx) - (xq * xy)) / twice);
    }

    private static double Square(Point2 p) => (p.X * p.X) + (p.Y * p.Y);
}
