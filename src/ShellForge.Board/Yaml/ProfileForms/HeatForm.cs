using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Vocabulary;

namespace ShellForge.Board.Yaml.ProfileForms;

/// <summary>Coefficients of heat in a profile file.</summary>
internal static class HeatForm
{
    /// <summary>The mapping below the profile's name.</summary>
    public static Form<Func<string, HeatProfile>> Form { get; } = new("coefficients of heat", keys =>
    {
        FormKey<SourcedRange> upright = keys.Required("upright-convection", Range(0.01, 100),
            "C of h = C (dT / L)^0.25 on upright faces, L in m, W/m2K.");
        FormKey<SourcedRange> up = keys.Required("up-convection", Range(0.01, 100), "The same on warm faces that look up.");
        FormKey<SourcedRange> down = keys.Required("down-convection", Range(0.01, 100), "The same on warm faces that look down.");
        FormKey<SourcedRange> still = keys.Required("air-conductivity", Range(0.001, 1), "Still air in the gaps, W/mK.");
        FormKey<SourcedRange> laminate = keys.Required("board-conductivity", Range(0.1, 400), "The board along its plane, W/mK.");
        FormKey<SourcedRange> printed = keys.Required("printed-plastic", Range(0.1, 3),
            "Conductivity of printed plastic over that of the solid.");
        FormKey<SourcedRange> emissivity = keys.Required("emissivity", Range(0.01, 1), "Of plastic and solder mask.");
        FormKey<SourcedRange> share = keys.Required("heat-share", Range(0.1, 1), "Share of electric power that stays as heat.");
        FormKey<SourcedRange> led = keys.Required("led-to-board", Range(0.1, 1000), "From one LED to the board, K/W.");
        FormKey<SourcedRange> controller = keys.Required("controller-to-board", Range(0.1, 1000), "From the controller to the board, K/W.");
        FormKey<SourcedRange> vents = keys.Required("vent-discharge", Range(0.01, 1), "Discharge coefficient of vents.");
        FormKey<Sourced> air = keys.Required("air-heat", ProfileNumbers.Number(1, 1e5), "Heat capacity of air, J/m3K.");
        FormKey<Sourced> ledHeat = keys.Required("led-heat", ProfileNumbers.Number(0.001, 1000), "Heat capacity of one LED, J/K.");
        FormKey<Sourced> controllerHeat = keys.Required("controller-heat", ProfileNumbers.Number(0.01, 10000),
            "Heat capacity of the controller, J/K.");
        FormKey<Sourced> board = keys.Required("board-heat", ProfileNumbers.Number(1e4, 1e8), "Heat capacity of the board, J/m3K.");
        FormKey<Sourced> plastic = keys.Required("plastic-heat", ProfileNumbers.Number(100, 10000), "Heat capacity of plastic, J/kgK.");
        return values => name => new HeatProfile
        {
            Name = name,
            UprightConvection = values.Get(upright).Value,
            UpConvection = values.Get(up).Value,
            DownConvection = values.Get(down).Value,
            AirConductivity = values.Get(still).Value,
            BoardConductivity = values.Get(laminate).Value,
            PrintedPlastic = values.Get(printed).Value,
            Emissivity = values.Get(emissivity).Value,
            HeatShare = values.Get(share).Value,
            LedToBoard = values.Get(led).Value,
            ControllerToBoard = values.Get(controller).Value,
            VentDischarge = values.Get(vents).Value,
            AirHeat = values.Get(air).Value,
            LedHeat = values.Get(ledHeat).Value,
            ControllerHeat = values.Get(controllerHeat).Value,
            BoardHeat = values.Get(board).Value,
            PlasticHeat = values.Get(plastic).Value,
        };
    });

    private static SourcedRangeKind Range(double least, double most) => new(new NumberKind("a number", least, most));
}
