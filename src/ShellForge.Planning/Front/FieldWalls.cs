using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Front;

/// <summary>Walls round a window that follows its LEDs: rims along its edges, and walls halfway between LEDs.</summary>
/// <param name="Region">All walls in plan.</param>
/// <param name="Wall">Wall thickness, mm.</param>
/// <param name="Inside">What the rims surround.</param>
internal sealed record FieldWalls(Region Region, double Wall, Region Inside) : BaffleWalls(Region, Wall)
{
    // How far rims stand back behind the bezel so that they are not seen, mm.
    private const double RimSet = 0.6;

    // Bodies that join reach into each other by this, mm.
    private const double Overlap = 0.2;

    // Bridges stay off LEDs and what stands beside them, mm; up to so many hold an island.
    private const double BridgeClearance = 0.25;
    private const int BridgesOfIsland = 3;

    // Places for bridges and ribs are looked for this far apart along the rim, mm.
    private const double Apart = 2;

    // Ribs that press the baffle down, and ribs by which it stays in a cover that turns: how many, how long or wide, how far they press,
    // mm.
    private const int CrushRibCount = 8;
    private const double CrushRibLength = 2.0;
    private const int GripRibCount = 6;
    private const double GripRibWidth = 0.6;
    private const double GripRoot = 0.4;
    private const double GripPress = 0.1;

    /// <summary>The walls for a draft.</summary>
    /// <param name="draft">The draft.</param>
    /// <param name="field">The LEDs.</param>
    /// <param name="window">The lit window.</param>
    /// <param name="section">The baffle's walls.</param>
    /// <param name="cells">Whether every LED has a cell.</param>
    public static FieldWalls Of(HousingDraft draft, LedFieldPlan field, Region window, BaffleSection section, bool cells)
    {
        Region inside = window.Offset(RimSet).Intersect(draft.Room.Cavity.Offset(-section.SeatGap - section.Wall));
        Region rims = inside.Offset(section.Wall).Less(inside);
        Region walls = cells ? rims.And(LedCells.Walls(field, inside.Offset(Overlap), section.Wall)) : rims;
        return new FieldWalls(walls.And(Ties(walls, inside, draft, section)), section.Wall, inside);
    }

    /// <inheritdoc />
    public override Region Bridges(CircuitBoard board, bool cells)
    {
        Region taken = Region.Union(PartEnvelope.OnTop(board).Select(part => part.Outline));
        Region joined = Region;
        Region bridges = Region.Empty;
        for (int tries = Region.Parts.Length; tries > 0 && joined.Parts.Length > 1; tries--)
        {
            Region island = joined.Parts.MinBy(part => part.Area)!;
            Region rest = Region.Union(joined.Parts.Where(part => !part.Equals(island)));
            Region chosen = Joins.Spread(island, rest, Wall, taken, BridgeClearance, BridgesOfIsland);
            bridges = bridges.And(chosen);
            joined = chosen.IsEmpty ? rest : joined.And(chosen);
        }

        return bridges;
    }

    /// <inheritdoc />
    public override ToothPlan? Tooth(ToothWish wish, Region standing) => null;

    /// <inheritdoc />
    public override ImmutableArray<Region> CrushRibs(Region standing, double lineWidth)
    {
        double width = Math.Min(lineWidth, Wall - Overlap);
        return Spread(
            [
                .. OutlinePlaces.Along(Inside.Offset(Wall / 2), Apart)
                    .Select(place => PartEnvelope.Rectangle(place.At, CrushRibLength, width, place.Outward + Angle.FromDegrees(90)))
                    .Where(rib => standing.Contains(rib)),
            ],
            CrushRibCount);
    }

    /// <inheritdoc />
    public override ImmutableArray<Region> GripRibs(Region standing, double seatGap, double lineWidth)
    {
        double width = Math.Max(GripRibWidth, lineWidth);
        return Spread(
            [
                .. OutlinePlaces.Along(Inside.Offset(Wall), Apart)
                    .Select(place => Strips.Along(place.At, place.Outward, width, -GripRoot, seatGap + GripPress))
                    .Where(rib => !standing.Intersect(rib).IsEmpty),
            ],
            GripRibCount);
    }

    // So many of them, evenly along the rim.
    private static ImmutableArray<Region> Spread(Region[] all, int most) =>
        all.Length <= most ? [.. all] : [.. Enumerable.Range(0, most).Select(i => all[i * all.Length / most])];

    // Walls from one window's rim to the next, behind the bezel where they throw no shadow: a baffle is one part.
    private static Region Ties(Region walls, Region inside, HousingDraft draft, BaffleSection section)
    {
        Region room = draft.Room.Cavity.Offset(-section.SeatGap).Less(inside);
        Region[] windows = [.. inside.Parts];
        var joined = new List<Region> { windows.Length > 0 ? windows[0].Filled() : Region.Empty };
        var open = windows.Skip(1).Select(window => window.Filled()).ToList();
        Region ties = Region.Empty;
        while (open.Count > 0)
        {
            Region group = Region.Union(joined);
            Region next = open.MinBy(window => window.Distance(group))!;
            ties = ties.And(Joins.Shortest(next, group, section.Wall).Intersect(room));
            open.Remove(next);
            joined.Add(next);
        }

        return ties.Less(walls);
    }
}
