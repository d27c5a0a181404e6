using ShellForge.Geometry.Numerics;

namespace ShellForge.Physics.Tests.Light;

/// <summary>
/// Light by brute force: photons leave LEDs, every triangle is tried for every flight, and walls throw them back until little is left of
/// them. Written for being read, it shares no code with the model: it goes from the LEDs to the face where the model looks from the face to
/// the LEDs.
/// </summary>
internal sealed class PhotonTracer(int seed, IReadOnlyList<(Point3 A, Point3 B, Point3 C)> walls)
{
    // What is left of a photon when it is let go.
    private const double Least = 0.01;

    private readonly Random _dice = new(seed);

    /// <summary>
    /// Photons that land on the square |x|, |y| &lt; half at height z, counted in bins by bins squares; of reflected ones each counts the
    /// wall's reflectance.
    /// </summary>
    public double[,] Land(
        IReadOnlyList<(Point3 At, double ViewingAngle, double Window)> leds, double half, double z, int bins, double reflectance,
        int photons)
    {
        double[,] landed = new double[bins, bins];
        for (int n = 0; n < photons; n++)
        {
            (Point3 at, double viewingAngle, double window) = leds[n % leds.Count];
            double m = Math.Log(0.5) / Math.Log(Math.Cos(viewingAngle / 2 * Math.PI / 180));
            Point3 from = at + new Point3(window * (_dice.NextDouble() - 0.5), window * (_dice.NextDouble() - 0.5), 0);
            Point3 along = Leaving(new Point3(0, 0, 1), m);
            double weight = 1;
            while (weight > Least)
            {
                (double distance, Point3 normal) = First(from, along);
                double toFace = along.Z > 0 ? (z - from.Z) / along.Z : double.PositiveInfinity;
                if (toFace < distance)
                {
                    Point3 hit = from + (toFace * along);
                    int i = (int)Math.Floor((hit.X + half) / (2 * half) * bins);
                    int j = (int)Math.Floor((hit.Y + half) / (2 * half) * bins);
                    if (i >= 0 && i < bins && j >= 0 && j < bins)
                    {
                        landed[i, j] += weight;
                    }

                    break;
                }

                if (double.IsInfinity(distance))
                {
                    break;
                }

                from = from + (distance * along) + (1e-7 * normal);
                along = Leaving(normal, 1);
                weight *= reflectance;
            }
        }

        return landed;
    }

    // cos(a)^m lobe about a direction, by inversion: cos(a) = u^(1 / (m + 1)).
    private Point3 Leaving(Point3 axis, double m)
    {
        double cosine = Math.Pow(_dice.NextDouble(), 1 / (m + 1));
        double sine = Math.Sqrt(1 - (cosine * cosine));
        double turn = 2 * Math.PI * _dice.NextDouble();
        Point3 helper = Math.Abs(axis.Z) < 0.9 ? new Point3(0, 0, 1) : new Point3(1, 0, 0);
        Point3 x = Point3.Cross(helper, axis);
        x = (1 / x.Length) * x;
        Point3 y = Point3.Cross(axis, x);
        return (cosine * axis) + (sine * Math.Cos(turn) * x) + (sine * Math.Sin(turn) * y);
    }

    // Plane first, then three half spaces: not the way of the model.
    private (double Distance, Point3 Normal) First(Point3 from, Point3 along)
    {
        double nearest = double.PositiveInfinity;
        Point3 facing = default;
        foreach ((Point3 a, Point3 b, Point3 c) in walls)
        {
            Point3 normal = Point3.Cross(b - a, c - a);
            double down = Point3.Dot(normal, along);
            if (down == 0)
            {
                continue;
            }

            double distance = Point3.Dot(normal, a - from) / down;
            if (distance <= 1e-9 || distance >= nearest)
            {
                continue;
            }

            Point3 at = from + (distance * along);
            if (Point3.Dot(Point3.Cross(b - a, at - a), normal) >= 0
                && Point3.Dot(Point3.Cross(c - b, at - b), normal) >= 0
                && Point3.Dot(Point3.Cross(a - c, at - c), normal) >= 0)
            {
                nearest = distance;
                facing = (down < 0 ? 1 : -1) / normal.Length * normal;
            }
        }

        return (nearest, facing);
    }
}
