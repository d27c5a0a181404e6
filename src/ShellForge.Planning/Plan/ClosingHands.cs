using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Planning.Hands;

namespace ShellForge.Planning.Plan;

/// <summary>What closing and opening have in common, whichever form holds the cover.</summary>
internal static class ClosingHands
{
    /// <summary>The step that closes the housing.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="how">What the form asks of the hands once the cover is in its place.</param>
    public static HandStep Close(HousingPlan plan, string how)
    {
        string tongue = plan.Tongues.Any()
            ? " Its tongue goes into the opening in the wall." : "";
        ImmutableArray<string> carried = Carried(plan);
        return new HandStep
        {
            Phase = HandPhase.Close,
            Title = "Close it",
            Text = $"{plan.Closure.WayOn(plan)}{tongue} {how}",
            Check = "The seam is closed all round; no light comes through it in a dark room.",
            Shown = [.. plan.Parts.Where(part => part.IsOfHousing).Select(part => part.Name), PartNames.Board],
            Held = carried,
            Motion = HandMotion.Down,
            At = plan.Key.At,
        };
    }

    /// <summary>The step that opens it again.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="how">How the form lets go.</param>
    public static HandStep Open(HousingPlan plan, string how) => new()
    {
        Phase = HandPhase.Open,
        Title = "To open it again",
        Text = $"Unplug the supply first. {how}{Reflash(plan)}",
        Check = "",
        Shown = [.. plan.Parts.Where(part => part.IsOfHousing).Select(part => part.Name), PartNames.Board],
        Held = Carried(plan),
        Motion = HandMotion.Up,
    };

    /// <summary>How a cover that a rib keys goes on.</summary>
    public static string RibWay(HousingPlan plan) =>
        $"The cover's rib goes into the slot in the tub's wall at {HandWords.Clock(plan.Key.At, plan.Source.Up)}, seen from the front "
            + $"with the housing upright. It fits no other way.";

    /// <summary>"3 screws M3 x 8 (pan)".</summary>
    public static string Screws(IEnumerable<ScrewJointPlan> screws) => HandWords.Listed(screws
        .GroupBy(
            screw => string.Create(CultureInfo.InvariantCulture,
                $"{screw.Screw.Thread} x {screw.Length:0.#} ({screw.Screw.Name}){(screw.Washer ? " with a washer each" : "")}"))
        .Select(kind => HandWords.Count(kind.Count(), "screw ", "screws ") + kind.Key));

    /// <summary>A screw for pictures: shank, and head.</summary>
    public static HandThing Thing(ScrewJointPlan screw)
    {
        double towards = screw.FromFront ? 1 : -1;
        double under = screw.SeatZ + (towards * (screw.Washer ? screw.Screw.WasherThickness : 0));
        double tip = under - (towards * screw.Length);
        double top = under + (towards * screw.Screw.HeadHeight);
        return new HandThing(
            HandMaterial.Steel, screw.At,
            [
                (screw.Screw.ThreadDiameter, Math.Min(tip, under), Math.Max(tip, under)),
                (screw.Screw.HeadDiameter, Math.Min(under, top), Math.Max(under, top)),
            ],
            !screw.FromFront);
    }

    // What goes on with the cover: what was put into it before, and a baffle that turns with it.
    private static ImmutableArray<string> Carried(HousingPlan plan)
    {
        var carried = ImmutableArray.CreateBuilder<string>();
        if (plan.Closure.TurnsCover && plan.Baffle is not null)
        {
            carried.Add(PartNames.Baffle);
        }

        if (plan.Parts.Any(part => part.Name == PartNames.Diffuser))
        {
            carried.Add(PartNames.Diffuser);
        }

        carried.Add(PartNames.Cover);
        return carried.ToImmutable();
    }

    // Only a module with a connector of its own is flashed through it.
    private static string Reflash(HousingPlan plan)
    {
        BoardPart? shut = plan.Source.Board.Parts.FirstOrDefault(plan.ShutsIn);
        if (shut is null)
        {
            return "";
        }

        string[] off =
        [
            "the cover",
            .. plan.Baffle is not null && !plan.Closure.TurnsCover ? ["the baffle"] : Array.Empty<string>(),
            .. shut.Side == BoardSide.Bottom ? ["the board"] : Array.Empty<string>(),
        ];
        return $" To reflash {shut.Ref}, whose own connector is shut in, take off {HandWords.Listed(off)}.";
    }
}
