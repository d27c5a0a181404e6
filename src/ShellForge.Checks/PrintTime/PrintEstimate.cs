using ShellForge.Board.Profiles;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Planar;

namespace ShellForge.Checks.PrintTime;

/// <summary>Mass, filament and time of a part, from the lines that are laid in each of its layers.</summary>
/// <param name="Grams">Mass of the plastic laid down.</param>
/// <param name="FilamentMetres">Length of 1.75 mm filament.</param>
/// <param name="Minutes">Time on the printer from the first line to the last.</param>
public sealed record PrintEstimate(double Grams, double FilamentMetres, double Minutes)
{
    private const double FilamentDiameter = 1.75;

    // The line that is laid round the part first, to get the plastic flowing; typical of slicers.
    private const double SkirtDistance = 6;

    /// <summary>What the estimate holds for, for people.</summary>
    public static string AssumptionsOf(PrinterProfile printer) =>
        $"for {printer.Name} at its speeds, give or take 15 %; a slicer with other speeds differs";

    /// <summary>Estimates a part.</summary>
    public static PrintEstimate Of(PartLayers stack, PrinterProfile printer, FilamentProfile filament)
    {
        double volume = 0;
        double seconds = 0;
        int[] runs = Runs(stack);
        int skins = (int)printer.Motion.SkinLayers;
        var sections = new ScanLines?[runs.Length];
        WallLines? walls = null;
        ScanLines? inside = null;
        int[] around = [];
        LayerFill? fill = null;
        (double Volume, double Seconds) layerDone = (0, 0);
        foreach (PrintedLayer layer in stack.Layers)
        {
            int index = layer.Index;
            double step = WallLines.Spacing(printer, layer.Height);
            ScanLines Section(int run) => sections[run] ??= Hatch.Of(stack.Layers[run].Outline, step);
            if (walls is null || runs[index] == index || index == 1)
            {
                walls = WallLines.Of(layer.Outline, printer, layer.Height);
                inside = Hatch.Of(walls.Inside, step);
                sections = index <= 1 ? new ScanLines?[runs.Length] : sections;
            }

            // Layers of one run with the same runs above and below are laid alike.
            int[] now = [.. Enumerable.Range(index - skins - 1, (2 * skins) + 2).Select(i => i < 0 || i >= runs.Length ? -1 : runs[i])];
            if (index <= 1 || !now.AsSpan().SequenceEqual(around))
            {
                ScanLines[] below = [.. Enumerable.Range(1, skins).Select(i => index - i).Where(i => i >= 0).Select(i => Section(runs[i]))];
                ScanLines[] above = [.. Enumerable.Range(1, skins).Select(i => index + i).Where(i => i < runs.Length).Select(i => Section(runs[i]))];
                fill = LayerFill.Of(inside!, below, above, fill, printer);
                var speeds = new PrintedSpeeds(printer, index == 0, layer.Height);
                WallLines over = index > 0 && runs[index] == index ? walls.Over(layer.Outline, stack.Layers[index - 1].Outline, printer) : walls;
                layerDone = Laid(layer, over, fill, speeds, printer);
            }

            around = now;
            volume += layerDone.Volume;
            seconds += layerDone.Seconds;
        }

        return new PrintEstimate(
            volume * filament.Density / 1000, volume / (Math.PI * FilamentDiameter * FilamentDiameter / 4) / 1000, seconds / 60);
    }

    private static (double Volume, double Seconds) Laid(PrintedLayer layer, WallLines walls, LayerFill fill, PrintedSpeeds speeds, PrinterProfile printer)
    {
        IReadOnlyList<LaidLine>[] filled = [.. fill.Lines(printer)];
        IReadOnlyList<LaidLine>[] skirt = layer.Index == 0 ? [[Skirt(layer.Outline)]] : [];
        double volume = (walls.Area * layer.Height)
            + walls.Loops.Sum(line => line.Length * (speeds.SectionOf(line.Kind) - speeds.Section))
            + filled.Concat(skirt).Sum(lines => lines.Sum(line => line.Length * speeds.SectionOf(line.Kind)));
        LayerTour tour = LayerTour.Of([.. skirt, walls.Loops, .. filled]);
        double seconds = tour.Seconds(printer, speeds);
        return (volume, seconds);
    }

    private static LaidLine Skirt(Region outline)
    {
        var hull = outline.Hull().Grown(SkirtDistance).Loops[0];
        return new LaidLine(LineKind.Inner, [.. hull, hull[0]]);
    }

    // For each layer the first of the run of equal layers that it belongs to.
    private static int[] Runs(PartLayers stack)
    {
        int[] runs = new int[stack.Layers.Length];
        for (int i = 0; i < runs.Length; i++)
        {
            runs[i] = i > 0 && stack.Layers[i].SameAsBelow ? runs[i - 1] : i;
        }

        return runs;
    }
}
