namespace ShellForge.Checks.Tests.Light;

/// <summary>
/// A printed-in diffuser as a cloud that scatters: photons walk through it from one collision to the next until they leave or die. Its body
/// goes round the axis, so radius and height say where a photon is in it. Refraction and inner reflection at its faces by Fresnel; what
/// runs into the bezel that it is fused to is swallowed but for what black plastic throws back.
/// </summary>
/// <remarks>
/// Collisions a millimetre and the share that survives each are fitted to a slab without rims: 0.8 mm let 0.238 through and a thick one
/// throws 0.85 back, as the profile of white filament says of both.
/// </remarks>
internal sealed class ScatteringSheet(Random dice)
{
    /// <summary>Refraction of the plastic.</summary>
    public const double Index = 1.56;

    // Meshes lie on a lattice and their circles have corners: so near, mm, a place is on a face.
    private const double OnFace = 1e-3;

    /// <summary>Collisions a mm, equal in all directions.</summary>
    public double Collisions { get; init; } = 9.7;

    /// <summary>Share of the light that a collision leaves.</summary>
    public double Survives { get; init; } = 0.9991;

    /// <summary>The window's radii, mm; it lies between them.</summary>
    public required (double Inner, double Outer) Window { get; init; }

    /// <summary>Heights of its faces, mm.</summary>
    public required (double Inner, double Outer) Faces { get; init; }

    /// <summary>The collar on its inner face: how thick, how far it reaches into the window and behind the bezel, mm.</summary>
    public required (double Thickness, double Inset, double Behind) Collar { get; init; }

    /// <summary>What the bezel round it throws back.</summary>
    public double Bezel { get; init; } = 0.06;

