using System.Globalization;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Booleans;
using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning;
using ShellForge.Planning.Marks;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Openings;

/// <summary>An opening of the maker's own with something behind it or before it.</summary>
public sealed class OpeningBlocked() : Rule(
    "opening-blocked",
    "An opening of your own must lead straight to what it is for.",
    "A microphone behind a rib, a lever against the board's edge: found out after the print, when it is late to turn the opening.",
    "share of straight lines through the opening, from 15 mm before it to the part it is for (or 2 mm into the room), that meet a printed "
        + "part as made, the board or a part on it",
    "more than a twentieth warns, more than half stops: practice")
{
    private const double Warned = 0.05;
    private const double Shut = 0.5;

    /// <summary>What stands before the opening is looked for this far out, mm: a stand holds a housing nearer than that.</summary>
    private const double Before = 15;

    /// <summary>Bodies that a line only touches at its end are what it leads to, mm.</summary>
    private const double AtEnd = 0.1;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        OwnOpeningPlan[] openings = [.. housing.Plan.Openings.OfType<OwnOpeningPlan>()];
        if (openings.Length == 0)
        {
            yield break;
        }

        (string Name, string Ref, SurfaceTree Surface)[] board = [.. OnBoard(housing)];
        foreach (OwnOpeningPlan opening in openings)
        {
            var lines = SightLines.Through(opening);
            string?[] met = [.. lines.Select(line => FirstMet(housing, board, opening, line))];
            (string What, int Lines)? worst = met.OfType<string>().GroupBy(what => what, StringComparer.Ordinal)
                .Select(group => ((string What, int Lines)?)(group.Key, group.Count())).MaxBy(each => each!.Value.Lines);
            double share = (double)met.Count(what => what is not null) / Math.Max(1, lines.Length);
            if (worst is var (what, _) && share > Warned)
            {
                yield return Found(
                    share > Shut ? Severity.Stop : Severity.Warn, opening.Ref,
                    string.Create(CultureInfo.InvariantCulture, $"{what} stands in the way of {100 * share:0} % of it"),
                    share, Warned, lines[0].Outside,
                    opening.Elsewhere, "");
            }
            else if (opening is FloorOpeningPlan && PlannedHeat.FloorIsCovered(housing.Board, housing.Plan.Mount))
            {
                yield return Found(
                    Severity.Note, opening.Ref, "the floor lies against wall or table in use: this opening is reached with the housing "
                        + "taken off", 0, 0, lines.IsEmpty ? null : lines[0].Outside, "put it into the wall ('wall:') where it has to be "
                        + "open in use, or accept it", "");
            }
        }
    }

    private static string? FirstMet(
        HousingUnderCheck housing, (string Name, string Ref, SurfaceTree Surface)[] board, OwnOpeningPlan opening,
        (Point3 Outside, Point3 Inside) line)
    {
        Point3 way = line.Inside - line.Outside;
        double length = way.Length;
        Point3 along = (1 / length) * way;
        Point3 start = line.Outside - (Before * along);
        double reach = length + Before - AtEnd;
        foreach (MadePart part in housing.SoundParts)
        {
            SurfaceTree tree = housing.TreeOf(part);
            if (RayCast.First(tree, start, along, reach: reach) is { } hit)
            {
                return part.Plan.IsOfHousing ? SpokenNames.Of(housing.Plan, tree.Mesh.Tags[hit.Triangle]) : $"the {part.Name}";
            }
        }

        return board.Where(body => body.Ref != opening.PartRef).FirstOrDefault(
            body => RayCast.First(body.Surface, start, along, reach: reach) is not null).Name;
    }

    // The laminate and all that is soldered to it, with the names that makers know.
    private static IEnumerable<(string Name, string Ref, SurfaceTree Surface)> OnBoard(HousingUnderCheck housing)
    {
        StackPlan stack = housing.Plan.Stack;
        yield return ("the board's edge", "", TreeOf(Geometry.Solids.Shapes.Extrude(
            housing.Board.Board.Outline.Region, stack.BoardBottom, stack.BoardTop)));
        foreach (BoardBody body in BoardBody.Of(housing.Plan))
        {
            yield return (body.Ref, body.IsJoint ? body.Ref[..^" joint".Length] : body.Ref, TreeOf(body.Solid));
        }
    }

    private static SurfaceTree TreeOf(Geometry.Solids.Solid solid) => new(SolidEvaluator.Evaluate(solid).Require().Mesh);
}
