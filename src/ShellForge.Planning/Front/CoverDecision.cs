using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Front;

/// <summary>Decides the cover's lip, its interruptions, and the seat that centres baffle and diffuser.</summary>
internal static class CoverDecision
{
    // Clear of parts and heads in plan, mm.
    private const double PartClearance = 0.5;

    // A stub of lip shorter than this is left out, mm.
    private const double ShortestLip = 3.0;

    // How far the seat reaches below the diffuser, mm: enough to hold the baffle's rim, no more.
    private const double SeatReach = 3.0;

    /// <summary>Shortest piece that joins the lip to a tongue, mm along the lip: a shorter one is an ear that holds nothing.</summary>
    private const double LeastBridge = 2.0;

    // A gap between seat and wall narrower than this is filled, mm: it could not be printed cleanly.
    private const double SmallestGap = 1.2;

    // What is thinner than this is left to the cover's own wall, mm.
    private const double ThinnestSeat = 0.4;

    // A seat that fills the way to the wall reaches into it by this, mm, so that both are one body.
    private const double IntoWall = 0.3;

    // A slit between seat and post narrower than this is filled, mm: lines bulge into it from either side.
    private const double WeldedShut = 0.4;

    // Clear above the LEDs, mm.
    private const double OverLeds = 0.6;

    private const int SeatLines = 2;
    private const int BarLines = 3;

    /// <summary>z of the lip's lower end.</summary>
    public static double LipBottom(HousingDraft draft) =>
        Math.Round(draft.Stack.PartingLine - draft.Lip.Overlap, 6, MidpointRounding.AwayFromZero);

    /// <summary>
    /// The lit window, posts taken out. A post that stands in the light alone gets a bar of bezel out to the window's edge.
    /// </summary>
    public static Region Window(HousingDraft draft, Region posts)
    {
        Region window = draft.Front.Window.Less(posts);
        if (posts.IsEmpty || window.IsEmpty)
        {
            return window;
        }

        double far = window.Loops.SelectMany(loop => loop).Max(point => point.Length) + 1;
        Region bars = Region.Union(draft.Shell.Footprint.Less(window).Parts
            .Where(part => posts.Contains(part))
            .Select(part => part.Bounds)
            .Select(box => new Point2((box.Min.X + box.Max.X) / 2, (box.Min.Y + box.Max.Y) / 2))
            .Select(middle => Strips.Radial(Angle.Of(middle), draft.Basis.Wall(BarLines), middle.Length, far)));
        return window.Less(bars);
    }

    /// <summary>The cover of a housing.</summary>
    public static Decided<CoverPlan> Decide(HousingDraft draft, CoverRoom room, BafflePlan? baffle, Region window, Region posts)
    {
        var reasons = new Reasons();
        double lipBottom = LipBottom(draft);
        Region lip = room.OuterLip.And(room.BoreLip);
        Region obstacles = LipObstacles(draft, lip, lipBottom).Intersect(room.Cavity.Offset(draft.Lip.Reach + draft.Lip.TongueReach));
        ToothPlan? tooth = baffle?.Tooth;
        double slack = draft.File.Print.Printer.SlotFit;
        Region slot = tooth is null ? Region.Empty : tooth.Outline.Offset(slack);
        Region breach = tooth is null ? Region.Empty : Breach(tooth, slot, slack, lip, draft.Basis.Wall(2));
        Region left = Printable(lip.Less(obstacles).Less(breach), [.. obstacles.Parts, breach], draft.Basis, draft.Lip.Thickness);
        if (left.Area < lip.Area - (draft.Lip.Thickness * PartClearance))
        {
            reasons.Choice(
                "cover.lip.interruptions", $"{Reasons.Mm(Math.Round(100 * (1 - (left.Area / lip.Area))))} %", Reasons.Rule,
                "left out where parts, plugs, screw heads, bosses or the baffle's tooth reach into it");
        }

        (Region seat, double seatBottom) = Seat(draft, room, baffle, posts);
        return reasons.Of(new CoverPlan
        {
            Footprint = draft.Shell.Footprint,
            Cavity = room.Cavity,
            Window = window,
            BezelThickness = draft.Front.BezelThickness,
            Lip = left,
            LipGap = draft.Lip.Gap,
            LipThickness = draft.Lip.Thickness,
            TongueGap = draft.Lip.TongueGap,
            LeastBridge = LeastBridge,
            LipBottom = lipBottom,
            Bars = draft.Front.Bars,
            Seat = Printable(seat.Less(slot), [slot], draft.Basis, draft.Basis.Wall(SeatLines)),
            SeatBottom = seatBottom,
            ToothSlot = slot,
            ToothSlotTop = InnerCeiling(draft),
        });
    }

