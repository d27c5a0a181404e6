using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;
using ShellForge.Planning.SecondBoards;

namespace ShellForge.Planning.Posts;

/// <summary>Posts under a second board on the floor, with the housing's inserts, and its screws.</summary>
internal static class SecondBoardPosts
{
    /// <summary>Length and hole of its screws.</summary>
    public static ScrewFit ScrewOf(Given given, SecondBoardSpec board) =>
        ScrewFit.Choose(given.File.Housing.Screw!, given.File.Housing.Insert!, board.Thickness, given.Basis);

    /// <summary>Posts under its screw holes; none where it is held otherwise.</summary>
    /// <param name="given">The board file, lines and layers.</param>
    /// <param name="plan">The second board; null for none on the floor.</param>
    /// <param name="before">How many posts there are already.</param>
    public static IEnumerable<BossPlan> Of(Given given, SecondBoardPlan? plan, int before) =>
        plan is not { Size.Hold: SecondBoardHold.Screws } ? [] : plan.Holes.Select((hole, i) => new BossPlan
        {
            Name = BossDecision.Numbered("boss", before + i + 1),
            Use = BossUse.SecondBoard,
            At = hole,
            Diameter = plan.Size.PostDiameter,
            Top = plan.Seat,
            Hole = InsertHoleDecision.Plan(given.File.Housing.Insert!, plan.Seat, ScrewOf(given, plan.Board).Depth),
        });

    /// <summary>Its screws, after all others; none where it is held otherwise.</summary>
    /// <param name="given">The board file, lines and layers.</param>
    /// <param name="plan">The second board; null for none on the floor.</param>
    /// <param name="bosses">All posts.</param>
    /// <param name="before">How many screws there are already.</param>
    public static Decided<ImmutableArray<ScrewJointPlan>> Screws(
        Given given, SecondBoardPlan? plan, ImmutableArray<BossPlan> bosses, int before)
    {
        var reasons = new Reasons();
        if (plan is not { Size.Hold: SecondBoardHold.Screws })
        {
            return reasons.Of(ImmutableArray<ScrewJointPlan>.Empty);
        }

        ScrewProfile screw = given.File.Housing.Screw!;
        ScrewFit fit = ScrewOf(given, plan.Board);
        reasons.Length("second-board.screws.length", fit.Length, screw.Name,
            $"clamps {Reasons.Mm(plan.Board.Thickness)}, gets {Reasons.Mm(fit.Engagement)} of thread in the insert");
        return reasons.Of<ImmutableArray<ScrewJointPlan>>(
        [
            .. bosses.Where(boss => boss.Use == BossUse.SecondBoard).Select((boss, i) => new ScrewJointPlan
            {
                Name = BossDecision.Numbered("screw", before + i + 1),
                Use = ScrewUse.SecondBoard,
                Through = PartNames.SecondBoard,
                Boss = boss,
                Screw = screw,
                At = boss.At,
                SeatZ = plan.Top,
                FromFront = true,
                Washer = false,
                Clamp = plan.Board.Thickness,
                Length = fit.Length,
                Engagement = fit.Engagement,
                EngagementWanted = fit.Wanted,
                TipGap = boss.Hole!.Depth - (fit.Length - plan.Board.Thickness),
                PassDiameter = plan.Board.HoleDiameter,
            }),
        ]);
    }
}
