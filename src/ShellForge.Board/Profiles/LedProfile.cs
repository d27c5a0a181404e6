namespace ShellForge.Board.Profiles;

/// <summary>Where an addressable LED sends its light.</summary>
public enum LedEmission
{
    /// <summary>Away from the board.</summary>
    Top,

    /// <summary>Along the board.</summary>
    Side,
}

/// <summary>An addressable LED package.</summary>
public sealed record LedProfile
{
    /// <summary>Profile name, such as <c>5050</c>.</summary>
    public required string Name { get; init; }

    /// <summary>Body along the package's x, mm.</summary>
    public required Sourced Length { get; init; }

    /// <summary>Body along the package's y, mm.</summary>
    public required Sourced Width { get; init; }

    /// <summary>Body above the board, mm.</summary>
    public required Sourced Height { get; init; }

    /// <summary>Side of the square light-emitting window, mm.</summary>
    public required Sourced WindowWidth { get; init; }

    /// <summary>Full viewing angle at half intensity, degrees.</summary>
    public required Sourced ViewingAngleDegrees { get; init; }

    /// <summary>
    /// Share of light that its body throws back, 0 to 1: white bodies, as most are, brighten a housing, black ones don't.
    /// </summary>
    public required Sourced BodyReflectance { get; init; }

    /// <summary>Which way it shines.</summary>
    public LedEmission Emission { get; init; }

    /// <summary>
    /// For side-facing packages: which face of the body shines, as the direction it looks in the package's own frame, degrees; 0 is the +x
    /// face, 90 the +y face.
    /// </summary>
    public Sourced ShiningFaceDegrees { get; init; }

    /// <summary>Height of the emission axis above the board for side-facing packages, mm.</summary>
    public Sourced? AxisHeight { get; init; }

    /// <summary>Current at full white with dies of the usual kind, mA.</summary>
    public required Sourced FullWhiteMilliamps { get; init; }

    /// <summary>Current at full white with the weakest dies that ship under the name, mA: the lower end of temperatures.</summary>
    public required Sourced LeastWhiteMilliamps { get; init; }

    /// <summary>Current at full white with the strongest dies that ship under the name, mA: wires and supplies are chosen by it.</summary>
    public required Sourced WiringMilliamps { get; init; }

    /// <summary>Current when dark, mA.</summary>
    public required Sourced IdleMilliamps { get; init; }

    /// <summary>Highest temperature of the body in continuous use, degrees Celsius.</summary>
    public required Sourced TemperatureLimitCelsius { get; init; }

    /// <summary>How far through-hole tails come out on the far side, mm; 0 for surface-mount packages.</summary>
    public Sourced TailLength { get; init; }
}
