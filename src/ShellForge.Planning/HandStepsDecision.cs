using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Planning.Hands;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning;

/// <summary>
/// The steps from the prints on the bench to the closed housing. What depends on a form (opening, closure, mount) that form tells; the
/// rest is told here, from the plan.
/// </summary>
internal static class HandStepsDecision
{
    /// <summary>All steps, in the order of the hands.</summary>
    public static ImmutableArray<HandStep> Of(HousingPlan plan)
    {
        IEnumerable<HandStep> steps =
        [
            Clean(plan),
            .. Inserts(plan),
            .. plan.CableExits.SelectMany(exit => exit.HandSteps(plan)),
            .. BatteryHands.Steps(plan),
            .. SecondBoardHands.Steps(plan),
            Board(plan),
            .. FirstLight(plan),
            .. Diffuser(plan),
            .. Baffle(plan),
            .. plan.Closure.HandSteps(plan),
            .. plan.Hold.Holder?.HandSteps(plan) ?? [],
            .. plan.Openings.SelectMany(opening => opening.HandSteps(plan)),
            .. plan.Mount?.HandSteps(plan) ?? [],
        ];
        return [.. steps.OrderBy(step => step.Phase)];
    }

    private static HandStep Clean(HousingPlan plan)
    {
        ImmutableArray<string> names = [.. plan.Parts.Select(part => part.Name)];
        return new HandStep
        {
            Phase = HandPhase.Prints,
            Title = "Clean the prints",
            Text = $"Take strings and the squashed first layer off {HandWords.Listed(names)}. Do not sand the lip: its gap is planned.",
            Check = $"Try it empty. {plan.Closure.WayOn(plan)}",
            Tools = ["deburring knife or scalpel"],
            Cautions = [HandCaution.Edges],
            Shown = [.. plan.Parts.Where(part => part.IsOfHousing).Select(part => part.Name)],
            Held = [.. plan.Parts.Where(part => part.IsOfHousing && part.Name != PartNames.Tub).Select(part => part.Name)],
            Apart = true,
        };
    }

    private static IEnumerable<HandStep> Inserts(HousingPlan plan)
    {
        BossPlan[] bosses = [.. plan.Bosses.Where(boss => boss.Hole is not null)];
        if (bosses.Length == 0)
        {
            yield break;
        }

        double iron = plan.Source.Print.Shell.IronCelsius;
        string kinds = HandWords.Listed(bosses.GroupBy(boss => boss.Hole!.Insert.Name)
            .Select(group => HandWords.Count(group.Count(), $"insert {group.Key}", $"inserts {group.Key}")));
        yield return new HandStep
        {
            Phase = HandPhase.Tub,
            Title = "Set the inserts",
            Text = string.Create(CultureInfo.InvariantCulture,
                $"Set {kinds} into the tub's posts with the iron at {iron:0} \u00b0C. Let the iron's own weight press. At nine tenths of "
                    + $"the depth take it away and press the insert flush with a cold flat plate for 10 s. Let each cool for a minute."),
            Check = "A screw turns into every insert by fingers and stands upright. No insert stands proud of its post.",
            Cautions = [HandCaution.Iron],
            Tools = ["soldering iron with an insert tip", "flat metal plate"],
            Shown = [PartNames.Tub],
            Things = [.. bosses.Select(Insert)],
        };
    }

    private static HandStep Board(HousingPlan plan)
    {
        ScrewJointPlan[] screws = [.. plan.Screws.Where(screw => screw.Use == ScrewUse.Board)];
        bool through = plan.Bosses.Any(boss => boss.Use == BossUse.Both);
        string held = screws.Length > 0
                ? $"Drive {ClosingHands.Screws(screws)} from the front, crosswise, finger-tight and an eighth of a turn."
            : plan.Hold.Holder is not null ? ""
            : through ? "The cover's screws go through it later and hold it; until then it lies on its posts."
            : plan.Hold.DownBy is { } by ? $"It lies on its rests; the closed housing keeps it down {by}{Rising(plan.Hold)}."
            : "It lies on its rests; nothing keeps it down.";
        BoardSeat? seat = plan.Openings.Select(opening => opening.Seat(plan.Source.Up)).FirstOrDefault(found => found is not null);
        string over = seat is null ? "" : $", with {seat.Over}";
        return new HandStep
        {
            Phase = HandPhase.Board,
            Title = "Put the board in",
            Text = $"Lower the board, LEDs up{over}. It is keyed {plan.Key.Board.Words}. "
                + string.Join(" ", new[] { held, plan.Hold.Holder?.PuttingIn ?? "" }.Where(words => words.Length > 0)),
            Check = seat is null ? "The board does not rock." : $"The board does not rock, and {seat.Check}.",
            Tools = screws.Length == 0 ? [] : [$"driver for {screws[0].Screw.Thread} screws"],
            Shown = [PartNames.Tub, PartNames.Board],
            Held = [PartNames.Board],
            Motion = HandMotion.Down,
            At = seat?.At,
            Things = [.. screws.Select(ClosingHands.Thing)],
            InPlace = [.. plan.Bosses.Where(boss => boss.Hole is not null).Select(Insert), .. BatteryHands.Things(plan.Bay),
                .. SecondBoardHands.Things(plan.SecondBoard)],
        };
    }

