using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features.Closures;

/// <summary>
/// The bead round the cover's lip and the groove in the tub's wall, with flanks as planned:
/// <code>
///   lip │\            the upper flank holds, the flatter lower one leads in
///       │ |  bead
///       │ /
///       │/
/// </code>
/// </summary>
internal static class SnapBead
{
    // Gaps of the lip shorter than twice this come from rounding, mm.
    private const double Rounding = 0.1;

    // No corner of a ridge reaches farther than so many times its height.
    private const double MostMitre = 4;

    // Up to so many times its height a corner's edge is a fleck on slopes that print; a right angle has 1.41.
    private const double GentleMitre = 1.5;

    // A wall that turns away from the axis by less than this stands across it, as a sine.
    private const double LeastLean = 0.05;

    /// <summary>Bead and groove.</summary>
    public static IEnumerable<FeatureContribution> Of(HousingPlan plan, SnapClosurePlan snap)
    {
        Region lipOutside = plan.Shell.Cavity.Filled().Offset(-plan.Cover.LipGap);
        Ridge ridge = Ridge.Of(snap, snap.BeadZ, snap.BeadHeight);
        Ridge hollow = Ridge.Of(snap, snap.GrooveZ, snap.GrooveDepth);
        (Solid groove, Region solidWall) = plan.Shell.Round is RoundShell shell
            ? (Turned(shell, shell.Inner, hollow), Region.Empty)
            : Followed(plan.Shell.Cavity.Filled(), hollow, snap.ShortestPiece);
        Solid bead = plan.Shell.Round is RoundShell round
            ? Turned(round, round.Inner - plan.Cover.LipGap, ridge)
            : Followed(lipOutside, ridge, snap.ShortestPiece).Ridge;
        Region without = Interrupted(plan, snap, lipOutside).And(solidWall.Offset(snap.BesideSolidWall));
        if (!without.IsEmpty)
        {
            bead = bead.Less(ridge.Beside(without));
        }

        yield return FeatureContribution.Adds(PartNames.Cover, bead.Tagged(FaceNames.Tag(FaceFeature.Bead)));
        yield return FeatureContribution.Cuts(PartNames.Tub, groove.Tagged(FaceNames.Tag(FaceFeature.Groove)));
        if (snap.BoreHooks.IsEmpty || plan.Shell.Round is not RoundShell ring)
        {
            yield break;
        }

        // At the bore the beads look to the axis.
        double tongue = ring.BoreOuter + plan.Cover.TongueGap;
        Region hooked = Region.Union(snap.BoreHooks.Select(hook => Region.Sector(0, ring.Inner, hook.From, hook.Sweep)));
        Ridge hook = Ridge.Of(snap, snap.BeadZ, snap.BoreHookHeight);
        Solid hooks = Solid.Intersection(
            TurnedInward(ring, tongue, hook), hook.Beside(hooked), hook.Beside(plan.Cover.Lip.Offset(snap.BoreHookHeight)));
        yield return FeatureContribution.Adds(PartNames.Cover, hooks.Tagged(FaceNames.Tag(FaceFeature.Bead, 1)));
        yield return FeatureContribution.Cuts(
            PartNames.Tub,
            TurnedInward(ring, ring.BoreOuter, Ridge.Of(snap, snap.GrooveZ, snap.BoreGrooveDepth))
                .Tagged(FaceNames.Tag(FaceFeature.Groove, 1)));
    }

    // A ridge on a face that looks to the axis.
    private static Solid TurnedInward(RoundShell shell, double radius, Ridge ridge)
    {
        double root = radius + FeatureContribution.Overlap;
        double crest = radius - ridge.Height;
        return Shapes.Revolve(
            [
                new(root, ridge.Bottom), new(root, ridge.Top), new(radius, ridge.Top), new(crest, ridge.CrestTop),
                new(crest, ridge.CrestBottom), new(radius, ridge.Bottom),
            ],
            shell.Count, Angle.Zero, RingSide.Inside);
    }

    // A ridge on a round face, reaching into it by the overlap.
    private static Solid Turned(RoundShell shell, double radius, Ridge ridge)
    {
        double root = radius - FeatureContribution.Overlap;
        double crest = radius + ridge.Height;
        return Shapes.Revolve(
            [
                new(root, ridge.Bottom), new(radius, ridge.Bottom), new(crest, ridge.CrestBottom),
                new(crest, ridge.CrestTop), new(radius, ridge.Top), new(root, ridge.Top),
            ],
            shell.Count, Angle.Zero, RingSide.Outside);
    }

    // The same along any outline, corner by corner. Where corners are too tight or too sharp for it, it stops before and goes on behind:
    // steps, or the tip of a mitre, would hang in the air. Where the outline dips in so that two pieces would meet behind its corner,
    // neither goes there: they would cut the tip of the wall from what carries it.
    private static (Solid Ridge, Region LeftOut) Followed(Region face, Ridge ridge, double shortest)
    {
        Region hollow = face.Offset(-FeatureContribution.Overlap);
        var pieces = new List<Solid>();
        var covered = new List<Region>();
        foreach (ImmutableArray<Point2> loop in face.Loops)
        {
            if (LongestMitreOf(loop) <= GentleMitre && OutlineOffsets.Mitred(loop, ridge.Height) is ImmutableArray<Point2> wide)
            {
                pieces.Add(ridge.Over(loop, wide).Less(ridge.Beside(hollow)));
                continue;
            }

            foreach (OutlineRun run in OutlineOffsets.MitredRuns(loop, ridge.Height, FeatureContribution.Overlap, GentleMitre)
                .Where(run => run.Length >= shortest))
            {
                IEnumerable<Point2> back = run.Inside.Reverse();
                pieces.Add(ridge.Over([.. run.Along, .. back], [.. run.Outside, .. back]));
                covered.Add(Region.Polygon([.. run.Outside, .. run.Along.Reverse()]));
            }
        }

        var leftOut = Region.Empty;
        for (int i = 0; i < covered.Count; i++)
        {
            Region twice = covered[i].Intersect(Region.Union(covered.Skip(i + 1)));
            leftOut = twice.IsEmpty ? leftOut : leftOut.And(twice.Offset(Rounding));
        }

        Solid all = Solid.Union(pieces);
        return (leftOut.IsEmpty ? all : all.Less(ridge.Beside(leftOut)), leftOut);
    }

