using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Outlines;

namespace ShellForge.Planning.Mounts;

/// <summary>
/// The side view (y, z) of a stand's cheek: it stands on the table within the straight side of the band and rises from it, rounded, its
/// middle left open.
/// </summary>
internal static class StandSide
{
    // Rounding of the outline's corners, and of the notch's mouth, mm.
    private const double Round = 2;
    private const double MouthRound = 0.8;

    // Cut off a rounded end, mm.
    private const double Flattened = 0.4;

    // Filled up of the notch's lowest corner at least, mm: less than the gap round the rim leaves there.
    private const double CornerFill = 0.2;

    // Past the ends of band and notch, mm: what is cut there crosses it cleanly.
    private const double Past = 6;

    // Width of the frame that is left round a cheek's opening, and the least opening, mm.
    private const double Frame = 6.5;
    private const double LeastOpening = 8;
    private const double OpeningRound = 1.5;

    // Taken off the opening's peak at least, mm: it is then wider than a line.
    private const double PeakOff = 0.5;

    // The opening's roof leans so far from the vertical: it prints without support on any printer.
    private const double RoofDegrees = 38;

    /// <summary>The side view.</summary>
    /// <param name="layout">Where the housing is held.</param>
    /// <param name="rest">v of the rim over this cheek.</param>
    /// <param name="lip">Height of the front lip over it, mm.</param>
    /// <param name="sizes">Gap round the rim, thickness of lip and arm, mm.</param>
    public static Region Of(StandLayout layout, double rest, double lip, (double Gap, double Lip, double Arm) sizes)
    {
        double front = layout.Given.Front + sizes.Gap;
        double half = layout.Depth / 2;
        double inner = half - layout.Corner;
        double band = layout.BandHeight;

        // An arm that stands out over the foot leans out from the band's top: lower down it would pass the band's round corner.
        Region cheek = Region.Rectangle(new Point2(-inner, -Past), new Point2(inner, band)).And(Region.HullOf(
        [
            new Point2(-inner, band), new Point2(inner, band),
            layout.At(rest - sizes.Lip, front + sizes.Lip), layout.At(rest + lip, front + sizes.Lip), layout.At(rest + lip, front / 2),
            layout.At(layout.ArmTop, -sizes.Gap), layout.At(layout.ArmTop, -sizes.Gap - sizes.Arm),
        ]));

        // Nothing stands before the housing but the lip.
        double over = layout.ArmTop + Past;
        Region before = Region.HullOf(
        [
            layout.At(rest + lip, front / 2), layout.At(over, front / 2), layout.At(rest + lip, front + half + Past),
            layout.At(over, front + half + Past),
        ]);
        Region notch = Region.HullOf(
        [
            layout.At(rest - sizes.Gap, -sizes.Gap), layout.At(rest - sizes.Gap, front), layout.At(over, -sizes.Gap),
            layout.At(over, front),
        ]);

        // Its lowest corner is filled up to a whole layer: a slot as narrow as that would close while printing.
        notch = notch.Less(Region.Rectangle(
            notch.Bounds.Min, new Point2(notch.Bounds.Max.X, layout.Given.Basis.Up(notch.Bounds.Min.Y + CornerFill))));
        Region whole = cheek.Less(before).Offset(-Round).Offset(Round);
        Region above = Region.Rectangle(new Point2(-half - layout.Height, 0), new Point2(half + layout.Height, layout.Height + Past));
        Region side = whole.Less(notch).Offset(-MouthRound).Offset(MouthRound).Intersect(above);
        Region opening = Opening(side.Intersect(Region.Rectangle(new Point2(-inner, 0), new Point2(inner, layout.Height + Past))), band,
            layout.Given.Basis);
        double between = layout.At(rest, front / 2).X;
        Region ends = Above(side, side.Bounds.Min.X - 1, between, layout.Given.Basis)
            .And(Above(side, between, side.Bounds.Max.X + 1, layout.Given.Basis));
        return OutlineOffsets.WithoutSlivers(side.Less(opening).Less(ends));
    }

    // What is cut off the rounded end of lip or arm, so that its last layer is a line wide.
    private static Region Above(Region side, double fromY, double toY, PrintBasis basis)
    {
        Region piece = side.Intersect(Region.Rectangle(new Point2(fromY, -Past), new Point2(toY, side.Bounds.Max.Y + 1)));
        return Region.Rectangle(new Point2(fromY, basis.Down(piece.Bounds.Max.Y - Flattened)), new Point2(toY, side.Bounds.Max.Y + 1));
    }

    // The largest opening with a roof of two slopes in what the frame leaves.
    private static Region Opening(Region cheek, double band, PrintBasis basis)
    {
        Region room = cheek.Offset(-Frame);
        if (room.IsEmpty)
        {
            return Region.Empty;
        }

        const double step = 2;
        double bottom = Math.Max(band, room.Bounds.Min.Y);
        Angle lean = Angle.FromDegrees(RoofDegrees);
        Region best = Region.Empty;
        for (double middle = room.Bounds.Min.X; middle <= room.Bounds.Max.X; middle += step)
        {
            for (double half = LeastOpening / 2; middle - half >= room.Bounds.Min.X && middle + half <= room.Bounds.Max.X; half += step)
            {
                double roof = half * lean.Cos / lean.Sin;
                for (double side = room.Bounds.Max.Y - roof; side > bottom + 1
                    && (side - bottom + (roof / 2)) * 2 * half > best.Area; side -= step)
                {
                    Region tried = Region.Polygon(
                    [
                        Lattice.Snap(new Point2(middle - half, bottom)), Lattice.Snap(new Point2(middle + half, bottom)),
                        Lattice.Snap(new Point2(middle + half, side)),
                        Lattice.Snap(new Point2(middle, side + roof)), Lattice.Snap(new Point2(middle - half, side)),
                    ]);
                    if (room.Contains(tried))
                    {
                        best = tried;
                        break;
                    }
                }
            }
        }

        if (best.IsEmpty)
        {
            return best;
        }

        // Its top ends level at a layer: what narrows to a point closes while printing, and so short a bridge holds. Its lower corners are
        // rounded; an arc at the top would end level, over more air.
        best = best.Less(Region.Rectangle(
            new Point2(best.Bounds.Min.X, basis.Down(best.Bounds.Max.Y - PeakOff)), best.Bounds.Max + new Point2(0, 1)));
        return best.Offset(-OpeningRound).Offset(OpeningRound).And(best.Intersect(
            Region.Rectangle(new Point2(best.Bounds.Min.X - 1, bottom + OpeningRound + 0.5),
                new Point2(best.Bounds.Max.X + 1, best.Bounds.Max.Y + 1))));
    }
}
