namespace ShellForge.Board.Profiles;

/// <summary>A heat-set insert, named by its body: the same thread is sold in several.</summary>
public sealed record InsertProfile
{
    /// <summary>Profile name, such as <c>m2.5x4-od4.6</c>.</summary>
    public required string Name { get; init; }

    /// <summary>Thread, such as <c>M2.5</c>; pairs inserts with screws.</summary>
    public required string Thread { get; init; }

    /// <summary>Diameter over the knurl, mm.</summary>
    public required Sourced OuterDiameter { get; init; }

    /// <summary>Length along the axis, mm.</summary>
    public required Sourced Length { get; init; }

    /// <summary>Diameter of the hole as drawn for a printed part, mm. Never compensated again.</summary>
    public required Sourced HoleDiameter { get; init; }

    /// <summary>Whether <see cref="HoleDiameter"/> was found on a coupon of the printer and the filament at hand.</summary>
    public bool IsHoleMeasured { get; init; }

    /// <summary>Least wall round the hole, mm.</summary>
    public required Sourced WallThickness { get; init; }

    /// <summary>Whether the body is tapered: the hole then widens by 8 degrees included and has no lead-in.</summary>
    public bool Tapered { get; init; }
}
