namespace ShellForge.Board.Profiles;

/// <summary>Thickness of opaque filament that stops light, mm. Source: trade knowledge, black 1.2, other opaque colours 1.6.</summary>
public static class OpaqueThickness
{
    /// <summary>Black.</summary>
    public const double Black = 1.2;

    /// <summary>Other opaque colours.</summary>
    public const double Other = 1.6;
}
