namespace ShellForge.Physics.Power;

/// <summary>Currents, drops and limits of a board. Currents in A.</summary>
public sealed record PowerResult
{
    /// <summary>Everything at full white, usual dies.</summary>
    public required double FullWhiteAmps { get; init; }

    /// <summary>Everything at full white, strongest dies.</summary>
    public required double StrongestAmps { get; init; }

    /// <summary>Peak at the planned brightness, usual dies.</summary>
    public required double PlannedAmps { get; init; }

    /// <summary>Peak at the planned brightness, strongest dies: what the supply must give.</summary>
    public required double PlannedStrongestAmps { get; init; }

    /// <summary>Mean over an animation at the planned brightness, usual dies.</summary>
    public required double MeanAmps { get; init; }

    /// <summary>LEDs dark, controller running.</summary>
    public required double IdleAmps { get; init; }

    /// <summary>What may be drawn: the smaller of a share of the supply and the connector's contacts.</summary>
    public required double AllowedAmps { get; init; }

    /// <summary>Largest brightness that stays within <see cref="AllowedAmps"/> with the strongest dies, 0 to 1.</summary>
    public required double AllowedBrightness { get; init; }

    /// <summary>
    /// Largest brightness at which no more than a current is drawn with the strongest dies, 0 to 1; 0 when even dark LEDs draw more.
    /// </summary>
    /// <param name="input">What draws.</param>
    /// <param name="amps">What may be drawn, A.</param>
    public double BrightnessWithin(PowerInput input, double amps)
    {
        double left = amps - IdleAmps;
        double span = StrongestAmps - IdleAmps;
        return input.Leds == 0 || span <= 0 ? left >= 0 ? 1 : 0 : Math.Clamp(left / span, 0, 1);
    }

    /// <summary>Drop along the ring from a feed to the LED farthest from one, planned brightness and strongest dies, V.</summary>
    public required double RingDropVolts { get; init; }

    /// <summary>The same at full white, V.</summary>
    public required double FullRingDropVolts { get; init; }

    /// <summary>Evenly spread feeds that the ring needs at the planned brightness.</summary>
    public required int FeedsNeeded { get; init; }
}

/// <summary>
/// Power of a board. LEDs are taken to draw in proportion to brightness above what they draw when dark, all of them white at once.
/// It errs on the high side: animations seldom show all LEDs white.
/// </summary>
public static class PowerModel
{
    /// <summary>Between two LEDs, out and back, ohm. Source: measured on a strip; typical, rings with wide copper have less.</summary>
    public const double TypicalSegmentOhms = 0.006;

    /// <summary>Share of a supply that is used: cable drop, ageing and radio peaks want the rest. Source: trade practice.</summary>
    public const double SupplyUse = 0.8;

    /// <summary>Drop that may build up between feed and farthest LED, V: 5 % of 5 V. Source: trade practice.</summary>
    public const double DropBudgetVolts = 0.25;

    /// <summary>Largest value of a firmware's brightness byte.</summary>
    public const int FullByte = 255;

    private const int MostFeeds = 16;

    /// <summary>Everything about a board's current.</summary>
    public static PowerResult Of(PowerInput input)
    {
        double Drawn(double full, double brightness) =>
            input.IdleAmps + (Math.Max(0, full - input.IdleAmps) * brightness) + input.OtherAmps;
        double allowed = Math.Min(SupplyUse * input.SupplyAmps, input.ContactAmps);
        double span = Math.Max(0, input.StrongestAmps - input.IdleAmps);
        double left = allowed - input.IdleAmps - input.OtherAmps;
        double perLed(double brightness) => input.Leds == 0 ? 0 : (Drawn(input.StrongestAmps, brightness) - input.OtherAmps) / input.Leds;
        double Spread(int feeds) => RingDrop(input.RingLeds, feeds, perLed(input.Brightness), input.SegmentOhms);
        double Drop(double brightness) => input.WidestArc is int arc
            ? ArcDrop(arc, perLed(brightness), input.SegmentOhms)
            : RingDrop(input.RingLeds, input.Feeds, perLed(brightness), input.SegmentOhms);
        return new PowerResult
        {
            FullWhiteAmps = Drawn(input.FullWhiteAmps, 1),
            StrongestAmps = Drawn(input.StrongestAmps, 1),
            PlannedAmps = Drawn(input.FullWhiteAmps, input.Brightness),
            PlannedStrongestAmps = Drawn(input.StrongestAmps, input.Brightness),
            MeanAmps = Drawn(input.FullWhiteAmps, input.Brightness * input.Duty),
            IdleAmps = input.IdleAmps + input.OtherAmps,
            AllowedAmps = allowed,
            AllowedBrightness = span <= 0 ? left >= 0 ? 1 : 0 : Math.Clamp(left / span, 0, 1),
            RingDropVolts = Drop(input.Brightness),
            FullRingDropVolts = Drop(1),
            FeedsNeeded = Enumerable.Range(1, MostFeeds).FirstOrDefault(feeds => Spread(feeds) <= DropBudgetVolts, MostFeeds),
        };
    }

    /// <summary>Drop from evenly spread feeds to the LED halfway between two of them on a closed ring, V.</summary>
    /// <param name="leds">LEDs on the ring.</param>
    /// <param name="feeds">Evenly spread feeds, at least 1.</param>
    /// <param name="ampsPerLed">A.</param>
    /// <param name="segmentOhms">Between two LEDs, out and back, ohm.</param>
    public static double RingDrop(int leds, int feeds, double ampsPerLed, double segmentOhms) =>
        ArcDrop((leds + Math.Max(1, feeds) - 1) / Math.Max(1, feeds), ampsPerLed, segmentOhms);

    /// <summary>
    /// Drop to the LED halfway along an arc that is fed at both ends, V: r i times the LEDs that hang behind each segment, summed.
    /// With n segments from feed to feed: r i n2 / 8 for even n, r i (n2 - 1) / 8 for odd n.
    /// </summary>
    /// <param name="segments">From feed to feed; on a ring of one feed as many as LEDs.</param>
    /// <param name="ampsPerLed">A.</param>
    /// <param name="segmentOhms">Between two LEDs, out and back, ohm.</param>
    public static double ArcDrop(int segments, double ampsPerLed, double segmentOhms) =>
        segmentOhms * ampsPerLed * (((double)segments * segments) - (segments % 2)) / 8;

    /// <summary>The firmware's brightness byte, 0 to 255, that never exceeds a share of full white.</summary>
    public static int FirmwareCap(double brightness) => (int)Math.Clamp(Math.Floor((brightness * FullByte) + Rounding), 0, FullByte);

    // A share that was written as a byte's fraction comes back as that byte.
    private const double Rounding = 1e-9;
}
