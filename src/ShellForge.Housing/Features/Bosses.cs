using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features;

/// <summary>Posts on the floor with their webs, gussets and insert holes.</summary>
internal static class Bosses
{
    /// <summary>How deep a gusset starts inside its boss, mm, and where its tip ends inside it.</summary>
    private const double GussetRoot = 1.0;

    /// <summary>See <see cref="GussetRoot"/>.</summary>
    private const double GussetTip = 0.3;

    /// <summary>All posts of the tub.</summary>
    public static IEnumerable<FeatureContribution> Of(HousingPlan plan)
    {
        Region room = PostRoom.Of(plan.Shell);
        double foot = Math.Max(0, plan.Stack.FloorTop - FeatureContribution.Overlap);
        for (int i = 0; i < plan.Bosses.Length; i++)
        {
            BossPlan boss = plan.Bosses[i];

            // A lobe of the wall already is the boss, up to the same height.
            if (!plan.Shell.Lobes.Any(l => l.At == boss.At))
            {
                FaceFeature name = boss.Use == BossUse.Rest ? FaceFeature.Rest : FaceFeature.Boss;
                yield return FeatureContribution.Adds(PartNames.Tub, Shapes
                    .Extrude(Within(Region.Disc(boss.At, Ring.Peg(boss.Diameter / 2)), room), foot, boss.Top)
                    .Tagged(FaceNames.Tag(name, i)));
            }

            foreach (Region web in boss.Webs)
            {
                yield return FeatureContribution.Adds(
                    PartNames.Tub, Shapes.Extrude(web, foot, boss.WebTop).Tagged(FaceNames.Tag(FaceFeature.Web, i)));
            }

            foreach (GussetPlan gusset in boss.Gussets)
            {
                yield return FeatureContribution.Adds(
                    PartNames.Tub, Gusset(boss, gusset, plan.Stack.FloorTop, foot).Tagged(FaceNames.Tag(FaceFeature.Gusset, i)));
            }

            if (boss.Hole is not null)
            {
                yield return FeatureContribution.Cuts(
                    PartNames.Tub, InsertHoleSolid.Of(boss.At, boss.Top, boss.Hole).Tagged(FaceNames.Tag(FaceFeature.InsertHole, i)));
            }
        }
    }

    // Left as it is where it fits, so that its corners stay those of its ring.
    private static Region Within(Region post, Region room) =>
        room.Contains(post) ? post : OutlineOffsets.WithoutSlivers(post.Intersect(room));

    private static Solid Gusset(BossPlan boss, GussetPlan gusset, double floorTop, double foot)
    {
        double side = boss.Diameter / 2;
        double slope = (gusset.Foot + GussetTip) / gusset.Height;
        ImmutableArray<Point2> Outline(double end) =>
        [
            .. new Point2[]
            {
                new(side - GussetRoot, -gusset.Thickness / 2), new(end, -gusset.Thickness / 2),
                new(end, gusset.Thickness / 2), new(side - GussetRoot, gusset.Thickness / 2),
            }.Select(p => boss.At + p.Turned(gusset.Direction)),
        ];
        return Shapes.Loft(
            Outline(side + gusset.Foot + (slope * (floorTop - foot))), foot, Outline(side - GussetTip), floorTop + gusset.Height);
    }
}
