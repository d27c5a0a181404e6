using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning;

namespace ShellForge.Checks.Fit;

/// <summary>Parts that go together more than one way.</summary>
public sealed class MissingKey() : Rule(
    "missing-key",
    "Cover and board must go together one way only.",
    "A cover put on turned looks right until the tongue misses its port; a board put in turned has its cable on the wrong side.",
    "section of the cover's lip, turned by steps of 15 degrees, against the tub's section at the height of the key: each turn must meet plastic; the board: by its connector, its outline or its holes, otherwise only the mark says",
    "practice: keyed always")
{
    private const double StepDegrees = 15;

    /// <summary>Overlap in plan that a hand feels, mm2: a key of 4 mm that meets the wall by a tenth.</summary>
    private const double Felt = 0.4;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        KeyPlan key = housing.Plan.Key;
        Point2 place = Point2.Polar(housing.Plan.Shell.Round?.Inner ?? housing.Board.Board.Outline.OuterRadius, key.At);
        var at = new Point3(place.X, place.Y, key.Top);
        if (housing.Part(PartNames.Tub) is { } tub && housing.Part(PartNames.Cover) is { } cover)
        {
            // Just below the rim: the bead, which overlaps on purpose, lies lower.
            double z = key.Top - 0.25;
            Region wall = SectionAt(housing, tub, z);
            Region lip = SectionAt(housing, cover, z);
            if (housing.Plan.Shell.Round is { } round)
            {
                // Of a round lip only what stands out past its ring can meet the wall.
                lip = lip.Less(Region.Disc(Point2.Origin, Ring.Hole(round.Inner - (housing.Plan.Cover.LipGap / 2))));
            }

            for (double degrees = StepDegrees; degrees < 360; degrees += StepDegrees)
            {
                if (lip.Turned(Angle.FromDegrees(degrees)).Intersect(wall).Area < Felt)
                {
                    yield return Found(Severity.Stop, "cover", $"it also goes on turned by {degrees:0} degrees", degrees, 0, at, "give it a key: leave more of the rim free of ports and screws", "degrees");
                    break;
                }
            }
        }

        if (key.BoardKey.StartsWith("by the mark", StringComparison.Ordinal))
        {
            yield return Found(
                Severity.Note, "board", "it also goes in turned, since its holes match when turned: the mark on the rim shows the first LED", 0, 1, at,
                "mind the mark when the board goes in; one hole moved by a millimetre would make it go one way only", "");
        }
    }

    private static Region SectionAt(HousingUnderCheck housing, CheckedPart part, double z) =>
        housing.SectionsOf(part).Where(slab => slab.FromZ <= z && slab.ToZ > z).Select(slab => slab.Outline).FirstOrDefault() ?? Region.Empty;
}
