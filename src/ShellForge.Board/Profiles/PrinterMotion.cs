namespace ShellForge.Board.Profiles;

/// <summary>
/// How a printer is driven: what its slicer lays in every layer, and how fast. Print times and filament are computed from it.
/// </summary>
public sealed record PrinterMotion
{
    /// <summary>Lines drawn round every layer, from the outside in.</summary>
    public required Sourced Perimeters { get; init; }

    /// <summary>Solid layers over every floor and under every roof.</summary>
    public required Sourced SkinLayers { get; init; }

    /// <summary>Share of plastic in what is left, 0 to 1.</summary>
    public required Sourced Infill { get; init; }

    /// <summary>Speed of the outermost perimeter, mm/s.</summary>
    public required Sourced SpeedOuter { get; init; }

    /// <summary>Speed of the other perimeters, mm/s.</summary>
    public required Sourced SpeedInner { get; init; }

    /// <summary>Speed round small holes and posts, mm/s.</summary>
    public required Sourced SpeedSmall { get; init; }

    /// <summary>Speed of solid layers, mm/s.</summary>
    public required Sourced SpeedSkin { get; init; }

    /// <summary>Speed of the uppermost solid layer, mm/s.</summary>
    public required Sourced SpeedTop { get; init; }

    /// <summary>Speed of infill, mm/s.</summary>
    public required Sourced SpeedInfill { get; init; }

    /// <summary>Speed of lines with nothing below, mm/s.</summary>
    public required Sourced SpeedBridge { get; init; }

    /// <summary>Speed of the first layer, mm/s.</summary>
    public required Sourced SpeedFirstLayer { get; init; }

    /// <summary>Speed of moves that lay nothing, mm/s.</summary>
    public required Sourced SpeedTravel { get; init; }

    /// <summary>Acceleration while laying, mm/s2.</summary>
    public required Sourced Acceleration { get; init; }

    /// <summary>Acceleration of moves that lay nothing, mm/s2.</summary>
    public required Sourced TravelAcceleration { get; init; }

    /// <summary>Change of speed along x or y that is made at once at a corner, mm/s.</summary>
    public required Sourced CornerStep { get; init; }

    /// <summary>Least time of a layer, s: lines are slowed down until it is reached.</summary>
    public required Sourced LayerTime { get; init; }

    /// <summary>Lines are not slowed down below this speed, mm/s.</summary>
    public required Sourced SpeedLeast { get; init; }

    /// <summary>Filament drawn back before a long move, mm.</summary>
    public required Sourced Retraction { get; init; }

    /// <summary>Speed of drawing back, mm/s.</summary>
    public required Sourced RetractionSpeed { get; init; }

    /// <summary>Moves up to this length draw nothing back, mm.</summary>
    public required Sourced RetractionFrom { get; init; }

    /// <summary>Heating and homing before a print, s.</summary>
    public required Sourced StartTime { get; init; }

    /// <summary>A change of filament, s.</summary>
    public required Sourced ChangeTime { get; init; }

    /// <summary>Plastic that flushes the nozzle at a change of filament, mm3.</summary>
    public required Sourced ChangePlastic { get; init; }
}
