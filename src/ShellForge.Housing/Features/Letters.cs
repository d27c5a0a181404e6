using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features;

/// <summary>Lettering and marks: raised bodies, or strokes cut from the face that they are read on.</summary>
internal static class Letters
{
    /// <summary>All lines.</summary>
    public static IEnumerable<FeatureContribution> Of(HousingPlan plan)
    {
        for (int i = 0; i < plan.Lettering.Length; i++)
        {
            LetteringPlan line = plan.Lettering[i];
            Solid flat = Shapes.Extrude(line.Strokes, line.FromZ - FeatureContribution.Overlap, line.ToZ);
            Solid strokes = (line.FromSide is { } side ? flat.Moved(OutwardFrame.Facing(Angle.Zero)).Moved(side) : flat)
                .Tagged(FaceNames.Tag(FaceFeature.Lettering, i));
            FeatureContribution letters =
                line.Raised ? FeatureContribution.Adds(line.Part, strokes) : FeatureContribution.Cuts(line.Part, strokes);
            yield return letters with { IsMark = line.IsMark };
        }
    }
}
