using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Plan;

namespace ShellForge.Output.Assembly;

/// <summary>The steps from the prints on the bench to the closed housing, told from the plan.</summary>
public static class AssemblySteps
{
    /// <summary>All steps, in the order of the hands.</summary>
    public static ImmutableArray<AssemblyStep> Of(HousingPlan plan) =>
    [
        Clean(plan),
        .. Inserts(plan),
        .. Cable(plan),
        Board(plan),
        FirstLight(plan),
        .. Baffle(plan),
        .. Diffuser(plan),
        Close(plan),
        Open(plan),
    ];

    private static AssemblyStep Clean(HousingPlan plan) => new()
    {
        Title = "Clean the prints",
        Text = $"Take strings and the squashed first layer off {Listed(plan.Parts.Select(part => part.Name))}. Do not sand the lip: its gap is planned.",
        Check = $"The cover slides into the tub by hand one way only: the key looks to {Clock(plan.Key.At, plan.Source.Up)}.",
        Tools = ["deburring knife or scalpel"],
        Caution = "Printed edges and knives cut; cut away from the hand.",
        Shown = ["tub"],
    };

    private static IEnumerable<AssemblyStep> Inserts(HousingPlan plan)
    {
        BossPlan[] bosses = [.. plan.Bosses.Where(boss => boss.Hole is not null)];
        if (bosses.Length == 0)
        {
            yield break;
        }

        double iron = plan.Source.Print.Shell.IronCelsius;
        string kinds = Listed(bosses.GroupBy(boss => boss.Hole!.Insert.Name).Select(group => Count(group.Count(), $"insert {group.Key}", $"inserts {group.Key}")));
        yield return new AssemblyStep
        {
            Title = "Set the inserts",
            Text = $"Set {kinds} into the tub. Iron at {iron:0} degrees Celsius. Let the iron's weight press; at nine tenths of the depth take it away and press flush with a cold flat plate for 10 s. Let each cool for a minute.",
            Check = "A screw turns into every insert by fingers and stands upright; no insert stands proud of its boss.",
            Caution = "The iron and the brass burn skin: hold the tub in a vice or on the bench, never in the hand. Air the room; hot plastic and flux give off fumes.",
            Tools = ["soldering iron with an insert tip", "flat metal plate"],
            Shown = ["tub"],
        };
    }

    private static IEnumerable<AssemblyStep> Cable(HousingPlan plan)
    {
        if (plan.CableExit is not { } exit)
        {
            yield break;
        }

        yield return new AssemblyStep
        {
            Title = "Lay the cable",
            Text = $"Lay the soldered cable into the notch at {Clock(exit.At, plan.Source.Up)}, with 15 mm of slack inside. "
                + (exit.TiePost is null ? "Tie a loose knot behind the wall." : "Pull a 2.5 mm cable tie through the post and round the cable, and cut it off."),
            Check = "A firm pull on the cable from outside moves nothing at the solder joints.",
            Tools = exit.TiePost is null ? [] : ["cable tie 2.5 mm", "side cutter"],
            Shown = ["tub", "board"],
            Lifted = "board",
        };
    }

    private static AssemblyStep Board(HousingPlan plan)
    {
        ScrewJointPlan[] screws = [.. plan.Screws.Where(screw => screw.Use == ScrewUse.Board)];
        string held = screws.Length == 0
            ? "The board lies on its rests; baffle and cover hold it."
            : $"Drive {Count(screws.Length, "screw", "screws")} {screws[0].Screw.Name} x {screws[0].Length:0.#}{(screws[0].Washer ? " with a washer each" : "")} from the {(screws[0].FromFront ? "front" : "back")}, crosswise, finger-tight and an eighth of a turn.";
        PortPlan? port = plan.Ports.FirstOrDefault();
        string way = port is null
            ? $"Lower the board, LEDs up. It is keyed {plan.Key.BoardKey}."
            : $"Lower the board, LEDs up, with {port.Ref} over its opening at {Clock(port.Faces, plan.Source.Up)}. It is keyed {plan.Key.BoardKey}.";
        return new AssemblyStep
        {
            Title = "Put the board in",
            Text = $"{way} {held}",
            Check = port is null ? "The board does not rock." : "The board does not rock, and a plug goes in until it latches.",
            Tools = screws.Length == 0 ? [] : [$"driver for {screws[0].Screw.Thread} screws"],
            Shown = ["tub", "board"],
            Lifted = "board",
        };
    }

    private static AssemblyStep FirstLight(HousingPlan plan) => new()
    {
        Title = "Try the light before closing",
        Text = $"Run a test pattern at no more than a quarter of full brightness. The plan is made for {100 * plan.Source.Power.Brightness:0} % of full white.",
        Check = "Every LED shows every colour; nothing gets hot within five minutes.",
        Caution = "Do not look into bright LEDs from near, and warn people before flashing patterns: 3 to 60 flashes a second can set off seizures. Use a current-limited low-voltage supply; mains work belongs to licensed hands and local codes.",
        Tools = ["current-limited supply"],
        Shown = ["tub", "board"],
    };

