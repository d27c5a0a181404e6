using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Batteries;

namespace ShellForge.Planning.Floors;

/// <summary>A place on the floor for a battery's bay, before the heights are decided.</summary>
/// <param name="Size">Its section.</param>
/// <param name="At">Its middle.</param>
/// <param name="Along">Direction of the battery's length.</param>
/// <param name="Hanging">How far what hangs from the board over it reaches down, mm; 0 for nothing.</param>
/// <param name="Under">What that is; null for nothing.</param>
internal sealed record BatteryPlace(BatteryBaySize Size, Point2 At, Angle Along, double Hanging, string? Under)
{
    // Tried in so many directions over half a turn.
    private const int Directions = 12;

    /// <summary>Least room between floor and board over it, mm.</summary>
    public double BelowBoard => Size.Depth + Hanging;

    /// <summary>What it takes of the floor.</summary>
    public Region Taken => BatteryBayPlan.TakenAt(Size, At, Along);

    /// <summary>The best of the places for a bay; null where none is free.</summary>
    /// <param name="places">Where to look.</param>
    /// <param name="size">Section of the bay.</param>
    /// <param name="up">Direction that points up: a battery lies level first.</param>
    public static BatteryPlace? Best(PlacesUnderBoard places, BatteryBaySize size, Angle up) =>
        places.Best(Body(size, up)) is { } found ? new BatteryPlace(size, found.At, found.Way, found.Hanging, found.Under) : null;

    /// <summary>The bay as something that wants a place.</summary>
    public static FloorBody Body(BatteryBaySize size, Angle up) => new(
        way => BatteryBayPlan.TakenAt(size, Point2.Origin, way),
        size.Battery.Along is { } along ? [along]
            : [.. Enumerable.Range(0, Directions).Select(i => up + Angle.FromDegrees(90 + (i * 180.0 / Directions)))],
        size.Battery.At, size.Reach, size.TakenArea);
}
