using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Coupons.Slices;

/// <summary>
/// A post of the tub that a slice keeps: whole from a height on, below only a pillar in its middle that widens at 45 degrees.
/// </summary>
/// <param name="At">Its axis.</param>
/// <param name="Radius">Radius kept, mm.</param>
/// <param name="WholeFrom">From where it is whole, mm.</param>
internal sealed record KeptPost(Point2 At, double Radius, double WholeFrom)
{
    // The least free pin, mm.
    private const double PillarRadius = 1.5;

    /// <summary>What is kept of the tub, from a height up to another.</summary>
    public Solid Room(double fromZ, double toZ)
    {
        var whole = Ring.Peg(Radius);
        double cone = WholeFrom - (Radius - PillarRadius);
        if (cone <= fromZ)
        {
            return Shapes.Extrude(Region.Disc(At, whole), fromZ, toZ);
        }

        Ring pillar = whole.Coaxial(PillarRadius, RingSide.Inside);
        return Solid.Union(
            Shapes.Extrude(Region.Disc(At, whole), WholeFrom, toZ),
            Shapes.Taper(pillar, cone, whole, WholeFrom, At),
            Shapes.Extrude(Region.Disc(At, pillar), fromZ, cone));
    }
}

/// <summary>
/// What of a housing is printed first, to try the board in it: the tops of its posts with their holes and the wall round each opening,
/// joined by a thin floor, and by themselves a strip of wall and the strip of lip that goes into it. Only where to cut is decided here; all
/// that is cut out is the housing's own. Whatever stands high and thin takes a layer's least time again and again, so little of it is kept.
/// </summary>
/// <param name="Walls">Walls that are kept of the tub, in plan, and up to which height.</param>
/// <param name="Posts">Posts that are kept.</param>
/// <param name="Floor">The thin floor under it, in plan.</param>
/// <param name="FloorZ">Upper face of that floor, mm.</param>
/// <param name="FloorThickness">Its thickness, mm.</param>
/// <param name="WallStrip">What is kept of the tub for the lip, in plan.</param>
/// <param name="WallBottom">Where that strip is cut off below, mm.</param>
/// <param name="LidStrip">What is kept of the cover, in plan.</param>
/// <param name="LidTop">Where the cover is cut off, mm.</param>
internal sealed record FitSlicePlan(
    ImmutableArray<(Region Outline, double Top)> Walls, ImmutableArray<KeptPost> Posts, Region Floor, double FloorZ, double FloorThickness,
    Region WallStrip, double WallBottom, Region LidStrip, double LidTop)
{
    private const double ThinFloor = 0.4;
    private const double PathWidth = 1.3;
    private const double PathStep = 6;

    // Kept beside a post, on the bed beside its foot, beside an opening, and behind a wall, mm.
    private const double BesidePost = 0.05;
    private const double BesideFoot = 0.4;
    private const double BesideOpening = 1.8;
    private const double BehindWall = 2;
    private const double BeyondFace = 12;

    // Plastic kept under the lip's end and under an opening, and over an opening, mm.
    private const double UnderLip = 1;
    private const double UnderOpening = 0.8;
    private const double OverOpening = 1.4;

    // Kept behind the lip, mm: nothing of what hangs in the cover beside it.
    private const double BehindLip = 0.4;

    // Length along the wall of the strip that takes the lip, and how much shorter the lip's own strip is, mm.
    private const double StripLength = 8;
    private const double LidShorter = 2;
    private const double OverParting = 1.2;
    private const int Directions = 72;

    // Plastic under a post's hole, mm.
    private const double UnderHole = 0.8;

    // Posts under the board: three far from each other carry it, and show its holes in place as well as all of them do.
    private const int MostPosts = 3;

    // Posts that take an insert; at the others two lines round the hole show whether it lies under the board's.
    private const int WholePosts = 1;
    private const int ThinLines = 2;

    // Plastic that the strip of wall stands on, below the lip's end, mm.
    private const double BelowStrip = 0.6;

    // Width along the rim that a key or a notch takes, mm.
    private const double RimMark = 12;

    /// <summary>Where to cut a housing.</summary>
    public static FitSlicePlan Of(HousingPlan plan)
    {
        var basis = PrintBasis.Of(plan.Source.Print);
        Region footprint = plan.Shell.Footprint;
        double parting = plan.Stack.PartingLine;
        ImmutableArray<BossPlan> carriers = Carriers(plan);
        WallOpening[] inWall = [.. plan.Openings.Where(opening => opening.InWall is not null).Select(opening => opening.InWall!)];
        ImmutableArray<(Region Outline, double Top)> openings =
        [
            .. inWall.Select(wall => (
                Strip(wall.Through, wall.Direction, wall.Width + (2 * BesideOpening), -BehindWall, BeyondFace).Intersect(footprint),
                wall.OpensRim ? parting : Math.Min(parting, basis.Up(wall.Top + OverOpening)))),
            .. plan.CableExits.Select(exit => exit.AtRim).OfType<ExitAtRim>().Select(
                exit => (RimStrip(plan, exit.At, exit.Width + (2 * BesideOpening), BehindWall).Intersect(footprint), parting)),
        ];
        Region posts = Region.Union(carriers.Select(boss => Region.Disc(boss.At, Ring.Peg((boss.Diameter / 2) + BesideFoot))))
            .Intersect(footprint);
        Region taken = Region.Union([posts, Marks(plan), .. openings.Select(each => each.Outline)]);
        Angle at = StripDirection(plan, taken);
        double behind = plan.Shell.Wall + plan.Cover.LipGap + plan.Cover.LipThickness;
        Region wall = RimStrip(plan, at, StripLength, behind + BehindWall).Intersect(footprint);
        double deepest = carriers.Select(boss => boss.Top - (boss.Hole?.Depth ?? 0)).Append(parting).Min();
        double z = inWall.Select(wall => wall.Bottom - UnderOpening)
            .Append(deepest).Min();
        double floorZ = Math.Max(plan.Stack.FloorTop, basis.Down(z));
        Region feet = Region.Union(openings.Select(each => each.Outline)).And(posts);
        feet = feet.IsEmpty ? wall : feet;
        Region path = Path([.. feet.Parts.Select(Anchor)]).Intersect(footprint);
        Region floor = feet.And(path);
        return new FitSlicePlan(
            openings,
            [.. carriers.Select(
                (boss, number) => new KeptPost(boss.At, Kept(boss, number, basis),
                    Math.Max(floorZ, boss.Top - (boss.Hole?.Depth ?? 0) - UnderHole)))],
            floor.Parts.Length > 1 ? footprint : floor, floorZ, basis.Up(ThinFloor),
            wall, Math.Max(plan.Stack.FloorTop, basis.Down(plan.Cover.LipBottom - UnderLip - BelowStrip)),
            RimStrip(plan, at, StripLength - LidShorter, behind + BehindLip), parting + basis.UpDistance(OverParting));
    }

    /// <summary>The posts of a housing that a slice keeps: those under the board, few and far from each other.</summary>
    public static ImmutableArray<BossPlan> Carriers(HousingPlan plan)
    {
        BossPlan[] all = [.. plan.Bosses.Where(boss => boss.Use is not (BossUse.Closure or BossUse.Clamp or BossUse.SecondBoard))];
        var kept = new List<BossPlan>(all.Take(1));
        while (kept.Count < Math.Min(MostPosts, all.Length))
        {
            kept.Add(all.Except(kept).MaxBy(boss => kept.Min(other => Point2.Distance(other.At, boss.At)))!);
        }

        return [.. kept];
    }

    /// <summary>Whether a post of the slice takes an insert.</summary>
    public static bool TakesInsert(BossPlan boss, int number) => boss.Hole is not null && number < WholePosts;

    private static double Kept(BossPlan boss, int number, PrintBasis basis) => boss.Hole is { } hole && !TakesInsert(boss, number)
        ? Math.Min(boss.Diameter / 2, (hole.MouthDiameter / 2) + hole.LeadIn + basis.Wall(ThinLines)) : (boss.Diameter / 2) + BesidePost;

    // Where the rim is not plain: at the key, at tongues and at notches for a blade.
    private static Region Marks(HousingPlan plan) => Region.Union(
    [
        RimStrip(plan, plan.Key.At, RimMark, BehindWall),
        .. plan.PryNotches.Select(notch => RimStrip(plan, notch.At, notch.Width + 2, BehindWall)),
        .. plan.Tongues.Select(each => RimStrip(plan, each.Tongue.At, each.Tongue.Tongue.SlotWidth + 2, BehindWall)),
    ]);

    // From the rim inward, at a direction; out past it.
    private static Region RimStrip(HousingPlan plan, Angle at, double width, double behind)
    {
        double rim = Rim(plan.Shell.Footprint.Filled(), at);
        return Strip(Point2.Origin, at, width, rim - behind, rim + BeyondFace);
    }

    private static double Rim(Region filled, Angle at)
    {
        double inside = 0;
        double outside = filled.Bounds.Max.Length + filled.Bounds.Min.Length;
        for (int i = 0; i < 40; i++)
        {
            double middle = (inside + outside) / 2;
            (inside, outside) = filled.Contains(Point2.Polar(middle, at)) ? (middle, outside) : (inside, middle);
        }

        return inside;
    }

    // Where the lip is whole, and farthest from all else that is kept.
    private static Angle StripDirection(HousingPlan plan, Region taken)
    {
        Region lip = plan.Cover.Lip;
        return Enumerable.Range(0, Directions)
            .Select(i => Angle.FromDegrees(360.0 * i / Directions))
            .OrderBy(at => Math.Round(RimStrip(plan, at, StripLength, BehindWall).Intersect(taken).Area, 1))
            .ThenByDescending(
                at => Math.Round(
                    RimStrip(plan, at, StripLength, plan.Shell.Wall + plan.Cover.LipGap + plan.Cover.LipThickness + 1).Intersect(lip)
                        .Area, 1))
            .ThenByDescending(at => Math.Round(Distance(taken, Point2.Polar(Rim(plan.Shell.Footprint.Filled(), at), at)), 1))
            .ThenBy(at => at.Degrees)
            .First();
    }

    private static double Distance(Region region, Point2 point) => region.IsEmpty ? 0 : region.Distance(point);

    private static Point2 Anchor(Region part) => part.Bounds.Centre;

    // Round the middle from one thing to the next, the radius going from one's to the other's, so that a bore stays free; not round again
    // over the longest way, which holds nothing.
    private static Region Path(Point2[] anchors)
    {
        Point2[] round = [.. anchors.OrderBy(p => Angle.Of(p).Normalized.Degrees)];
        var pieces = new List<Region>();
        double Way(int i) => (Angle.Of(round[(i + 1) % round.Length]) - Angle.Of(round[i])).Normalized.Degrees;
        int longest = Enumerable.Range(0, round.Length).OrderByDescending(i => Math.Round(Way(i), 3)).FirstOrDefault();
        for (int i = 0; i < round.Length && round.Length > 1; i++)
        {
            if (i == longest)
            {
                continue;
            }

            Point2 from = round[i];
            Point2 to = round[(i + 1) % round.Length];
            double start = Angle.Of(from).Normalized.Degrees;
            double sweep = (Angle.Of(to) - Angle.Of(from)).Normalized.Degrees;
            int steps = Math.Max(1, (int)Math.Ceiling(sweep / PathStep));
            Point2 last = from;
            for (int k = 1; k <= steps; k++)
            {
                double share = (double)k / steps;
                Point2 next = k == steps ? to
                    : Point2.Polar(from.Length + (share * (to.Length - from.Length)), Angle.FromDegrees(start + (share * sweep)));
                pieces.Add(Region.Slot(Lattice.Snap(last), Lattice.Snap(next), PathWidth));
                last = next;
            }
        }

        return Region.Union(pieces);
    }

    private static Region Strip(Point2 through, Angle direction, double width, double from, double to)
    {
        Point2 along = Point2.Polar(1, direction);
        Point2 across = Point2.Polar(width / 2, direction + Angle.FromDegrees(90));
        return Region.Polygon(
        [
            through + (from * along) - across, through + (to * along) - across, through + (to * along) + across,
            through + (from * along) + across,
        ]);
    }
}
