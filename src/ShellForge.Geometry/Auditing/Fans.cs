using ShellForge.Geometry.Measuring;

namespace ShellForge.Geometry.Auditing;

/// <summary>
/// Triangles round a corner that has many of them. Their boxes all touch at the corner, but what two of them have in common beyond it
/// reaches the side opposite of the corner in one of the two: only boxes of those sides have to be looked for.
/// </summary>
internal static class Fans
{
    /// <summary>From so many triangles on a tree of their sides is quicker than all their pairs.</summary>
    public const int WorthTree = 64;

    /// <summary>The corner whose fan each triangle belongs to; -1 for none.</summary>
    /// <param name="surface">The mesh.</param>
    /// <param name="triangles">The triangles.</param>
    /// <param name="least">How many triangles a fan has.</param>
    public static int[] Of(AuditSurface surface, IReadOnlyList<int> triangles, int least)
    {
        int[] count = new int[surface.Points.Length];
        foreach (int triangle in triangles)
        {
            foreach (int corner in surface.Triangles.AsSpan(3 * triangle, 3))
            {
                count[corner]++;
            }
        }

        int[] fans = new int[triangles.Count];
        for (int i = 0; i < fans.Length; i++)
        {
            int best = -1;
            foreach (int corner in surface.Triangles.AsSpan(3 * triangles[i], 3))
            {
                best = count[corner] >= least && (best < 0 || count[corner] > count[best]) ? corner : best;
            }

            fans[i] = best;
        }

        return fans;
    }

    /// <summary>The box of the side of a triangle that is opposite of a corner, exact.</summary>
    /// <param name="surface">The mesh.</param>
    /// <param name="triangle">The triangle.</param>
    /// <param name="corner">The corner.</param>
    public static FloatBox SideBox(AuditSurface surface, int triangle, int corner)
    {
        FloatBox box = FloatBox.Empty;
        foreach (int other in surface.Triangles.AsSpan(3 * triangle, 3))
        {
            if (other != corner)
            {
                var (x, y, z) = ((float)surface.Points[other].X, (float)surface.Points[other].Y, (float)surface.Points[other].Z);
                box.Include(new FloatBox { MinX = x, MinY = y, MinZ = z, MaxX = x, MaxY = y, MaxZ = z });
            }
        }

        return box;
    }
}