    /// <summary>
    /// Sends a photon of some weight in from below; gives back where it went, with which weight, and the direction of leaving.
    /// </summary>
    /// <returns>+1: it left in front, -1: it came back, 0: it died.</returns>
    public (int Side, double Weight) Follow(ref double x, ref double y, ref double z, ref double dx, ref double dy, ref double dz,
        double weight)
    {
        // Over the face: either thrown back at once or bent inward.
        double bottom = Bottom(Radius(x, y));
        bool side = z > bottom + OnFace;
        z = side ? z : bottom;
        (double nx, double ny, double nz) = side ? SideNormal(x, y) : (0, 0, -1);
        if (dice.NextDouble() < Fresnel(-((dx * nx) + (dy * ny) + (dz * nz)), 1 / Index))
        {
            Mirror(ref dx, ref dy, ref dz, nx, ny, nz);
            return (-1, weight);
        }

        Bend(ref dx, ref dy, ref dz, nx, ny, nz);
        while (true)
        {
            double way = -Math.Log(1 - dice.NextDouble()) / Collisions;
            while (way > 0)
            {
                (double far, int what, double ax, double ay, double az) = ToFace(x, y, z, dx, dy, dz, way);
                (x, y, z) = (x + (far * dx), y + (far * dy), z + (far * dz));
                way -= far;
                if (what == 0)
                {
                    break;
                }

                if (what == 2)
                {
                    weight *= Bezel;
                    if (dice.NextDouble() >= weight)
                    {
                        return (0, 0);
                    }

                    weight = 1;
                    Matt(ref dx, ref dy, ref dz, ax, ay, az);
                }
                else if (dice.NextDouble() >= Fresnel(-((dx * ax) + (dy * ay) + (dz * az)), Index))
                {
                    // Out: az is the inward normal's height part, above 0 at a face that looks to the LEDs.
                    int where = what == 3 ? 1 : -1;
                    (dx, dy, dz) = (-ax, -ay, -az);
                    Matt(ref dx, ref dy, ref dz, -ax, -ay, -az);
                    return (where, weight);
                }
                else
                {
                    Mirror(ref dx, ref dy, ref dz, ax, ay, az);
                }

                (x, y, z) = (x + (1e-9 * ax), y + (1e-9 * ay), z + (1e-9 * az));
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

            dz = (2 * dice.NextDouble()) - 1;
            double flat = Math.Sqrt(1 - (dz * dz));
            double turn = 2 * Math.PI * dice.NextDouble();
            (dx, dy) = (flat * Math.Cos(turn), flat * Math.Sin(turn));
        }
    }

    /// <summary>Whether a radius lies over the collar.</summary>
    public bool OverCollar(double r) => r < Window.Inner + Collar.Inset || r > Window.Outer - Collar.Inset;

    /// <summary>Height of the face that a photon of this radius meets from below.</summary>
    public double Bottom(double r) => OverCollar(r) ? Faces.Inner - Collar.Thickness : Faces.Inner;

    private static double Radius(double x, double y) => Math.Sqrt((x * x) + (y * y));

    // The collar's upright face looks to the middle of the window.
    private (double X, double Y, double Z) SideNormal(double x, double y)
    {
        double r = Radius(x, y);
        double sign = r < (Window.Inner + Window.Outer) / 2 ? 1 : -1;
        return (sign * x / r, sign * y / r, 0);
    }

    // The first face within a way: how far, what it is (0 none, 1 to the room of the LEDs, 2 bezel, 3 front), and its inward normal.
    private (double Far, int What, double X, double Y, double Z) ToFace(double x, double y, double z, double dx, double dy, double dz,
        double way)
    {
        double r = Radius(x, y);

        // Far from rims only heights count.
        if (Math.Min(r - Window.Inner, Window.Outer - r) - Collar.Inset > way && z >= Faces.Inner)
        {
            double up = dz > 0 ? (Faces.Outer - z) / dz : dz < 0 ? (Faces.Inner - z) / dz : double.PositiveInfinity;
            return up >= way ? (way, 0, 0, 0, 0) : (up, dz > 0 ? 3 : 1, 0, 0, dz > 0 ? -1 : 1);
        }

        bool upper = z > Faces.Inner;
        double low = OverCollar(r) || !InWindow(r) ? Faces.Inner - Collar.Thickness : Faces.Inner;
        double high = InWindow(r) ? Faces.Outer : Faces.Inner;

        (double far, int what, double nx, double ny, double nz) found = (way, 0, 0, 0, 0);
        double inner = upper ? Window.Inner : Window.Inner - Collar.Behind;
        double outer = upper ? Window.Outer : Window.Outer + Collar.Behind;
        double[] radii = upper
            ? [Window.Inner, Window.Outer, Window.Inner + Collar.Inset, Window.Outer - Collar.Inset]
            : [inner, outer, Window.Inner, Window.Outer, Window.Inner + Collar.Inset, Window.Outer - Collar.Inset];
        double to = dz > 0 ? (high - z) / dz : dz < 0 ? (low - z) / dz : double.PositiveInfinity;
        double cross = (z < Faces.Inner && dz > 0) || (z > Faces.Inner && dz < 0) ? (Faces.Inner - z) / dz : double.PositiveInfinity;
        if (to < found.far)
        {
            found = dz > 0
                ? (to, InWindow(r) ? 3 : 2, 0, 0, -1)
                : (to, InWindow(r) ? 1 : 2, 0, 0, 1);
        }

        if (cross > 1e-12 && cross < found.far)
        {
            found = (cross + 1e-9, -1, 0, 0, 0);
        }

        double least = radii.Min(edge => Math.Abs(r - edge));
        if (least < found.far)
        {
            foreach (double edge in radii)
            {
                double a = (dx * dx) + (dy * dy);
                double b = (x * dx) + (y * dy);
                double c = (r * r) - (edge * edge);
                double root = (b * b) - (a * c);
                if (a == 0 || root < 0)
                {
                    continue;
                }

                foreach (double at in (double[])[(-b - Math.Sqrt(root)) / a, (-b + Math.Sqrt(root)) / a])
                {
                    if (at > 1e-12 && at < found.far)
                    {
                        double px = (x + (at * dx)) / edge;
                        double py = (y + (at * dy)) / edge;
                        bool grows = (px * dx) + (py * dy) > 0;
                        double sign = grows ? -1 : 1;
                        double beyond = edge + (grows ? 1e-6 : -1e-6);
                        double height = z + (at * dz);
                        bool inside = height > Faces.Inner ? InWindow(beyond)
                            : beyond > inner && beyond < outer && (OverCollar(beyond) || !InWindow(beyond));
                        found = inside ? (at + 1e-9, -1, 0, 0, 0)
                            : (at, height < Faces.Inner && InWindow(beyond) ? 1 : 2, sign * px, sign * py, 0);
                    }
                }
            }
        }

        return found.what == -1 ? (found.far, -1, 0, 0, 0) : found;
    }

    private bool InWindow(double r) => r > Window.Inner && r < Window.Outer;

    /// <summary>
    /// Share thrown back by a face: unpolarised, from the inside or the outside by the ratio of indices; 1 where nothing gets through.
    /// </summary>
    public static double Fresnel(double cosine, double ratio)
    {
        double sine = ratio * ratio * (1 - (cosine * cosine));
        if (sine >= 1)
        {
            return 1;
        }

        double other = Math.Sqrt(1 - sine);
        double along = ((ratio * cosine) - other) / ((ratio * cosine) + other);
        double across = (cosine - (ratio * other)) / (cosine + (ratio * other));
        return ((along * along) + (across * across)) / 2;
    }

    /// <summary>Thrown back by a face.</summary>
    public static void Mirror(ref double dx, ref double dy, ref double dz, double nx, double ny, double nz)
    {
        double twice = 2 * ((dx * nx) + (dy * ny) + (dz * nz));
        (dx, dy, dz) = (dx - (twice * nx), dy - (twice * ny), dz - (twice * nz));
    }

    /// <summary>Into the sheet; the normal looks against the photon.</summary>
    public static void Bend(ref double dx, ref double dy, ref double dz, double nx, double ny, double nz)
    {
        double cosine = -((dx * nx) + (dy * ny) + (dz * nz));
        double inside = Math.Sqrt(1 - ((1 - (cosine * cosine)) / (Index * Index)));
        double k = (cosine / Index) - inside;
        (dx, dy, dz) = ((dx / Index) + (k * nx), (dy / Index) + (k * ny), (dz / Index) + (k * nz));
    }

    private void Matt(ref double dx, ref double dy, ref double dz, double nx, double ny, double nz)
    {
        // Normal plus a direction of the whole sphere: spread like the cosine.
        double h = (2 * dice.NextDouble()) - 1;
        double flat = Math.Sqrt(1 - (h * h));
        double turn = 2 * Math.PI * dice.NextDouble();
        (dx, dy, dz) = (nx + (flat * Math.Cos(turn)), ny + (flat * Math.Sin(turn)), nz + h);
        double length = Math.Sqrt((dx * dx) + (dy * dy) + (dz * dz));
        (dx, dy, dz) = (dx / length, dy / length, dz / length);
    }
}
