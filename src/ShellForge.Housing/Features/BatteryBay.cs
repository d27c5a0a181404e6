using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Batteries;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features;

/// <summary>
/// The bay of a battery: a block on the floor, from it troughs or pockets, the gap for the strap through its middle, and notches for wires.
/// Everything in it opens upwards; only the walls over the strap's gap are bridges.
/// </summary>
internal static class BatteryBay
{
    private const double Overlap = FeatureContribution.Overlap;

    /// <summary>The bay; nothing without a battery.</summary>
    public static IEnumerable<FeatureContribution> Of(HousingPlan plan)
    {
        if (plan.Bay is not { } bay)
        {
            yield break;
        }

        FaceTag tag = FaceNames.Tag(FaceFeature.BatteryBay);
        yield return FeatureContribution.Adds(
            PartNames.Tub, Shapes.Extrude(bay.Outline, bay.FloorTop - Overlap, bay.Rim).Tagged(tag));
        yield return FeatureContribution.Cuts(PartNames.Tub, Solid.Union([.. Rooms(bay), .. Strap(bay), .. Notches(bay)]).Tagged(tag));
    }

    private static IEnumerable<Solid> Rooms(BatteryBayPlan bay)
    {
        BatteryBaySize size = bay.Size;
        foreach (Point2 middle in bay.Middles)
        {
            if (size.IsRound)
            {
                yield return Trough(bay, middle);
                continue;
            }

            yield return Shapes.Extrude(
                PartEnvelope.Rectangle(middle, size.PocketLength, size.PocketWidth, bay.Along), bay.Seat, bay.Rim + Overlap);
            yield return Shapes.Loft(
                Corners(bay, middle, 0), bay.Rim - size.RimChamfer, Corners(bay, middle, size.RimChamfer + Overlap), bay.Rim + Overlap);
        }
    }

    // A half cylinder with upright sides over its axis.
    private static Solid Trough(BatteryBayPlan bay, Point2 middle)
    {
        double radius = bay.Size.PocketWidth / 2;
        var axis = new Point2(OutwardFrame.Across(middle, bay.Along), bay.Seat + radius);
        Region round = Region.Disc(axis, Ring.Hole(radius));
        Box2 wide = round.Bounds;
        double top = bay.Rim + Overlap;
        Region section = Region.HullOf(
        [
            .. round.Loops[0].Where(point => point.Y <= axis.Y), new Point2(wide.Min.X, top), new Point2(wide.Max.X, top),
        ]);
        double from = OutwardFrame.Along(bay.At, bay.Along) - (bay.Size.PocketLength / 2);
        return Shapes.Extrude(section, from, from + bay.Size.PocketLength).Moved(OutwardFrame.Facing(bay.Along));
    }

    // Under the battery and out through both walls; a cylinder's trough has its bottom where the strap runs, so it is open there.
    private static IEnumerable<Solid> Strap(BatteryBayPlan bay)
    {
        BatteryBaySize size = bay.Size;
        yield return Slot(bay);
        if (size.IsRound)
        {
            yield return Shapes.Extrude(
                PartEnvelope.Rectangle(bay.At, size.StrapGap, size.InnerWidth, bay.Along), bay.FloorTop, bay.Rim + Overlap);
        }
    }

    // Across the whole bay.
    private static Solid Slot(BatteryBayPlan bay)
    {
        BatteryBaySize size = bay.Size;
        return StrapSlot.Of(
            bay.At, bay.Along - Angle.FromDegrees(90), size.OuterWidth / 2, (bay.FloorTop, bay.Seat, size.SlotRise),
            (size.StrapGap, size.SlotRoof));
    }

    private static IEnumerable<Solid> Notches(BatteryBayPlan bay)
    {
        BatteryBaySize size = bay.Size;
        double reach = size.Wall + (2 * Overlap);
        double middle = (size.OuterLength / 2) - (size.Wall / 2);
        double[] ends = size.IsRound ? [middle, -middle] : [middle];
        return
            from end in ends
            from number in Enumerable.Range(0, size.Battery.Count)
            select Shapes.Extrude(
                PartEnvelope.Rectangle(bay.Point(end, bay.AcrossOf(number)), reach, size.WireNotch, bay.Along),
                bay.Seat, bay.Rim + Overlap);
    }

    private static ImmutableArray<Point2> Corners(BatteryBayPlan bay, Point2 middle, double wider)
    {
        Region outline = PartEnvelope.Rectangle(
            middle, bay.Size.PocketLength + (2 * wider), bay.Size.PocketWidth + (2 * wider), bay.Along);
        return outline.Loops[0];
    }
}
