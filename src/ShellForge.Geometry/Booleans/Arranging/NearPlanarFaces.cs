using ShellForge.Geometry.Booleans.Exact;
using ShellForge.Geometry.Booleans.Ingest;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Booleans.Arranging;

/// <summary>
/// The faces of one operand as they were meant: neighbours of one tag whose corners stay within a step or so of one plane. A turned plane
/// is no longer flat on the lattice, but its face is still one.
/// </summary>
internal sealed class NearPlanarFaces
{
    // Corners were off their plane by up to 0.87 steps before they were snapped.
    private const double Flatness = 0.9;

    private NearPlanarFaces(int[] faceOf, List<Plane> planes)
    {
        FaceOf = faceOf;
        Planes = planes;
    }

    /// <summary>The face of each triangle.</summary>
    public int[] FaceOf { get; }

    /// <summary>The plane of each face, through three corners that lie far apart.</summary>
    public List<Plane> Planes { get; }

    /// <summary>Grown from the given triangles, the largest first; triangles that no face reaches have face -1.</summary>
    public static NearPlanarFaces Of(Operand mesh, List<int> seeds)
    {
        int count = mesh.TriangleCount;
        double[] keys = new double[seeds.Count];
        int[] order = [.. seeds];
        for (int i = 0; i < order.Length; i++)
        {
            keys[i] = -Length(mesh.PlaneOf(order[i]));
        }

        Array.Sort(keys, order);
        SortTies(keys, order);
        int[] faceOf = new int[count];
        Array.Fill(faceOf, -1);
        List<Plane> planes = [];
        Queue<int> open = new();
        foreach (int seed in order)
        {
            if (faceOf[seed] >= 0)
            {
                continue;
            }

            LatticePoint3[] spread = [mesh.Corner(seed, 0), mesh.Corner(seed, 1), mesh.Corner(seed, 2)];
            faceOf[seed] = planes.Count;
            open.Enqueue(seed);
            while (open.TryDequeue(out int t))
            {
                for (int h = 3 * t; h < (3 * t) + 3; h++)
                {
                    int partner = mesh.Partner[h];
                    int neighbour = partner / 3;
                    if (partner < 0 || faceOf[neighbour] >= 0 || mesh.Tags[neighbour] != mesh.Tags[seed])
                    {
                        continue;
                    }

                    LatticePoint3 apex = mesh.Corner(neighbour, ((partner % 3) + 2) % 3);

                    // What lies exactly in one plane stays together, however the plane of the face so far wobbles.
                    if (!mesh.IsReal[h]
                        || (Continues(spread, apex) && Leans(new Plane(spread[0], spread[1], spread[2]), mesh.PlaneOf(neighbour))))
                    {
                        faceOf[neighbour] = planes.Count;
                        open.Enqueue(neighbour);
                        Spread(spread, apex);
                    }
                }
            }

            planes.Add(new Plane(spread[0], spread[1], spread[2]));
        }

        return new NearPlanarFaces(faceOf, planes);
    }

    // A plane through a narrow triangle wobbles: what a corner may be off grows with how far the plane is stretched to reach it.
    private static bool Continues(LatticePoint3[] spread, LatticePoint3 p)
    {
        Plane plane = new(spread[0], spread[1], spread[2]);
        double longest =
            Math.Sqrt(Math.Max(Squared(spread[0], spread[1]), Math.Max(Squared(spread[1], spread[2]), Squared(spread[2], spread[0]))));
        double reach = Math.Sqrt(Math.Max(Squared(spread[0], p), Math.Max(Squared(spread[1], p), Squared(spread[2], p))));
        double height = Length(plane) / longest;
        double allowed = Flatness * (1.5 + (reach / height));
        return Distance(plane, p) <= Math.Min(allowed, Math.Max(2 * Flatness, reach / 64));
    }

    private static void Spread(LatticePoint3[] spread, LatticePoint3 p)
    {
        double best = Length(new Plane(spread[0], spread[1], spread[2]));
        int replaced = -1;
        for (int k = 0; k < 3; k++)
        {
            double area = Length(new Plane(k == 0 ? p : spread[0], k == 1 ? p : spread[1], k == 2 ? p : spread[2]));
            if (area > best)
            {
                best = area;
                replaced = k;
            }
        }

        if (replaced < 0)
        {
            return;
        }

        Plane before = new(spread[0], spread[1], spread[2]);
        spread[replaced] = p;
        Plane after = new(spread[0], spread[1], spread[2]);
        if (Plane.NormalDotSign(before, after) < 0)
        {
            (spread[1], spread[2]) = (spread[2], spread[1]);
        }
    }

    private static double Squared(LatticePoint3 a, LatticePoint3 b)
    {
        double x = (double)a.X - b.X, y = (double)a.Y - b.Y, z = (double)a.Z - b.Z;
        return (x * x) + (y * y) + (z * z);
    }

    /// <summary>
    /// Whether two planes, each through three corners of its face, may have been one before their corners were snapped: at every
    /// corner of the one the other is no farther than rounding explains.
    /// </summary>
    public static bool AreNearlyOne(in Plane a, in Plane b)
    {
        double dot = ((double)a.Nx * b.Nx) + ((double)a.Ny * b.Ny) + ((double)a.Nz * b.Nz);
        double product = Length(a) * Length(b);
        if (Math.Abs(dot) < 0.99 * product)
        {
            return false;
        }

        Plane large = Length(a) >= Length(b) ? a : b;
        Plane small = Length(a) >= Length(b) ? b : a;

        // The smaller triangle has this extent; its plane may turn by one step over that.
        double size = Math.Sqrt(Length(small));
        double sine = Math.Sqrt(Math.Max(0, 1 - (dot / product * (dot / product))));
        return Distance(large, small.Anchor) <= 2.5 && (sine * size <= 4 || size < 64);
    }

    /// <summary>Distance of a point from a plane, in steps.</summary>
    public static double Distance(in Plane plane, LatticePoint3 p) =>
        Math.Abs(((double)plane.Nx * (p.X - plane.Anchor.X)) + ((double)plane.Ny * (p.Y - plane.Anchor.Y))
            + ((double)plane.Nz * (p.Z - plane.Anchor.Z)))
        / Length(plane);

    public static double Length(in Plane plane) =>
        Math.Sqrt(((double)plane.Nx * plane.Nx) + ((double)plane.Ny * plane.Ny) + ((double)plane.Nz * plane.Nz));

    private static bool Leans(in Plane a, in Plane b)
    {
        double dot = ((double)a.Nx * b.Nx) + ((double)a.Ny * b.Ny) + ((double)a.Nz * b.Nz);
        return dot > 0.5 * Length(a) * Length(b);
    }

    private static void SortTies(double[] keys, int[] order)
    {
        for (int from = 0; from < keys.Length;)
        {
            int to = from + 1;
            while (to < keys.Length && keys[to] == keys[from])
            {
                to++;
            }

            Array.Sort(order, from, to - from);
            from = to;
        }
    }
}
