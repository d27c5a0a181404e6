using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;

namespace ShellForge.Housing.Features;

/// <summary>
/// The way of a strap over the floor, under what it holds; its roof is slanted up to a bridge where the whole of it would sag.
/// </summary>
internal static class StrapSlot
{
    /// <summary>The slot, to be cut.</summary>
    /// <param name="at">Its middle.</param>
    /// <param name="across">Its direction.</param>
    /// <param name="half">From its middle to the walls' outer faces, mm: it goes a little past them.</param>
    /// <param name="heights">Its floor, the top of its upright sides, and how far its roof lies over that, mm.</param>
    /// <param name="widths">Of the slot and of its level roof, mm.</param>
    public static Solid Of(
        Point2 at, Angle across, double half, (double Floor, double Sides, double Rise) heights, (double Slot, double Roof) widths)
    {
        double middle = OutwardFrame.Across(at, across);
        (double side, double roof) = (widths.Slot / 2, widths.Roof / 2);
        double top = heights.Sides + heights.Rise;
        Region section = Region.HullOf(
        [
            new Point2(middle - side, heights.Floor), new Point2(middle + side, heights.Floor),
            new Point2(middle + side, heights.Sides), new Point2(middle + roof, top),
            new Point2(middle - roof, top), new Point2(middle - side, heights.Sides),
        ]);
        double along = OutwardFrame.Along(at, across);
        double reach = half + FeatureContribution.Overlap;
        return Shapes.Extrude(section, along - reach, along + reach).Moved(OutwardFrame.Facing(across));
    }
}
