using ShellForge.Board.Description;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Outlines;

namespace ShellForge.Planning.Floors;

/// <summary>What is free on and in the tub's floor, in plan, for mounts, vents, lettering and marks.</summary>
internal static class FloorRoom
{
    // Clear of posts and webs, mm.
    private const double Beside = 0.8;

    // Level floor beside a rounded edge, mm: two lines.
    private const double BesideEdge = 0.9;

    // Clear under parts and board, mm.
    private const double Under = 0.6;

    /// <summary>Where something may stand on the floor up to a height, clear of posts, the walls and what hangs from the board.</summary>
    /// <param name="draft">The tub.</param>
    /// <param name="top">z of its top.</param>
    public static Region Inside(HousingDraft draft, double top)
    {
        double board = draft.Stack.BoardBottom;
        IEnumerable<Region> parts = PartEnvelope.OnBottom(draft.File.Board)
            .Where(part => board - (part.To ?? PlanRules.UnknownHeight) - Under < top)
            .Select(part => part.Outline.Offset(Under));
        IEnumerable<Region> wires = draft.File.Board.Wires
            .Where(wire => wire.Side == BoardSide.Bottom && board - PlanRules.WireBlob - Under < top)
            .Select(wire => Region.Disc(wire.At, Ring.Hole((wire.Conductors * wire.Diameter) + Under)));
        return draft.Shell.Cavity.Offset(-Beside).Less(Region.Union([.. parts, .. wires, Posts(draft)]));
    }

    /// <summary>Where the outer floor may be cut or lettered without meeting a hole from above or the wall's edge.</summary>
    /// <param name="draft">The tub.</param>
    /// <param name="margin">From the outer edge, mm.</param>
    public static Region Outside(HousingDraft draft, double margin)
    {
        IEnumerable<Region> holes = draft.Bosses.Where(boss => boss.Hole is not null)
            .Select(boss => Region.Disc(boss.At, Ring.Hole((boss.Hole!.MouthDiameter / 2) + Beside)));
        IEnumerable<Region> openings = draft.Openings.Select(opening => opening.TakenOutside(draft.Shell));
        double edge = Math.Max(draft.Shell.FloorEdge?.Inset ?? 0, draft.Shell.FloorEdgeInBore?.Inset ?? 0);
        double beside = edge > 0 ? Math.Max(margin, edge + BesideEdge) : margin;
        return draft.Shell.Footprint.Offset(-beside)
            .Less(Region.Union([.. holes, .. openings, .. draft.CableExits.Select(exit => exit.TakenOutside.Offset(Beside))]));
    }

    private static Region Posts(HousingDraft draft)
    {
        IEnumerable<Region> bosses = draft.Bosses.SelectMany(boss => new[]
        {
            Region.Disc(boss.At, Ring.Hole((boss.Diameter / 2) + Beside)),
            Region.Union(boss.Webs).Offset(Beside),
        }.Concat(boss.Gussets.Select(gusset => Strips.Along(
            boss.At, gusset.Direction, gusset.Thickness + (2 * Beside), 0, (boss.Diameter / 2) + gusset.Foot + Beside))));
        IEnumerable<Region> saddles = draft.Saddles.Select(saddle => Strips.Along(
            saddle.Face, saddle.Faces, saddle.RestMax.Y - saddle.RestMin.Y + (2 * Beside),
            Math.Min(saddle.RestMin.X, saddle.StopU - saddle.Rib) - Beside, saddle.RestMax.X + Beside));
        IEnumerable<Region> openings = draft.Openings.Select(opening => opening.TakenInside.Offset(Beside));
        return Region.Union(
            [.. bosses, .. saddles, .. openings, draft.OnFloor.Offset(Beside),
                .. draft.CableExits.Select(exit => exit.TakenInside(draft.Shell, Beside))]);
    }
}
