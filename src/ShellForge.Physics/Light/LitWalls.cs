namespace ShellForge.Physics.Light;

/// <summary>
/// What LEDs bring to walls, looked up once a patch of wall, and added up for one place that the walls light. One thread uses it at a time.
/// </summary>
internal sealed class LitWalls(DirectLight direct)
{
    // An LED whose light at a wall is below this share of the brightest there is left out.
    private const double Negligible = 0.02;

    private const double Near = 0.25;

    // Hits so near to each other, mm, and of like direction share one look at the LEDs.
    private const double Patch = 1.0;

    private readonly double[] shares = new double[direct.Count];
    private readonly Dictionary<(int, int, int, int), (int Led, double Light)[]> patches = [];
    private readonly List<(int Led, double Light)> lit = [];

    /// <summary>What each LED brings to the place by way of walls, for a new place: nothing yet.</summary>
    public double[] None()
    {
        Array.Clear(shares);
        return shares;
    }

    /// <summary>Adds what the wall at a hit throws back to the shares.</summary>
    /// <param name="hit">Where a ray met it.</param>
    /// <param name="weight">Share of the wall's light that comes back along the ray.</param>
    public void Collect(in SurfaceHit hit, double weight)
    {
        int facing = (int)Math.Round(hit.Normal.X) + (3 * (int)Math.Round(hit.Normal.Y)) + (9 * (int)Math.Round(hit.Normal.Z));
        (int, int, int, int) key = (
            (int)Math.Floor(hit.At.X / Patch), (int)Math.Floor(hit.At.Y / Patch), (int)Math.Floor(hit.At.Z / Patch), facing);
        if (!patches.TryGetValue(key, out (int Led, double Light)[]? lights))
        {
            patches[key] = lights = LightOn(hit);
        }

        foreach ((int led, double light) in lights)
        {
            shares[led] += weight * light;
        }
    }

    private (int Led, double Light)[] LightOn(in SurfaceHit hit)
    {
        double brightest = 0;
        for (int led = 0; led < shares.Length; led++)
        {
            brightest = Math.Max(brightest, direct.Unshadowed(led, hit.At, hit.Normal));
        }

        lit.Clear();
        for (int led = 0; led < shares.Length; led++)
        {
            // The window's corners matter for near LEDs only.
            double unshadowed = direct.Unshadowed(led, hit.At, hit.Normal);
            double light = unshadowed > Near * brightest ? direct.Irradiance(led, hit.At, hit.Normal)
                : unshadowed > Negligible * brightest && direct.Sees(led, hit.At, hit.Normal) ? unshadowed : 0;
            if (light > 0)
            {
                lit.Add((led, light));
            }
        }

        return [.. lit];
    }
}
