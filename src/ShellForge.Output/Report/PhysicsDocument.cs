using System.Collections.Immutable;
using System.ComponentModel;
using System.Text.Json.Serialization;
using ShellForge.Board.Json;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Output.Light;
using ShellForge.Physics.Heat;
using ShellForge.Physics.Power;

namespace ShellForge.Output.Report;

/// <summary>
/// Light, heat and power: lengths in mm, temperatures in degrees Celsius, shares from 0 to 1. What is not finite is null.
/// </summary>
internal sealed record PhysicsDocument(
    [property: Description("Null where no light leaves the housing.")] LightDocument? Light,
    HeatDocument Heat,
    PowerDocument Power,
    [property: Description("The usual cautions for hands and eyes, each with its risk.")] ImmutableArray<string> Cautions)
{
    public static PhysicsDocument Of(HousingUnderCheck housing) => new(
        housing.Light is { } light ? LightDocument.Of(light, housing.Board.Housing.Light.MinimumOverMean) : null,
        HeatDocument.Of(housing.Heat, housing.Board.Power.Brightness),
        PowerDocument.Of(housing.Power, housing.Board.Power.Brightness),
        [.. ShellForge.Checks.Cautions.All(housing).Select(caution => $"{caution.Risk}: {caution.Text}")]);
}

/// <summary>The light on the diffuser.</summary>
internal sealed record LightDocument(
    [property: Description("Name of the picture of it.")] string Picture,
    [property: Description("How far the figures can be trusted.")] string Basis,
    [property: Description("Open area of the lit face.")] double WindowMm2,
    [property: Description("The evenness that the board file asks for.")] double MinimumOverMeanAsked,
    [property: Description("The evenness along the circles; null for single LEDs.")] double? MinimumOverMean,
    ImmutableArray<CircleDocument> Circles,
    [property: Description("Share of a cell's light that comes from its neighbours.")] double? Crosstalk,
    double? ThroughCellWall,
    [property: Description("Share of light that passes the diffuser.")] double? Transmission,
    double? DirectShare,
    double? ReflectedShare,
    double? SeenShare,
    [property: Description("Share that leaves through the parting line.")] double? SeamLeakShare,
    [property: Description("Glow of the wall against the diffuser's.")] double? WallGlow,
    [property: Description("Where the wall glows most, as assembled, mm.")] Point3? WallGlowAt)
{
    private const string OpticsBasis = "optics of printed plastic are typical and spread by two between spools: print a coupon";

    public static LightDocument Of(HousingLight light, double wanted) => new(
        LightPictures.FileName, OpticsBasis, light.Map.Face.OpenArea, wanted, light.MinimumOverMean,
        [.. light.Circles.Select(CircleDocument.Of)],
        light.Crosstalk, light.ThroughCellWall, light.Map.Diffuser.Transmission, light.Map.DirectShare, light.Map.ReflectedShare,
        light.Map.SeenShare, light.Leaks.SeamShare, light.Leaks.WallGlow, light.Leaks.WallAt);
}

/// <summary>The light over a circle of LEDs, or over all LEDs that lie on none.</summary>
internal sealed record CircleDocument(
    [property: Description("Null for LEDs that lie on no circle about the middle: they are judged together.")] double? DiameterMm, int Leds,
    double? AlongMinimumOverMean, double? AlongMichelson, double? AcrossMinimumOverMean, double? AcrossMichelson,
    [property: Description("The dimmest place, as assembled, mm.")] Point3? DimmestAt)
{
    public static CircleDocument Of(CircleLight circle) => new(
        circle.Circle?.Diameter, circle.Leds, circle.Along.MinimumOverMean, circle.Along.Michelson,
        circle.Across.MinimumOverMean, circle.Across.Michelson, circle.Least);
}

/// <summary>Temperatures.</summary>
internal sealed record HeatDocument(
    double AmbientCelsius,
    [property: Description("Brightness that the board file plans, 0 to 1.")] double Brightness,
    double HeatWatts,
    [property: Description("The warmest place of every body, with its range over dies and "
        + "coefficients.")] ImmutableArray<NodeDocument> Nodes,
    string WeakestFilament,
    double PlasticLimitCelsius,
    string WarmestPlastic,
    [property: JsonConverter(typeof(Tenths)), Description("Plastic limit less the warmest plastic.")] double MarginKelvin,
    [property: JsonConverter(typeof(MostThousandths)), Description("The brightness that the plastic stands.")] double? LargestBrightness,
    [property: JsonPropertyName("minutes_to_90_percent")] double? MinutesToNinetyPercent,
    ImmutableArray<WarmUpDocument> WarmUp,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    [property: Description("The same in the coolest room that the board file names.")]
    CoolestDocument? Coolest,
    [property: Description("The profile of the coefficients.")] string CoefficientsFrom,
    ImmutableArray<CoefficientDocument> Coefficients)
{
    public static HeatDocument Of(HousingHeat heat, double brightness) => new(
        heat.Input.AmbientCelsius, brightness, heat.Planned.HeatWatts,
        [.. heat.Planned.Nodes.Select(node => NodeDocument.Of(node, heat.FullWhite[node.Body].Celsius))],
        heat.WeakestFilament, heat.PlasticLimitCelsius, heat.Planned.WarmestPlastic.Body.InWords(),
        heat.PlasticLimitCelsius - heat.Planned.WarmestPlastic.Celsius, heat.LargestBrightness, heat.Planned.MinutesToNinetyPercent,
        WarmUpDocument.Of(heat.Planned), CoolestDocument.Of(heat), heat.Profile,
        [.. heat.Coefficients.All.Select(each => new CoefficientDocument(
            each.Name, each.Coefficient.Value, each.Coefficient.Low, each.Coefficient.High, each.Coefficient.Source))]);
}

