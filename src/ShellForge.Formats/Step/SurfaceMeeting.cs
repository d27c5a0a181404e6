using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Step;

/// <summary>The point next to a given one where surfaces meet, by damped steps of Gauss and Newton.</summary>
internal static class SurfaceMeeting
{
    // So far a corner may go: a cut across a chord at a flat angle meets the arc some chord errors further on.
    private const double Furthest = 4 * Tolerances.ChordError / Lattice.Step;

    private const int MostSteps = 30;

    // Surfaces that all but touch tell nothing across their seam: there the point stays.
    private const double Damping = 1e-6;

    /// <summary>The point; null where the surfaces don't meet near by.</summary>
    public static Point3? Of(Point3 near, ISurface[] surfaces)
    {
        Point3 at = near;
        for (int i = 0; i < MostSteps && surfaces.Any(s => Math.Abs(s.Distance(at)) > (i == 0 ? Tolerances.FlatnessSteps : Close)); i++)
        {
            double[,] sums = new double[3, 4];
            foreach (ISurface surface in surfaces)
            {
                Point3 n = surface.Normal(at);
                double[] row = [n.X, n.Y, n.Z];
                for (int r = 0; r < 3; r++)
                {
                    for (int c = 0; c < 3; c++)
                    {
                        sums[r, c] += (row[r] * row[c]) + (r == c ? Damping : 0);
                    }

                    sums[r, 3] -= row[r] * surface.Distance(at);
                }
            }

            if (LinearSystem.Solved(sums) is not { } step)
            {
                return null;
            }

            at += new Point3(step[0], step[1], step[2]);
        }

        return Point3.Distance(at, near) <= Furthest && Array.TrueForAll(surfaces, s => Math.Abs(s.Distance(at)) <= Far) ? at : null;
    }

    // Steps: how well it is tried for, and what is taken.
    private const double Close = 0.25;
    private const double Far = 2 * Tolerances.FlatnessSteps;
}
