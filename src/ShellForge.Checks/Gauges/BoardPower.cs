using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Physics.Power;

namespace ShellForge.Checks.Gauges;

/// <summary>A soldered lead and what it carries.</summary>
/// <param name="Wire">The lead.</param>
/// <param name="Metres">Length one way, m: along the board, or a usual cable for what leaves the housing.</param>
/// <param name="Amps">Largest current at the brightness that holds, strongest dies, A.</param>
/// <param name="Gauge">What is known of its conductor; null where no gauge was said or the table has none so thin.</param>
/// <param name="Thinnest">The thinnest conductor that would do; null where none of the table does.</param>
public sealed record LeadPower(WireLead Wire, double Metres, double Amps, WireGauge? Gauge, WireGauge? Thinnest);

/// <summary>Power of a board: what went into the model, and what came out.</summary>
public sealed record BoardPower
{
    // Volts LEDs are made for. Source: data sheets of addressable LEDs, 3.5 to 5.3 absolute.
    private const double LedVolts = 5;

    // A cable to its supply, m. Typical; longer ones lose in proportion.
    private const double CableMetres = 1.0;

    private const double MilliampsPerAmp = 1000;
    private const double MillimetresPerMetre = 1000;

    /// <summary>What the model took.</summary>
    public required PowerInput Input { get; init; }

    /// <summary>What it says.</summary>
    public required PowerResult Result { get; init; }

    /// <summary>Leads that carry power.</summary>
    public required ImmutableArray<LeadPower> Leads { get; init; }

    /// <summary>Designator of the connector that takes the cable; null for soldered cables.</summary>
    public required string? Connector { get; init; }

    /// <summary>Where current is fed into the board's LEDs, mm; empty where no lead says it.</summary>
    public required ImmutableArray<Point2> Feeds { get; init; }

    /// <summary>The largest current that the firmware allows, strongest dies, A: planned when capped, full white when not.</summary>
    public required double LargestAmps { get; init; }

    /// <summary>What may be drawn and what sets it: "1.2 A, 80 % of the supply's 1.5 A".</summary>
    public string LimitInWords => Input.ContactAmps < PowerModel.SupplyUse * Input.SupplyAmps
        ? string.Create(CultureInfo.InvariantCulture, $"{Input.ContactAmps:0.0#} A, what the contacts of {Connector} carry")
        : string.Create(CultureInfo.InvariantCulture, $"{Result.AllowedAmps:0.0#} A, 80 % of the supply's {Input.SupplyAmps:0.##} A");

    /// <summary>The power of a board.</summary>
    public static BoardPower Of(BoardFile file)
    {
        PixelCircle[] circles = [.. file.Board.PixelCircles.Where(circle => !circle.Pixels.IsEmpty)];
        double Sum(Func<PixelCircle, double> milliamps) =>
            circles.Sum(circle => circle.Pixels.Length * milliamps(circle)) / MilliampsPerAmp;
        BoardPart? connector = file.Housing.Cables.FirstOrDefault() is ConnectorCable cable
            ? file.Board.Parts.FirstOrDefault(part => part.Ref == cable.PartRef) : null;
        ImmutableArray<Point2> feeds =
        [
            .. file.Board.Wires.Where(wire => wire.Conductors >= 2).Select(wire => wire.At),

            // A pair that runs from the connector to a far LED leaves the near ones to the connector's own tracks.
            .. connector is not null && file.Board.Wires.Any(wire => wire.Conductors >= 2 && wire.To == connector.Ref) ? [connector.At]
                : Array.Empty<Point2>(),
        ];
        PixelCircle? longest = circles.MaxBy(circle => circle.Pixels.Length);
        var input = new PowerInput
        {
            Leds = circles.Sum(circle => circle.Pixels.Length),
            FullWhiteAmps = Sum(circle => circle.Led.FullWhiteMilliamps),
            StrongestAmps = Sum(circle => Math.Max(circle.Led.WiringMilliamps, circle.Led.FullWhiteMilliamps)),
            IdleAmps = Sum(circle => circle.Led.IdleMilliamps),
            OtherAmps = (file.Board.Parts.Sum(part => part.Watts)
                + (file.Housing.SecondBoard is { Spacers: null } loose ? loose.Watts : 0)) / LedVolts,
            Brightness = file.Power.Brightness,
            Duty = file.Power.Duty,
            SupplyAmps = file.Power.Amps,
            ContactAmps = connector?.Mouth?.Profile.ContactAmps.Value ?? double.PositiveInfinity,
            RingLeds = longest?.Pixels.Length ?? 0,
            Feeds = Math.Max(1, feeds.Length),
            WidestArc = longest is null ? null : WidestArc(longest, feeds),
        };
        PowerResult result = PowerModel.Of(input);
        double largest = file.Power.Capped ? result.PlannedStrongestAmps : result.StrongestAmps;
        return new BoardPower
        {
            Input = input,
            Result = result,
            Connector = connector?.Ref,
            Feeds = feeds,
            LargestAmps = largest,
            Leads = [.. file.Board.Wires.Where(wire => wire.Conductors >= 2).Select(wire => Lead(file, wire, largest, feeds.Length))],
        };
    }

    // Each feed goes to the LED next to it; two feeds at one LED are one.
    private static int WidestArc(PixelCircle circle, IEnumerable<Point2> feeds)
    {
        int leds = circle.Pixels.Length;
        int[] fed =
            [.. feeds.Select(feed => Enumerable.Range(0, leds).MinBy(i => Point2.Distance(circle.Pixels[i].At, feed))).Distinct().Order()];
        return fed.Length < 2 ? leds : fed.Select((at, i) => i + 1 < fed.Length ? fed[i + 1] - at : fed[0] + leds - at).Max();
    }

    private static LeadPower Lead(BoardFile file, WireLead wire, double largest, int feeds)
    {
        Point2? other = file.Board.Wires.FirstOrDefault(each => each.Name == wire.To)?.At
            ?? file.Board.Parts.FirstOrDefault(part => part.Ref == wire.To)?.At;

        // A pair to a second feed carries that feed's share; a lead out of the housing carries all.
        double amps = other is null ? largest : largest / Math.Max(2, feeds);
        double metres = other is Point2 end ? AlongBoard(wire.At, end) / MillimetresPerMetre : CableMetres;
        return new LeadPower(
            wire, metres, amps, wire.Gauge is int gauge ? WireGauges.Of(gauge) : null,
            WireGauges.Thinnest(amps, metres, PowerModel.DropBudgetVolts));
    }

    // Round the axis at the mean radius: a ring's bore is in the way of anything shorter.
    private static double AlongBoard(Point2 from, Point2 to)
    {
        double radius = (from.Length + to.Length) / 2;
        return Math.Max(Point2.Distance(from, to), Angle.Between(Angle.Of(from), Angle.Of(to)).Radians * radius);
    }
}