    /// <summary>z of the lower end of what hangs from the bezel round baffle and diffuser.</summary>
    public static double SeatBottom(HousingDraft draft)
    {
        double ceiling = InnerCeiling(draft);
        double lowest = Math.Max(draft.Stack.LedWindow + OverLeds, draft.Stack.PartingLine);
        return Math.Min(ceiling, Math.Max(draft.Basis.Down(ceiling - SeatReach), draft.Basis.Up(lowest)));
    }

    /// <summary>z of the lowest face above the baffle's rims: bezel, or the edge of a diffuser behind it.</summary>
    public static double InnerCeiling(HousingDraft draft) =>
        draft.Front.Diffuser.Fit is DiffuserFit.DropIn or DiffuserFit.CutSheet
            ? draft.Stack.DiffuserInner
            : draft.Stack.Front - draft.Front.BezelThickness;

    private static Region LipObstacles(HousingDraft draft, Region lip, double lipBottom)
    {
        double above = lipBottom - draft.Stack.BoardTop;
        IEnumerable<Region> parts = PartEnvelope.OnTop(draft.File.Board)
            .Where(part => (part.To ?? PlanRules.UnknownHeight) > above - PartClearance)
            .Select(part => part.Outline);
        IEnumerable<Region> sunk = draft.File.Board.Parts
            .Where(part => part.Mounted == PartMounting.MidBoard)
            .Select(PartEnvelope.OutlineOf);
        IEnumerable<Region> heads = draft.Screws
            .Where(screw => screw.Use == ScrewUse.Board && screw.FromFront)
            .Select(screw => Around(screw.At, Covered(screw) + (2 * PartClearance)));
        IEnumerable<Region> bosses = draft.Bosses
            .Where(boss => boss.Top > lipBottom - PartClearance)
            .Select(boss => Around(boss.At, boss.Diameter + (2 * PartClearance)));
        IEnumerable<Region> webs = draft.Bosses
            .Where(boss => boss.WebTop > lipBottom - PartClearance)
            .SelectMany(boss => boss.Webs);

        // A mouth behind the wall is reached under the parting line, and there the lip hangs before it.
        IEnumerable<Region> plugs = draft.Openings.Select(opening =>
            opening.ThroughLip(draft.File.Board, lipBottom));

        // Below a lit wall the lip hangs beside what is on the board's back.
        IEnumerable<Region> below = lipBottom > draft.Stack.BoardBottom ? [] : PartEnvelope.OnBottom(draft.File.Board)
            .Select(part => part.Outline);

        // Most LEDs are far from the lip; to grow them all would take a fifth of the plan's time.
        IEnumerable<Region> near = [.. parts, .. sunk, .. webs, .. below];
        return Region.Union(
            [.. near.Where(outline => !lip.IsEmpty && outline.Distance(lip) <= PartClearance)
                .Select(outline => outline.Offset(PartClearance)), .. heads, .. bosses, .. plugs]);
    }

    private static double Covered(ScrewJointPlan screw) =>
        screw.Washer ? Math.Max(screw.Screw.WasherDiameter, screw.Screw.HeadDiameter) : screw.Screw.HeadDiameter;

    private static Region Around(Point2 at, double diameter) => Region.Disc(at, Ring.Hole(diameter / 2));

    // Where the tooth's slot leaves less than two lines of the lip, the lip stops: a film there, or a bead on nothing, would not print.
    private static Region Breach(ToothPlan tooth, Region slot, double slack, Region lip, double leastWall)
    {
        Region behind = lip.Intersect(Strips.Radial(tooth.At, tooth.Width, tooth.Tip + slack, tooth.Tip + slack + leastWall));
        return behind.Area >= tooth.Width * (leastWall - Layers.Slack) || lip.Intersect(slot).IsEmpty
            ? Region.Empty
            : Strips.Radial(tooth.At, tooth.Width + (2 * slack), tooth.Root, Strips.PastRim(lip));
    }

