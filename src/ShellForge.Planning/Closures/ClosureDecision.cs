using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Closures;

/// <summary>Decides how cover and tub hold together: what was asked for, or the nearest that can be built, with the refusal.</summary>
internal static class ClosureDecision
{
    // Plastic round a counterbore, in lines.
    private const int PostLines = 3;

    /// <summary>The closure of a housing.</summary>
    public static Decided<ClosurePlan> Decide(HousingDraft draft, RimSectors rim, KeyPlan key, double lipBottom)
    {
        var reasons = new Reasons();
        string from = Reasons.Origin(draft.File, "housing.closure");
        switch (draft.File.Housing.Closure)
        {
            case ClosureKind.Screws when ClosureScrews(draft).Any():
                reasons.Choice("closure", "screws", from, "as asked");
                return reasons.Of<ClosurePlan>(reasons.Take(Screws(draft)));
            case ClosureKind.Screws:
                reasons.Refuse(
                    "closure-screws-without-place", "cover", "No place was found for closure screws: the cover is planned with a snap bead.",
                    0, 2, "screws", Front(draft), "closure: snap, or a board with mounting holes clear of the lit window");
                break;
            case ClosureKind.Twist when TwistDecision.Obstacle(draft, rim) is string obstacle:
                reasons.Refuse(
                    "twist-cannot-turn", "cover", $"The cover can't be twisted shut: {obstacle}. It is planned with a snap bead.",
                    0, 1, "", Front(draft), "closure: snap or screws; or a closed port inside the board's edge");
                break;
            case ClosureKind.Twist:
                reasons.Choice("closure", "twist", from, "as asked");
                return reasons.Of<ClosurePlan>(reasons.Take(TwistDecision.Decide(draft, lipBottom)));
            default:
                break;
        }

        reasons.Choice("closure", "snap", from, draft.File.Housing.Closure == ClosureKind.Snap ? "as asked" : "the nearest that can be built");
        return reasons.Of<ClosurePlan>(reasons.Take(SnapDecision.Decide(draft, rim, key, lipBottom)));
    }

    /// <summary>Screws that hold the cover.</summary>
    public static IEnumerable<ScrewJointPlan> ClosureScrews(HousingDraft draft) =>
        draft.Screws.Where(screw => screw.Use == ScrewUse.Closure && screw.FromFront);

    private static Decided<ScrewClosurePlan> Screws(HousingDraft draft)
    {
        var reasons = new Reasons();
        ImmutableArray<ScrewJointPlan> screws = [.. ClosureScrews(draft)];
        reasons.Choice(
            "closure.screws", screws.Length.ToString(CultureInfo.InvariantCulture),
            Reasons.Origin(draft.File, "housing.closure-screws"), "into inserts, heads sunk into the cover");
        double post = reasons.Length(
            "closure.post-diameter", screws.Max(screw => PostDiameter(draft, screw)), Reasons.Rule,
            "as the boss below, with three lines round the head's room");
        double bottom = screws.Min(screw => Meets(draft, screw));
        return reasons.Of(new ScrewClosurePlan
        {
            ScrewNames = [.. screws.Select(screw => screw.Name)],
            PostDiameter = post,
            PostBottom = bottom,
        });
    }

    // A post ends on the boss, or on the board where the boss carries it.
    private static double Meets(HousingDraft draft, ScrewJointPlan screw)
    {
        BossPlan? boss = draft.Bosses.FirstOrDefault(b => b.Name == screw.Boss);
        return boss is null ? draft.Stack.PartingLine
            : boss.Use == BossUse.Both ? draft.Stack.BoardTop
            : boss.Top;
    }

    private static double PostDiameter(HousingDraft draft, ScrewJointPlan screw) => Math.Max(
        draft.Bosses.FirstOrDefault(b => b.Name == screw.Boss)?.Diameter ?? 0,
        Math.Max(screw.CounterboreDiameter, screw.PassDiameter) + (2 * draft.Basis.Wall(PostLines)));

    private static Point3 Front(HousingDraft draft) => new(0, 0, draft.Stack.PartingLine);
}
