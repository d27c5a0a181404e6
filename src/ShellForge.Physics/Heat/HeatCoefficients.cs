namespace ShellForge.Physics.Heat;

/// <summary>A coefficient that is known within a range, with its source.</summary>
/// <param name="Value">What is computed with.</param>
/// <param name="Low">Smallest value in the trade or in the literature.</param>
/// <param name="High">Largest value.</param>
/// <param name="Source">Where it comes from.</param>
public readonly record struct Coefficient(double Value, double Low, double High, string Source);

/// <summary>Everything about the flow of heat that is neither geometry nor material.</summary>
public sealed record HeatCoefficients
{
    /// <summary>h = C (dT / L)^0.25 on upright faces, L in m, W/m2K.</summary>
    public required Coefficient UprightConvection { get; init; }

    /// <summary>The same for warm faces that look up.</summary>
    public required Coefficient UpConvection { get; init; }

    /// <summary>The same for warm faces that look down.</summary>
    public required Coefficient DownConvection { get; init; }

    /// <summary>Convection between the inner air and board or walls, W/m2K.</summary>
    public required Coefficient InnerConvection { get; init; }

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

    /// <summary>Typical values.</summary>
    public static HeatCoefficients Typical { get; } = new()
    {
        UprightConvection = new(1.42, 1.2, 1.6, "simplified natural convection in air, upright plate, L in m; range: trade"),
        UpConvection = new(1.32, 1.1, 1.5, "simplified natural convection in air, warm face up; range: trade"),
        DownConvection = new(0.59, 0.5, 0.7, "simplified natural convection in air, warm face down; range: trade"),
        InnerConvection = new(6, 4.5, 8, "small closed boxes; typical: measure with a thermometer"),
        Emissivity = new(0.9, 0.85, 0.95, "plastics and solder mask; doi 10.1115/1.4007077 uses the like"),
        HeatShare = new(0.9, 0.85, 0.95, "the rest leaves as light; typical: check your datasheet"),
        LedToBoard = new(40, 25, 60, "case to board of a small package; typical: check your datasheet"),
        ControllerToBoard = new(15, 8, 25, "module soldered flat; typical: check your datasheet"),
        VentDischarge = new(0.6, 0.5, 0.7, "sharp-edged slots; typical"),
    };

    /// <summary>Every coefficient with its name.</summary>
    public IEnumerable<(string Name, Coefficient Coefficient)> All => Each().Select(each => (each.Name, each.Coefficient));

    /// <summary>Every coefficient with its name, and a copy of these coefficients in which it has another value.</summary>
    internal IEnumerable<(string Name, Coefficient Coefficient, Func<double, HeatCoefficients> With)> Each()
    {
        yield return ("upright-convection", UprightConvection, v => this with { UprightConvection = UprightConvection with { Value = v } });
        yield return ("up-convection", UpConvection, v => this with { UpConvection = UpConvection with { Value = v } });
        yield return ("down-convection", DownConvection, v => this with { DownConvection = DownConvection with { Value = v } });
        yield return ("inner-convection", InnerConvection, v => this with { InnerConvection = InnerConvection with { Value = v } });
        yield return ("emissivity", Emissivity, v => this with { Emissivity = Emissivity with { Value = v } });
        yield return ("heat-share", HeatShare, v => this with { HeatShare = HeatShare with { Value = v } });
        yield return ("led-to-board", LedToBoard, v => this with { LedToBoard = LedToBoard with { Value = v } });
        yield return ("controller-to-board", ControllerToBoard, v => this with { ControllerToBoard = ControllerToBoard with { Value = v } });
        yield return ("vent-discharge", VentDischarge, v => this with { VentDischarge = VentDischarge with { Value = v } });
    }
}
