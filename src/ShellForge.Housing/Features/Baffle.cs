using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features;

/// <summary>The light baffle: walls, crush or grip ribs, tooth, and notches in its feet.</summary>
internal static class Baffle
{
    /// <summary>The baffle; nothing where the housing has none.</summary>
    public static IEnumerable<FeatureContribution> Of(HousingPlan plan)
    {
        if (plan.Baffle is not BafflePlan baffle)
        {
            yield break;
        }

        const double overlap = FeatureContribution.Overlap;
        yield return FeatureContribution.Adds(
            PartNames.Baffle, Shapes.Extrude(baffle.Walls, baffle.Bottom, baffle.Top).Tagged(FaceNames.Tag(FaceFeature.BaffleWall)));
        if (!baffle.Bridges.IsEmpty)
        {
            yield return FeatureContribution.Adds(
                PartNames.Baffle,
                Shapes.Extrude(baffle.Bridges, baffle.Bottom, baffle.BridgesTop).Tagged(FaceNames.Tag(FaceFeature.BaffleWall)));
        }

        if (!baffle.InWindow.IsEmpty)
        {
            yield return FeatureContribution.Adds(
                PartNames.Baffle,
                Shapes.Extrude(baffle.InWindow, baffle.Top - overlap, baffle.InWindowTop)
                    .Tagged(FaceNames.Tag(FaceFeature.BaffleWall)));
        }

        for (int i = 0; i < baffle.CrushRibs.Length; i++)
        {
            yield return FeatureContribution.Adds(
                PartNames.Baffle,
                Shapes.Extrude(baffle.CrushRibs[i], baffle.Top - overlap, baffle.Top + baffle.CrushHeight)
                    .Tagged(FaceNames.Tag(FaceFeature.CrushRib, i)));
        }

        for (int i = 0; i < baffle.GripRibs.Length; i++)
        {
            yield return FeatureContribution.Adds(
                PartNames.Baffle,
                Shapes.Extrude(baffle.GripRibs[i], baffle.Bottom, baffle.Top).Tagged(FaceNames.Tag(FaceFeature.CrushRib, i)));
        }

        if (baffle.Tooth is ToothPlan tooth)
        {
            yield return FeatureContribution.Adds(PartNames.Baffle, ToothSolid(tooth, baffle.Top).Tagged(FaceNames.Tag(FaceFeature.Key)));
        }

        // Notches that go through are left out of the walls already.
        for (int i = 0; i < baffle.Notches.Length; i++)
        {
            BaffleNotch notch = baffle.Notches[i];
            if (notch.Top < baffle.Top)
            {
                yield return FeatureContribution.Cuts(
                    PartNames.Baffle,
                    Shapes.Extrude(notch.Outline, notch.From ?? (baffle.Bottom - overlap), notch.Top)
                        .Tagged(FaceNames.Tag(FaceFeature.BaffleNotch, i)));
            }
        }
    }

    // Drawn from the side (distance from the axis, z), given its width, and stood up.
    private static Solid ToothSolid(ToothPlan tooth, double top)
    {
        double reach = Math.Min(tooth.Tip - tooth.Rim, top - tooth.Bottom);
        Region side = Region.Polygon(
        [
            new(tooth.Root, tooth.Bottom), new(tooth.Rim, tooth.Bottom), new(tooth.Tip, tooth.Bottom + reach),
            new(tooth.Tip, top), new(tooth.Root, top),
        ]);
        return Shapes.Extrude(side, -tooth.Width / 2, tooth.Width / 2)
            .Moved(Transform3.TurnX(Angle.FromDegrees(90)).Then(Transform3.TurnZ(tooth.At)));
    }
}
