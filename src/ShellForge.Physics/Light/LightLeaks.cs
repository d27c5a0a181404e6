using ShellForge.Geometry.Numerics;

namespace ShellForge.Physics.Light;

/// <summary>Where light leaves a housing that should not.</summary>
/// <param name="SeamShare">Share of the LEDs' light that gets out past the window through gaps, ports and vents, after three reflections at
/// most. What leaves by a hole in the sheet is not counted: it is where the light shall be.</param>
/// <param name="SeamFrom">Inside the housing, the place from which most of that light sees the way out; null when none was found.</param>
/// <param name="WallGlow">
/// Brightest outer wall over the mean of the lit window: light that LEDs throw on a wall from inside and that passes it.
/// </param>
/// <param name="WallAt">Where that is; null when no outer wall is lit.</param>
/// <param name="WallThickness">Thickness there, mm.</param>
/// <param name="WallMaterial">The material that ends there, as numbered in the scene: of what is seen to glow; -1 for none.</param>
public sealed record LightLeaks(
    double SeamShare, Point3? SeamFrom, double WallGlow, Point3? WallAt, double WallThickness, int WallMaterial = -1)
{
    private const int Reflections = 3;

    // Paths in all; more LEDs get fewer each, since they stand in like surroundings.
    private const int Paths = 6000;
    private const int FewestPaths = 48;

    // Rays start off surfaces by this, and end after so much, mm.
    private const double Lift = 0.01;
    private const double Longest = 1000;

    // Places where seams are summed up: cubes of this side, mm.
    private const double Cube = 10;

    // A diffuser of one body with the cover is met at its face as a wall is: so near, mm, it is the window.
    private const double OnFace = 0.05;

    // A diffuser's rim lies no farther before the bezel that hides it, mm: a thick sheet and its gap.
    private const double SheetBefore = 5;

    private const int Seed = 17;

    /// <summary>Follows light through a scene. Deterministic: the dice are seeded.</summary>
    /// <param name="scene">LEDs, walls and diffuser.</param>
    /// <param name="map">The light on its diffuser.</param>
    public static LightLeaks Of(LightScene scene, LightMap map)
    {
        if (scene.Leds.IsEmpty)
        {
            return new LightLeaks(0, null, 0, null, 0);
        }

        // Walls are looked at by the light that falls on them straight; so is the window that they are compared with: both get as much
        // again by way of other surfaces.
        double landed = map.DirectShare + map.ReflectedShare;
        double straight = landed > 0 ? map.SeenShare * map.DirectShare / landed : 0;
        var search = new Search(scene, straight * scene.Leds.Length / Math.Max(map.Face.OpenArea, double.Epsilon));
        int each = Math.Max(FewestPaths, Paths / scene.Leds.Length);
        for (int led = 0; led < scene.Leds.Length; led++)
        {
            for (int i = 0; i < each; i++)
            {
                search.Follow(scene.Leds[led], 1.0 / (each * (double)scene.Leds.Length));
            }
        }

        return search.Result();
    }

    private sealed class Search(LightScene scene, double meanSeen)
    {
        private readonly DirectLight _direct = new(scene);
        private readonly Random _dice = new(Seed);
        private readonly SortedDictionary<(int, int, int), (double Flux, Point3 At)> _seams = [];
        private double _seamFlux;
        private double _glow;
        private Point3? _glowAt;
        private double _glowThickness;
        private int _glowMaterial = -1;

        public void Follow(LedSource led, double flux)
        {
            Point3 along = Leaving(led.Axis, led.Lobe.Exponent);
            Point3 from = led.At + (Lift * led.Axis);
            bool scattered = false;
            for (int flight = 0; flight <= Reflections && flux > 0; flight++)
            {
                bool met = scene.Solids.Meets(from, along, Longest, out SurfaceHit hit);
                if (scene.Face.LeavesAfter(from, along) - OnFace < (met ? hit.Distance : Longest))
                {
                    return;
                }

                // What slips past the window's edge into the rim of a diffuser behind the bezel is scattered there, and leaves by the
                // window.
                scattered = scattered || scene.Sheet.Meets(from, along, met ? hit.Distance : Longest, out _);
                if (!met && (scattered || scene.Face.LeavesByHole(from, along)))
                {
                    return;
                }

                if (!met)
                {
                    _seamFlux += flux;
                    (int, int, int) cube = ((int)Math.Floor(from.X / Cube), (int)Math.Floor(from.Y / Cube), (int)Math.Floor(from.Z / Cube));
                    _seams[cube] = _seams.TryGetValue(cube, out (double Flux, Point3 At) before)
                        ? (before.Flux + flux, before.At) : (flux, from);
                    return;
                }

                if (!hit.FromOutside)
                {
                    return;
                }

                if (flight == 0)
                {
                    LookBehind(hit);
                }

                flux *= scene.Materials[hit.Material].Reflectance;
                from = hit.At + (Lift * hit.Normal);
                along = Leaving(hit.Normal, 1);
            }
        }

        public LightLeaks Result()
        {
            Point3? from = _seams.Count == 0 ? null : _seams.Values.MaxBy(seam => seam.Flux).At;
            return new LightLeaks(_seamFlux, from, _glow, _glowAt, _glowThickness, _glowMaterial);
        }

        // How bright the outside behind a lit wall is: through that wall, and through whatever stands behind it.
        private void LookBehind(SurfaceHit hit)
        {
            if (Outside(hit) is not var (thickness, passes, outside, material))
            {
                return;
            }

            double lit = 0;
            for (int led = 0; led < _direct.Count; led++)
            {
                double light = _direct.Unshadowed(led, hit.At, hit.Normal).Falls;
                lit += light > 0 && _direct.Sees(led, hit.At, hit.Normal) ? light : 0;
            }

            double share = meanSeen > 0 ? lit * passes / meanSeen : 0;
            if (share > _glow)
            {
                (_glow, _glowAt, _glowThickness, _glowMaterial) = (share, outside, thickness, material);
            }
        }

        // Straight on to the outside: plastic met, share that passes it, and where it ends. Null where the way ends in something opaque or
        // at the window.
        private (double Thickness, double Passes, Point3 At, int Material)? Outside(SurfaceHit hit)
        {
            Point3 inward = -1 * hit.Normal;
            if (LeavesByWindow(hit.At - (OnFace * inward), inward))
            {
                return null;
            }

            double thickness = 0;
            SurfaceOptics.Passed passed = BehindSheet(hit.At - (SheetBefore * inward), inward);
            Point3 at = hit.At;
            int material = hit.Material;
            while (true)
            {
                SurfaceOptics optics = scene.Materials[material];
                if (optics.IsOpaque || !scene.Solids.Meets(at + (Lift * inward), inward, Longest, out SurfaceHit back) || back.FromOutside)
                {
                    return null;
                }

                thickness += back.Distance + Lift;
                passed = optics.Passing(passed, back.Distance + Lift);
                if (!scene.Solids.Meets(back.At + (Lift * inward), inward, Longest, out SurfaceHit next))
                {
                    return (thickness, passed.Share, back.At, material);
                }

                if (!next.FromOutside)
                {
                    return null;
                }

                (at, material) = (next.At, next.Material);
            }
        }

        // What the diffuser's own rim leaves where it lies before or in a wall.
        private SurfaceOptics.Passed BehindSheet(Point3 from, Point3 along)
        {
            SurfaceOptics.Passed passed = default;
            while (!scene.SheetOptics.IsOpaque && scene.Sheet.Meets(from, along, Longest, out SurfaceHit hit))
            {
                passed = hit.FromOutside ? passed : scene.SheetOptics.Passing(passed, hit.Distance);
                from = hit.At + (Lift * along);
            }

            return passed;
        }

        // Whether a ray goes out through the window, or so near its edge that the edge's cells of the grid leave it out: there a diffuser
        // of one body with the cover is as thin as in the window.
        private bool LeavesByWindow(Point3 from, Point3 along)
        {
            Point3 first = scene.Face.Step * LedSource.Perpendicular(along);
            Point3 second = Point3.Cross(along, first);
            return ((Point3[])[from, from + first, from - first, from + second, from - second])
                .Any(place => double.IsFinite(scene.Face.LeavesAfter(place, along)));
        }

        // The lobe cos(a)^m by inversion.
        private Point3 Leaving(Point3 axis, double exponent)
        {
            double cosine = Math.Pow(_dice.NextDouble(), 1 / (exponent + 1));
            Angle turn = Angle.FromDegrees(360 * _dice.NextDouble());
            double sine = Math.Sqrt(Math.Max(0, 1 - (cosine * cosine)));
            Point3 first = LedSource.Perpendicular(axis);
            return (cosine * axis) + (sine * turn.Cos * first) + (sine * turn.Sin * Point3.Cross(axis, first));
        }
    }
}
