using ShellForge.Board.Profiles;

namespace ShellForge.Checks.PrintTime;

/// <summary>How fast lines are laid in one layer.</summary>
/// <param name="printer">The printer.</param>
/// <param name="isFirst">Whether the layer lies on the bed.</param>
/// <param name="height">Layer height, mm.</param>
internal sealed class PrintedSpeeds(PrinterProfile printer, bool isFirst, double height)
{
    // Loops up to this length are small: a circle 13 mm across. Typical of slicers.
    private const double SmallLoop = Math.PI * 13;

    // Section of a line, mm2: flat above and below, round at its sides.
    private readonly double _section = SectionOf(printer.LineWidth, height);

    /// <summary>Section of a line of a width and height, mm2.</summary>
    public static double SectionOf(double width, double height) => height * (width - (height * (1 - (Math.PI / 4))));

    /// <summary>Section of a line with nothing below, mm2: a round thread from the nozzle.</summary>
    public double BridgeSection { get; } = Math.PI / 4 * printer.Nozzle * printer.Nozzle;

    /// <summary>Section of the other lines, mm2.</summary>
    public double Section => _section;

    /// <summary>The section of a kind of line, mm2.</summary>
    public double SectionOf(LineKind kind) => kind == LineKind.Bridge ? BridgeSection : _section;

    /// <summary>Speed of a line, mm/s, before a short layer is slowed down.</summary>
    public double Of(LaidLine line)
    {
        PrinterMotion motion = printer.Motion;
        double wanted = isFirst ? motion.SpeedFirstLayer
            : line.Kind is LineKind.Outer or LineKind.Inner && line.IsLoop && line.Length <= SmallLoop ? motion.SpeedSmall
            : line.Kind switch
            {
                LineKind.Outer => motion.SpeedOuter,
                LineKind.Inner => motion.SpeedInner,
                LineKind.Skin => motion.SpeedSkin,
                LineKind.Top => motion.SpeedTop,
                LineKind.Bridge => motion.SpeedBridge,
                LineKind.Infill => motion.SpeedInfill,
                _ => throw new ArgumentOutOfRangeException(nameof(line)),
            };
        return Math.Min(wanted, printer.FlowRate / SectionOf(line.Kind));
    }
}
