using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Gcode;

/// <summary>
/// What a slicer's file lays down, and what the slicer says of it. What can be measured on the moves is measured on them; the comments
/// tell the rest, and what neither tells is null or empty.
/// </summary>
public sealed record GcodeFile
{
    /// <summary>Time of the print as the slicer says it, s; slicers leave out heating.</summary>
    public double? Seconds { get; init; }

    /// <summary>Length of filament by tool, mm: as the slicer says it, else that of the lines laid.</summary>
    public required ImmutableArray<double> FilamentMillimetres { get; init; }

    /// <summary>Mass of filament by tool as the slicer says it, g; empty where it says none.</summary>
    public ImmutableArray<double> FilamentGrams { get; init; } = [];

    /// <summary>Diameter of the filament, mm; 1.75 where the file does not say.</summary>
    public double FilamentDiameter { get; init; } = UsualDiameter;

    /// <summary>Most common step from layer to layer, mm; 0 for a single layer.</summary>
    public required double LayerHeight { get; init; }

    /// <summary>Upper face of the lowest layer of the parts, mm.</summary>
    public required double FirstLayer { get; init; }

    /// <summary>Upper face of the highest layer, mm.</summary>
    public required double Top { get; init; }

    /// <summary>Heights at which lines of the parts lie.</summary>
    public required int Layers { get; init; }

    /// <summary>Area that the second layer of the parts covers, mm2: its plastic over its height. 0 for a single layer.</summary>
    public double SecondLayerArea { get; init; }

    /// <summary>How often the tool that lays plastic changes.</summary>
    public required int ToolChanges { get; init; }

    /// <summary>Tools that lay plastic, in the order in which they first do.</summary>
    public required ImmutableArray<int> Tools { get; init; }

    /// <summary>Whether comments tell walls, fill and support apart.</summary>
    public bool TellsKinds { get; init; }

    /// <summary>The first line of the file that lays support; null for none.</summary>
    public long? SupportLine { get; init; }

    /// <summary>Upper face of the layer in which that is, mm.</summary>
    public double SupportZ { get; init; }

    /// <summary>Length of the lines of support, mm.</summary>
    public double SupportLength { get; init; }

    /// <summary>Nozzle temperature of the first layer, degrees Celsius.</summary>
    public double? FirstLayerCelsius { get; init; }

    /// <summary>Lines round every layer, as set in the slicer.</summary>
    public int? Walls { get; init; }

    /// <summary>Share of plastic in the fill as set in the slicer, 0 to 1.</summary>
    public double? Infill { get; init; }

    /// <summary>The smaller of the solid layers below and above, as set in the slicer.</summary>
    public int? SkinLayers { get; init; }

    /// <summary>Nozzle as set in the slicer, mm.</summary>
    public double? Nozzle { get; init; }

    /// <summary>What is laid down, object by object; one without a name where the file tells none apart.</summary>
    public required ImmutableArray<GcodeObject> Objects { get; init; }

    /// <summary>What holds where a file does not say: the filament of nearly all printers of this kind, mm.</summary>
    public const double UsualDiameter = 1.75;

    /// <summary>As many tools as are told apart: more than printers have.</summary>
    internal const int MostTools = 64;
}

/// <summary>An object of a plate.</summary>
/// <param name="Name">As the slicer calls it, printable; empty where it tells none.</param>
/// <param name="Hull">
/// Corners of the convex hull of its lines' middles above the first layer, mm, counter-clockwise; without skirt, brim and support where the
/// file tells them apart.
/// </param>
/// <param name="Bottom">Upper face of its lowest layer, mm.</param>
/// <param name="Top">Upper face of its highest layer, mm.</param>
public sealed record GcodeObject(string Name, ImmutableArray<Point2> Hull, double Bottom, double Top)
{
    /// <summary>Box of the hull.</summary>
    public Box2 Bounds => Box2.Of(Hull);

    /// <summary>
    /// Mean width of what the lines cover over all directions, mm: the outline of the hull over pi. However an object is turned on the bed,
    /// it stays the same.
    /// </summary>
    /// <param name="lineWidth">Width of the outermost line, mm.</param>
    public double MeanWidth(double lineWidth) => LaidHull.MeanWidth(Hull) + lineWidth;
}

/// <summary>Why a file is no G-code of a print.</summary>
/// <param name="Line">The line, from 1; 0 when the whole file is meant.</param>
/// <param name="Message">What is wrong there.</param>
public sealed record GcodeFault(long Line, string Message);

/// <summary>A file or the fault that keeps it from being read.</summary>
/// <param name="File">What it holds; null with a fault.</param>
/// <param name="Fault">What is wrong; null with a file.</param>
public sealed record GcodeReading(GcodeFile? File, GcodeFault? Fault);
