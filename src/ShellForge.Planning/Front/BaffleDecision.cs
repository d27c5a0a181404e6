using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Front;

/// <summary>
/// Decides the light baffle, a part of its own: it stands on the board, the cover centres it by its rim, keys it by a tooth and presses
/// it down through crush ribs. Under a cover that turns it stays in the cover and hangs clear of everything on the board.
/// </summary>
internal static class BaffleDecision
{
    // Lower than this it shades nothing, mm.
    private const double LeastHeight = 1.5;

    // Clear of parts, heads and LEDs above a part, mm.
    private const double Above = 0.4;

    // The tooth: along the rim, and past the seat's gap, mm.
    private const double ToothWidth = 3.0;
    private const double ToothReach = 0.9;

    // Lowest bridge between rims, mm: what hangs over the LEDs has to be strong by itself.
    private const double LowestBridge = 1.0;

    // A bridge with less than this over a notch is cut in two by it, mm.
    private const double LeastOverNotch = 0.8;

    // A tooth lower than this keys nothing, mm.
    private const double ToothLeast = 1.6;

    private const double DarkReflectance = 0.3;
    private const double WhiteReflectance = 0.6;

    /// <summary>The baffle of a housing; null where none fits or none is of use.</summary>
    public static Decided<BafflePlan?> Decide(HousingDraft draft, RimSectors rim, KeyPlan key, Region posts, Region window)
    {
        (CoverRoom room, bool turns) = (draft.Room, draft.Closure.TurnsCover);
        var reasons = new Reasons();
        BoardFile file = draft.File;
        if (window.IsEmpty || !LitBand.Circles(file.Board).Any())
        {
            reasons.Choice("baffle", "none", Reasons.Rule, "no LED shines through the front");
            return reasons.Of<BafflePlan?>(null);
        }

        NoteUnmet(draft, reasons);
        BaffleSection section = BaffleSection.Of(draft.File.Print.Printer);
        bool cells = file.Housing.Light.Look == LightLook.Pixels;
        double top = draft.Basis.Down(CoverDecision.InnerCeiling(draft) - section.TopGap);
        DiffuserFit fit = draft.Front.Diffuser.Fit;
        BaffleWalls walls = LitWindow.Of(file, room, section, fit, draft.Closure.PostsInBore(file.Board)).Walls(draft, section, cells);
        Region inside = room.Cavity.Offset(-section.SeatGap);
        Region whole = walls.Region.Intersect(inside);
        Region bridges = Within(walls.Bridges(file.Board, cells), inside).Less(posts);
        double bottom = turns ? draft.Basis.Up(Highest(draft, whole) + Above) : draft.Stack.BoardTop;
        ImmutableArray<BaffleNotch> notches = turns ? [] : BaffleNotches.Over(draft, whole, top);
        double bridgesTop = TopOfBridges(draft.Basis, draft.Stack.LedWindow, bottom);
        bridges = bridges.Less(BaffleNotches.Through(notches, bridgesTop - LeastOverNotch));
        FineWalls fine = FineWalls.Mended(draft, whole.And(bridges), posts, notches, inside);
        Region surrounded = whole.Filled();
        (whole, notches) = (whole.And(fine.Thicker), fine.Notches);
        Region wanted = whole.And(bridges).Less(posts).Less(fine.LeftOut);
        Region through = BaffleNotches.Through(notches, top);
        (Region withBridges, Region over) = (wanted.Less(through), wanted.Intersect(whole).Less(through));
        notches = Carried(draft, notches, z => z < bridgesTop ? withBridges : over, top, section.Wall);
        Region joined = BaffleNotches.Largest(wanted.Less(BaffleNotches.Through(notches, top)));
        Region standing = OutlineOffsets.WithoutSlivers(whole.Intersect(joined));
        if (standing.IsEmpty || top - bottom < LeastHeight)
        {
            reasons.Choice("baffle", "none", Reasons.Rule, "parts and walls leave no room for one");
            if (cells)
            {
                double left = standing.IsEmpty ? 0 : Math.Max(0, top - bottom);
                reasons.Replace(
                    "cells-without-room", "baffle",
                    $"pixels are not kept apart: between what stands on the board and the front {Reasons.Mm(left)} mm are left for walls "
                        + $"of cells; planned without a baffle",
                    left, LeastHeight, "mm", new Point3(0, 0, bottom),
                    turns ? "a closure that does not turn the baffle over the board, a larger distance of the diffuser, or look: blend"
                        : "a larger distance of the diffuser, or look: blend");
            }

            return reasons.Of<BafflePlan?>(null);
        }

        double windowTop = draft.Basis.Down(draft.Stack.DiffuserInner - section.TopGap);
        double inset = section.TopGap + (draft.Front.Diffuser.Lap?.Inset ?? 0);
        Region inWindow = windowTop > top + Layers.Slack
            ? BaffleNotches.WithoutCrumbs(
                standing.Intersect(window.Offset(-inset)).Less(draft.Front.Bars.Offset(section.TopGap)), section.Wall)
            : Region.Empty;
        (FilamentProfile filament, string why) = FilamentOf(file, cells);
        reasons.Choice("baffle", cells ? "cells" : "rims", Reasons.Origin(file, "housing.light.look"),
            cells ? "one cell for each LED keeps pixels apart" : "rims only: the light shall blend");
        reasons.Choice("baffle.filament", filament.Name, Reasons.Origin(file, "print.baffle"), why);
        reasons.Length("baffle.wall", section.Wall, Reasons.Rule, "2 lines");
        reasons.Length("baffle.bottom", bottom, Reasons.Rule,
            turns ? "clear of everything on the board, since it turns with the cover" : "it stands on the board");
        reasons.Length("baffle.top", top, Reasons.Rule, $"{Reasons.Mm(section.TopGap)} below what lies over its rims");
        if (!notches.IsEmpty)
        {
            reasons.Choice("baffle.notches", notches.Count(notch => !notch.IsSlope).ToString(CultureInfo.InvariantCulture), Reasons.Rule,
                "rooms in its feet over " + string.Join(", ", notches.Select(notch => notch.For).Distinct().Take(8)));
        }

        if (!fine.Thicker.IsEmpty || !fine.LeftOut.IsEmpty)
        {
            reasons.Choice("baffle.fine-walls", fine.Thicker.IsEmpty ? "left out" : "thickened", Reasons.Rule,
                "what notches and posts leave of a wall is a line wide at least, or goes: a slicer drops what is finer");
        }

        ToothPlan? tooth = turns
            ? null
            : Tooth(draft, new ToothPlace(walls, standing, top), rim, key, reasons);
        return reasons.Of<BafflePlan?>(new BafflePlan
        {
            Cells = cells,
            Walls = standing,
            Surrounded = surrounded,
            Wall = section.Wall,
            Bottom = bottom,
            Top = top,
            Notches = notches,
            InWindow = inWindow,
            InWindowTop = windowTop,
            Bridges = bridges.Intersect(joined),
            BridgesTop = bridgesTop,
            CrushRibs = turns ? [] : walls.CrushRibs(standing, draft.Basis.LineWidth),
            CrushHeight = Math.Round(CoverDecision.InnerCeiling(draft) - top + section.PressDown, 6),
            GripRibs = turns ? walls.GripRibs(standing, section.SeatGap, draft.Basis.LineWidth) : [],
            Tooth = tooth,
            Filament = filament,
        });
    }