    private static string Rising(BoardHoldPlan hold) =>
        hold.Rise > 0 ? $", {HandWords.Mm(hold.Rise)} above it" : "";

    private static IEnumerable<HandStep> FirstLight(HousingPlan plan)
    {
        if (plan.Source.Board.PixelCircles.IsEmpty)
        {
            yield break;
        }

        yield return new HandStep
        {
            Phase = HandPhase.Inside,
            Title = "Try the light before closing",
            Text = "Run a test pattern at no more than a quarter of full brightness. The housing is planned for "
                + $"{HandWords.Percent(plan.Source.Power.Brightness)} of full white.",
            Check = "Every LED shows every colour. Nothing gets hot within five minutes.",
            Cautions = [HandCaution.Eyes],
            Tools = ["current-limited supply"],
            Shown = [PartNames.Tub, PartNames.Board, .. HolderParts(plan)],
            InPlace = [.. plan.Screws.Where(screw => screw.IsInTub).Select(ClosingHands.Thing)],
        };
    }

    private static IEnumerable<HandStep> Baffle(HousingPlan plan)
    {
        if (plan.Baffle is not { } baffle)
        {
            yield break;
        }

        string what = baffle.Cells ? "One cell over each LED" : "Rims round the LEDs";
        if (plan.Closure.TurnsCover)
        {
            yield return new HandStep
            {
                Phase = HandPhase.Inside,
                Title = "Put the baffle into the cover",
                Text = "Lay the cover on its face and press the baffle into it from behind, until it lies on the bezel. The small ribs on "
                    + "its rim hold it, since it turns with the cover.",
                Check = "It stays in when the cover is turned over.",
                Shown = [PartNames.Baffle, .. Faces(plan)],
                Held = [PartNames.Baffle],
                Motion = HandMotion.Down,
                FromBelow = true,
            };
            yield break;
        }

        string tooth = baffle.Tooth is { } found
            ? $". Its tooth looks to {HandWords.Clock(found.At, plan.Source.Up)}, where the cover has a slot for it" : "";
        yield return new HandStep
        {
            Phase = HandPhase.Inside,
            Title = "Lay the baffle on the board",
            Text = $"{what}{(baffle.CrushRibs.IsEmpty ? "" : ", crush ribs up")}{tooth}.",
            Check = "It lies flat and touches no part.",
            Shown = [PartNames.Tub, PartNames.Board, .. HolderParts(plan), PartNames.Baffle],
            Held = [PartNames.Baffle],
            Motion = HandMotion.Down,
            At = baffle.Tooth?.At,
        };
    }

    private static IEnumerable<HandStep> Diffuser(HousingPlan plan)
    {
        if (plan.Diffuser.Fit is not (DiffuserFit.DropIn or DiffuserFit.CutSheet))
        {
            yield break;
        }

        bool sheet = plan.Diffuser.Fit == DiffuserFit.CutSheet;
        yield return new HandStep
        {
            Phase = HandPhase.Inside,
            Title = "Put the diffuser into the cover",
            Text = sheet
                ? $"Cut the sheet, {HandWords.Mm(plan.Diffuser.Thickness)} thick, to the outline of its seat in the cover less 0.2 mm all "
                    + $"round, and lay it into the seat from behind."
                : "Lay it into its seat from behind, with the side that lay on the bed towards the viewer.",
            Check = "It lies flat in its seat, without fingerprints.",
            Tools = sheet ? ["sharp knife", "steel rule"] : [],
            Cautions = sheet ? [HandCaution.Blade] : [],
            Shown = sheet ? [PartNames.Cover] : [PartNames.Diffuser, PartNames.Cover],
            Held = sheet ? [] : [PartNames.Diffuser],
            Motion = sheet ? HandMotion.None : HandMotion.Down,
            FromBelow = true,
        };
    }

    private static IEnumerable<string> HolderParts(HousingPlan plan) => (plan.Hold.Holder?.Parts ?? []).Select(part => part.Name);

    // The cover with what is in it.
    private static string[] Faces(HousingPlan plan) =>
        [.. plan.Parts.Select(part => part.Name).Where(name => name is PartNames.Diffuser or PartNames.Cover)];

    private static HandThing Insert(BossPlan boss)
    {
        double top = boss.Top - boss.Hole!.SetBelow;
        return new HandThing(HandMaterial.Brass, boss.At, [(boss.Hole.Insert.OuterDiameter, top - boss.Hole.Insert.Length, top)]);
    }
}
