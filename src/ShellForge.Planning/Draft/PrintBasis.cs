using ShellForge.Board.Description;
using ShellForge.Board.Profiles;

namespace ShellForge.Planning.Draft;

/// <summary>
/// How plastic comes in lines and layers on the printer at hand. All z of the plan are whole layers, all walls whole lines.
/// </summary>
/// <param name="LineWidth">Width of one line, mm.</param>
/// <param name="Layer">Layer height, mm.</param>
/// <param name="FirstLayer">Height of the first layer, mm.</param>
public sealed record PrintBasis(double LineWidth, double Layer, double FirstLayer)
{
    /// <summary>
    /// How much of a layer height neighbouring lines overlap: 1 - pi/4, the rounding of a line's two flanks. Source: the stadium
    /// cross-section that slicers plan with (an area of (width - height) height + pi height^2 / 4).
    /// </summary>
    public const double OverlapShare = 1 - (Math.PI / 4);

    /// <summary>The basis of a print specification.</summary>
    public static PrintBasis Of(PrintSpec print) => Of(print.Printer);

    /// <summary>The basis of a printer.</summary>
    public static PrintBasis Of(PrinterProfile printer) => new(printer.LineWidth, printer.LayerHeight, printer.FirstLayerHeight);

    /// <summary>Distance between the middles of neighbouring lines, mm.</summary>
    public double LineSpacing => LineWidth - (OverlapShare * Layer);

    /// <summary>Thickness of a wall of so many lines, to 0.01 mm.</summary>
    public double Wall(int lines) => Math.Round(LineWidth + ((lines - 1) * LineSpacing), 2, MidpointRounding.AwayFromZero);

    /// <summary>The count of lines that comes nearest to a thickness, at least one.</summary>
    public int LinesNear(double thickness) =>
        Math.Max(1, 1 + (int)Math.Round((thickness - LineWidth) / LineSpacing, MidpointRounding.AwayFromZero));

    /// <summary>The height rounded up to the next face between two layers, measured from the bed; at least the first layer.</summary>
    public double Up(double z) => Math.Max(FirstLayer, Layers.Up(z, FirstLayer, Layer));

    /// <summary>The height rounded down to a face between two layers, at least the first.</summary>
    public double Down(double z) => Layers.Down(z, FirstLayer, Layer);

    /// <summary>A distance along z rounded up to whole layers.</summary>
    public double UpDistance(double distance) => Layers.Up(distance, 0, Layer);
}

/// <summary>Rounding to layers, with the slack that keeps 4.2 at 0.2 from becoming 4.4 through the last bit of a double.</summary>
internal static class Layers
{
    /// <summary>Lengths nearer than this are the same length: a hundredth of what any printer resolves, mm.</summary>
    public const double Slack = 1e-4;

    /// <summary>The next layer face at or above.</summary>
    public static double Up(double z, double first, double layer) =>
        Clean(first + (Math.Ceiling(((z - first) / layer) - (Slack / layer)) * layer));

    /// <summary>The next layer face at or below, at least the first.</summary>
    public static double Down(double z, double first, double layer) =>
        Math.Max(first, Clean(first + (Math.Floor(((z - first) / layer) + (Slack / layer)) * layer)));

    private static double Clean(double z) => Math.Round(z, 6, MidpointRounding.AwayFromZero);
}