    // Notches with slopes over those whose roofs would hang in the air; a baffle that they part stays as it was.
    private static ImmutableArray<BaffleNotch> Carried(
        HousingDraft draft, ImmutableArray<BaffleNotch> notches, Func<double, Region> walls, double top, double wall)
    {
        ImmutableArray<BaffleNotch> slopes = CarriedRoofs.Over(draft, walls, notches, top);
        Region before = BaffleNotches.Largest(walls(0)).Less(BaffleNotches.Through(slopes, top));
        return BaffleNotches.WithoutCrumbs(before, wall).Parts.Length > 1 ? notches : [.. notches, .. slopes];
    }

    // A straight bridge from rim to rim may cut across an inner corner of the walls.
    private static Region Within(Region bridges, Region room) => room.Contains(bridges) ? bridges : bridges.Intersect(room);

    private static void NoteUnmet(HousingDraft draft, Reasons reasons)
    {
        var at = new Point3(0, 0, draft.Stack.LedWindow);
        if (draft.File.Housing.BaffleJoined)
        {
            reasons.Replace(
                "baffle-not-joined", "baffle",
                "The baffle is a part of its own, keyed and pressed down by the cover: joined to it, it could not be printed of another "
                    + "filament nor face down with it.",
                0, 1, "", at, "leave out 'baffle: joined'");
        }
    }

