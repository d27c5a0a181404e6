using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Hands;

namespace ShellForge.Planning.Plan;

/// <summary>
/// Pockets for magnets, open to the inside: the magnet is glued in from above and a thin skin of floor stays in front of it.
/// </summary>
public sealed record MagnetMountPlan : MountPlan
{
    // Left free round a collar, mm.
    private const double Rib = 2.0;

    /// <summary>Middles of the pockets, mirror images about the direction that points up.</summary>
    public required ImmutableArray<Point2> At { get; init; }

    /// <summary>The magnet's nominal diameter, mm.</summary>
    public required double MagnetDiameter { get; init; }

    /// <summary>The magnet's nominal height, mm.</summary>
    public required double MagnetHeight { get; init; }

    /// <summary>Pocket diameter as drawn, mm.</summary>
    public required double PocketDiameter { get; init; }

    /// <summary>z of the pocket's bottom: the skin.</summary>
    public required double Skin { get; init; }

    /// <summary>z of the pocket's rim, at least the floor's inner face.</summary>
    public required double Rim { get; init; }

    /// <summary>Outer diameter of the collar round it, mm.</summary>
    public required double CollarDiameter { get; init; }

    /// <summary>Diameter of the pit beside each collar that stands for the marked pole, mm.</summary>
    public required double MarkDiameter { get; init; }

    /// <inheritdoc />
    public override Region Taken => Region.Union(At.Select(at => Region.Disc(at, Ring.Hole((CollarDiameter / 2) + Rib))));

    /// <inheritdoc />
    public override Region OnOuterFloor => Region.Union(At.Select(at => Region.Disc(at, Ring.Hole(PocketDiameter / 2))));

    /// <inheritdoc />
    public override ImmutableArray<(string What, Point2 At)> AtRim => [.. At.Select((at, number) => (NameOf(number), at))];

    /// <inheritdoc />
    public override ImmutableArray<ShoppingItem> Shopping =>
        [new($"disc magnet {HandWords.Figure(MagnetDiameter)} x {HandWords.Figure(MagnetHeight)}", At.Length),
            new("epoxy glue, two-part", 1)];

    /// <inheritdoc />
    public override ImmutableArray<PlanNote> Notes =>
        [new(At[0], $"{At.Length}x pocket \u00D8{HandWords.Figure(PocketDiameter)} for a magnet, skin {HandWords.Figure(Skin)}")];

    /// <inheritdoc />
    public override ImmutableArray<MountDistance> Distances => [new(At[0], At[1], "magnets ")];

    /// <inheritdoc />
    public override ImmutableArray<InsertPost> InsertPosts => [];

    /// <inheritdoc />
    public override DrillPlan? Drilling => null;

    /// <inheritdoc />
    public override ImmutableArray<MountPart> Parts => [];

    /// <inheritdoc />
    public override StandingPlan? Standing => null;

    /// <inheritdoc />
    public override double OffSurface => 0;

    /// <inheritdoc />
    public override IEnumerable<HandStep> HandSteps(HousingPlan plan)
    {
        yield return new HandStep
        {
            Phase = HandPhase.Tub,
            Title = "Glue the magnets in",
            Text = $"Stack the {HandWords.Count(At.Length, "magnet", "magnets")} and mark the same face of each with a pen. Put a drop of "
                + $"two-part epoxy into each pocket "
                + "and press the magnet in with its marked face up, towards you; the pit beside each pocket stands for that mark. "
                + "If the other side holds magnets too, try first which pole it wants. Let the glue cure as long as its sheet says, apart "
                + "from iron and from each other.",
            Check = $"No magnet stands proud of its collar, and all marked faces look up. A steel sheet pulls at all {At.Length} from "
                + $"below.",
            Cautions =
            [
                HandCaution.Adhesive,
                new HandCaution("Magnets",
                    "Strong magnets snap together and pinch or splinter; keep them from small children, who may swallow them, and from "
                        + "pacemakers."),
            ],
            Tools = ["epoxy glue", "felt pen"],
            Shown = [PartNames.Tub],
            Things =
            [
                .. At.Select(at => new HandThing(HandMaterial.Magnet, at, [(MagnetDiameter, Skin, Skin + MagnetHeight)])),
            ],
        };
        yield return new HandStep
        {
            Phase = HandPhase.Place,
            Title = "Put it on iron",
            Text = "Set the back against a steel sheet, or against magnets with their other pole outward. Paint, paper and the skin of "
                + "the floor count as air between them: each tenth of a millimetre costs pull.",
            Check = "It does not slide down when tapped; over a head or a bed, hold it by a cord as well.",
            Shown = [.. plan.Parts.Select(part => part.Name), PartNames.Board],
            FromBelow = true,
        };
    }

    /// <inheritdoc />
    public override string NameOf(int number) => $"magnet pocket {number + 1}";

    /// <inheritdoc />
    public override T Accept<T>(IMountVisitor<T> visitor) => visitor.Magnets(this);
}

/// <content>What is done for this form.</content>
public partial interface IMountVisitor<out T>
{
    /// <summary>For magnets.</summary>
    T Magnets(MagnetMountPlan mount);
}