/// <summary>Temperatures of a body.</summary>
internal sealed record NodeDocument(
    string Name,
    [property: JsonConverter(typeof(Tenths))] double Celsius,
    [property: JsonConverter(typeof(Tenths))] double LowCelsius,
    [property: JsonConverter(typeof(Tenths))] double HighCelsius,
    [property: JsonConverter(typeof(Tenths))] double MeanCelsius,
    [property: JsonConverter(typeof(Tenths)), JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? FullWhiteCelsius)
{
    public static NodeDocument Of(NodeTemperature node, double? fullWhite) => new(
        node.Body.InWords(), node.Celsius, node.Low, node.High, node.Mean, fullWhite);
}

/// <summary>A moment of warming up.</summary>
internal sealed record WarmUpDocument(
    double Minutes, [property: JsonConverter(typeof(Tenths))] double AirCelsius,
    [property: JsonConverter(typeof(Tenths))] double BoardCelsius)
{
    public static ImmutableArray<WarmUpDocument> Of(HeatResult heat) =>
        [.. heat.WarmUp.Select(point => new WarmUpDocument(point.Minutes, point.AirCelsius, point.BoardCelsius))];
}

/// <summary>Temperatures in the coolest room.</summary>
internal sealed record CoolestDocument(
    double AmbientCelsius,
    ImmutableArray<NodeDocument> Nodes,
    [property: JsonPropertyName("minutes_to_90_percent")] double? MinutesToNinetyPercent,
    ImmutableArray<WarmUpDocument> WarmUp)
{
    public static CoolestDocument? Of(HousingHeat heat) => heat is { CoolestCelsius: { } coolest, PlannedCoolest: { } cool }
        ? new(coolest, [.. cool.Nodes.Select(node => NodeDocument.Of(node, null))], cool.MinutesToNinetyPercent, WarmUpDocument.Of(cool))
        : null;
}

/// <summary>A coefficient of heat with its range.</summary>
internal sealed record CoefficientDocument(string Name, double Value, double Low, double High, string Source);

/// <summary>Currents.</summary>
internal sealed record PowerDocument
{
    public required double FullWhiteTypicalLedsAmps { get; init; }

    public required double FullWhiteWorstLedsAmps { get; init; }

    public required double PlannedTypicalLedsAmps { get; init; }

    public required double PlannedWorstLedsAmps { get; init; }

    public required double MeanTypicalLedsAmps { get; init; }

    public required double IdleAmps { get; init; }

    public required double SupplyAmps { get; init; }

    [Description("Current that may be drawn.")]
    public required double? LimitAmps { get; init; }

    [Description("Current that the plug's contacts carry.")]
    public required double? ContactAmps { get; init; }

    [Description("Brightness within that current, 0 to 1.")]
    [JsonConverter(typeof(MostThousandths))]
    public required double? AllowedBrightness { get; init; }

    [Description("Cap for the firmware, 0 to 255, at the planned brightness.")]
    public required int FirmwareCap { get; init; }

    [Description("The largest cap that the supply carries.")]
    public required int FirmwareCapMostForSupply { get; init; }

    [Description("Places where the ring is fed.")]
    public required int Feeds { get; init; }

    public required int FeedsNeeded { get; init; }

    public required double? RingDropVolts { get; init; }

    public required double? FullWhiteRingDropVolts { get; init; }

    public required ImmutableArray<LeadDocument> Leads { get; init; }

    public static PowerDocument Of(BoardPower power, double brightness)
    {
        PowerResult result = power.Result;
        return new PowerDocument
        {
            FullWhiteTypicalLedsAmps = result.FullWhiteAmps,
            FullWhiteWorstLedsAmps = result.StrongestAmps,
            PlannedTypicalLedsAmps = result.PlannedAmps,
            PlannedWorstLedsAmps = result.PlannedStrongestAmps,
            MeanTypicalLedsAmps = result.MeanAmps,
            IdleAmps = result.IdleAmps,
            SupplyAmps = power.Input.SupplyAmps,
            LimitAmps = result.AllowedAmps,
            ContactAmps = power.Input.ContactAmps,
            AllowedBrightness = result.AllowedBrightness,
            FirmwareCap = PowerModel.FirmwareCap(brightness),
            FirmwareCapMostForSupply = PowerModel.FirmwareCap(result.AllowedBrightness),
            Feeds = power.Input.Feeds,
            FeedsNeeded = result.FeedsNeeded,
            RingDropVolts = result.RingDropVolts,
            FullWhiteRingDropVolts = result.FullRingDropVolts,
            Leads = [.. power.Leads.Select(lead => new LeadDocument(lead.Wire.Name, lead.Amps, lead.Metres, lead.Thinnest?.Gauge))],
        };
    }
}

/// <summary>A lead.</summary>
internal sealed record LeadDocument(
    string Name,
    double Amps,
    double Metres,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    [property: Description("The thinnest gauge that carries it.")]
    int? ThinnestGauge);
