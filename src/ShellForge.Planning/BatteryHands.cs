using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Batteries;
using ShellForge.Planning.Hands;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning;

/// <summary>What the hands do with a battery, what is bought for it, and what drawings say of its bay.</summary>
public static class BatteryHands
{
    // Over the way from bay to board: the hand that solders or plugs wants the board beside the tub. Typical, mm.
    private const double Slack = 60;

    // A strap goes round twice where it closes; a tie's tail is cut, mm.
    private const double StrapOverlap = 40;

    // Sold lengths, mm.
    private const double LengthStep = 10;

    private static bool Tied(BatteryBayPlan bay) => bay.Size.Battery.Strap == StrapKind.Tie;

    /// <summary>The step that puts it in, before the board.</summary>
    public static IEnumerable<HandStep> Steps(HousingPlan plan)
    {
        if (plan.Bay is not { } bay)
        {
            yield break;
        }

        BatterySpec battery = bay.Size.Battery;
        bool one = battery.Count == 1;
        string it = one ? "it" : "them";
        string what = battery.Form == BatteryForm.Round ? one ? "cell" : "cells" : one ? "pouch" : "pouches";
        string strap = Tied(bay) ? "tie" : "strap";
        string end = HandWords.Clock(bay.Along, plan.Source.Up);
        string connect = battery.PlugRef is { } plug ? $"Plug the lead into {plug} last"
            : "Solder one wire to the board, then the other; never both bare at once, and never on the battery itself";
        yield return new HandStep
        {
            Phase = HandPhase.Board,
            Title = $"Put the {what} in",
            Text = $"Lead the {strap} under the bay, in through one slot and out through the other. Lay the {what} in, the wires "
                + $"towards {end}, and close the {strap} over {it}, snug but not tight. {connect}{Length(plan)}.",
            Check = $"The {what} {(one ? "does" : "do")} not slide when the tub is turned over, no wire lies under {it}, and nothing "
                + $"presses on {it}. {(Tied(bay) ? "Cut the tie" : "Open the strap")}, and {(one ? "it comes" : "they come")} out again.",
            Cautions = [battery.Lithium ? HandCaution.Lithium : HandCaution.Cells],
            Tools = Tied(bay) ? ["side cutter"] : [],
            Shown = [PartNames.Tub],
            Things = Things(bay),
        };
    }

    /// <summary>The battery as pictures show it; none without one.</summary>
    internal static ImmutableArray<HandThing> Things(BatteryBayPlan? bay) =>
        bay is null ? [] : [.. bay.Middles.Select(middle => Thing(bay, middle))];

    /// <summary>What has to be at hand.</summary>
    internal static IEnumerable<ShoppingItem> Shopping(BatteryBayPlan? bay)
    {
        if (bay is null)
        {
            yield break;
        }

        BatterySpec battery = bay.Size.Battery;
        string leads = battery.PlugRef is null ? "with welded leads" : "with a lead and plug";
        yield return new ShoppingItem(
            $"battery {battery.Name}, {leads}{(battery.Lithium ? ", with protection circuit" : "")}, at most {Sizes(battery)} mm",
            battery.Count);
        double round = (2 * (bay.Size.OuterWidth + bay.StrapTop - bay.FloorTop)) + StrapOverlap;
        double length = LengthStep * Math.Ceiling(round / LengthStep);
        yield return new ShoppingItem(
            Tied(bay) ? $"cable tie, 4.8 mm wide, {HandWords.Mm(length)} long"
                : $"hook-and-loop strap, 10 mm wide, {HandWords.Mm(length)} long", 1);
    }

    /// <summary>Notes on the drawing of the tub.</summary>
    public static ImmutableArray<PlanNote> Notes(BatteryBayPlan? bay)
    {
        if (bay is null)
        {
            return [];
        }

        BatteryBaySize size = bay.Size;
        string rooms = size.Battery.Count == 1 ? "" : $"{size.Battery.Count}x ";
        string each = size.IsRound ? $"trough \u00D8{HandWords.Figure(size.PocketWidth)} x {HandWords.Figure(size.PocketLength)}"
            : $"pocket {HandWords.Figure(size.PocketWidth)} x {HandWords.Figure(size.PocketLength)}";
        return [new PlanNote(bay.Point(0, size.OuterWidth / 2), $"battery: {rooms}{each}, strap slot {HandWords.Figure(size.StrapGap)}")];
    }

    /// <summary>An upright section through the axis that shows the bay: across it where it lies in the middle. None without one.</summary>
    /// <param name="plan">The plan.</param>
    public static ImmutableArray<(Angle Direction, string Through)> Section(HousingPlan plan) => plan.Bay is not { } bay ? []
        : [(bay.At.Length < bay.Size.PocketLength / 2 && bay.Outline.Contains(Point2.Origin)
            ? bay.Along + Angle.FromDegrees(90) : Angle.Of(bay.At), "the battery's bay")];

    /// <summary>Length of the wires from the bay's end to where they go, with slack for the hand, mm; null where they go nowhere.</summary>
    /// <param name="plan">The plan.</param>
    public static double? WireLength(HousingPlan plan)
    {
        ImmutableArray<Point2> ends = Ends(plan);
        return plan.Bay is not { } bay || ends.Length == 0 ? null
            : LengthStep * Math.Ceiling((ends.Max(end => Point2.Distance(end, bay.WireEnd)) + Slack) / LengthStep);
    }

    /// <summary>Where on the board its wires go.</summary>
    /// <param name="plan">The plan.</param>
    public static ImmutableArray<Point2> Ends(HousingPlan plan) => Ends(plan.Source);

    /// <summary>The same, before there is a plan.</summary>
    internal static ImmutableArray<Point2> Ends(BoardFile file) =>
    [
        .. file.Board.Wires.Where(wire => wire.To == BatterySpec.WireWord).Select(wire => wire.At),
        .. file.Board.Parts.Where(part => part.Ref == file.Housing.Battery?.PlugRef).Select(part => part.At),
    ];

    private static string Sizes(BatterySpec battery) => battery.Form == BatteryForm.Round
        ? $"{HandWords.Figure(battery.Thickness)} x {HandWords.Figure(battery.Length)}"
        : $"{HandWords.Figure(battery.Thickness)} x {HandWords.Figure(battery.Width)} x {HandWords.Figure(battery.Length)}";

    private static string Length(HousingPlan plan) =>
        WireLength(plan) is double length ? $"; {HandWords.Mm(length)} of wire let the board lie beside the tub" : "";

    // A cylinder stands on the origin before it is laid down along the bay.
    private static HandThing Thing(BatteryBayPlan bay, Point2 middle)
    {
        BatterySpec battery = bay.Size.Battery;
        double half = battery.Length / 2;
        return bay.Size.IsRound
            ? new HandThing(HandMaterial.Battery, Point2.Origin, [(battery.Thickness, -half, half)])
            {
                Placement = Transform3.TurnY(Angle.FromDegrees(90)).Then(Transform3.TurnZ(bay.Along))
                    .Then(Transform3.Shift(middle.X, middle.Y, bay.Seat + (battery.Thickness / 2))),
            }
            : new HandThing(HandMaterial.Battery, middle, [])
            {
                Body = (PartEnvelope.Rectangle(middle, battery.Length, battery.Width, bay.Along), bay.Seat,
                    bay.Seat + battery.Thickness),
            };
    }
}
