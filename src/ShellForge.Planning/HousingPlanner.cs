using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Planning.Batteries;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Edges;
using ShellForge.Planning.Exits;
using ShellForge.Planning.Floors;
using ShellForge.Planning.Front;
using ShellForge.Planning.Holders;
using ShellForge.Planning.Mounts;
using ShellForge.Planning.Openings;
using ShellForge.Planning.Plan;
using ShellForge.Planning.Posts;
using ShellForge.Planning.Remembering;
using ShellForge.Planning.SecondBoards;
using ShellForge.Planning.Walls;

namespace ShellForge.Planning;

/// <summary>Decides a housing for a board: every dimension once, each with its reason.</summary>
public static class HousingPlanner
{
    /// <summary>
    /// The plan of a housing. Always whole: a wish that can't be met becomes a refusal, and the plan holds the nearest thing that can
    /// be built.
    /// </summary>
    /// <param name="file">The board.</param>
    /// <param name="memory">Knows what was worked out for other housings; null for a housing alone.</param>
    public static HousingPlan Plan(BoardFile file, WorkMemory? memory = null)
    {
        var given = Given.Of(file, memory ?? new WorkMemory());
        HousingPlan plan = HeightDecision.Fitted(given, Planned);
        return file.Housing.Hold == HoldKind.Auto && plan.Hold.DownBy is null ? Held(given, plan) : plan;
    }

    // What the closed housing does not hold gets a holder of its own, where one finds its place.
    private static HousingPlan Held(Given given, HousingPlan loose)
    {
        foreach (HoldTraits form in HoldForm.All.Where(form => form.Kind != HoldKind.Auto && form.IsPossible(given)))
        {
            HousingPlan held = HeightDecision.Fitted(given with { Hold = form.Kind }, Planned);
            if (held.Hold.DownBy is not null
                && held.Refusals.All(refusal => loose.Refusals.Any(
                    known => (known.Rule, known.Subject) == (refusal.Rule, refusal.Subject))))
            {
                return held;
            }
        }

        return loose;
    }

