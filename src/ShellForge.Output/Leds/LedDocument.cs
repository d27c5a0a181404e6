using System.Collections.Immutable;
using System.ComponentModel;
using System.Text.Json.Serialization;
using ShellForge.Board.Description;
using ShellForge.Board.Json;
using ShellForge.Checks.Gauges;
using ShellForge.Checks.Power;
using ShellForge.Geometry.Numerics;
using ShellForge.Physics.Power;

namespace ShellForge.Output.Leds;

/// <summary>
/// What firmware needs to know of the LEDs: places as the housing hangs, seen from the front, and limits. Members stand in the order of
/// the file.
/// </summary>
internal sealed record LedDocument(
    string Format,
    [property: Description("Name of the housing.")] string Name,
    int Count,
    [property: Description("Whether walls give every LED a cell of its own.")] bool Cells,
    [property: Description("Largest brightness byte, 0 to 255, that plan, supply, plastic and battery allow.")] int BrightnessCap,
    [property: JsonConverter(typeof(KebabWords<CapReason>))] CapReason CapSetBy,
    [property: Description("Current that may be drawn, all LEDs and the board together, mA.")] int CurrentLimitMa,
    [property: Description("Current at that cap with all LEDs white, strongest dies, mA.")] int CurrentAtCapMa,
    ImmutableArray<LedCircle> Circles,
    [property: Description("In data order.")] ImmutableArray<LedPlace> Leds)
{
    /// <summary>What <c>format</c> says.</summary>
    public const string FormatName = "shellforge-leds/1";

    private const double MilliampsPerAmp = 1000;

    public static byte[] Bytes(LedDocument leds) => JsonText.Bytes(leds, LedContext.Default.LedDocument);

    public static string Schema() => DocumentSchema.Json(LedContext.Default.LedDocument, FormatName);

    public static LedDocument Of(HousingUnderCheck housing)
    {
        BoardFile file = housing.Board;
        PowerResult power = housing.Power.Result;
        var least = Checks.Power.BrightnessCap.Of(housing);
        int cap = PowerModel.FirmwareCap(least.Brightness);
        double atCap = power.IdleAmps + ((power.StrongestAmps - power.IdleAmps) * cap / PowerModel.FullByte);
        PixelCircle[] circles = [.. file.Board.PixelCircles.Where(circle => !circle.Pixels.IsEmpty)];
        int first = 0;
        var told = ImmutableArray.CreateBuilder<LedCircle>(circles.Length);
        foreach (PixelCircle circle in circles)
        {
            told.Add(new LedCircle(first, circle.Pixels.Length, circle.Count, circle.Diameter, circle.Facing));
            first += circle.Pixels.Length;
        }

        return new LedDocument(
            FormatName, file.Name, first, housing.Plan.Baffle is { Cells: true }, cap, least.By,
            (int)Math.Floor(power.AllowedAmps * MilliampsPerAmp), (int)Math.Ceiling(atCap * MilliampsPerAmp),
            told.MoveToImmutable(),
            [.. circles.SelectMany((circle, i) => circle.Pixels.Select(pixel => LedPlace.Of(pixel, i, file.Up)))]);
    }
}

/// <summary>A circle of LEDs.</summary>
internal sealed record LedCircle(
    [property: Description("Index of its first LED, from 0.")] int First,
    [property: Description("LEDs on it.")] int Count,
    [property: Description("Evenly spread positions, those without an LED included.")] int Positions,
    [property: Description("Diameter of the circle through their middles; 0 for a single LED.")] double DiameterMm,
    [property: JsonConverter(typeof(KebabWords<PixelFacing>)), Description("Where they look: up from the board, out, or in to the bore.")]
    PixelFacing Facing);

/// <summary>An LED.</summary>
internal sealed record LedPlace(
    [property: Description("Designator.")] string Ref,
    [property: Description("Index of its circle, from 0.")] int Circle,
    [property: Description("To the right of the board's centre, seen from the front as it hangs.")] double XMm,
    [property: Description("Above the board's centre.")] double YMm,
    [property: Description("Clockwise from straight up, as on a clock's face; 0 for an LED in the centre.")] double ClockwiseDeg)
{
    public static LedPlace Of(Pixel pixel, int circle, Angle up)
    {
        Point2 at = pixel.At.Turned(Angle.FromDegrees(90) - up);
        Angle clockwise = pixel.At == Point2.Origin ? Angle.Zero : (up - Angle.Of(pixel.At)).Normalized;
        return new LedPlace(pixel.Ref, circle, at.X, at.Y, clockwise.Degrees);
    }
}

/// <summary>How it is written: lengths to a micrometre, angles to a thousandth of a degree.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower,
    GenerationMode = JsonSourceGenerationMode.Metadata,
    Converters = [typeof(Thousandths)])]
[JsonSerializable(typeof(LedDocument))]
internal sealed partial class LedContext : JsonSerializerContext;
