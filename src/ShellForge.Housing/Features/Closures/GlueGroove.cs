using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features.Closures;

/// <content>A chamfer inside the tub's rim, under the seam; where corners are too tight for it, a step as high as it is wide.</content>
internal sealed partial class ClosureBodies
{
    /// <inheritdoc />
    public IEnumerable<FeatureContribution> Glue(GlueClosurePlan closure)
    {
        if (closure.Groove <= 0)
        {
            yield break;
        }

        const double past = FeatureContribution.Overlap;
        double rim = _plan.Stack.PartingLine;
        Region face = _plan.Shell.Cavity.Filled();
        var pieces = new List<Solid>();
        foreach (ImmutableArray<Point2> loop in face.Loops)
        {
            pieces.Add(OutlineOffsets.Mitred(loop, -past) is { } low && OutlineOffsets.Mitred(loop, closure.Groove + past) is { } high
                ? Shapes.Loft(low, rim - closure.Groove - past, high, rim + past)
                : Shapes.Extrude(face.Offset(closure.Groove / 2), rim - (closure.Groove / 2), rim + past));
        }

        Solid hollow = Shapes.Extrude(face.Offset(-past), rim - closure.Groove - (2 * past), rim + (2 * past));
        yield return FeatureContribution.Cuts(
            PartNames.Tub, Solid.Union(pieces).Less(hollow).Tagged(FaceNames.Tag(FaceFeature.Groove)));
    }
}
