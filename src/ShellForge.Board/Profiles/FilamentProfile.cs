namespace ShellForge.Board.Profiles;

/// <summary>A filament of one plastic and one colour.</summary>
public sealed record FilamentProfile
{
    /// <summary>Profile name, such as <c>petg-black</c>.</summary>
    public required string Name { get; init; }

    /// <summary>Plastic family, such as <c>petg</c>: only parts of one family fuse.</summary>
    public required string Family { get; init; }

    /// <summary>Colour word for people: black, white, natural, grey.</summary>
    public required string Colour { get; init; }

    /// <summary>Density, g/cm3.</summary>
    public required Sourced Density { get; init; }

    /// <summary>Highest wall temperature in continuous service, degrees Celsius.</summary>
    public required Sourced ServiceLimitCelsius { get; init; }

    /// <summary>Glass transition, degrees Celsius.</summary>
    public required Sourced GlassTransitionCelsius { get; init; }

    /// <summary>Repeatable strain in the plane of the layers, as a fraction.</summary>
    public required Sourced StrainAlongLayers { get; init; }

    /// <summary>Repeatable strain across layers, as a fraction.</summary>
    public required Sourced StrainAcrossLayers { get; init; }

    /// <summary>Young's modulus in the plane of the layers, MPa.</summary>
    public required Sourced ModulusMegapascals { get; init; }

    /// <summary>Linear print shrinkage, as a fraction.</summary>
    public required Sourced Shrinkage { get; init; }

    /// <summary>How much more or less a spool shrinks than that, as a fraction.</summary>
    public required Sourced ShrinkageSpread { get; init; }

    /// <summary>Thermal conductivity of the solid, W/mK.</summary>
    public required Sourced Conductivity { get; init; }

    /// <summary>Share of visible light thrown back by a thick wall, 0 to 1.</summary>
    public required Sourced Reflectance { get; init; }

    /// <summary>Whether it swallows light, as dark pigments do, and does not scatter it.</summary>
    public bool Absorbs { get; init; }

    /// <summary>What a profile may say of <see cref="TransmissionLength"/>, mm.</summary>
    public static (double Least, double Most) TransmissionRange => (0.001, 50);

    /// <summary>t0 of the transmission law, mm: T = 1 / (1 + t / t0) for what scatters, T = exp(-t / t0) for what absorbs.</summary>
    public required Sourced TransmissionLength { get; init; }

    /// <summary>Iron temperature for setting inserts, degrees Celsius.</summary>
    public required Sourced IronCelsius { get; init; }

    /// <summary>Colour on screens as <c>#rrggbb</c>.</summary>
    public required string Screen { get; init; }
}
