using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Front;
using ShellForge.Planning.Mounts;
using ShellForge.Planning.Plan;
using ShellForge.Planning.Ports;
using ShellForge.Planning.Posts;
using ShellForge.Planning.Walls;

namespace ShellForge.Planning;

/// <summary>Decides a housing for a board: every dimension once, each with its reason.</summary>
public static class HousingPlanner
{
    /// <summary>
    /// The plan of a housing. Always whole: a wish that can't be met becomes a refusal, and the plan holds the nearest thing that can
    /// be built.
    /// </summary>
    public static HousingPlan Plan(BoardFile file)
    {
        var reasons = new Reasons();
        PrintBasis basis = PrintBasis.Of(file.Print);
        ImmutableArray<Joint> joints = reasons.Take(JointDecision.Decide(file, basis));
        LipSection lip = reasons.Take(LipDecision.Decide(file, basis));
        MountNeeds mount = MountForm.Needs(file, basis);
        (ShellPlan shell, ImmutableArray<ClosureSite> sites) = reasons.Take(ShellDecision.Decide(file, basis, joints, lip));
        CoverRoom room = CoverRoom.Of(shell, lip);
        ImmutableArray<PortInPlan> portsInPlan = reasons.Take(PortDecision.InPlan(file, basis, shell, joints));
        BoardLevels levels = reasons.Take(StackDecision.Below(file, basis, joints, portsInPlan, mount));
        ImmutableArray<PortPlan> ports = reasons.Take(PortDecision.AtHeight(file, basis, shell, portsInPlan, levels));
        double parting = reasons.Take(StackDecision.Parting(file, basis, room, lip, levels, ports));
        FrontLimits limits = StackDecision.Limits(file, joints, levels, parting);
        FrontDraft front = reasons.Take(FrontDecision.Decide(file, basis, shell, room, lip, limits));
        StackPlan stack = reasons.Take(StackDecision.Above(file, levels, parting, limits, front));
        ImmutableArray<BossPlan> bosses = reasons.Take(
            BossDecision.Decide(file, basis, shell, levels, parting, joints, sites, ports));
        CableExitPlan? cable = reasons.Take(CableExitDecision.Decide(file, basis, shell, levels, parting, bosses));
        var draft = new HousingDraft
        {
            File = file,
            Basis = basis,
            Lip = lip,
            Shell = shell,
            Room = room,
            Stack = stack,
            Front = front,
            Bosses = bosses,
            Screws = reasons.Take(ScrewDecision.Decide(file, basis, stack, bosses, joints)),
            Ports = ports,
            CableExit = cable,
            Saddles = reasons.Take(SaddleDecision.Decide(file, basis, shell, levels, ports, bosses)),
        };
        return Whole(draft, reasons.Take(CoverSideDecision.Decide(draft)), reasons);
    }

    private static HousingPlan Whole(HousingDraft draft, CoverSide cover, Reasons reasons)
    {
        ImmutableArray<PartPlan> parts = reasons.Take(
            PartsDecision.Decide(draft.File, draft.Stack, cover.Diffuser, cover.Baffle, cover.Mount));
        CrowdedSectors.Note(draft, cover, reasons);
        Decided<HousingDraft> all = reasons.Of(draft);
        return new HousingPlan
        {
            Source = draft.File,
            Stack = draft.Stack,
            Shell = draft.Shell,
            Bosses = draft.Bosses,
            Screws = draft.Screws,
            Ports = draft.Ports,
            CableExit = draft.CableExit,
            Saddles = draft.Saddles,
            Cover = cover.Cover,
            Diffuser = cover.Diffuser,
            Baffle = cover.Baffle,
            Closure = cover.Closure,
            Key = cover.Key,
            PryNotches = cover.PryNotches,
            Vents = cover.Vents,
            Mount = cover.Mount,
            Lettering = cover.Lettering,
            Parts = parts,
            Shopping = ShoppingDecision.Decide(draft.Bosses, draft.Screws, draft.CableExit, cover.Diffuser, cover.Mount),
            Decisions = all.Decisions,
            Refusals = all.Refusals,
        };
    }
}
