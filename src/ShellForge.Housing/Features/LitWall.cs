using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features;

/// <summary>The lit band in the cover's wall: a thin ring of diffuser between the cover's upper and lower part, ribs behind it.</summary>
internal static class LitWall
{
    /// <summary>Band and room for it; nothing where light leaves through the front.</summary>
    public static IEnumerable<FeatureContribution> Of(HousingPlan plan)
    {
        if (plan.Diffuser.Band is not BandPlan band || plan.Shell.Round is not RoundShell round)
        {
            yield break;
        }

        const double overlap = FeatureContribution.Overlap;
        double thickness = plan.Diffuser.Thickness;
        Region roomDisc = band.ThroughBore ? plan.Cover.Cavity.Filled().Less(plan.Cover.Cavity) : plan.Cover.Cavity.Filled();

        // Face of the band towards the room, and the cover wall's own face there.
        double face = band.ThroughBore ? round.BoreInner + thickness : round.Outer - thickness;
        double roomFace = roomDisc.DistanceToOutline(Point2.Origin);
        RingSide side = band.ThroughBore ? RingSide.Outside : RingSide.Inside;
        Region ring = band.ThroughBore
            ? RoundRegions.Disc(round, face, side).Less(RoundRegions.Disc(round, round.BoreInner, RingSide.Outside))
            : RoundRegions.Disc(round, round.Outer, RingSide.Inside).Less(RoundRegions.Disc(round, face, side));
        Region behind = band.ThroughBore
            ? roomDisc.Offset(overlap).Less(RoundRegions.Disc(round, face, side))
            : RoundRegions.Disc(round, face, side).Less(roomDisc.Offset(-overlap));
        FaceTag tag = FaceNames.Tag(FaceFeature.Diffuser);

        // The room behind the band, pillars left standing.
        yield return FeatureContribution.Cuts(
            PartNames.Cover, Shapes.Extrude(behind.Less(band.Pillars), band.Bottom, band.Top).Tagged(FaceNames.Tag(FaceFeature.CoverWall)));
        Solid slope = Slope(round, band, face, roomFace).Less(Shapes.Extrude(band.Pillars, 0, plan.Stack.Front));
        yield return FeatureContribution.Cuts(PartNames.Cover, slope.Tagged(FaceNames.Tag(FaceFeature.CoverWall)));
        if (plan.Diffuser.Fit == DiffuserFit.PrintedIn)
        {
            Region open = band.ThroughBore
                ? ring.Less(Region.Empty).And(RoundRegions.Disc(round, round.BoreInner + overlap, RingSide.Outside))
                : ring.And(plan.Shell.Footprint.Offset(overlap).Filled().Less(RoundRegions.Disc(round, face, side)));
            yield return FeatureContribution.Cuts(PartNames.Cover, Shapes.Extrude(open, band.Bottom, band.Top).Tagged(tag));
            yield return FeatureContribution.Adds(PartNames.Diffuser, Shapes.Extrude(ring, band.Bottom, band.Top).Tagged(tag));
        }
    }

    // What the lower wall gives up so that it grows from the band at 45 degrees.
    private static Solid Slope(RoundShell round, BandPlan band, double face, double roomFace)
    {
        double past = band.ThroughBore ? roomFace + FeatureContribution.Overlap : roomFace - FeatureContribution.Overlap;
        double run = Math.Abs(face - past);
        double rise = band.Bottom + FeatureContribution.Overlap;
        return Shapes.Revolve(
            [new(face, band.Bottom), new(past, band.Bottom - run), new(past, rise), new(face, rise)],
            round.Count, Angle.Zero, band.ThroughBore ? RingSide.Outside : RingSide.Inside);
    }
}