    private static HousingPlan Planned(Given given)
    {
        BoardFile file = given.File;
        var reasons = new Reasons();
        MeasuredDecision.Tell(file, reasons);
        BoardTold.Tell(file, reasons);
        ImmutableArray<Joint> joints = reasons.Take(JointDecision.Decide(given));
        LipRing ring = reasons.Take(LipDecision.Ring(given));
        MountNeeds mount = MountForm.Needs(given);
        ClosureDecision closure = reasons.Take(ClosureDecision.Of(given, joints, ring));
        InPlan choice = closure.InPlan;
        ShellPlan shell = choice.Shell;
        ImmutableArray<PostInPlan> posts = BossDecision.InPlan(joints, closure.Sites, choice.Hold.Sites, given.Basis);
        (BatteryPlace? battery, SecondBoardPlace? secondPlace) = UnderBoardDecision.Places(given, choice, posts, reasons);
        BoardLevels levels = reasons.Take(StackDecision.Below(given, joints, choice, new FloorNeeds(mount, battery, secondPlace)));
        BatteryBayPlan? bay = reasons.Take(BatteryBayDecision.AtHeight(given, battery, levels));
        SecondBoardPlan? second = reasons.Take(SecondBoardDecision.AtHeight(given, secondPlace, levels));
        ImmutableArray<OpeningPlan> openings = reasons.Take(OpeningForm.AtHeight(given, choice, levels));
        double parting = reasons.Take(StackDecision.Parting(given, choice, levels, openings));
        FrontLimits limits = StackDecision.Limits(file, choice.Closure, joints, levels, parting);
        FrontDraft front = reasons.Take(FrontDecision.Decide(given, choice, limits));
        StackPlan stack = reasons.Take(StackDecision.Above(file, levels, parting, limits, front));
        openings = reasons.Take(OpeningForm.InFront(
            new FrontGiven(new HeightGiven(given, choice, levels, openings), front, stack)));
        var tub = new TubDraft(given, shell, levels, openings)
        {
            Bay = bay,
            SecondBoard = second,
            Holds = choice.Hold.Sites,
        };
        ImmutableArray<BossPlan> bosses = reasons.Take(BossDecision.Decide(tub, parting, joints, closure.Sites));
        Decided<ImmutableArray<ScrewJointPlan>> screws = ScrewDecision.Decide(
            file, stack, bosses, joints, choice.Hold.Sites);
        Decided<ImmutableArray<ScrewJointPlan>> ownScrews = SecondBoardPosts.Screws(given, second, bosses, screws.Value.Length);
        Decided<ImmutableArray<SpacerPlan>> spacers = SpacerDecision.Decide(file);
        Decided<ImmutableArray<SaddlePlan>> saddles = SaddleDecision.Decide(tub, bosses);
        var draft = new HousingDraft
        {
            File = file,
            Basis = given.Basis,
            Memory = given.Memory,
            Closure = choice.Closure,
            Lip = choice.Lip,
            Hold = choice.Hold,
            Shell = shell,
            Room = choice.Room,
            Stack = stack,
            Front = front,
            Bosses = bosses,
            Screws = [.. screws.Value, .. ownScrews.Value],
            Openings = openings,
            OpeningsInPlan = choice.Openings,
            Saddles = saddles.Value,
            Bay = bay,
            SecondBoard = second,
            Spacers = spacers.Value,
        };

        HousingEdges edges = EdgeDecision.BeforeFloor(draft);
        draft = draft with { Shell = shell with { FloorEdge = edges.Floor, FloorEdgeInBore = edges.FloorInBore } };

        // The exits look for their places among all that stands on the floor; they are told before it.
        draft = draft with { CableExits = reasons.Take(ExitForm.Chosen(draft)) };
        reasons.Take(screws);
        reasons.Take(ownScrews);
        reasons.Take(spacers);
        reasons.Take(saddles);
        return Whole(draft, reasons.Take(CoverSideDecision.Decide(draft, closure)), reasons);
    }

    private static HousingPlan Whole(HousingDraft draft, CoverSide cover, Reasons reasons)
    {
        HousingEdges edges = reasons.Take(EdgeDecision.Decide(draft, cover));
        ImmutableArray<PartPlan> parts = reasons.Take(
            PartsDecision.Decide(draft.File, draft.Stack, PrintsDecision.Posts(draft, cover.Mount), cover));
        ImmutableArray<CrowdedOpening> crowded = reasons.Take(CrowdedSectors.Of(draft, cover));
        UnusedWishes.Tell(draft, cover, reasons);
        Decided<HousingDraft> all = reasons.Of(draft);
        var plan = new HousingPlan
        {
            Source = draft.File,
            Stack = draft.Stack,
            Shell = draft.Shell with { FloorEdge = edges.Floor, FloorEdgeInBore = edges.FloorInBore },
            Bosses = draft.Bosses,
            Screws = draft.Screws,
            Openings = draft.Openings,
            CableExits = draft.CableExits,
            Saddles = draft.Saddles,
            Bay = draft.Bay,
            SecondBoard = draft.SecondBoard,
            Spacers = draft.Spacers,
            Hold = cover.Hold,
            Cover = cover.Cover with { FrontEdge = edges.Front, FrontEdgeInBore = edges.FrontInBore },
            Diffuser = cover.Diffuser,
            Baffle = cover.Baffle,
            Closure = cover.Closure,
            Key = cover.Key,
            PryNotches = cover.PryNotches,
            Vents = cover.Vents,
            Mount = cover.Mount,
            Lettering = cover.Lettering,
            Crowded = crowded,
            Parts = parts,
            Shopping = ShoppingDecision.Decide(draft, cover),
            Decisions = all.Decisions,
            Refusals = all.Refusals,
        };
        return plan with { Steps = HandStepsDecision.Of(plan) };
    }
}
