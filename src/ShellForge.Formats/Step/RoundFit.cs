using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Step;

/// <summary>
/// The cylinder or cone about an axis that points lie on: a circle by least squares on squared distances, which is linear, then steps of
/// Gauss and Newton on the distances themselves. Source of the first: I. Kasa, A circle fitting procedure and its error analysis, IEEE
/// Trans. Instrum. Meas. 25 (1976).
/// </summary>
internal static class RoundFit
{
    // Corners lie up to a step off their surface in each direction.
    private const double CornerSteps = 4;

    // Steps of refining: each squares what is left.
    private const int Refinings = 4;

    /// <summary>The surface, or null when one of the points lies off it by more than rounding.</summary>
    /// <param name="points">Points, in lattice steps.</param>
    /// <param name="axis">Unit direction of the axis.</param>
    /// <param name="slope">About how much the radius grows along it.</param>
    public static RoundSurface? Of(IReadOnlyList<Point3> points, Point3 axis, double slope)
    {
        (Point3 right, Point3 up) = RoundSurface.Frame(axis);
        Point3 middle = 1.0 / points.Count * points.Aggregate(Point3.Zero, (sum, p) => sum + p);
        (double X, double Y, double Z)[] local =
            [.. points.Select(p => p - middle).Select(p => (Point3.Dot(p, right), Point3.Dot(p, up), Point3.Dot(p, axis)))];
        double tall = local.Max(p => p.Z) - local.Min(p => p.Z);
        bool straight = Math.Abs(slope) * tall <= Straight * tall;
        foreach (bool cylinder in straight ? [true, false] : new[] { false })
        {
            if (Fitted(local, cylinder ? 0 : slope, cylinder) is var (x, y, radius, grows) && radius > 0)
            {
                var found = new RoundSurface(middle + (x * right) + (y * up), axis, radius, grows);
                if (points.All(p => Math.Abs(found.Distance(p)) <= CornerSteps))
                {
                    return found;
                }
            }
        }

        return null;
    }

    /// <summary>The surface about an axis that is known; null when one of the points lies off it by more than rounding.</summary>
    /// <param name="known">A surface about it.</param>
    /// <param name="points">Points, in lattice steps.</param>
    /// <param name="slope">How much the radius grows along the axis, as fitted without it.</param>
    public static RoundSurface? About(RoundSurface known, IReadOnlyList<Point3> points, double slope)
    {
        (double Height, double Radius)[] at = [.. points.Select(p => (known.Height(p), known.Spoke(p).Length))];
        double height = at.Average(p => p.Height), radius = at.Average(p => p.Radius);
        double across = at.Sum(p => (p.Height - height) * (p.Height - height));
        double grows = slope == 0 ? 0 : at.Sum(p => (p.Height - height) * (p.Radius - radius)) / across;
        var found = new RoundSurface(known.OnAxis(height), known.Axis, radius, grows);
        return points.All(p => Math.Abs(found.Distance(p)) <= CornerSteps) ? found : null;
    }

    // A wall that leans less than this may be a cylinder: normals of small faces are known no better.
    private const double Straight = 5e-3;

    private static (double X, double Y, double Radius, double Slope)? Fitted(
        (double X, double Y, double Z)[] at, double slope, bool cylinder)
    {
        int unknowns = cylinder ? 3 : 4;
        double scale = at.Max(p => Math.Max(Math.Abs(p.X), Math.Max(Math.Abs(p.Y), Math.Abs(p.Z))));
        double[]? first = Solved(unknowns, at.Select(p => (
            new[] { p.X / scale, p.Y / scale, 1, cylinder ? 0 : slope * p.Z / scale },
            ((p.X * p.X) + (p.Y * p.Y) - (slope * slope * p.Z * p.Z)) / (scale * scale))));
        if (first is null)
        {
            return null;
        }

        double x = first[0] * scale / 2, y = first[1] * scale / 2;
        double radius = at.Average(p => new Point2(p.X - x, p.Y - y).Length - (slope * p.Z));
        for (int i = 0; i < Refinings; i++)
        {
            double[]? step = Solved(unknowns, at.Select(p =>
            {
                var spoke = new Point2(p.X - x, p.Y - y);
                return (new[] { spoke.X / spoke.Length, spoke.Y / spoke.Length, 1, p.Z / scale },
                    spoke.Length - radius - (slope * p.Z));
            }));
            if (step is null)
            {
                return null;
            }

            (x, y, radius) = (x + step[0], y + step[1], radius + step[2]);
            slope += cylinder ? 0 : step[3] / scale;
        }

        return (x, y, radius, slope);
    }

    // Least squares by normal equations; null where they don't tell.
    private static double[]? Solved(int unknowns, IEnumerable<(double[] Row, double Value)> equations)
    {
        double[,] sums = new double[unknowns, unknowns + 1];
        foreach ((double[] row, double value) in equations)
        {
            for (int i = 0; i < unknowns; i++)
            {
                for (int j = 0; j < unknowns; j++)
                {
                    sums[i, j] += row[i] * row[j];
                }

                sums[i, unknowns] += row[i] * value;
            }
        }

        return LinearSystem.Solved(sums);
    }
}
