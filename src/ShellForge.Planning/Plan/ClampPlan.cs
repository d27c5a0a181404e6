using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Hands;

namespace ShellForge.Planning.Plan;

/// <summary>
/// A printed ring that follows the board's rim and is screwed to ears of the tub beside the board; in pieces where something on the board
/// stands in its way:
/// <code>
///           ▄▄▄  screw
///      ▓▓▓▓▓▓▓▓▓▓▓▓  ring      ─┐ thickness
///   ░░░░░░░░  ┌─┐  ┌──         ─┘
///    board    │ │  │ ear of the tub, a little lower than the board's face
/// </code>
/// </summary>
public sealed record ClampPlan : HolderPlan
{
    /// <summary>The ring with its ears in plan, holes left out.</summary>
    public required Region Outline { get; init; }

    /// <summary>z of its lower face, which lies on the board.</summary>
    public required double Bottom { get; init; }

    /// <summary>z of its upper face, which the screws' heads press.</summary>
    public required double Top { get; init; }

    /// <summary>Width of the ring between its ears, mm: whole lines.</summary>
    public required double Width { get; init; }

    /// <summary>How far it reaches over the board's rim, mm.</summary>
    public required double Overlap { get; init; }

    /// <summary>Rooms in the tub's wall and ears that the ring's ears lie in, in plan.</summary>
    public required Region Pockets { get; init; }

    /// <summary>z of the ears of the tub under it.</summary>
    public required double PocketBottom { get; init; }

    /// <summary>Leg of the chamfer on its edges that lie on the bed, mm; 0 where the ring is too narrow for one.</summary>
    public required double BedChamfer { get; init; }

    /// <inheritdoc />
    public override string DownBy => "by the clamp ring";

    /// <inheritdoc />
    public override double Rise => 0;

    /// <inheritdoc />
    public override bool StopsTurning => true;

    /// <inheritdoc />
    public override Region GivesWay => Region.Empty;

    /// <inheritdoc />
    public override string Part => PartNames.Clamp;

    /// <inheritdoc />
    public override ImmutableArray<HolderPart> Parts => [new(
        PartNames.Clamp, Transform3.TurnX(Angle.FromDegrees(180)).Then(Transform3.Shift(0, 0, Top)), "upper face down",
        Outline.Parts.Length)];

    /// <inheritdoc />
    public override ImmutableArray<PlanNote> Notes => [new(
        Outline.Loops[0].MaxBy(point => point.X - point.Y),
        $"clamp ring {HandWords.Figure(Width)} x {HandWords.Figure(Top - Bottom)}, {HandWords.Figure(Overlap)} over the board")];

    /// <summary>Axes of its screws.</summary>
    public required ImmutableArray<Point2> Screws { get; init; }

    /// <inheritdoc />
    public override (Angle Direction, string Through) Section => (Angle.Of(Screws[0]), "a screw of the clamp ring");

    /// <inheritdoc />
    public override string PuttingIn => "The clamp ring, which comes next, holds it.";

    /// <inheritdoc />
    public override IEnumerable<HandStep> HandSteps(HousingPlan plan)
    {
        ScrewJointPlan[] screws = [.. plan.Screws.Where(screw => screw.Use == ScrewUse.Clamp)];
        int pieces = Outline.Parts.Length;
        yield return new HandStep
        {
            Phase = HandPhase.Board,
            Title = "Screw the clamp ring on",
            Text = $"Lay the clamp {(pieces == 1 ? "ring" : $"ring's {HandWords.Count(pieces, "piece", "pieces")}")} on the board's rim, "
                + "the face that lay on the bed towards you, the ears in the pockets of the wall. Drive "
                + $"{ClosingHands.Screws(screws)} by turns, finger-tight and an eighth of a turn: more bends the ears.",
            Check = "The board does not move, and the ring lies on it all round.",
            Tools = [$"driver for {screws[0].Screw.Thread} screws"],
            Shown = [PartNames.Tub, PartNames.Board, PartNames.Clamp],
            Held = [PartNames.Clamp],
            Motion = HandMotion.Down,
            Things = [.. screws.Select(ClosingHands.Thing)],
        };
    }

    /// <inheritdoc />
    public override string NameOf(int number) => number == 0 ? "the clamp ring" : "a pocket for the clamp ring's ears";

    /// <inheritdoc />
    public override T Accept<T>(IHolderVisitor<T> visitor) => visitor.Clamp(this);
}

/// <content>What is done for this form.</content>
public partial interface IHolderVisitor<out T>
{
    /// <summary>For a clamp ring.</summary>
    T Clamp(ClampPlan holder);
}
