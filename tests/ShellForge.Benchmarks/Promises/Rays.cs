using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Benchmarks.Promises;

/// <summary>Straight ways past meshes, triangle by triangle: shares no code with the kernel's trees.</summary>
internal static class Rays
{
    /// <summary>
    /// How many of a mesh's triangles a straight way crosses. Ways that run along an edge may miss both of its triangles: take several.
    /// </summary>
    /// <param name="mesh">The mesh.</param>
    /// <param name="from">Its start, mm.</param>
    /// <param name="to">Its end, mm.</param>
    public static int Crossed(Mesh mesh, Point3 from, Point3 to)
    {
        double dx = to.X - from.X, dy = to.Y - from.Y, dz = to.Z - from.Z;
        (double lowX, double highX) = (Math.Min(from.X, to.X), Math.Max(from.X, to.X));
        (double lowY, double highY) = (Math.Min(from.Y, to.Y), Math.Max(from.Y, to.Y));
        (double lowZ, double highZ) = (Math.Min(from.Z, to.Z), Math.Max(from.Z, to.Z));
        int crossed = 0;
        for (int t = 0; t < mesh.Triangles.Length; t += 3)
        {
            (double ax, double ay, double az) = At(mesh, t);
            (double bx, double by, double bz) = At(mesh, t + 1);
            (double cx, double cy, double cz) = At(mesh, t + 2);
            if (Math.Max(ax, Math.Max(bx, cx)) < lowX || Math.Min(ax, Math.Min(bx, cx)) > highX
                || Math.Max(ay, Math.Max(by, cy)) < lowY || Math.Min(ay, Math.Min(by, cy)) > highY
                || Math.Max(az, Math.Max(bz, cz)) < lowZ || Math.Min(az, Math.Min(bz, cz)) > highZ)
            {
                continue;
            }

            // Cramer's rule for from + s (to - from) = a + u (b - a) + v (c - a).
            (double ux, double uy, double uz) = (bx - ax, by - ay, bz - az);
            (double vx, double vy, double vz) = (cx - ax, cy - ay, cz - az);
            (double px, double py, double pz) = ((dy * vz) - (dz * vy), (dz * vx) - (dx * vz), (dx * vy) - (dy * vx));
            double determinant = (ux * px) + (uy * py) + (uz * pz);
            if (determinant == 0)
            {
                continue;
            }

            (double tx, double ty, double tz) = (from.X - ax, from.Y - ay, from.Z - az);
            double u = ((tx * px) + (ty * py) + (tz * pz)) / determinant;
            (double qx, double qy, double qz) = ((ty * uz) - (tz * uy), (tz * ux) - (tx * uz), (tx * uy) - (ty * ux));
            double v = ((dx * qx) + (dy * qy) + (dz * qz)) / determinant;
            double s = ((vx * qx) + (vy * qy) + (vz * qz)) / determinant;
            crossed += u >= 0 && v >= 0 && u + v <= 1 && s >= 0 && s <= 1 ? 1 : 0;
        }

        return crossed;
    }

    private static (double X, double Y, double Z) At(Mesh mesh, int corner)
    {
        LatticePoint3 point = mesh.Vertices[mesh.Triangles[corner]];
        return (point.X * Lattice.Step, point.Y * Lattice.Step, point.Z * Lattice.Step);
    }
}
