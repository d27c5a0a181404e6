using ShellForge.Geometry.Numerics;

namespace ShellForge.Physics.Light;

/// <summary>
/// What LEDs bring to walls, looked up once a patch of wall. One thread uses it at a time.
/// </summary>
/// <param name="direct">What LEDs bring straight.</param>
/// <param name="step">Side of a cell of the diffuser, mm: large faces have wider ones, and then walls have wider patches.</param>
internal sealed class LitWalls(DirectLight direct, double step)
{
    // An LED whose light at a wall is below this share of the brightest there is left out: a hundred of them make less than a tenth.
    private const double Negligible = 0.001;

    private const double Near = 0.25;

    private const int Few = 256;

    // Hits so near to each other, in cells of the diffuser, and of like direction share one look at the LEDs.
    private const double PatchCells = 2;

    private readonly double _patch = PatchCells * step;

    private readonly Dictionary<(int, int, int, int), (int Led, LightOnSheet Light)[]> _patches = [];

    /// <summary>What LEDs bring to the wall at a hit.</summary>
    public (int Led, LightOnSheet Light)[] On(in SurfaceHit hit)
    {
        int facing = (int)Math.Round(hit.Normal.X) + (3 * (int)Math.Round(hit.Normal.Y)) + (9 * (int)Math.Round(hit.Normal.Z));
        (int, int, int, int) key = (
            (int)Math.Floor(hit.At.X / _patch), (int)Math.Floor(hit.At.Y / _patch), (int)Math.Floor(hit.At.Z / _patch), facing);
        if (!_patches.TryGetValue(key, out (int Led, LightOnSheet Light)[]? lights))
        {
            _patches[key] = lights = LightOn(direct, hit.At, hit.Normal);
        }

        return lights;
    }

    /// <summary>What LEDs bring to a place.</summary>
    public static (int Led, LightOnSheet Light)[] LightOn(DirectLight direct, Point3 at, Point3 normal)
    {
        Span<LightOnSheet> unshadowed = direct.Count <= Few ? stackalloc LightOnSheet[direct.Count] : new LightOnSheet[direct.Count];
        double brightest = 0;
        for (int led = 0; led < unshadowed.Length; led++)
        {
            unshadowed[led] = direct.Unshadowed(led, at, normal);
            brightest = Math.Max(brightest, unshadowed[led].Falls);
        }

        var lit = new List<(int Led, LightOnSheet Light)>();
        for (int led = 0; led < unshadowed.Length; led++)
        {
            // The window's corners matter for near LEDs only.
            LightOnSheet light = unshadowed[led].Falls > Near * brightest ? direct.Irradiance(led, at, normal)
                : unshadowed[led].Falls > Negligible * brightest && direct.Sees(led, at, normal) ? unshadowed[led] : default;
            if (light.Falls > 0)
            {
                lit.Add((led, light));
            }
        }

        return [.. lit];
    }
}
