using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Hands;

namespace ShellForge.Planning.Plan;

/// <summary>
/// Upright posts of the tub's wall, cut free beside and behind, each with a hook over the board's rim:
/// <code>
///        /█│ │     lead-in
///       ▔╲█│ │     hook, both flanks at 45 degrees
///  ░░░░░░ █│ │
///   board █│ │room to bend into
///         █│ │
///  ▓▓▓▓▓▓▓▓▓▓▓▓    floor
/// </code>
/// </summary>
public sealed record ClipsPlan : HolderPlan
{
    /// <summary>The posts in plan.</summary>
    public required Region Posts { get; init; }

    /// <summary>Slots beside and behind the posts, in plan.</summary>
    public required Region Slots { get; init; }

    /// <summary>z of the slots' lower end: the posts stand there.</summary>
    public required double Bottom { get; init; }

    /// <summary>z of the posts' top.</summary>
    public required double Top { get; init; }

    /// <summary>Places of the hooks: on the board's edge, with the direction away from it.</summary>
    public required ImmutableArray<(Point2 Edge, Angle Outward)> Hooks { get; init; }

    /// <summary>A hook from the side: (mm outward from the board's edge, z), counter-clockwise.</summary>
    public required ImmutableArray<Point2> HookSide { get; init; }

    /// <summary>Width of a hook along the rim, mm.</summary>
    public required double HookWidth { get; init; }

    /// <summary>Thickness of a post, mm.</summary>
    public required double Thickness { get; init; }

    /// <summary>How far a hook reaches over the board's rim, mm.</summary>
    public required double Reach { get; init; }

    /// <summary>By how much a post bends while the board goes in, mm, spread of the print included.</summary>
    public required double Bend { get; init; }

    /// <summary>Strain of its root by that, across the layers, as a fraction.</summary>
    public required double Strain { get; init; }

    /// <summary>Force that presses the board past all of them, N.</summary>
    public required double Force { get; init; }

    /// <summary>How far the board may rise under the hooks, mm.</summary>
    public required double Play { get; init; }

    /// <inheritdoc />
    public override string DownBy => $"by {HandWords.Count(Hooks.Length, "clip", "clips")}";

    /// <inheritdoc />
    public override double Rise => Play;

    /// <inheritdoc />
    public override bool StopsTurning => false;

    /// <summary>The hooks in plan.</summary>
    public Region Hooked => Region.Union(Hooks.Select(hook => Outlines.Strips.Along(
        hook.Edge, hook.Outward, HookWidth, HookSide.Min(point => point.X), HookSide.Max(point => point.X))));

    /// <inheritdoc />
    public override Region GivesWay => Hooked;

    /// <inheritdoc />
    public override string Part => PartNames.Tub;

    /// <inheritdoc />
    public override ImmutableArray<HolderPart> Parts => [];

    /// <inheritdoc />
    public override ImmutableArray<PlanNote> Notes => [new(
        Hooks[0].Edge, $"{Hooks.Length}x clip, {HandWords.Figure(Thickness)} thick, {HandWords.Figure(Reach)} over the board")];

    /// <inheritdoc />
    public override (Angle Direction, string Through) Section => (Angle.Of(Hooks[0].Edge), NameOf(0));

    /// <inheritdoc />
    public override string PuttingIn =>
        $"Press it straight down by its rim, beside one clip after the other, until all {Hooks.Length} have snapped over it.";

    /// <inheritdoc />
    public override IEnumerable<HandStep> HandSteps(HousingPlan plan)
    {
        yield return new HandStep
        {
            Phase = HandPhase.Open,
            Title = "To take the board out",
            Text = "Bend one clip after the other away from the board with a fingernail or a flat stick, no farther than its slot "
                + "allows, and lift the rim beside it. The clips are bent across their layers: cold ones break sooner.",
            Check = "",
            Shown = [PartNames.Tub, PartNames.Board],
            Held = [PartNames.Board],
            Motion = HandMotion.Up,
        };
    }

    /// <inheritdoc />
    public override string NameOf(int number) => number < Hooks.Length ? $"clip {number + 1}" : "the slot round a clip";

    /// <inheritdoc />
    public override T Accept<T>(IHolderVisitor<T> visitor) => visitor.Clips(this);
}

/// <content>What is done for this form.</content>
public partial interface IHolderVisitor<out T>
{
    /// <summary>For clips.</summary>
    T Clips(ClipsPlan holder);
}
