using ShellForge.Board.Profiles;
using ShellForge.Geometry.Planar;

namespace ShellForge.Checks.Gauges;

/// <summary>Mass, filament and time of a part, from its layers.</summary>
/// <param name="Grams">Mass of the plastic laid down.</param>
/// <param name="FilamentMetres">Length of 1.75 mm filament.</param>
/// <param name="Minutes">Time on the printer.</param>
public sealed record PrintEstimate(double Grams, double FilamentMetres, double Minutes)
{
    /// <summary>Outer lines drawn round every layer.</summary>
    public const int Perimeters = 4;

    /// <summary>Solid layers under every roof and over every floor.</summary>
    public const int SkinLayers = 4;

    /// <summary>Share of plastic in what is left.</summary>
    public const double Infill = 0.2;

    /// <summary>Time lost a layer: change of height, travel between islands, slowing in corners, s.</summary>
    public const double SecondsPerLayer = 2.5;

    /// <summary>Travel between two islands of a layer, s.</summary>
    public const double SecondsPerIsland = 0.6;

    /// <summary>Heating and homing, s.</summary>
    public const double SecondsToStart = 180;

    /// <summary>How much slower the first layer is laid.</summary>
    public const double FirstLayerFactor = 2.5;

    private const double FilamentDiameter = 1.75;

    // Distance of the lines that skins are measured along, mm: about a line of plastic.
    private const double ScanStep = 0.4;

    /// <summary>What the estimate takes for given, for people.</summary>
    public static string Assumptions { get; } =
        $"{Perimeters} perimeters, {SkinLayers} solid layers under roofs and over floors, {100 * Infill:0} % infill, the profile's flow rate, 2.5 s a layer, heating of 3 minutes; expect 20 % either way";

    /// <summary>Estimates a part.</summary>
    public static PrintEstimate Of(PartLayers stack, PrinterProfile printer, FilamentProfile filament)
    {
        double volume = 0;
        double seconds = SecondsToStart;
        int[] runs = Runs(stack);
        var lines = new ScanLines?[runs.Length];
        Region core = Region.Empty;
        double walls = 0;
        double covered = 0;
        int islands = 0;
        (int, int, int) around = (-1, -1, -1);
        foreach (PrintedLayer layer in stack.Layers)
        {
            int index = layer.Index;
            if (runs[index] == index)
            {
                core = layer.Outline.Grown(-Perimeters * printer.LineWidth);
                walls = layer.Outline.Area - core.Area;
                islands = layer.Outline.Parts.Length;
            }

            // Layers of one run with the same runs above and below have the same skin.
            bool isSkin = index < SkinLayers || index + SkinLayers >= runs.Length;
            (int, int, int) now = isSkin ? (-1, -1, -1) : (runs[index - SkinLayers], runs[index], runs[index + SkinLayers]);
            if (isSkin)
            {
                covered = 0;
            }
            else if (now != around)
            {
                covered = Math.Min(core.Area, Covered(stack, runs, index, core, lines));
            }

            around = now;
            double plastic = layer.Height * (walls + (core.Area - covered) + (Infill * covered));
            volume += plastic;
            seconds += (plastic / printer.FlowRate * (index == 0 ? FirstLayerFactor : 1)) + SecondsPerLayer + (SecondsPerIsland * islands);
        }

        return new PrintEstimate(
            volume * filament.Density / 1000, volume / (Math.PI * FilamentDiameter * FilamentDiameter / 4) / 1000, seconds / 60);
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

    // Area of a layer's core that has material for the skin's count of layers above and below, so that it is infill and no skin.
    private static double Covered(PartLayers stack, int[] runs, int index, Region core, ScanLines?[] lines)
    {
        ScanLines covered = ScanLines.Of(core, ScanStep);
        foreach (int run in runs[(index - SkinLayers)..(index + SkinLayers + 1)].Distinct().Where(run => run != runs[index]))
        {
            covered = covered.Shared(lines[run] ??= ScanLines.Of(stack.Layers[run].Outline, ScanStep));
        }

        // What lies below is not asked for again.
        Array.Clear(lines, 0, runs[index - SkinLayers]);
        return covered.Area;
    }
}
