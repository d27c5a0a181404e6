using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Fit;

/// <summary>A populated board that cannot be lowered into the tub, or a cover that cannot come down on it.</summary>
public sealed class NoWayIn() : Rule(
    "no-way-in",
    "The populated board must go straight down into the tub, and baffle and cover straight down over it.",
    "A connector that stands out past the edge never passes a closed opening, however well it would sit behind it.",
    "everything that sinks sweeps the room above its place: its outline against every section of the tub above its lower end; for baffle "
        + "and cover the other way round. Where straight lowering fails, the rigid board is tried connector first at slants of 8 to 30 "
        + "degrees, in steps of 1 degree and 0.5 mm: where that works it is a note",
    "the solids as made; 0.05 mm of overlap counts")
{
    private const double Slack = 0.05;
    private const double LeadHeight = 3.0;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        HousingPlan plan = housing.Plan;
        var slab = new BoardBody(
            PartNames.Board, ShellForge.Board.Description.BoardSide.Bottom, housing.Board.Board.Outline.Region, plan.Stack.BoardBottom,
            plan.Stack.BoardTop, Point2.Origin);
        BoardBody[] bodies = [slab, .. BoardBody.Of(plan), .. BoardBody.OfWires(plan, LeadHeight)];
        if (housing.Part(PartNames.Tub) is { } tub)
        {
            // Contact at the final place is another rule's; here it is what stands in the way above it.
            Finding[] blocked = [.. bodies.SelectMany(body =>
                Blocked(body, plan.Hold.Holder?.GivesWay ?? Region.Empty,
                    housing.SectionsOf(tub).Where(section => section.FromZ >= body.ToZ), tub,
                    $"on its way down {body.Ref} meets"))];
            (string Ref, double Slant)? tilted = blocked.Length > 0 ? Tilted(housing, tub, bodies) : null;
            foreach (Finding finding in blocked)
            {
                yield return tilted is { } way
                    ? finding with
                    {
                        Severity = Severity.Note,
                        Message = $"{finding.Message}; put in at a slant of {way.Slant:0} degrees with {way.Ref} first it goes in",
                        Remedy = $"lead {way.Ref} through its opening first, the far side of the board {way.Slant:0} degrees up, then let "
                            + $"that side down",
                    }
                    : finding;
            }
        }

        foreach (string name in new[] { PartNames.Clamp, PartNames.Baffle, PartNames.Cover })
        {
            if (housing.Part(name) is { } part)
            {
                foreach (BoardBody body in bodies.Where(body => body.ToZ > plan.Stack.BoardTop))
                {
                    foreach (Finding finding in Blocked(body, Region.Empty,
                        housing.SectionsOf(part).Where(section => section.ToZ <= body.FromZ), part,
                        $"on its way down over {body.Ref} comes"))
                    {
                        yield return finding;
                    }
                }
            }
        }
    }

    // As far as anything stands out past the board on the connector's side, and a millimetre more.
    private static (string Ref, double Slant)? Tilted(HousingUnderCheck housing, MadePart tub, BoardBody[] bodies)
    {
        foreach (PortPlan port in housing.Plan.Ports)
        {
            Point2 along = Point2.Polar(1, port.Faces);
            double past = bodies.SelectMany(body => body.Outline.Loops).SelectMany(loop => loop).Max(point => Point2.Dot(point, along));
            if (TiltIn.LeastSlant(bodies, housing.TreeOf(tub), port, Math.Max(0, past - port.WallInner) + 1) is double slant)
            {
                return (port.Ref, slant);
            }
        }

        return null;
    }

    private IEnumerable<Finding> Blocked(
        BoardBody body, Region givesWay, IEnumerable<SectionSlab> sections, MadePart part, string how)
    {
        foreach (SectionSlab section in sections)
        {
            // To measure is quicker than to overlay, and most sections lie apart.
            if (!section.Outline.Bounds.Touches(body.Outline.Bounds) || section.Outline.Distance(body.Outline) > 0)
            {
                continue;
            }

            Region common = body.Outline.Intersect(section.Outline);
            common = givesWay.IsEmpty ? common : common.Less(givesWay.Grown(Slack));
            double width = common.IsEmpty ? 0 : common.Parts.Max(piece => 2 * piece.Area / piece.Perimeter * 2);
            if (width > Slack)
            {
                Point2 at = common.Parts.MaxBy(piece => piece.Area)!.Bounds.Centre;
                yield return Found(
                    Severity.Stop, body.Ref, $"{how} the {part.Name}: {width:0.00} mm overlap at z = {section.FromZ:0.0} mm", width, 0,
                    new Point3(at.X, at.Y, section.FromZ),
                    "move the connector inward on the board ('past-edge:'), or leave more room round the board ('clearance: "
                        + "{board-edge: ...}')");
                yield break;
            }
        }
    }
}
