using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Physics.Light;

namespace ShellForge.Checks.Gauges;

/// <summary>The light of one circle of LEDs on the diffuser, or of a whole field of them.</summary>
/// <param name="Circle">The circle; null for LEDs that lie on none about the board's middle, which are judged together.</param>
/// <param name="Leds">How many LEDs.</param>
/// <param name="Along">Evenness along the pitch circle, or from each LED to its neighbours, all LEDs white.</param>
/// <param name="Across">Evenness across the lit window, at most half a pitch to each side.</param>
/// <param name="Least">Where the dimmest place along the circle is, mm; null where nothing is lit.</param>
public sealed record CircleLight(PixelCircle? Circle, int Leds, Evenness Along, Evenness Across, Point3? Least)
{
    /// <summary>The circle's place among the board's; null for LEDs that lie on none.</summary>
    public int? Number { get; init; }
}

/// <summary>The light of a housing, computed on its solids.</summary>
public sealed record HousingLight
{
    /// <summary>LEDs, solids and diffuser as the model took them.</summary>
    public required LightScene Scene { get; init; }

    /// <summary>The light on the diffuser.</summary>
    public required LightMap Map { get; init; }

    /// <summary>Each circle that lights the window.</summary>
    public required ImmutableArray<CircleLight> Circles { get; init; }

    /// <summary>Light that leaves elsewhere.</summary>
    public required LightLeaks Leaks { get; init; }

    /// <summary>Largest light of one LED on a neighbour's cell over that on its own, through the cell's wall included.</summary>
    public required double Crosstalk { get; init; }

    /// <summary>Share that passes a wall between two cells; 0 without cells.</summary>
    public required double ThroughCellWall { get; init; }

    /// <summary>
    /// Smallest over mean along the worst circle, 0 to 1; null where no LED lights the window straight: there is nothing to rate.
    /// </summary>
    public double? MinimumOverMean => Circles.IsEmpty ? null : Circles.Min(circle => circle.Along.MinimumOverMean);
}