    // Where the bead is left out: at slots and key, at corners, and where the lip has a gap.
    private static Region Interrupted(HousingPlan plan, SnapClosurePlan snap, Region lipOutside)
    {
        double far = lipOutside.Loops.SelectMany(loop => loop).Max(point => point.Length) + snap.BeadHeight + 1;
        IEnumerable<Region> sectors = snap.Interruptions
            .Select(gap => Region.Sector(0, far, gap.From, gap.Sweep));
        Region whole = lipOutside.Less(lipOutside.Offset(-plan.Cover.LipThickness));
        double reach = plan.Shell.Round is null ? LongestMitre(lipOutside) * snap.BeadHeight : snap.BeadHeight;
        Region gaps = whole.Less(plan.Cover.Lip).Offset(-Rounding).Offset(Rounding + reach + Rounding);
        IEnumerable<Region> edges = plan.Shell.Round is not null ? [] : snap.Interruptions
            .SelectMany(gap => new[] { gap.From, gap.From + gap.Sweep }.Select(end => KnifeEdge(lipOutside, end, 2 * reach)));
        Region without = Region.Union([.. sectors, .. edges, gaps, snap.LeftOut]);
        if (plan.Shell.Round is not null || without.IsEmpty)
        {
            return without;
        }

        // What two cuts leave between them, too short to hold or to print.
        Region crumbs = Region.Union(lipOutside.Offset(reach).Less(lipOutside.Offset(-FeatureContribution.Overlap)).Less(without).Parts
            .Where(piece => piece.Area < snap.ShortestPiece * (reach + FeatureContribution.Overlap)));
        return without.And(crumbs.Offset(Rounding));
    }

    // Where a slanted wall is left along a ray from the axis, one of the two ends of bead leans over the gap: what stands out over its
    // root.
    private static Region KnifeEdge(Region lipOutside, Angle end, double reach)
    {
        Point2 ray = Point2.Polar(1, end);
        Point2 root = lipOutside.FarthestAlong(end) * ray;
        (Point2 from, Point2 to) = lipOutside.Loops
            .SelectMany(loop => loop.Select((corner, i) => (From: corner, To: loop[(i + 1) % loop.Length])))
            .MinBy(side => Point2.Distance(side.From, root) + Point2.Distance(root, side.To) - Point2.Distance(side.From, side.To));
        Point2 outward = OutlineOffsets.Normal(from, to);
        double turned = Point2.Cross(ray, outward);
        if (Math.Abs(turned) < LeastLean)
        {
            return Region.Empty;
        }

        Point2 tip = root + ((reach / Math.Max(Point2.Dot(ray, outward), LeastLean)) * ray);
        Point2 straight = root + (reach * outward);
        return Region.Polygon(turned > 0 ? [root, tip, straight] : [root, straight, tip]);
    }

    // How much farther than along its sides a ridge reaches at the sharpest corner of an outline: what is left out takes its tip as well.
    private static double LongestMitre(Region outline) => outline.Loops.Max(LongestMitreOf);

    private static double LongestMitreOf(ImmutableArray<Point2> loop)
    {
        double longest = 1;
        for (int i = 0; i < loop.Length; i++)
        {
            Point2 before = loop[i] - loop[(i + loop.Length - 1) % loop.Length];
            Point2 after = loop[(i + 1) % loop.Length] - loop[i];
            double cosine = Point2.Dot(before, after) / (before.Length * after.Length);
            longest = Math.Max(longest, Math.Sqrt(2 / Math.Max(1 + cosine, 2 / (MostMitre * MostMitre))));
        }

        return longest;
    }

    // Heights of a ridge off its face: from below, the leading flank, the flat crest, the flank that holds.
    private readonly record struct Ridge(double Bottom, double CrestBottom, double CrestTop, double Top, double Height)
    {
        private const double Past = 1;

        public static Ridge Of(SnapClosurePlan snap, double middle, double height)
        {
            double low = middle - (snap.Crest / 2);
            double high = middle + (snap.Crest / 2);
            return new Ridge(
                low - (height * snap.LeadIn.Cos / snap.LeadIn.Sin), low, high, high + (height * snap.Hold.Cos / snap.Hold.Sin), height);
        }

        // From an outline at the ridge's foot to the same corners at its crest: flanks and crest meet in whole faces, which fuse.
        public Solid Over(ImmutableArray<Point2> foot, ImmutableArray<Point2> crest) => Solid.Union(
            Shapes.Loft(foot, Bottom, crest, CrestBottom),
            Shapes.Extrude(Region.Polygon(crest), CrestBottom, CrestTop),
            Shapes.Loft(crest, CrestTop, foot, Top));

        // A region as a body that reaches past the ridge at both ends.
        public Solid Beside(Region region) => Shapes.Extrude(region, Bottom - Past, Top + Past);
    }
}

/// <content>This form's bodies.</content>
internal sealed partial class ClosureBodies
{
    /// <inheritdoc />
    public IEnumerable<FeatureContribution> Snap(SnapClosurePlan closure) => SnapBead.Of(_plan, closure);
}
