using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Edges;
using ShellForge.Planning.Holding;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;
using ShellForge.Planning.Posts;

namespace ShellForge.Planning.Holders;

/// <summary>
/// A printed ring over the board's rim, screwed to ears of the tub outside the board. It lies under the cover's lip, in the room that the
/// lip takes anyway, so that window and baffle keep clear of it.
/// </summary>
internal sealed class ClampForm : HoldTraits
{
    // Overlap that the ring has at least over the board's rim, mm, and where the board lies against the wall across. Typical: 1 to 2.
    private const double LeastOverlap = 1.0;
    private const double LeastAcross = 0.3;

    // Lines of a stiff ring; where parts stand near the rim it is narrower, and wider it is not made.
    private const int StiffLines = 3;
    private const int FewestLines = 2;
    private const int MostLines = 12;

    // Thickness of the ring, mm: ten layers of 0.2 bend by less than the board between the screws.
    private const double Thickness = 2.0;

    // Over a head in its pocket, under the cover, mm.
    private const double OverHead = 0.4;

    // Plastic of an ear round the head, mm; room in its pocket for the iron that sets the insert, mm from the axis; lines of wall round
    // that.
    private const double RoundHead = 0.4;
    private const double IronRoom = 3.4;
    private const int PocketLines = 4;

    // A bulge's boss stays off the face that it must not pass by this, mm.
    private const double OffRoom = 0.2;

    // A piece of ring narrower than this, in lines, is not printed.
    private const int LeastLines = 2;

    // Share of that width which is looked for: corners of a shrunken outline do not come back whole.
    private const double Soundness = 0.9;

    // Light of an LED without a baffle passes beside the ring up to this slope, across to along the axis.
    private const double LightSlope = 1.7;

    // Clear of the baffle's walls, mm.
    private const double BesideBaffle = 0.3;

    /// <inheritdoc />
    public override HoldKind Kind => HoldKind.Clamp;

    /// <inheritdoc />
    public override bool IsPossible(Given given) => given.File.Housing.Insert is not null && given.File.Housing.Screw is not null;

    /// <inheritdoc />
    public override double LipReach(Given given) =>
        Math.Round(given.File.Print.Printer.LooseFit + Width(given), 6);

    /// <inheritdoc />
    public override (string What, double Height)? BelowBoard(Given given, double gap) => null;

    /// <inheritdoc />
    public override IEnumerable<(string What, double Height)> OverBoard(Given given, double gap, LipSection lip)
    {
        double thick = Thick(given);
        yield return ("the clamp ring under the cover's lip", thick + lip.AboveBoard + lip.Overlap);
        yield return ("the heads of the clamp ring's screws", thick + given.File.Housing.Screw!.HeadHeight + OverHead);
    }

    /// <inheritdoc />
    public override HoldInPlan InPlan(Given given, ShellPlan shell, Reasons reasons)
    {
        BoardFile file = given.File;
        if (file.Housing.Light.Through == LightThrough.Wall)
        {
            reasons.Refuse("hold-without-place", "clamp ring",
                "Where the wall is lit nothing may stand at the board's rim: no clamp ring is planned.",
                0, LeastOverlap, "mm", default, "'hold: auto', or light through the front");
            return HoldForm.Nothing;
        }

        double overlap = Overlap(given, shell);
        if (overlap < shell.BoardEdgeGap + Layers.Slack)
        {
            (string name, double inside) = Near(file, 0) ?? ("", double.PositiveInfinity);
            bool crowded = inside < LeastOverlap + PlanRules.Beside;
            reasons.Refuse("hold-without-place", "clamp ring",
                $"The clamp ring would reach {Reasons.Mm(Math.Round(Math.Max(0, overlap), 2))} mm over the rim, with a gap of "
                    + $"{Reasons.Mm(shell.BoardEdgeGap)} mm round the board: the board slips out across, none is planned.",
                overlap, shell.BoardEdgeGap, "mm", default, crowded
                    ? $"'hold: auto', or {name} farther from the edge than its {Reasons.Mm(Math.Round(inside, 2))} mm"
                    : "'hold: auto', or a smaller 'clearance: {board-edge: ...}'");
            return HoldForm.Nothing;
        }

        ScrewProfile screw = file.Housing.Screw!;
        double boss = InsertHoleDecision.BossDiameter(file.Housing.Insert!, given.Basis);
        double ear = EarRadius(given);
        double pocket = ear + file.Print.Printer.LooseFit;
        double round = given.Basis.Wall(PocketLines);
        var size = new HoldSize(
            Math.Max(boss / 2, pocket + round) + EdgeDecision.AtScrews(given, round),
            Math.Max(boss / 2, screw.HeadDiameter / 2) + OffRoom, overlap, 2 * ear);
        var sites = new HoldSites(given, shell, size);
        ImmutableArray<RimPlace> places = sites.Chosen();
        if (places.IsEmpty)
        {
            reasons.Refuse("hold-without-place", "clamp ring",
                $"The clamp ring finds no three places for its screws round the board: {sites.Barred}.",
                0, 3, "places", default,
                $"leave {Reasons.Mm(Math.Round(overlap + PlanRules.Beside, 1))} mm of the rim free, or 'hold: auto'");
            return HoldForm.Nothing;
        }

        reasons.Choice("hold.clamp.screws", places.Length.ToString(CultureInfo.InvariantCulture), Reasons.Origin(file, "housing.hold"),
            "in ears outside the board, round its centre of mass");
        return new HoldInPlan(this, [.. places.Select(place =>
        {
            ShellLobe lobe = sites.Lobe(place, "screw of the clamp ring");
            return new HoldSite(place.Edge, place.Outward, lobe, Ear(place, lobe.At, ear, overlap).Offset(file.Print.Printer.LooseFit))
            {
                Post = new HoldPost(boss, Thick(given)),
            };
        })]);
    }

