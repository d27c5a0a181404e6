using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Physics.Heat;
using ShellForge.Planning.Marks;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Gauges;

/// <summary>Heat of a housing: what went into the model, and what came out.</summary>
public sealed record HousingHeat
{
    // Halvings of a brightness that is looked for: to less than a hundredth.
    private const int Halvings = 7;
    private const double BrightnessStep = 0.01;

    /// <summary>What the model took.</summary>
    public required HeatInput Input { get; init; }

    /// <summary>The coefficients that both were worked out with.</summary>
    public required HeatCoefficients Coefficients { get; init; }

    /// <summary>Name of the profile that they stand in.</summary>
    public required string Profile { get; init; }

    /// <summary>At the planned brightness, in the warmest surrounding air.</summary>
    public required HeatResult Planned { get; init; }

    /// <summary>At full white, in the warmest surrounding air.</summary>
    public required HeatResult FullWhite { get; init; }

    /// <summary>The coolest surrounding air, where it is a range; null for one temperature.</summary>
    public double? CoolestCelsius { get; init; }

    /// <summary>At the planned brightness in the coolest surrounding air; null for one temperature.</summary>
    public HeatResult? PlannedCoolest { get; init; }

    /// <summary>Service limit of the weakest filament in the warm, degrees Celsius.</summary>
    public required double PlasticLimitCelsius { get; init; }

    /// <summary>Glass transition of that filament.</summary>
    public required double PlasticSoftensCelsius { get; init; }

    /// <summary>Its name.</summary>
    public required string WeakestFilament { get; init; }

    /// <summary>What the most delicate of the LEDs bear, degrees Celsius.</summary>
    public required double LedLimit { get; init; }

    /// <summary>
    /// Largest brightness at which plastic and LEDs stay within their limits even with the strongest dies and at the upper end of every
    /// range, 0 to 1.
    /// </summary>
    public required double LargestBrightness { get; init; }

    /// <summary>
    /// Largest brightness at which the air round a battery inside stays within the battery's limit, 0 to 1, to a hundredth; null without
    /// one.
    /// </summary>
    public double? BatteryBrightness { get; init; }

    /// <summary>Whether there are vents that the wall or the table behind the floor closes.</summary>
    public required bool VentsCovered { get; init; }

    /// <summary>The heat that the firmware can bring about: at the planned brightness where it caps it, otherwise at full white.</summary>
    public HeatResult Reached(bool capped) => capped ? Planned : FullWhite;

    /// <summary>The heat of a housing.</summary>
    public static HousingHeat Of(HousingUnderCheck housing)
    {
        BoardFile file = housing.Board;
        FilamentProfile weakest = Filaments(housing).MinBy(filament => filament.ServiceLimitCelsius.Value)!;
        HousingPlan plan = housing.Plan;
        HeatInput input = PlannedHeat.InputOf(file, plan.Shell, plan.Stack, new FrontSide(plan.Cover, plan.Diffuser, plan.Baffle),
            plan.Mount, plan.Vents);
        var heat = new RememberedHeat(housing.Memory);
        HeatCoefficients coefficients = PlannedHeat.CoefficientsOf(file.Use.Air);
        double ledLimit = PlannedHeat.LedLimitCelsius(file.Board);
        bool range = file.Use.CoolestCelsius < file.Use.WarmestCelsius;
        return new HousingHeat
        {
            Input = input,
            Coefficients = coefficients,
            Profile = file.Use.Air.Name,
            Planned = heat.Of(input, coefficients),
            FullWhite = heat.Of(input with { Brightness = 1, Duty = 1 }, coefficients),
            CoolestCelsius = range ? file.Use.CoolestCelsius : null,
            PlannedCoolest = range ? heat.Of(input with { AmbientCelsius = file.Use.CoolestCelsius }, coefficients) : null,
            LedLimit = ledLimit,
            PlasticLimitCelsius = weakest.ServiceLimitCelsius,
            PlasticSoftensCelsius = weakest.GlassTransitionCelsius,
            WeakestFilament = weakest.Name,
            LargestBrightness = heat.LargestBrightness(input, coefficients, weakest.ServiceLimitCelsius, ledLimit),
            BatteryBrightness = plan.Bay is { } bay ? CoolEnough(heat, input, coefficients, bay.Size.Battery.WarmestCelsius) : null,
            VentsCovered = !plan.Vents.IsEmpty && PlannedHeat.FloorIsCovered(file, plan.Mount),
        };
    }

    private static double CoolEnough(RememberedHeat heat, HeatInput input, HeatCoefficients coefficients, double limit)
    {
        if (Air(1) <= limit)
        {
            return 1;
        }

        (double cool, double warm) = (0, 1);
        for (int i = 0; i < Halvings; i++)
        {
            double middle = (cool + warm) / 2;
            (cool, warm) = Air(middle) > limit ? (cool, middle) : (middle, warm);
        }

        return Math.Floor(cool / BrightnessStep) * BrightnessStep;

        double Air(double brightness) => heat.Of(input with { Brightness = brightness }, coefficients)[HeatBody.InnerAir].Celsius;
    }

    private static IEnumerable<FilamentProfile> Filaments(HousingUnderCheck housing) =>
        housing.Plan.Parts.Where(part => part.IsOfHousing).Select(part => part.Filament);
}
