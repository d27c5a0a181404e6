using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Gauges;

/// <summary>How near something on the board comes to a printed part, as made.</summary>
/// <param name="Body">Designator, soldered lead, or screw head.</param>
/// <param name="Side">Side of the board it stands on.</param>
/// <param name="Part">The printed part.</param>
/// <param name="Distance">Least distance, mm, measured to the sections of the part; negative: how deep it stands in it.</param>
/// <param name="At">The place, mm, as assembled.</param>
/// <param name="Upright">Whether the gap runs along z: to a floor or a roof, not to a wall.</param>
public sealed record MeasuredGap(string Body, BoardSide Side, string Part, double Distance, Point3 At, bool Upright)
{
    /// <summary>Gaps up to this are looked at however small the wanted clearance is, mm.</summary>
    public const double LeastReach = 0.25;

    private const double LeadHeight = 3.0;

    /// <summary>How far gaps are looked for in a housing, mm: what lies farther is wide enough for every rule.</summary>
    public static double ReachOf(HousingUnderCheck housing) => Math.Max(LeastReach, UnderParts(housing));

    /// <summary>What is wanted between a part below the board and a floor, mm: half the planned clearance.</summary>
    public static double UnderParts(HousingUnderCheck housing) => housing.Plan.Stack.BelowParts / 2;

    /// <summary>All gaps of a sound part within reach, in the order of the board's bodies.</summary>
    internal static ImmutableArray<MeasuredGap> Of(HousingUnderCheck housing, MadePart part)
    {
        HousingPlan plan = housing.Plan;
        double reach = ReachOf(housing);
        BoardBody[] bodies = [.. BoardBody.Of(plan), .. BoardBody.OfWires(plan, LeadHeight),
            .. BoardBody.OfHeads(plan).Where(head => head.LiesOn != part.Name)];
        ImmutableArray<SectionSlab> slabs = housing.SectionsOf(part);
        BodyGap?[] gaps = new BodyGap?[bodies.Length];
        Parallel.For(0, bodies.Length, i => gaps[i] = BodyGap.Least(bodies[i], slabs, reach));
        return
        [
            .. bodies.Zip(gaps).Where(pair => pair.Second is not null).Select(pair => new MeasuredGap(
                pair.First.Ref, pair.First.Side, part.Name, pair.Second!.Value.Distance, pair.Second.Value.At, pair.Second.Value.Upright)),
        ];
    }
}