    /// <inheritdoc />
    public override HolderPlan? Plan(HousingDraft draft, FrontSide front, ClosurePlan closure, Reasons reasons)
    {
        Given given = draft.Given;
        double width = Width(given);
        double bottom = draft.Stack.BoardTop;
        double top = Math.Round(bottom + Thick(given), 6);
        CircuitBoard board = draft.File.Board;
        double overlap = Overlap(given, draft.Shell);
        Region outer = draft.Shell.Cavity.Filled().Offset(-draft.File.Print.Printer.LooseFit);
        Region inside = outer.Offset(-width);
        double ear = EarRadius(given);
        Region whole = outer.And(Region.Union(draft.Hold.Sites.Select(
            site => Ear(new RimPlace(site.Edge, site.Outward), site.Lobe.At, ear, overlap)))).Less(inside);
        double least = draft.Basis.Wall(LeastLines);
        Region left = whole.Less(Blocked(draft, front, closure, top));
        Region sound = left.Offset(-least * Soundness / 2).Offset(least * Soundness / 2).Intersect(left);
        Region kept = Region.Union(sound.Parts.Where(part => draft.Hold.Sites.Any(site => part.Contains(site.Lobe.At))));
        kept = OutlineOffsets.WithoutSlivers(kept);
        Point2 centre = BoardMass.Centre(board);
        Region over = kept.Intersect(board.Outline.Region);
        double margin = SupportPolygon.Of(over.Loops.SelectMany(loop => loop)).Inside(centre);
        if (kept.IsEmpty || margin <= 0)
        {
            reasons.Refuse("board-not-kept-down", "clamp ring",
                "What is left of the clamp ring between the parts at the rim does not reach round the board's centre of mass.",
                Math.Max(0, Math.Round(margin, 2)), 0, "mm", new Point3(centre.X, centre.Y, bottom),
                $"leave {Reasons.Mm(Math.Round(overlap + PlanRules.Beside, 1))} mm of the rim free of parts and wires");
            return null;
        }

        string from = Reasons.Origin(draft.File, "housing.hold");
        reasons.Length("hold.clamp.width", width, Reasons.Rule,
            $"{given.Basis.LinesNear(width).ToString(CultureInfo.InvariantCulture)} lines; it has "
                + $"{Reasons.Mm(draft.File.Print.Printer.LooseFit)} to the wall");
        reasons.Length("hold.clamp.overlap", Math.Round(overlap, 3), from,
            $"over the board's rim; {Reasons.Mm(Math.Round(overlap - draft.Shell.BoardEdgeGap, 3))} where the board lies against the wall "
                + "across");
        reasons.Length("hold.clamp.thickness", Thick(given), Reasons.Rule,
            "stiff between its screws, low enough for the light of the LEDs");
        if (kept.Parts.Length > 1 || whole.Area - kept.Area > width * width)
        {
            reasons.Choice("hold.clamp.pieces", kept.Parts.Length.ToString(CultureInfo.InvariantCulture), Reasons.Rule,
                string.Create(CultureInfo.InvariantCulture,
                    $"{100 * (1 - (kept.Area / whole.Area)):0} % left out where parts, wires, plugs and the baffle stand at the rim"));
        }

        return new ClampPlan
        {
            Outline = kept,
            Bottom = bottom,
            Top = top,
            Width = width,
            Overlap = overlap,
            Pockets = Region.Union(draft.Shell.Pockets),
            PocketBottom = draft.Bosses.First(boss => boss.Use == BossUse.Clamp).Top,
            BedChamfer = Math.Round(Math.Clamp(
                (width - draft.Basis.Wall(LeastLines)) / 2, 0, Math.Max(PlanRules.BedChamfer, draft.File.Print.Printer.ElephantFoot)), 3),
            Screws = [.. draft.Hold.Sites.Select(site => site.Lobe.At)],
        };
    }

