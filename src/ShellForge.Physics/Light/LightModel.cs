using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Physics.Light;

/// <summary>
/// Light on a diffuser: direct with shadows, thrown back and forth between walls, board, LEDs and the sheet itself, then spread and
/// weakened by the sheet, which lets more in of what comes square to it (<see cref="SheetEntry"/>). Surfaces are matt: gloss, which the
/// model leaves out, shifts light but makes none.
/// </summary>
public static class LightModel
{
    // What an LED brings to a cell below this share of the most it brings anywhere on the face is left out: with a hundred LEDs the sum
    // of what is left out stays below a hundredth.
    private const double Negligible = 1e-4; // of the LED's own peak

    // Below this share of its peak an LED is far: its window counts as a point, and one look decides for a block of cells.
    private const double Faint = 0.01;

    // The two places of a cell that near windows' points look at lie so far to each side of its middle on a diagonal, as a share of the
    // cell's side: where the mean of a square's parabola is (1 / sqrt 12). Opposite corners of a window share a place, so that an edge of a
    // shadow passes the four rays at four different places, whichever way it runs, and nothing is shifted to a side.
    private const double BesideMiddle = 0.28867513459481287;

    // Bands of rows, about: enough to keep a workshop computer's cores busy to the end.
    private const int Bands = 16;

    /// <summary>The light on a scene's diffuser.</summary>
    /// <param name="scene">LEDs, walls and diffuser.</param>
    /// <param name="cancel">Stops it.</param>
    public static LightMap Map(LightScene scene, CancellationToken cancel = default)
    {
        var direct = new DirectLight(scene);
        return Map(scene, direct, new ReflectedLight(scene, direct), true, cancel);
    }

    /// <summary>
    /// The light on a part of a scene's diffuser, in finer cells, where that of the whole is not asked for. What is reflected is taken from
    /// the whole, with what comes straight looked up at a few places of it.
    /// </summary>
    /// <param name="scene">LEDs, walls and diffuser.</param>
    /// <param name="part">The part.</param>
    /// <param name="cancel">Stops it.</param>
    public static LightMap MapPart(LightScene scene, ReceiverGrid part, CancellationToken cancel = default)
    {
        var direct = new DirectLight(scene);
        var reflected = new ReflectedLight(scene, direct);
        reflected.GatherAtPlaces();
        reflected.Solve(cancel);
        return Map(Of(scene, part), direct, reflected, false, cancel);
    }

    /// <summary>
    /// The light on a part of a diffuser whose light is known, in finer cells. What is reflected is taken from the whole: it varies slowly.
    /// </summary>
    /// <param name="scene">The scene of the map.</param>
    /// <param name="whole">The light on all of its diffuser.</param>
    /// <param name="part">The part.</param>
    /// <param name="cancel">Stops it.</param>
    public static LightMap MapPart(LightScene scene, LightMap whole, ReceiverGrid part, CancellationToken cancel = default) =>
        Map(Of(scene, part), new DirectLight(scene), whole.Reflected, false, cancel);

    private static LightScene Of(LightScene scene, ReceiverGrid part) => scene with
    {
        Face = part,
        Whole = scene.Face,
        WholeThickness = scene.Thickness,
        Thickness = scene.Thickness.IsEmpty ? []
            : [.. Enumerable.Range(0, part.Count).Select(i => scene.Thickness[scene.Face.CellAt(part.Middle(i))])],
    };

    // What is reflected is solved, or known from the whole.
    private static LightMap Map(
        LightScene scene, DirectLight direct, ReflectedLight reflected, bool solves, CancellationToken cancel)
    {
        var zones = new LedZones(scene);
        var fields = new LightFields(scene.Face.Count);
        var entering = new LightFields(scene.Face.Count);
        AddDirect(scene, direct, (fields, entering), zones, solves ? reflected : null, cancel);
        if (solves)
        {
            reflected.Solve(cancel);
        }

        double directMean = Mean(scene.Face, fields.AllCells);
        double area = scene.Face.Step * scene.Face.Step;
        ImmutableArray<double> directOf = [.. Enumerable.Range(0, scene.Leds.Length).Select(led => area * zones.Flux.FallsOf(led))];
        reflected.AddTo(scene.Face, fields, entering, zones.Of);
        reflected.AddTo(zones.Flux);
        double mean = Mean(scene.Face, fields.AllCells);
        var seen = new LightFields(scene.Face.Count);
        float[] through = [.. Enumerable.Range(0, scene.Face.Count).Select(i => (float)scene.SheetAt(i).Transmission)];
        float[] kept = KeptAtRims(scene);
        for (int f = 0; f < 3; f++)
        {
            float[] enters = [.. entering.Arrays[f].Select((light, i) => through[i] * light)];
            SheetSpread.Apply(scene.Face, scene.Diffuser.Spread, kept, enters, seen.Arrays[f]);
        }

        double perFlux = scene.Leds.IsEmpty ? 0 : scene.Face.OpenArea / scene.Leds.Length;
        return new LightMap
        {
            Face = scene.Face,
            Irradiance = fields,
            Seen = seen,
            Diffuser = scene.Diffuser,
            Reflected = reflected,
            DirectOf = directOf,
            DirectShare = directMean * perFlux,
            ReflectedShare = (mean - directMean) * perFlux,
            SeenShare = Mean(scene.Face, seen.AllCells) * perFlux,
            Crosstalk = Crosstalk(scene, zones),
        };
    }