    /// <summary>z that bridges between rims reach at most: those of a baffle that turns pass over all that stands on the board.</summary>
    public static double TopOfBridges(ClosureTraits closure, PrintBasis basis, FrontLimits limits) => TopOfBridges(
        basis, limits.LedWindow, closure.TurnsCover ? basis.Up(limits.Tallest + Above) : limits.BoardTop);

    private static double TopOfBridges(PrintBasis basis, double window, double bottom) =>
        Math.Max(basis.Down(window), basis.Up(bottom + LowestBridge));

    /// <summary>What the baffle is printed of, and why.</summary>
    public static (FilamentProfile Filament, string Why) FilamentOf(BoardFile file, bool cells)
    {
        FilamentProfile shell = file.Print.Shell;
        FilamentProfile diffuser = file.Print.Diffuser;
        return file.Print.Baffle is FilamentProfile asked ? (asked, "as asked")
            : cells ? (shell, shell.Reflectance < DarkReflectance
                ? "black walls keep pixels apart"
                : "as the shell; black would keep pixels apart better")
            : diffuser.Reflectance < WhiteReflectance ? (shell, "as the shell; white would throw more light back")
            : shell.Absorbs && SeenThrough(file) is { } opening
                ? (shell, $"as the shell: white walls would be seen to glow through the opening for {opening}")
            : (diffuser, "white walls throw light back and mix it");
    }

    // What opens the wall over the board, where rims stand right behind it: a connector on the LED side, or an opening of the maker's own.
    private static string? SeenThrough(BoardFile file)
    {
        BoardPart[] onTop = [.. file.Board.Parts.Where(part => part.Side == BoardSide.Top)];
        bool IsOpen(BoardPart part) => part.Mouth is not null
            && (part.Port == PortWish.Open
                || (part.Port == PortWish.Unsaid && file.Housing.Cables.OfType<ConnectorCable>().Any(cable => cable.PartRef == part.Ref)));
        return onTop.FirstOrDefault(IsOpen)?.Ref
            ?? file.Housing.Openings.FirstOrDefault(opening => opening.In == OpenedSide.Wall
                && (opening.OverBoard > 0 || onTop.Any(part => part.Ref == opening.PartRef)))?.Name;
    }

    // Highest thing on the board that a turning baffle passes over: radii count, directions don't.
    private static double Highest(HousingDraft draft, Region walls)
    {
        Box2 bounds = walls.Bounds;
        double reach = Math.Max(bounds.Max.X, bounds.Max.Y);
        double tallest = PartEnvelope.OnTop(draft.File.Board)
            .Where(part => part.Outline.Distance(Point2.Origin) < reach)
            .Select(part => draft.Stack.BoardTop + (part.To ?? PlanRules.UnknownHeight))
            .DefaultIfEmpty(draft.Stack.BoardTop).Max();
        double head =
            draft.Screws.Where(
                screw => screw.Use == ScrewUse.Board && screw.FromFront && screw.At.Length < reach + screw.Screw.HeadDiameter)
            .Select(BaffleNotches.TopOfHead).DefaultIfEmpty(tallest).Max();
        return Math.Max(tallest, head);
    }

    // What a tooth stands on: the baffle's walls as laid out and as far as they stand, and z of its top.
    private sealed record ToothPlace(BaffleWalls Walls, Region Standing, double Top);

    private static ToothPlan? Tooth(HousingDraft draft, ToothPlace place, RimSectors rim, KeyPlan key, Reasons reasons)
    {
        double bottom = CoverDecision.SeatBottom(draft);
        RimSectors taken = key.Rib is { } rib ? rim.With(new RimSector(key.At, rib.Width, "key", false)) : rim;
        ToothPlan? tooth = place.Top - bottom < ToothLeast ? null : place.Walls.Tooth(new ToothWish(
            key.At, taken, ToothWidth, BaffleSection.Of(draft.File.Print.Printer).SeatGap, ToothReach, bottom), place.Standing);
        if (tooth is null)
        {
            bool shaped = draft.Front.Diffuser.Field is not null;
            reasons.Choice("baffle.key", shaped ? "by the shape of its rim" : "by the LEDs in its cells", Reasons.Rule,
                shaped ? "its rim follows the lit window, and so does the seat in the cover" : "no room for a tooth on its rim");
            return null;
        }

        reasons.Choice("baffle.key", $"tooth at {Reasons.Mm(Math.Round(tooth.At.Degrees, 1))} degrees", Reasons.Rule,
            "in a slot of the cover, away from the cover's own key");
        return tooth;
    }
}