    private static IEnumerable<AssemblyStep> Baffle(HousingPlan plan)
    {
        if (plan.Baffle is { } baffle)
        {
            yield return new AssemblyStep
            {
                Title = "Lay the baffle on the board",
                Text = $"{(baffle.Cells ? "One cell over each LED" : "Rims round the LEDs")}, crush ribs up{(baffle.Tooth is { } tooth ? $", its tooth at {Clock(tooth.At, plan.Source.Up)}, where the cover has a slot for it" : "")}.",
                Check = "It lies flat and touches no part; the ribs stand just above the rim of the cover's seat.",
                Shown = ["tub", "board", "baffle"],
                Lifted = "baffle",
            };
        }
    }

    private static IEnumerable<AssemblyStep> Diffuser(HousingPlan plan)
    {
        if (plan.Diffuser.Fit is DiffuserFit.DropIn or DiffuserFit.CutSheet)
        {
            yield return new AssemblyStep
            {
                Title = "Put the diffuser into the cover",
                Text = plan.Diffuser.Fit == DiffuserFit.CutSheet
                    ? $"Cut the {plan.Diffuser.Thickness:0.0} mm sheet to the printed outline of the window less 0.2 mm all round, and lay it into its seat from behind."
                    : "Lay it into its seat from behind, the side that lay on the bed towards the viewer.",
                Check = "It lies flat in its seat; no fingerprint on it.",
                Shown = ["diffuser", "cover"],
                Lifted = "diffuser",
            };
        }
    }

    private static AssemblyStep Close(HousingPlan plan)
    {
        string way = $"The cover goes on with its rib in the slot of the tub's wall at {Clock(plan.Key.At, plan.Source.Up)}"
            + (plan.Ports.Any(port => port.Tongue is not null) || plan.CableExit is not null ? ", its tongue into the opening in the wall. " : ". ");
        ScrewJointPlan? screw = plan.Screws.FirstOrDefault(screw => screw.Use == ScrewUse.Closure);
        string how = plan.Closure switch
        {
            SnapClosurePlan => "Start at the side across from the port and press round the rim until the bead has snapped all round.",
            TwistClosurePlan twist => $"Push it down and turn it by {twist.Turn.Degrees:0} degrees until it stops.",
            _ when screw is not null => $"Drive {Count(plan.Screws.Count(each => each.Use == ScrewUse.Closure), "screw", "screws")} {screw.Screw.Name} x {screw.Length:0.#} from the {(screw.FromFront ? "front" : "back")}, finger-tight and an eighth of a turn.",
            _ => "Press it down until it seats.",
        };
        return new AssemblyStep
        {
            Title = "Close it",
            Text = way + how,
            Check = "The seam is closed all round; no light comes through it in a dark room.",
            Tools = screw is null ? [] : [$"driver for {screw.Screw.Thread} screws"],
            Shown = [.. plan.Parts.Where(part => part.IsOfHousing).Select(part => part.Name), "board"],
            Lifted = "cover",
        };
    }

    private static AssemblyStep Open(HousingPlan plan)
    {
        string how = plan.Closure switch
        {
            SnapClosurePlan => $"Put a blade into the notches at {Listed(plan.PryNotches.Select(notch => Clock(notch.At, plan.Source.Up)))} and turn it; never pry at the port.",
            TwistClosurePlan => "Turn the cover back and lift it.",
            _ => "Take the cover's screws out and lift it; a blade in the notches helps.",
        };
        bool own = plan.Source.Board.Parts.Any(part => part.Mouth is not null && plan.Ports.Any(port => port.Ref == part.Ref) && part.Package?.MountingRequired == true);
        int off = own ? 0 : 1 + (plan.Baffle is null ? 0 : 1) + 1;
        return new AssemblyStep
        {
            Title = "To open it again",
            Text = $"{how} To reflash the controller {(off == 0 ? "nothing has to come off: its own port is open" : $"take {Count(off, "part", "parts")} off: cover{(plan.Baffle is null ? "" : ", baffle")} and board")}.",
            Check = "Unplug the supply first.",
            Shown = [.. plan.Parts.Where(part => part.IsOfHousing).Select(part => part.Name), "board"],
        };
    }

    /// <summary>A board angle as people say it with the housing hung up: "6 o'clock".</summary>
    internal static string Clock(Angle at, Angle up)
    {
        int hour = (int)Math.Round((up - at).Normalized.Degrees / 30, MidpointRounding.AwayFromZero) % 12;
        return string.Create(CultureInfo.InvariantCulture, $"{(hour == 0 ? 12 : hour)} o'clock");
    }

    private static string Count(int count, string one, string many) =>
        string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? one : many)}");

    private static string Listed(IEnumerable<string> items)
    {
        string[] all = [.. items];
        return all.Length < 2 ? string.Concat(all) : string.Join(", ", all[..^1]) + " and " + all[^1];
    }
}