    private static Region WithoutStubs(Region lip, double thickness) =>
        Region.Union(lip.Parts.Where(part => part.Area >= thickness * ShortestLip));

    private static (Region Seat, double Bottom) Seat(HousingDraft draft, CoverRoom room, BafflePlan? baffle, Region posts)
    {
        double bottom = SeatBottom(draft);
        bool dropIn = draft.Front.Diffuser.Fit is DiffuserFit.DropIn or DiffuserFit.CutSheet;
        BaffleSection section = BaffleSection.Of(draft.File.Print.Printer);
        Region inside = Region.Union(
            dropIn ? draft.Front.Diffuser.Outline.Filled().Offset(section.SeatGap) : Region.Empty,
            baffle is null ? Region.Empty : baffle.Surrounded.Offset(section.SeatGap));
        if (inside.IsEmpty || bottom >= InnerCeiling(draft) - Layers.Slack)
        {
            return (Region.Empty, bottom);
        }

        // Between two turns of a baffle that lie closer than a ring is thick, none would print.
        double ring = draft.Basis.Wall(SeatLines);
        Region closed = inside.Offset(ring / 2).Offset(-ring / 2);
        inside = closed.Less(inside).Parts.Any(piece => piece.Area > ring * ring) ? inside.And(closed) : inside;
        Region outerWall = room.Cavity.Filled();
        Region between = outerWall.Less(inside);
        Region seat = IsNarrow(between, ThinnestSeat) ? Region.Empty
            : IsNarrow(between, ring + SmallestGap) ? outerWall.Offset(IntoWall).Less(inside)
            : WithoutWedges(inside.Offset(ring).Less(inside).Intersect(outerWall), between, inside);

        // Parts and screw heads that stand higher than the seat's end.
        double above = bottom - draft.Stack.BoardTop;
        IEnumerable<Region> parts = PartEnvelope.OnTop(draft.File.Board)
            .Where(part => (part.To ?? PlanRules.UnknownHeight) > above - PartClearance)
            .Select(part => part.Outline.Offset(PartClearance));
        IEnumerable<Region> heads = draft.Screws
            .Where(screw => screw.Use == ScrewUse.Board && screw.FromFront && BaffleNotches.TopOfHead(screw) > bottom - PartClearance)
            .Select(screw => Around(screw.At, Covered(screw) + (2 * PartClearance)));
        Region[] cuts = [.. parts, .. heads];
        Region cut = Printable(seat.Less(Region.Union(cuts)), cuts, draft.Basis, ring);
        return (cut.And(SlitsBeside(cut, posts).Less(inside).Less(Region.Union(cuts)).Intersect(outerWall)), bottom);
    }

    // Where the seat comes near the wall at a slant, the wedge between them is filled as far as it could not be printed cleanly.
    private static Region WithoutWedges(Region seat, Region between, Region inside)
    {
        const double half = SmallestGap / 2;
        Region pocket = between.Less(seat);
        Region narrow = pocket.Less(pocket.Offset(-half).Offset(half + IntoWall));
        Region[] wedges = [.. narrow.Parts.Where(piece => piece.Perimeter / 2 > SmallestGap)];
        return wedges.Length == 0 ? seat : seat.And(Region.Union(wedges).Offset(IntoWall).Less(inside));
    }

    // What is left between the seat and a closure screw's post, where it would be welded shut in print. It reaches into both.
    private static Region SlitsBeside(Region seat, Region posts)
    {
        if (seat.IsEmpty || posts.IsEmpty || seat.Distance(posts) >= WeldedShut)
        {
            return Region.Empty;
        }

        double half = WeldedShut / 2;
        return posts.Offset(half).Intersect(seat.Offset(half)).Offset(half);
    }

    // What cuts leave of a rim, without what is too narrow or too short to be printed.
    private static Region Printable(Region left, IEnumerable<Region> cuts, PrintBasis basis, double thickness) =>
        WithoutStubs(left.Less(Slivers.Beside(left, cuts, basis.LineWidth)), thickness);

    // Whether no disc of this diameter fits anywhere.
    private static bool IsNarrow(Region region, double width) => region.IsEmpty || region.Offset(-width / 2).IsEmpty;
}
