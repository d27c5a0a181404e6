using ShellForge.Board.Profiles;
using ShellForge.Geometry.Planar;

namespace ShellForge.Checks.Print;

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

    /// <summary>What the estimate takes for given, for people.</summary>
    public static string Assumptions { get; } =
        $"{Perimeters} perimeters, {SkinLayers} solid layers under roofs and over floors, {100 * Infill:0} % infill, the profile's flow rate, 2.5 s a layer, heating of 3 minutes; expect 20 % either way";

    /// <summary>Estimates a part.</summary>
    public static PrintEstimate Of(PartLayers stack, PrinterProfile printer, FilamentProfile filament)
    {
        double volume = 0;
        double seconds = SecondsToStart;
        Region? lastOutline = null;
        double lastWalls = 0;
        int islands = 0;
        foreach (PrintedLayer layer in stack.Layers)
        {
            if (lastOutline is null || !layer.SameAsBelow)
            {
                Region core = layer.Outline.Grown(-Perimeters * printer.LineWidth);
                lastWalls = layer.Outline.Area - core.Area;
                islands = layer.Outline.Parts.Length;
                lastOutline = core;
            }

            double skin = lastOutline.IsEmpty ? 0 : lastOutline.Area - Covered(stack, layer.Index, lastOutline);
            double plastic = layer.Height * (lastWalls + skin + (Infill * (lastOutline.Area - skin)));
            volume += plastic;
            seconds += (plastic / printer.FlowRate * (layer.Index == 0 ? FirstLayerFactor : 1)) + SecondsPerLayer + (SecondsPerIsland * islands);
        }

        return new PrintEstimate(
            volume * filament.Density / 1000, volume / (Math.PI * FilamentDiameter * FilamentDiameter / 4) / 1000, seconds / 60);
    }

    // Area of a layer's core that has material for the skin's count of layers above and below, so that it is infill and no skin.
    private static double Covered(PartLayers stack, int index, Region core)
    {
        Region covered = core;
        foreach (int other in new[] { index - SkinLayers, index + SkinLayers })
        {
            if (other < 0 || other >= stack.Layers.Length)
            {
                return 0;
            }

            // A run of equal layers in between covers itself.
            for (int i = Math.Min(index, other); i <= Math.Max(index, other); i++)
            {
                if (!stack.Layers[i].SameAsBelow && !covered.IsEmpty)
                {
                    covered = covered.Intersect(stack.Layers[i].Outline);
                }
            }

            covered = covered.IsEmpty ? covered : covered.Intersect(stack.Layers[other].Outline);
        }

        return covered.Area;
    }
}
