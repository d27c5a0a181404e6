using ShellForge.Geometry.Numerics;

namespace ShellForge.Checks.Tests.Light;

/// <summary>
/// A printed-in diffuser of any shape as a cloud that scatters, within its mesh as printed: photons walk from one collision to the next
/// until they leave or die. Faces that lie on the cover swallow them but for what black plastic throws back; the rest reflect and refract.
/// Collisions and what survives them are those of <see cref="ScatteringSheet"/>.
/// </summary>
/// <param name="dice">Where chance comes from.</param>
/// <param name="sheet">The diffuser's triangles.</param>
/// <param name="cover">The cover's triangles.</param>
internal sealed class SheetInMesh(Random dice, TriangleGrid sheet, TriangleGrid cover)
{
    private const double Collisions = 9.7;
    private const double Survives = 0.9991;
    private const double Bezel = 0.06;

    // Off a face by so much, mm, a photon is inside; what lies on a face is nearer than twice as much.
    private const double Inside = 2e-3;

    /// <summary>Sends a photon in where it met the sheet.</summary>
    /// <param name="at">Where; where it left.</param>
    /// <param name="along">Its direction; that of leaving.</param>
    /// <param name="outward">The face's normal, against the photon.</param>
    /// <param name="weight">Its weight.</param>
    /// <returns>+1: it left in front, -1: it came back to the LEDs, 0: it died; with the weight that is left.</returns>
    public (int Side, double Weight) Follow(ref Point3 at, ref Point3 along, Point3 outward, double weight)
    {
        (double dx, double dy, double dz) = (along.X, along.Y, along.Z);
        if (dice.NextDouble() < ScatteringSheet.Fresnel(-Point3.Dot(along, outward), 1 / ScatteringSheet.Index))
        {
            ScatteringSheet.Mirror(ref dx, ref dy, ref dz, outward.X, outward.Y, outward.Z);
            along = new Point3(dx, dy, dz);
            return (-1, weight);
        }

        ScatteringSheet.Bend(ref dx, ref dy, ref dz, outward.X, outward.Y, outward.Z);
        along = new Point3(dx, dy, dz);
        at -= Inside * outward;
        while (true)
        {
            double way = -Math.Log(1 - dice.NextDouble()) / Collisions;
            for (int faces = 0; ; faces++)
            {
                (double far, Point3 normal, int material) = sheet.First(at, along);
                if (material < 0 || faces > 50)
                {
                    return (0, 0);
                }

                if (far >= way)
                {
                    at += way * along;
                    break;
                }

                at += far * along;
                way -= far;
                Point3 inward = Point3.Dot(normal, along) < 0 ? normal : -1 * normal;
                at += Inside * inward;
                if (cover.First(at, -1 * inward) is { Material: >= 0, Distance: < 2 * Inside })
                {
                    weight *= Bezel;
                    if (dice.NextDouble() >= weight)
                    {
                        return (0, 0);
                    }

                    weight = 1;
                    along = Matt(inward);
                }
                else if (dice.NextDouble() >= ScatteringSheet.Fresnel(-Point3.Dot(along, inward), ScatteringSheet.Index))
                {
                    at -= 2 * Inside * inward;
                    along = Matt(-1 * inward);
                    return (inward.Z < -0.5 ? 1 : -1, weight);
                }
                else
                {
                    along -= 2 * Point3.Dot(along, inward) * inward;
                }
            }

            weight *= Survives;
            if (weight < 0.05)
            {
                if (dice.NextDouble() > 0.1)
                {
                    return (0, 0);
                }

                weight *= 10;
            }

            along = Anywhere();
        }
    }

    private Point3 Anywhere()
    {
        double h = (2 * dice.NextDouble()) - 1;
        double flat = Math.Sqrt(1 - (h * h));
        double turn = 2 * Math.PI * dice.NextDouble();
        return new Point3(flat * Math.Cos(turn), flat * Math.Sin(turn), h);
    }

    private Point3 Matt(Point3 normal)
    {
        Point3 spread = normal + Anywhere();
        return (1 / spread.Length) * spread;
    }
}
