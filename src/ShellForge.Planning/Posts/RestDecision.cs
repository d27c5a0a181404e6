using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Exits;
using ShellForge.Planning.Floors;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Posts;

/// <summary>
/// Rests under the board's free rim, grown out of the wall, where holes are too few or too far apart to carry it. Without any hole the
/// board lies on rests alone and the cover's side presses it down.
/// </summary>
internal static class RestDecision
{
    private const int Directions = 72;

    /// <summary>Board diameters from which a board wants 4 and 6 supports, mm. Typical: boards bow 0.75 %.</summary>
    private const double FourFrom = 120;

    /// <summary>See <see cref="FourFrom"/>.</summary>
    private const double SixFrom = 200;

    /// <summary>The rests.</summary>
    public static Decided<ImmutableArray<BossPlan>> Decide(TubDraft tub, ImmutableArray<BossPlan> bosses, BelowBoardRoom room)
    {
        (BoardFile file, _, ShellPlan shell, BoardLevels levels, _) = tub;
        var reasons = new Reasons();
        double diameter = 2 * file.Board.Outline.OuterRadius;
        int wanted = diameter >= SixFrom ? 6 : diameter >= FourFrom ? 4 : 3;
        List<Angle> supports = [.. bosses.Where(b => b.Use is BossUse.Board or BossUse.Both).Select(b => Angle.Of(b.At).Normalized)];
        if (supports.Count >= wanted || (supports.Count >= 3 && WidestGap(supports) <= 150))
        {
            return reasons.Of(ImmutableArray<BossPlan>.Empty);
        }

        var rests = ImmutableArray.CreateBuilder<BossPlan>();
        var rim = new Rim(file.Board.Outline);
        Region cable = ExitForm.Of(file)?.Way(shell) ?? Region.Empty;
        ImmutableArray<Angle> free =
            [.. Enumerable.Range(0, Directions).Select(i => (file.Up + Angle.FromDegrees(i * 360.0 / Directions)).Normalized)
            .Where(d => IsFree(d, rim, tub, bosses, cable, room))];
        while (supports.Count < wanted && !free.IsEmpty)
        {
            Angle best = free.MaxBy(d => supports.Count == 0 ? 0 : supports.Min(s => Math.Round(Angle.Between(s, d).Degrees, 6)));
            if (supports.Count > 0 && supports.Min(s => Angle.Between(s, best).Degrees) < 20)
            {
                break;
            }

            supports.Add(best);
            rests.Add(new BossPlan
            {
                Name = BossDecision.Numbered("rest", rests.Count + 1),
                Use = BossUse.Rest,
                At = Middle(best, rim),
                Diameter = PlanRules.RestDiameter,
                Top = levels.BoardBottom,
            });
        }

        if (supports.Count < 3)
        {
            reasons.Refuse("board-not-carried", "board",
                string.Create(CultureInfo.InvariantCulture,
                    $"the board has {supports.Count} supports: parts on its back leave no free rim for more"),
                supports.Count, 3, "", new Point3(0, 0, levels.BoardBottom),
                "leave parts away from the rim, or give the board mounting holes");
        }

        reasons.Choice("bosses.rests", rests.Count.ToString(CultureInfo.InvariantCulture), Reasons.Rule,
            $"the board has {bosses.Count(b => b.Use is BossUse.Board or BossUse.Both)} mounting holes and wants {wanted} supports; a "
                + $"rest reaches {Reasons.Mm(PlanRules.RestOverlap)} under its rim");
        return reasons.Of(rests.ToImmutable());
    }

    private static double WidestGap(List<Angle> supports)
    {
        double[] sorted = [.. supports.Select(s => s.Degrees).Order()];
        return Enumerable.Range(0, sorted.Length)
            .Max(i => i + 1 < sorted.Length ? sorted[i + 1] - sorted[i] : sorted[0] + 360 - sorted[^1]);
    }

    // The rest's inner side reaches under the rim by the overlap; the rest of it fuses with the wall.
    private static Point2 Middle(Angle direction, Rim rim) => Lattice.Snap(Point2.Polar(
        rim.RadiusAt(direction) - PlanRules.RestOverlap + (PlanRules.RestDiameter / 2), direction));

    private static bool IsFree(
        Angle direction, Rim rim, TubDraft tub, ImmutableArray<BossPlan> bosses, Region cable, BelowBoardRoom room)
    {
        Point2 middle = Middle(direction, rim);
        Region outline = Region.Disc(middle, Ring.Peg(PlanRules.RestDiameter / 2)).Intersect(PostRoom.Of(tub.Shell));
        if (outline.IsEmpty)
        {
            return false;
        }

        bool clearOfOpenings = !tub.Openings.Any(opening => opening.IsBarredBy(middle, PlanRules.RestDiameter));
        bool clearOfCable = cable.IsEmpty || outline.Distance(cable) > PlanRules.Beside;
        return clearOfOpenings && clearOfCable
            && room.Ceiling(outline.Intersect(room.Board).IsEmpty ? outline : outline.Intersect(room.Board)) >= tub.Levels.BoardBottom
            && bosses.All(b => Point2.Distance(b.At, middle) > ((b.Diameter + PlanRules.RestDiameter) / 2) + PlanRules.TieDistance);
    }
}