    private static double Thick(Given given) => given.Basis.UpDistance(Thickness);

    // As few lines as reach over the rim by the least overlap; fewer where what stands near the rim would widen the gap round the board.
    private static double Width(Given given)
    {
        double gap = PlanRules.EdgeGapOf(given.File);
        double Over(int lines) => given.File.Print.Printer.LooseFit + given.Basis.Wall(lines) - gap;
        double least = Math.Max(LeastOverlap, gap + LeastAcross);
        int lines = StiffLines;
        while (lines < MostLines && Over(lines) < least - Layers.Slack)
        {
            lines++;
        }

        // What stands so near that no ring passes it is gone round.
        int narrowest = Enumerable.Range(FewestLines, lines).FirstOrDefault(count => Over(count) > gap, lines);
        double free = Near(given.File, Over(Math.Min(narrowest, lines)) + PlanRules.Beside - Layers.Slack) is var (_, inside)
            ? inside - PlanRules.Beside : double.PositiveInfinity;
        while (lines > narrowest && Over(lines) > free + Layers.Slack)
        {
            lines--;
        }

        return given.Basis.Wall(lines);
    }

    // What stands nearest to the rim, connectors at the edge left out, and how far inside, mm, so far at the least; null for nothing.
    private static (string Name, double Inside)? Near(BoardFile file, double least)
    {
        var rim = new Rim(file.Board.Outline);
        HashSet<string> ported = [.. file.Board.Parts.Where(part => part.Mouth is not null).Select(part => part.Ref)];
        return HoldSites.Standing(file).Where(thing => !ported.Contains(thing.Name))
            .Select(thing => ((string, double)?)(thing.Name, rim.InsideOuter(thing.Outline)))
            .Where(thing => thing!.Value.Item2 >= least).MinBy(thing => thing!.Value.Item2);
    }

    private static double Overlap(Given given, ShellPlan shell) =>
        Math.Round(given.File.Print.Printer.LooseFit + Width(given) - shell.BoardEdgeGap, 6);

    private static double EarRadius(Given given) => Math.Max(
        (given.File.Housing.Screw!.HeadDiameter / 2) + RoundHead, IronRoom - given.File.Print.Printer.LooseFit);

    // From over the board's rim to round the screw.
    private static Region Ear(RimPlace place, Point2 screw, double radius, double overlap) =>
        Region.Slot(Lattice.Snap(place.Inside(overlap)), screw, 2 * radius, RingSide.Inside);

    private static Region Blocked(HousingDraft draft, FrontSide front, ClosurePlan closure, double top)
    {
        CircuitBoard board = draft.File.Board;
        HashSet<string> leds = [.. board.PixelCircles.Where(circle => circle.Facing == PixelFacing.Up).SelectMany(circle => circle.Pixels)
            .Select(pixel => pixel.Ref)];
        double shade = front.Baffle is null ? Math.Max(0, top - draft.Stack.LedWindow) * LightSlope : 0;
        double reach = draft.Room.Cavity.IsEmpty ? 0 : Math.Max(PlanRules.Beside, shade);
        Region near = draft.Shell.Cavity.Filled().Less(draft.Shell.Cavity.Filled().Offset(-draft.Lip.Reach - reach));
        return Region.Union(
        [
            .. HoldSites.Standing(draft.File).Where(thing => !thing.Outline.Intersect(near).IsEmpty)
                .Select(thing => thing.Outline.Offset(leds.Contains(thing.Name) ? Math.Max(PlanRules.Beside, shade) : PlanRules.Beside)),
            front.Baffle is { } baffle && baffle.Bottom < top + BesideBaffle
                ? baffle.Walls.And(baffle.Bridges).Offset(BesideBaffle) : Region.Empty,
            closure.FreePosts.Offset(PlanRules.Beside),
            .. draft.Openings.Select(opening => opening.ThroughLip(board, top).Offset(PlanRules.Beside)),
            .. draft.Openings.Select(opening => opening.InWall).OfType<WallOpening>()
                .Select(wall => Strips.Along(wall.Through, wall.Direction, wall.Width + (2 * PlanRules.Beside), 0,
                    Strips.PastRim(draft.Shell.Footprint))),
            .. draft.CableExits.Select(exit => exit.AtRim).OfType<ExitAtRim>()
                .Select(rim => Strips.Radial(rim.At, rim.Width + (2 * PlanRules.Beside), 0, Strips.PastRim(draft.Shell.Footprint))),
            .. draft.Bosses.Where(boss => boss.Use != BossUse.Clamp && boss.Top > draft.Stack.BoardTop
                    && draft.Shell.Lobes.All(lobe => lobe.At != boss.At))
                .Select(boss => Region.Disc(boss.At, Ring.Hole((boss.Diameter / 2) + PlanRules.Beside))),
        ]);
    }
}