    // Bands of rows are looked at side by side. They are cut by the grid alone, not by how many cores there are, no block of far sight or
    // of reflected light is in two of them, and what they add up to is summed in their order, so the light is the same to the last bit
    // everywhere.
    private static void AddDirect(
        LightScene scene, DirectLight direct, (LightFields Falls, LightFields Enters) fields, LedZones zones, ReflectedLight? throws,
        CancellationToken cancel)
    {
        var sight = new DirectSight(scene, direct, Peaks(scene, direct), new FarSight(scene, direct), throws);
        int whole = FarSight.Side * (throws?.Side ?? 1);
        int rows = Math.Max(1, scene.Face.Rows / Bands / whole) * whole;
        var parts = new ZoneFlux[(scene.Face.Rows + rows - 1) / rows];
        Parallel.For(0, parts.Length, new ParallelOptions { CancellationToken = cancel }, band =>
        {
            parts[band] = new ZoneFlux(direct.Count);
            int from = band * rows * scene.Face.Columns;
            AddDirect(sight, from..Math.Min(scene.Face.Count, from + (rows * scene.Face.Columns)), fields, zones.Of, parts[band]);
        });
        foreach (ZoneFlux part in parts)
        {
            zones.Flux.Add(part);
        }
    }

    // What a cell sees of the LEDs: their light, each one's most anywhere, which of them a far cell sees, and what throws it back.
    private sealed record DirectSight(LightScene Scene, DirectLight Light, double[] Peaks, FarSight Far, ReflectedLight? Throws);

    private static void AddDirect(
        DirectSight sight, Range cells, (LightFields Falls, LightFields Enters) fields, int[] zoneOf, ZoneFlux flux)
    {
        (LightScene scene, DirectLight direct, double[] peaks, FarSight far, ReflectedLight? throws) = sight;
        ReceiverGrid face = scene.Face;
        Span<Point3> looked = stackalloc Point3[4];
        for (int i = cells.Start.Value; i < cells.End.Value; i++)
        {
            if (!face.Open[i])
            {
                continue;
            }

            Point2 middle = face.Middle(i);
            (Point3 at, Point3 normal) = face.At(middle.X, middle.Y);
            double u = BesideMiddle * face.Step;
            double v = ((i % face.Columns) + (i / face.Columns)) % 2 == 0 ? u : -u;
            looked[0] = looked[3] = face.At(middle.X + u, middle.Y + v).At;
            looked[1] = looked[2] = face.At(middle.X - u, middle.Y - v).At;

            SheetSide[] sides = face.Sides(i);
            for (int led = 0; led < direct.Count; led++)
            {
                LightOnSheet unshadowed = direct.Unshadowed(led, at, normal);
                if (unshadowed.Falls <= Negligible * peaks[led])
                {
                    continue;
                }

                LightOnSheet light = unshadowed.Falls > Faint * peaks[led] ? direct.Irradiance(led, at, looked, normal)
                    : far.Sees(led, i) ? unshadowed : default;
                foreach (SheetSide side in sides)
                {
                    light += side.Share * direct.Irradiance(led, side.At, side.Normal);
                }

                if (light.Falls > 0)
                {
                    fields.Falls.Add(i, led, scene.Alone, light.Falls);
                    fields.Enters.Add(i, led, scene.Alone, light.Enters);
                    flux.Add(led, zoneOf[i], light);
                    throws?.Gather(i, led, light);
                }
            }
        }
    }

    // What each cell shows over what sideways spread alone leaves it.
    private static float[] KeptAtRims(LightScene scene)
    {
        if (!scene.DarkRim && !scene.GoesOn)
        {
            return [.. Enumerable.Repeat(1f, scene.Face.Count)];
        }

        ReceiverGrid all = scene.Whole ?? scene.Face;
        float[] kept = scene.DarkRim ? SheetSpread.BesideDarkRim(all, RimSpread(scene, all))
            : SheetSpread.BesideCoveredRim(all, scene.Diffuser.Spread);
        return scene.Whole is null ? kept
            : [.. Enumerable.Range(0, scene.Face.Count).Select(i => kept[all.CellAt(scene.Face.Middle(i))])];
    }

    // Sideways spread along the window's edge, where a collar makes the sheet thicker.
    private static double RimSpread(LightScene scene, ReceiverGrid all) =>
        scene.RimThickness(all) is { } thickness ? DiffuserOptics.Printed(thickness, scene.Diffuser.Plastic!.Value).Spread
            : scene.Diffuser.Spread;

    private static double[] Peaks(LightScene scene, DirectLight direct)
    {
        double[] peaks = new double[direct.Count];
        for (int i = 0; i < scene.Face.Count; i++)
        {
            if (scene.Face.Open[i])
            {
                Point2 middle = scene.Face.Middle(i);
                (Point3 at, Point3 normal) = scene.Face.At(middle.X, middle.Y);
                for (int led = 0; led < peaks.Length; led++)
                {
                    peaks[led] = Math.Max(peaks[led], direct.Unshadowed(led, at, normal).Falls);
                }
            }
        }

        return peaks;
    }

    private static double Mean(ReceiverGrid face, float[] values)
    {
        double sum = 0;
        int count = 0;
        for (int i = 0; i < values.Length; i++)
        {
            if (face.Open[i])
            {
                sum += values[i];
                count++;
            }
        }

        return count == 0 ? 0 : sum / count;
    }

    // The largest share of its own zone's light that an LED brings to another's.
    private static double Crosstalk(LightScene scene, LedZones zones)
    {
        double worst = 0;
        for (int led = 0; led < scene.Leds.Length; led++)
        {
            double own = zones.Mean(led, led);
            for (int zone = 0; zone < scene.Leds.Length && own > 0; zone++)
            {
                worst = zone == led ? worst : Math.Max(worst, zones.Mean(led, zone) / own);
            }
        }

        return worst;
    }
}
