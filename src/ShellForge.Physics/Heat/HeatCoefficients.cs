namespace ShellForge.Physics.Heat;

/// <summary>A coefficient that is known within a range, with its source.</summary>
/// <param name="Value">What is computed with.</param>
/// <param name="Low">Smallest value in the trade or in the literature.</param>
/// <param name="High">Largest value.</param>
/// <param name="Source">Where it comes from.</param>
public readonly record struct Coefficient(double Value, double Low, double High, string Source);

/// <summary>
/// Everything about the flow of heat that is neither geometry nor material. The values stand in profiles, each with its source.
/// </summary>
public sealed record HeatCoefficients
{
    /// <summary>h = C (dT / L)^0.25 on upright faces, L in m, W/m2K.</summary>
    public required Coefficient UprightConvection { get; init; }

    /// <summary>The same for warm faces that look up.</summary>
    public required Coefficient UpConvection { get; init; }

    /// <summary>The same for warm faces that look down.</summary>
    public required Coefficient DownConvection { get; init; }

    /// <summary>Conductivity of still air, W/mK: what heat goes by through gaps too thin for air to turn over.</summary>
    public required Coefficient AirConductivity { get; init; }

    /// <summary>Conductivity of the board along its plane, W/mK.</summary>
    public required Coefficient BoardConductivity { get; init; }

    /// <summary>Conductivity of printed plastic over that of the solid in the filament's profile.</summary>
    public required Coefficient PrintedPlastic { get; init; }

    /// <summary>Emissivity of plastic and solder mask, 0 to 1.</summary>
    public required Coefficient Emissivity { get; init; }

    /// <summary>Share of electric power that stays as heat in the housing, 0 to 1.</summary>
    public required Coefficient HeatShare { get; init; }

    /// <summary>From one LED to the board under it, K/W.</summary>
    public required Coefficient LedToBoard { get; init; }

    /// <summary>From the controller to the board, K/W.</summary>
    public required Coefficient ControllerToBoard { get; init; }

    /// <summary>Discharge coefficient of vents, 0 to 1.</summary>
    public required Coefficient VentDischarge { get; init; }

    /// <summary>Heat capacity of air, J/m3K. Capacities shape the warm-up only, so their range is not asked for.</summary>
    public required double AirHeat { get; init; }

    /// <summary>Heat capacity of one LED, J/K.</summary>
    public required double LedHeat { get; init; }

    /// <summary>Heat capacity of the controller, J/K.</summary>
    public required double ControllerHeat { get; init; }

    /// <summary>Every coefficient with its name.</summary>
    public IEnumerable<(string Name, Coefficient Coefficient)> All => Each().Select(each => (each.Name, each.Coefficient));

    /// <summary>Every coefficient with its name, and a copy of these coefficients in which it has another value.</summary>
    internal IEnumerable<(string Name, Coefficient Coefficient, Func<double, HeatCoefficients> With)> Each()
    {
        yield return ("upright-convection", UprightConvection, v => this with { UprightConvection = UprightConvection with { Value = v } });
        yield return ("up-convection", UpConvection, v => this with { UpConvection = UpConvection with { Value = v } });
        yield return ("down-convection", DownConvection, v => this with { DownConvection = DownConvection with { Value = v } });
        yield return ("air-conductivity", AirConductivity, v => this with { AirConductivity = AirConductivity with { Value = v } });
        yield return ("board-conductivity", BoardConductivity, v => this with { BoardConductivity = BoardConductivity with { Value = v } });
        yield return ("printed-plastic", PrintedPlastic, v => this with { PrintedPlastic = PrintedPlastic with { Value = v } });
        yield return ("emissivity", Emissivity, v => this with { Emissivity = Emissivity with { Value = v } });
        yield return ("heat-share", HeatShare, v => this with { HeatShare = HeatShare with { Value = v } });
        yield return ("led-to-board", LedToBoard, v => this with { LedToBoard = LedToBoard with { Value = v } });
        yield return ("controller-to-board", ControllerToBoard,
            v => this with { ControllerToBoard = ControllerToBoard with { Value = v } });
        yield return ("vent-discharge", VentDischarge, v => this with { VentDischarge = VentDischarge with { Value = v } });
    }
}
