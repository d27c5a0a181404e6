using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Posts;

/// <summary>Every screw of the housing: length from stock, so that it engages and never bottoms out.</summary>
internal static class ScrewDecision
{
    /// <summary>Decides all screws.</summary>
    public static Decided<ImmutableArray<ScrewJointPlan>> Decide(
        BoardFile file, StackPlan stack, ImmutableArray<BossPlan> bosses, ImmutableArray<Joint> joints, ImmutableArray<HoldSite> holds)
    {
        var reasons = new Reasons();
        var screws = ImmutableArray.CreateBuilder<ScrewJointPlan>();
        foreach (BossPlan boss in bosses.Where(b => b.Hole is not null && b.Use != BossUse.SecondBoard))
        {
            Joint? joint = joints.FirstOrDefault(j => j.Hole.At == boss.At && boss.Use is BossUse.Board or BossUse.Both);
            screws.Add(boss.Use == BossUse.Board
                ? BoardScrew(boss, joint!, stack, screws.Count + 1)
                : boss.Use == BossUse.Clamp
                ? ClampScrew(file, stack, boss, holds.First(hold => hold.Lobe.At == boss.At).Post!, (screws.Count + 1, reasons))
                : ClosureScrew(file, stack, boss, joint, screws.Count + 1, reasons));
        }

        return reasons.Of(screws.ToImmutable());
    }

    private static ScrewJointPlan BoardScrew(BossPlan boss, Joint joint, StackPlan stack, int number) => new()
    {
        Name = BossDecision.Numbered("screw", number),
        Use = ScrewUse.Board,
        Through = PartNames.Board,
        Boss = boss,
        Screw = joint.Screw,
        At = boss.At,
        SeatZ = stack.BoardTop,
        FromFront = true,
        Washer = joint.Washer,
        Clamp = joint.Clamp,
        Length = joint.Fit.Length,
        Engagement = joint.Fit.Engagement,
        EngagementWanted = joint.Fit.Wanted,
        TipGap = boss.Hole!.Depth - (joint.Fit.Length - joint.Clamp),
    };

    private static ScrewJointPlan ClampScrew(
        BoardFile file, StackPlan stack, BossPlan boss, HoldPost post, (int Number, Reasons Reasons) told)
    {
        var basis = PrintBasis.Of(file.Print);
        ScrewProfile screw = file.Housing.Screw!;
        ScrewFit fit = BossDecision.ClampFit(file, basis, post, stack.BoardTop - boss.Top);
        double clamp = Math.Round(post.Thickness + stack.BoardTop - boss.Top, 6);
        string name = BossDecision.Numbered("screw", told.Number);
        var at = new Point3(boss.At.X, boss.At.Y, stack.BoardTop + post.Thickness);
        TellThread(told.Reasons, name, screw, boss.Hole!.Insert, at);

        told.Reasons.Length($"screws.{name.Replace(' ', '-')}.length", fit.Length, screw.Name,
            $"clamps the ring of {Reasons.Mm(post.Thickness)} onto the board, gets {Reasons.Mm(fit.Engagement)} of thread in the insert");
        return new ScrewJointPlan
        {
            Name = name,
            Use = ScrewUse.Clamp,
            Through = PartNames.Clamp,
            Boss = boss,
            Screw = screw,
            At = boss.At,
            SeatZ = stack.BoardTop + post.Thickness,
            FromFront = true,
            Washer = false,
            Clamp = clamp,
            Length = fit.Length,
            Engagement = fit.Engagement,
            EngagementWanted = fit.Wanted,
            TipGap = boss.Hole.Depth - (fit.Length - clamp),
            PassDiameter = screw.ClearanceHole + file.Print.Printer.HoleAllowance,
        };
    }

    private static ScrewJointPlan ClosureScrew(
        BoardFile file, StackPlan stack, BossPlan boss, Joint? joint, int number, Reasons reasons)
    {
        var basis = PrintBasis.Of(file.Print);
        ScrewProfile screw = joint?.Screw ?? file.Housing.Screw!;
        InsertProfile insert = boss.Hole!.Insert;
        double lowest = (joint is null ? boss.Top : stack.BoardTop) + PlanRules.UnderHead;
        ClosureScrewFit fit = ClosureScrewFit.Choose(screw, boss, lowest, stack.Front, basis);
        double clamp = Math.Round(fit.SeatZ - boss.Top, 6);
        double wanted = ScrewFit.EngagementWanted(screw, insert);
        double engagement = Math.Clamp(fit.Length - clamp - PlanRules.SetBelow, 0, insert.Length);
        string name = BossDecision.Numbered("screw", number);
        var at = new Point3(boss.At.X, boss.At.Y, fit.SeatZ);
        if (joint is null)
        {
            TellThread(reasons, name, screw, insert, at);
        }

        reasons.Length($"screws.{name.Replace(' ', '-')}.length", fit.Length, screw.Name,
            $"the counterbore goes {Reasons.Mm(Math.Round(stack.Front - fit.SeatZ, 3))} deep so that this stock length gets "
                + $"{Reasons.Mm(Math.Round(engagement, 3))} of thread in the insert");
        return new ScrewJointPlan
        {
            Name = name,
            Use = ScrewUse.Closure,
            Through = PartNames.Cover,
            Boss = boss,
            Screw = screw,
            At = boss.At,
            SeatZ = fit.SeatZ,
            FromFront = true,
            Washer = false,
            Clamp = clamp,
            Length = fit.Length,
            Engagement = engagement,
            EngagementWanted = wanted,
            TipGap = boss.Hole.Depth - (fit.Length - clamp),
            PassDiameter = screw.ClearanceHole + file.Print.Printer.HoleAllowance,
            CounterboreDiameter = screw.HeadDiameter + PlanRules.CounterboreOver,
        };
    }

    private static void TellThread(Reasons reasons, string name, ScrewProfile screw, InsertProfile insert, Point3 at)
    {
        if (screw.Thread != insert.Thread)
        {
            reasons.Refuse("screw-insert-thread", name, $"{name}: a screw {screw.Thread} does not go into an insert {insert.Thread}",
                screw.ThreadDiameter, screw.ThreadDiameter, "mm", at, $"choose a screw with thread {insert.Thread}");
        }
    }
}
