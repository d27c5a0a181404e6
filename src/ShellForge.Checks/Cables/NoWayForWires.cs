using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Cables;

/// <summary>Leads that find no way below the board, or only one that pinches them.</summary>
public sealed class NoWayForWires() : Rule(
    "no-way-for-wires",
    "Soldered leads must find a way below the board, open from above, at least 1.3 times as wide as their bundle.",
    "Wires that cannot be threaded end up pinched under the board or the cover.",
    "the room under the board less tub and parts, on the floor and just below the board, shrunk by half of 1.3 x the bundle: both ends "
        + "must lie in one piece of it; the widest bundle that still passes is told, and where a wider one gets stuck",
    "practice: open channels of 1.3 x the bundle")
{
    private const double Room = 1.3;

    /// <summary>How far from its joint a lead may begin its way, mm: the bend at the blob.</summary>
    private const double AtJoint = 2.5;

    // A lead of 30 AWG with its jacket, mm: nothing thinner is soldered to a board by hand.
    private const double ThinnestLead = 0.8;

    // Widths are told to a tenth of a millimetre.
    private const double Step = 0.1;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        if (housing.Part(PartNames.Tub) is not { } tub)
        {
            yield break;
        }

        var told = new HashSet<(Point2, Point2)>();
        foreach (WireLead wire in housing.Board.Board.Wires.Where(wire => wire.Side == BoardSide.Bottom))
        {
            if (Target(housing, wire) is not { } target || !told.Add(target.CompareTo(wire.At)))
            {
                continue;
            }

            double bundle = wire.Diameter * (1 + Math.Sqrt(wire.Conductors - 1));
            double wanted = Room * bundle;
            Region free = Free(housing, tub, wire, wanted);
            if (Passes(free, wire.At, target.At, wanted))
            {
                continue;
            }

            double widest = 0;
            while (widest + Step < wanted && Passes(free, wire.At, target.At, widest + Step))
            {
                widest += Step;
            }

            widest = Math.Round(widest, 1);
            Point2 neck = Neck(free, wire.At, target.At, widest + Step);
            string between = Between(housing, neck, wire.To);
            yield return Found(
                widest < bundle ? Severity.Stop : Severity.Warn, wire.Name,
                widest == 0
                    ? string.Create(CultureInfo.InvariantCulture,
                        $"its leads find no way to {target.Name}: {between} there is none; "
                            + $"their bundle of {bundle:0.0} mm wants {wanted:0.0} mm")
                    : string.Create(CultureInfo.InvariantCulture,
                        $"to {target.Name} there are {widest:0.0} mm {between}; its bundle of {bundle:0.0} mm wants {wanted:0.0} mm"),
                widest, wanted, new Point3(neck.X, neck.Y, housing.Plan.Stack.BoardBottom), Remedy(wire, wanted, widest));
        }
    }

    // A bundle is as many times as wide as its leads.
    private static string Remedy(WireLead wire, double wanted, double widest)
    {
        double fits = Math.Floor(10 * wire.Diameter * widest / wanted) / 10;
        string thinner = fits >= ThinnestLead
            ? string.Create(CultureInfo.InvariantCulture, $"leads of {fits:0.0} mm or less ('diameter:'), ") : "";
        return $"{thinner}another place to solder them (its 'at:'), or parts and holes there farther apart on the board";
    }

    // What stands on either side of a place below the board, by the names on the board.
    private static string Between(HousingUnderCheck housing, Point2 at, string to)
    {
        HousingPlan plan = housing.Plan;
        (string Name, double Distance)[] near =
        [
            .. plan.Bosses.Select(boss => (BoardNames.Of(boss, housing.Board.Board), Point2.Distance(boss.At, at) - (boss.Diameter / 2))),
            .. BoardBody.Of(plan).Where(body => body.Side == BoardSide.Bottom && body.Ref != to)
                .Select(body => (body.Ref, body.Outline.Distance(at))),
            ("the wall", plan.Shell.Cavity.DistanceToOutline(at)),
        ];
        string[] nearest = [.. near.OrderBy(each => each.Distance).Select(each => each.Name).Distinct().Take(2)];
        return $"between {string.Join(" and ", nearest)}";
    }

    private static WireTarget? Target(HousingUnderCheck housing, WireLead wire)
    {
        if (housing.Plan.ExitOf(wire) is { } exit)
        {
            return new WireTarget(exit.InBrief, exit.LeadsFrom(AtJoint));
        }

        if (wire.To == BatterySpec.WireWord && housing.Plan.Bay is { } bay)
        {
            return new WireTarget("the battery", bay.Point((bay.Size.OuterLength / 2) + AtJoint, 0));
        }

        if (wire.To == SecondBoardSpec.WireWord && housing.Plan.SecondBoard is { } second)
        {
            Point2 beside = second.WireEnd + Point2.Polar(AtJoint + second.Size.Gap + second.Size.Wall, second.Turn);
            return new WireTarget("the second board", beside);
        }

        if (housing.Board.Board.Wires.FirstOrDefault(other => other.Name == wire.To) is { } end)
        {
            return new WireTarget(end.Name, end.At);
        }

        return housing.Board.Board.Parts.FirstOrDefault(part => part.Ref == wire.To) is { } part ? new WireTarget(part.Ref, part.At) : null;
    }

    // What leads can lie in: the union of a band on the floor and one just below the board, each as high as the bundle wants.
    private static Region Free(HousingUnderCheck housing, MadePart tub, WireLead wire, double height)
    {
        StackPlan stack = housing.Plan.Stack;
        BoardBody[] bodies = [.. BoardBody.Of(housing.Plan).Where(body => body.Side == BoardSide.Bottom && body.Ref != wire.To)];
        Region Band(double from, double to) => housing.Plan.Shell.Cavity.Less(Region.Union(
        [
            .. Ends(housing.SectionsOf(tub), from, to),
            .. bodies.Where(body => body.FromZ < to && body.ToZ > from).Select(body => body.Outline),
        ]));

        // Lobes and notches of the cavity's edge are left to the wall's own sections.
        double low = Math.Min(stack.FloorTop + height, stack.BoardBottom);
        double high = Math.Max(stack.BoardBottom - height, stack.FloorTop);
        const double hair = 0.01;
        return Band(stack.FloorTop + hair, low - hair).And(Band(high + hair, stack.BoardBottom - hair));
    }

    // What stands on the floor narrows upward, what hangs narrows downward: the sections at both ends of a band hold what lies between.
    private static IEnumerable<Region> Ends(ImmutableArray<SectionSlab> slabs, double from, double to) =>
        slabs.Where(slab => (slab.FromZ <= from && slab.ToZ > from) || (slab.FromZ < to && slab.ToZ >= to)).Select(slab => slab.Outline);

    private static bool Passes(Region free, Point2 from, Point2 to, double width) =>
        Ways(free, width).Any(way => Reaches(way, from, width) && Reaches(way, to, width));

    // Where a bundle that is just too wide for the way gets stuck: between the pieces that it reaches from either end, else at the end that
    // lies in none.
    private static Point2 Neck(Region free, Point2 from, Point2 to, double width)
    {
        ImmutableArray<Region> ways = Ways(free, width);
        Region here = Region.Union(ways.Where(way => Reaches(way, from, width)));
        Region there = Region.Union(ways.Where(way => Reaches(way, to, width)));
        if (here.IsEmpty || there.IsEmpty)
        {
            return here.IsEmpty ? from : to;
        }

        (Point2 a, Point2 b) = NearestPlace.Between(here, there);
        return 0.5 * (a + b);
    }

    // The pieces in which the middle of a bundle can lie.
    private static ImmutableArray<Region> Ways(Region free, double width) => free.Grown(-width / 2).Parts;

    private static bool Reaches(Region way, Point2 end, double width) => way.Distance(end) <= AtJoint + (width / 2);

    private sealed record WireTarget(string Name, Point2 At)
    {
        // A pair of leads that name each other is one way.
        public (Point2, Point2) CompareTo(Point2 from) =>
            (from.X, from.Y).CompareTo((At.X, At.Y)) <= 0 ? (from, At) : (At, from);
    }
}
