using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Planning.Prints;

/// <summary>How a part is printed: what a maker sets in any slicer.</summary>
public sealed record PartPrint
{
    /// <summary>Width of a line, mm.</summary>
    public required double LineWidth { get; init; }

    /// <summary>Layer height, mm.</summary>
    public required double LayerHeight { get; init; }

    /// <summary>Height of the first layer, mm.</summary>
    public required double FirstLayer { get; init; }

    /// <summary>Lines drawn round every layer, from the outside in.</summary>
    public required int Perimeters { get; init; }

    /// <summary>Solid layers over every floor and under every roof.</summary>
    public required int SkinLayers { get; init; }

    /// <summary>Share of plastic in what is left, 0 to 1.</summary>
    public required double Infill { get; init; }

    /// <summary>Why it is so, for people.</summary>
    public required string InfillWhy { get; init; }

    /// <summary>
    /// Directions of the fill's lines, in turn from layer to layer, degrees counter-clockwise from the bed's x; empty where they do not
    /// matter.
    /// </summary>
    public ImmutableArray<double> FillAngles { get; init; } = [];

    /// <summary>Places that have to be solid and would not be by lines and skins alone.</summary>
    public ImmutableArray<SolidPlace> Solid { get; init; } = [];
}

/// <summary>An upright round stretch of a part that is printed solid, as assembled.</summary>
/// <param name="Name">Its name for people: "boss 3".</param>
/// <param name="At">Its axis.</param>
/// <param name="Diameter">Diameter, mm.</param>
/// <param name="Bottom">z of its lower end.</param>
/// <param name="Top">z of its upper end.</param>
public sealed record SolidPlace(string Name, Point2 At, double Diameter, double Bottom, double Top);
