using ShellForge.Board.Description;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Fit;

/// <summary>Parts that go together more than one way.</summary>
public sealed class MissingKey() : Rule(
    "missing-key",
    "Cover and board must go together one way only.",
    "A cover put on turned looks right until the tongue misses its port; a board put in turned has its cable on the wrong side.",
    "section of the cover's lip, turned by steps of 15 degrees, against the tub's section below the rim: each turn must meet plastic; "
        + "lugs also by the turns that bring one to another's mouth; the board: by its connector, its outline or its holes, otherwise "
        + "only the mark says",
    "practice: keyed always")
{
    private const double StepDegrees = 15;

    /// <summary>Depth below the rim at which the wall is looked at, mm.</summary>
    private const double BelowRim = 0.25;

    /// <summary>Overlap in plan that a hand feels, mm2: a key of 4 mm that meets the wall by a tenth.</summary>
    private const double Felt = 0.4;

    /// <summary>What stands out past the tub's outline so far is seen, mm2.</summary>
    private const double Seen = 10;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        KeyPlan key = housing.Plan.Key;
        Point2 place = Places.OnInnerWall(housing, key.At);
        var at = new Point3(place.X, place.Y, key.Top);
        if (WrongTurn(housing) is { } wrong)
        {
            yield return Found(
                Severity.Stop, PartNames.Cover, $"it also goes on turned by {wrong:0.#} degrees", wrong, 0, at,
                key.Rib is null ? "take closure: snap or screws, which a rib keys" : "leave more of the rim free of ports and screws",
                "degrees");
        }

        if (!key.Board.OneWayOnly)
        {
            bool holes = housing.Board.Board.Holes.Any(hole => hole.For == HolePurpose.Mount);
            yield return Found(
                Severity.Note, PartNames.Board,
                $"it also fits turned, since {(holes ? "its holes match when turned" : "it is round and has no holes")}", 0, 1, at,
                holes ? "put the first LED at the mark on the rim; one hole moved by 1 mm would make it fit one way only"
                    : "put the first LED at the mark on the rim",
                "");
        }
    }

    /// <summary>A turn in degrees from the right one in which the cover goes on too; null when there is none.</summary>
    private static double? WrongTurn(HousingUnderCheck housing)
    {
        if (housing.Part(PartNames.Tub) is not { } tub || housing.Part(PartNames.Cover) is not { } cover)
        {
            return null;
        }

        // Just below the rim: the bead, which overlaps on purpose, lies lower, and so do the ways along which lugs turn.
        double z = housing.Plan.Key.Top - BelowRim;
        ClosureEntry? entry = housing.Plan.Closure.Entry;
        Region wall = SectionAt(housing, tub, z);
        Region lip = SectionAt(housing, cover, entry?.Z ?? z);
        if (housing.Plan.Shell.Round is { } round)
        {
            // Of a round lip only what stands out past its ring can meet the wall.
            lip = lip.Less(Region.Disc(Point2.Origin, Ring.Hole(round.Inner - (housing.Plan.Cover.LipGap / 2))));
        }

        // Lugs go in beside where they close.
        lip = lip.Turned(entry?.Turn ?? Angle.Zero);
        Region footprint = housing.Plan.Shell.Lobes.IsEmpty ? Region.Empty : housing.Plan.Shell.Footprint;
        foreach (double degrees in Turns(entry))
        {
            // Ears that no longer lie over each other are seen before anything is pressed.
            Angle turn = Angle.FromDegrees(degrees);
            if (lip.Turned(turn).Intersect(wall).Area < Felt && footprint.Turned(turn).Less(footprint).Area < Seen)
            {
                return degrees;
            }
        }

        return null;
    }

    /// <summary>Turns to try: steps all round, and those that bring a lug to another one's mouth.</summary>
    private static IEnumerable<double> Turns(ClosureEntry? entry)
    {
        IEnumerable<double> steps = Enumerable.Range(1, (int)(360 / StepDegrees) - 1).Select(i => i * StepDegrees);
        IEnumerable<double> swaps = entry is null
            ? []
            : from lug in entry.Lugs from other in entry.Lugs where other != lug select (other - lug).Normalized.Degrees;
        return steps.Concat(swaps).Order();
    }

    private static Region SectionAt(HousingUnderCheck housing, MadePart part, double z) =>
        housing.SectionsOf(part).Where(slab => slab.FromZ <= z && slab.ToZ > z).Select(slab => slab.Outline).FirstOrDefault()
            ?? Region.Empty;
}
