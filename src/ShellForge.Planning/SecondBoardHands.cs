using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Hands;
using ShellForge.Planning.Plan;
using ShellForge.Planning.SecondBoards;

namespace ShellForge.Planning;

/// <summary>What the hands do with a second board, what is bought for it, and what drawings say of it.</summary>
public static class SecondBoardHands
{
    // The hand that solders wants the LED board beside the tub. Typical, mm.
    private const double Slack = 60;
    private const double LengthStep = 10;
    private const double StrapOverlap = 40;

    /// <summary>The step that puts it in, before the LED board.</summary>
    public static IEnumerable<HandStep> Steps(HousingPlan plan)
    {
        if (plan.SecondBoard is { } second)
        {
            yield return OnFloor(plan, second);
        }
        else if (!plan.Spacers.IsEmpty)
        {
            yield return OnSpacers(plan);
        }
    }

    /// <summary>The second board as pictures show it; none without one on the floor.</summary>
    internal static ImmutableArray<HandThing> Things(SecondBoardPlan? second) => second is null ? [] :
    [
        new HandThing(HandMaterial.Laminate, second.At, []) { Body = (second.Outline, second.Seat, second.Top) },
    ];

    /// <summary>What has to be at hand.</summary>
    internal static IEnumerable<ShoppingItem> Shopping(SecondBoardPlan? second, ImmutableArray<SpacerPlan> spacers)
    {
        foreach (IGrouping<(string, string), SpacerPlan> alike in spacers.GroupBy(spacer => (spacer.Screw.Thread, spacer.Screw.Name)))
        {
            SpacerPlan one = alike.First();
            yield return new ShoppingItem(
                $"hexagonal spacer {one.Screw.Thread} x {HandWords.Figure(one.Length)}, thread at both ends", alike.Count());
        }

        foreach (IGrouping<string, string> screw in spacers.SelectMany(spacer => new[] { Named(spacer, spacer.FrontScrew),
            Named(spacer, spacer.BackScrew) }).GroupBy(name => name))
        {
            yield return new ShoppingItem(screw.Key, screw.Count());
        }

        if (second?.Size.Strap is { } strap)
        {
            double round = (2 * ((2 * second.Size.HalfAcross) + second.Highest - second.FloorTop)) + StrapOverlap;
            double length = LengthStep * Math.Ceiling(round / LengthStep);
            yield return new ShoppingItem(strap.Tie ? $"cable tie, 4.8 mm wide, {HandWords.Mm(length)} long"
                : $"hook-and-loop strap, 10 mm wide, {HandWords.Mm(length)} long", 1);
        }
    }

    /// <summary>Notes on the drawing of the tub.</summary>
    public static ImmutableArray<PlanNote> Notes(SecondBoardPlan? second) => second is null ? [] :
    [
        new PlanNote(second.Placed(Point2.Polar(second.Size.HalfAcross, second.Size.Across)),
            $"second board: {second.Board.Size}, {HandWords.Figure(second.Size.Lift)} over the floor, {Held(second)}"),
    ];

    /// <summary>An upright section through the axis that shows it. None without one on the floor.</summary>
    /// <param name="plan">The plan.</param>
    public static ImmutableArray<(Angle Direction, string Through)> Section(HousingPlan plan) => plan.SecondBoard is not { } second ? []
        : [(second.Outline.Contains(Point2.Origin) ? second.Turn + second.Size.Across : Angle.Of(second.At), "the second board")];

    /// <summary>Length of its wires to where they go, with slack for the hand, mm; null where none go to it.</summary>
    /// <param name="plan">The plan.</param>
    public static double? WireLength(HousingPlan plan)
    {
        Point2[] ends = [.. SecondBoardSizes.Wires(plan.Source).Select(wire => wire.At)];
        return plan.SecondBoard is not { } second || ends.Length == 0 ? null
            : LengthStep * Math.Ceiling((ends.Max(end => Point2.Distance(end, second.WireEnd)) + Slack) / LengthStep);
    }

    private static string Named(SpacerPlan spacer, double length) =>
        $"screw {spacer.Screw.Thread} x {HandWords.Figure(length)} ({spacer.Screw.Name})";

    private static string Held(SecondBoardPlan second) => second.Size.Hold switch
    {
        SecondBoardHold.Screws => $"{second.Holes.Length}x screw",
        SecondBoardHold.Clips => $"2x clip {HandWords.Figure(second.Size.Clips!.Thickness)} thick",
        _ => $"strap slot {HandWords.Figure(second.Size.Strap!.Gap)}",
    };

    private static HandStep OnFloor(HousingPlan plan, SecondBoardPlan second)
    {
        ScrewJointPlan[] screws = [.. plan.Screws.Where(screw => screw.Use == ScrewUse.SecondBoard)];
        string end = HandWords.Clock(second.Turn, plan.Source.Up);
        string strap = second.Size.Strap is { Tie: true } ? "tie" : "strap";
        string wires = WireLength(plan) is double length
            ? $" Solder its wires to the LED board; {HandWords.Mm(length)} of wire let that lie beside the tub." : "";
        (string held, string check) = second.Size.Hold switch
        {
            SecondBoardHold.Screws => (
                $"Lay it on its posts and drive {ClosingHands.Screws(screws)}, finger-tight and an eighth of a turn.",
                "It does not rock on its posts."),
            SecondBoardHold.Clips => (
                "Lay it between the walls of its seats and press it down at both clips until they snap over it.",
                "Both hooks lie over its edge. To take it out, bend one clip after the other outward with a flat stick."),
            _ => (
                $"Lead the {strap} through both slots, lay the board on its seats, and close the {strap} over it, snug but not tight.",
                $"It does not slide when the tub is turned over, and the {strap} presses on no part that bends."),
        };
        return new HandStep
        {
            Phase = HandPhase.Board,
            Title = "Put the second board in",
            Text = $"Its wires look to {end}. {held}{wires}",
            Check = check,
            Tools = screws.Length > 0 ? [$"driver for {screws[0].Screw.Thread} screws"]
                : second.Size.Strap is { Tie: true } ? ["side cutter"] : [],
            Shown = [PartNames.Tub],
            Things = [.. Things(second), .. screws.Select(ClosingHands.Thing)],
            InPlace = BatteryHands.Things(plan.Bay),
        };
    }

    private static HandStep OnSpacers(HousingPlan plan)
    {
        SpacerPlan one = plan.Spacers[0];
        string holes = HandWords.Listed([.. plan.Spacers.Select(spacer => spacer.Hole)]);
        return new HandStep
        {
            Phase = HandPhase.Board,
            Title = "Hang the second board behind the LED board",
            Text = $"Screw the spacers to the LED board's back at {holes}, {one.Screw.Thread} x {HandWords.Figure(one.FrontScrew)} from "
                + $"the front. Join the wires, then screw the second board on, {one.Screw.Thread} x {HandWords.Figure(one.BackScrew)}.",
            Check = "No joint of one board touches the other, and no screw meets the one across.",
            Tools = [$"driver for {one.Screw.Thread} screws"],
            Shown = [PartNames.Board],
            FromBelow = true,
        };
    }
}
