using System.Collections.Immutable;

namespace ShellForge.Physics.Heat;

/// <summary>Which way a face of the housing looks in use.</summary>
public enum FaceDirection
{
    /// <summary>To the side.</summary>
    Upright,

    /// <summary>Up.</summary>
    Up,

    /// <summary>Down.</summary>
    Down,

    /// <summary>Against a wall or a table: it gives off nothing.</summary>
    Covered,
}

/// <summary>A ring of the housing round its axis, from wall to wall of the inner room. Lengths in m, shares 0 to 1.</summary>
/// <param name="Inner">Inner radius; 0 at the axis.</param>
/// <param name="Outer">Outer radius.</param>
public readonly record struct SectionRing(double Inner, double Outer)
{
    /// <summary>Whether the board lies in it; otherwise air goes past the board there.</summary>
    public bool Board { get; init; }

    /// <summary>Share of its front that is diffuser; the rest is bezel.</summary>
    public double WindowShare { get; init; }

    /// <summary>Share of it that walls of the baffle fill, from the board to the front.</summary>
    public double BaffleShare { get; init; }

    /// <summary>How many LEDs sit in it.</summary>
    public double Leds { get; init; }

    /// <summary>Share of the controller's footprint.</summary>
    public double ControllerShare { get; init; }

    /// <summary>Electric power of other parts in it, W.</summary>
    public double OtherWatts { get; init; }

    /// <summary>Area of vents in its floor, m2.</summary>
    public double VentArea { get; init; }

    /// <summary>Its area in plan, m2.</summary>
    public double Area => Math.PI * ((Outer * Outer) - (Inner * Inner));

    /// <summary>Its mean radius, m.</summary>
    public double Middle => (Inner + Outer) / 2;
}

/// <summary>Openings through which warm air leaves and cool air follows.</summary>
/// <param name="InletArea">m2.</param>
/// <param name="OutletArea">m2.</param>
/// <param name="Rise">Height from inlet to outlet, m; 0 when air has no way up.</param>
public readonly record struct VentOpenings(double InletArea, double OutletArea, double Rise);

/// <summary>A plate or a wall.</summary>
/// <param name="Thickness">m, above 0.</param>
/// <param name="Conductivity">W/mK, above 0.</param>
public readonly record struct HeatWall(double Thickness, double Conductivity);

/// <summary>
/// What heats and cools a housing, as rings round its axis and layers from the floor to the front. Areas in m2, lengths in m, power in W,
/// temperatures in degrees Celsius.
/// </summary>
public sealed record HeatInput
{
    /// <summary>The rings from the axis, or the wall of an open bore, to the outer wall; each begins where the one before ends.</summary>
    public required ImmutableArray<SectionRing> Rings { get; init; }

    /// <summary>The floor.</summary>
    public required HeatWall Floor { get; init; }

    /// <summary>The walls.</summary>
    public required HeatWall Wall { get; init; }

    /// <summary>The front round the window.</summary>
    public required HeatWall Bezel { get; init; }

    /// <summary>The diffuser in the window.</summary>
    public required HeatWall Diffuser { get; init; }

    /// <summary>Air from the floor to the board.</summary>
    public required double BelowBoard { get; init; }

    /// <summary>The board.</summary>
    public required double BoardThickness { get; init; }

    /// <summary>Air from the board to the bezel.</summary>
    public required double AboveToBezel { get; init; }

    /// <summary>Air from the board to the diffuser.</summary>
    public required double AboveToDiffuser { get; init; }

    /// <summary>Height and conductivity of the baffle's walls; a height of 0 without a baffle.</summary>
    public HeatWall Baffle { get; init; }

    /// <summary>How wide the baffle is open: four times the open area over its outline.</summary>
    public double BaffleOpening { get; init; }

    /// <summary>Which way the floor looks.</summary>
    public required FaceDirection FloorDirection { get; init; }

    /// <summary>Which way the front looks.</summary>
    public required FaceDirection FrontDirection { get; init; }

    /// <summary>What air runs along on floor and front.</summary>
    public required double Span { get; init; }

    /// <summary>What air runs along on the outer wall: its height on a table, the span where it hangs.</summary>
    public required double SideLength { get; init; }

    /// <summary>Outer wall over the circle round the rings, at least 1 in practice: other outlines than discs have more wall.</summary>
    public double SideFactor { get; init; } = 1;

    /// <summary>Share of the bore's wall that free air reaches; a narrow bore sees itself.</summary>
    public double BoreFree { get; init; } = 1;

    /// <summary>Heat capacity of the board, J/m3K.</summary>
    public required double BoardHeat { get; init; }

    /// <summary>Heat capacity of the plastic, J/m3K.</summary>
    public required double PlasticHeat { get; init; }

    /// <summary>Electric power of all LEDs at full white, dies of the usual kind, W.</summary>
    public required double LedFullWatts { get; init; }

    /// <summary>The same with the weakest dies that ship under the name, W.</summary>
    public required double LedLeastFullWatts { get; init; }

    /// <summary>The same with the strongest dies that ship under the name, W.</summary>
    public required double LedMostFullWatts { get; init; }

    /// <summary>Electric power of all LEDs when dark, W.</summary>
    public required double LedIdleWatts { get; init; }

    /// <summary>Electric power of the controller, W.</summary>
    public double ControllerWatts { get; init; }

    /// <summary>Share of full white, 0 to 1.</summary>
    public required double Brightness { get; init; }

    /// <summary>Share of time that LEDs are lit over an animation, 0 to 1.</summary>
    public double Duty { get; init; } = 1;

    /// <summary>The surrounding air.</summary>
    public required double AmbientCelsius { get; init; }

    /// <summary>Vents.</summary>
    public VentOpenings Vents { get; init; }

    /// <summary>How many LEDs.</summary>
    public double Leds => Rings.Sum(ring => ring.Leds);

    /// <summary>Electric power of other parts, W: given off on the board.</summary>
    public double OtherWatts => Rings.Sum(ring => ring.OtherWatts);

    /// <summary>Whether there is an open bore with a wall of its own.</summary>
    public bool HasBore => Rings[0].Inner > 0;

    /// <summary>Electric power of the LEDs as they are run, W.</summary>
    public double LedWatts => LedIdleWatts + (Math.Max(0, LedFullWatts - LedIdleWatts) * Brightness * Duty);
}
