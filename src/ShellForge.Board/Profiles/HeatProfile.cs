namespace ShellForge.Board.Profiles;

/// <summary>How heat flows off and through a housing: what is neither geometry nor filament.</summary>
public sealed record HeatProfile
{
    /// <summary>Profile name, such as <c>still-air</c>.</summary>
    public required string Name { get; init; }

    /// <summary>C of h = C (dT / L)^0.25 on upright faces, L in m, W/m2K.</summary>
    public required SourcedRange UprightConvection { get; init; }

    /// <summary>The same for warm faces that look up.</summary>
    public required SourcedRange UpConvection { get; init; }

    /// <summary>The same for warm faces that look down.</summary>
    public required SourcedRange DownConvection { get; init; }

    /// <summary>Conductivity of still air, W/mK.</summary>
    public required SourcedRange AirConductivity { get; init; }

    /// <summary>Conductivity of the board along its plane, W/mK.</summary>
    public required SourcedRange BoardConductivity { get; init; }

    /// <summary>Conductivity of printed plastic over that of the solid.</summary>
    public required SourcedRange PrintedPlastic { get; init; }

    /// <summary>Emissivity of plastic and solder mask, 0 to 1.</summary>
    public required SourcedRange Emissivity { get; init; }

    /// <summary>Share of electric power that stays as heat in the housing, 0 to 1.</summary>
    public required SourcedRange HeatShare { get; init; }

    /// <summary>From one LED to the board under it, K/W.</summary>
    public required SourcedRange LedToBoard { get; init; }

    /// <summary>From the controller to the board, K/W.</summary>
    public required SourcedRange ControllerToBoard { get; init; }

    /// <summary>Discharge coefficient of vents, 0 to 1.</summary>
    public required SourcedRange VentDischarge { get; init; }

    /// <summary>Heat capacity of air, J/m3K.</summary>
    public required Sourced AirHeat { get; init; }

    /// <summary>Heat capacity of one LED, J/K.</summary>
    public required Sourced LedHeat { get; init; }

    /// <summary>Heat capacity of the controller, J/K.</summary>
    public required Sourced ControllerHeat { get; init; }

    /// <summary>Heat capacity of the board, J/m3K.</summary>
    public required Sourced BoardHeat { get; init; }

    /// <summary>Heat capacity of plastic, J/kgK.</summary>
    public required Sourced PlasticHeat { get; init; }
}
