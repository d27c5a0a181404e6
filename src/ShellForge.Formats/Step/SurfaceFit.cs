using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Step;

/// <summary>The cylinder or cone about an upright axis that points lie on.</summary>
internal static class SurfaceFit
{
    // From a circle fitted through all heights at once; a cone of 45 degrees settles in five.
    private const int Rounds = 12;

    /// <summary>By least squares; null where a point lies further off than rounding moved it.</summary>
    /// <param name="points">The points.</param>
    /// <param name="upright">Whether it is a cylinder.</param>
    /// <param name="facesOut">Whether the part's outer side looks away from the axis.</param>
    public static RoundSurface? Of(IReadOnlyList<Point3> points, bool upright, bool facesOut)
    {
        Point2 centre = CircleCentre.Of([.. points.Select(p => p.XY)]);
        double level = points.Average(p => p.Z);
        double radius = points.Average(p => Point2.Distance(p.XY, centre));
        double slope = 0;
        int unknowns = upright ? 3 : 4;
        for (int round = 0; round < Rounds; round++)
        {
            double[,] normal = new double[unknowns, unknowns + 1];
            foreach (Point3 p in points)
            {
                Point2 away = p.XY - centre;
                double distance = away.Length;
                double off = distance - radius - (slope * (p.Z - level));
                ReadOnlySpan<double> row = [away.X / distance, away.Y / distance, 1, p.Z - level];
                for (int i = 0; i < unknowns; i++)
                {
                    for (int j = 0; j < unknowns; j++)
                    {
                        normal[i, j] += row[i] * row[j];
                    }

                    normal[i, unknowns] += row[i] * off;
                }
            }

            if (Solved(normal, unknowns) is not { } by)
            {
                return null;
            }

            centre += new Point2(by[0], by[1]);
            radius += by[2];
            slope += upright ? 0 : by[3];
        }

        var surface = new RoundSurface(centre, level, radius, slope, facesOut);
        return radius > 0 && points.All(surface.Holds) ? surface : null;
    }

    // Gauss with the largest pivot; null where the points leave an unknown open.
    private static double[]? Solved(double[,] rows, int count)
    {
        for (int column = 0; column < count; column++)
        {
            int best = column;
            for (int row = column + 1; row < count; row++)
            {
                best = Math.Abs(rows[row, column]) > Math.Abs(rows[best, column]) ? row : best;
            }

            if (!(Math.Abs(rows[best, column]) > double.Epsilon))
            {
                return null;
            }

            for (int j = 0; j <= count; j++)
            {
                (rows[column, j], rows[best, j]) = (rows[best, j], rows[column, j]);
            }

            for (int row = 0; row < count; row++)
            {
                double factor = row == column ? 0 : rows[row, column] / rows[column, column];
                for (int j = column; factor != 0 && j <= count; j++)
                {
                    rows[row, j] -= factor * rows[column, j];
                }
            }
        }

        return [.. Enumerable.Range(0, count).Select(i => rows[i, count] / rows[i, i])];
    }
}
