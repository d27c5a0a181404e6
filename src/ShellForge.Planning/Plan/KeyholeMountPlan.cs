using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Hands;

namespace ShellForge.Planning.Plan;

/// <summary>
/// Keyholes in the floor, hung over screw heads in a wall:
/// <code>
///   ( )    entry, where the head goes in      section:  ▁▁▁▁▁▁▁  cap, its edges at 45 degrees
///    ‖                                                 ╱       ╲
///    ‖     slot, upwards in use                       ▏ undercut ▕
///    ˅                                                ▔▔▔▔   ▔▔▔▔  lip: the floor
/// </code>
/// </summary>
public sealed record KeyholeMountPlan : MountPlan
{
    // Left free round a block, mm.
    private const double Rib = 2.0;

    /// <summary>The keyholes.</summary>
    public required ImmutableArray<KeyholePlan> Keyholes { get; init; }

    /// <summary>Diameter of the entry, mm.</summary>
    public required double EntryDiameter { get; init; }

    /// <summary>Width of the slot, mm.</summary>
    public required double SlotWidth { get; init; }

    /// <summary>Width of the undercut, mm.</summary>
    public required double UndercutWidth { get; init; }

    /// <summary>z of the undercut's lower face: thickness of the lip that the screw's head pulls on.</summary>
    public required double LipTop { get; init; }

    /// <summary>z of the undercut's roof.</summary>
    public required double UndercutTop { get; init; }

    /// <summary>Leg of the 45 degree edge between undercut and roof, mm.</summary>
    public required double RoofChamfer { get; init; }

    /// <summary>z of the upper face of the block round it; a floor as thick as that is its own block.</summary>
    public required double BlockTop { get; init; }

    /// <summary>Wall of that block, mm.</summary>
    public required double BlockWall { get; init; }

    /// <summary>How far screw heads stand off the wall, mm: lip, and a little air to slide.</summary>
    public required double HeadOffWall { get; init; }

    /// <inheritdoc />
    public override Region Taken => Region.Union(Keyholes.Select(hole =>
        Region.Slot(hole.Entry, hole.Seat, EntryDiameter + (2 * BlockWall) + Rib)));

    /// <inheritdoc />
    public override Region OnOuterFloor => Region.Union(Keyholes.Select(hole => Region.Slot(hole.Entry, hole.Seat, EntryDiameter)));

    /// <inheritdoc />
    public override ImmutableArray<(string What, Point2 At)> AtRim =>
        [.. Keyholes.Select((hole, number) => (NameOf(number), hole.Entry))];

    /// <inheritdoc />
    public override ImmutableArray<ShoppingItem> Shopping => [new ShoppingItem("wall screw 3.5 to 4.0, head up to 8", Keyholes.Length)];

    /// <inheritdoc />
    public override ImmutableArray<PlanNote> Notes =>
        [new(Keyholes[0].Entry, $"{Keyholes.Length}x keyhole \u00D8{HandWords.Figure(EntryDiameter)}, slot {HandWords.Figure(SlotWidth)}")];

    /// <inheritdoc />
    public override ImmutableArray<MountDistance> Distances =>
        Keyholes.Length < 2 ? [] : [new(Keyholes[0].Seat, Keyholes[1].Seat, "screws ")];

    /// <inheritdoc />
    public override ImmutableArray<InsertPost> InsertPosts => [];

    /// <inheritdoc />
    public override DrillPlan? Drilling => new([.. Keyholes.Select(hole => hole.Seat)], "wall screw 3.5 to 4.0");

    /// <inheritdoc />
    public override ImmutableArray<MountPart> Parts => [];

    /// <inheritdoc />
    public override StandingPlan? Standing => null;

    /// <inheritdoc />
    public override double OffSurface => 0;

    /// <inheritdoc />
    public override IEnumerable<HandStep> HandSteps(HousingPlan plan)
    {
        bool pair = Keyholes.Length > 1;
        string spacing = pair ? $"{HandWords.Mm(Math.Round(Point2.Distance(Keyholes[0].Seat, Keyholes[1].Seat), 2))} apart, level" : "one";
        yield return new HandStep
        {
            Phase = HandPhase.Place,
            Title = "Hang it on the wall",
            Text = $"Print drill-template.svg at 100 % and check its scale bar with a ruler. Tape it to the wall, level, and drill for "
                + $"{(pair ? "two wall screws" : "a wall screw")} ({spacing}), "
                + $"with plugs that suit the wall. Drive the {(pair ? "screws" : "screw")} in until "
                + $"{(pair ? "the heads stand" : "the head stands")} {HandWords.Mm(HeadOffWall)} off the wall. "
                + $"Put the round {(pair ? "ends of the keyholes over the heads" : "end of the keyhole over the head")} and let the "
                + $"housing slide down.",
            Check = $"It hangs without a rattle; turn the {(pair ? "screws" : "screw")} in or out by half a turn if it is loose or does "
                + $"not go on.",
            Cautions = [HandCaution.Drilling],
            Tools = ["drill and bit for the wall plugs", "spirit level", "screwdriver for wall screws"],
            Shown = [.. plan.Parts.Select(part => part.Name), PartNames.Board],
            FromBelow = true,
        };
    }

    /// <inheritdoc />
    public override string NameOf(int number) =>
        Keyholes.Length < 2 ? "the keyhole" : number == 0 ? "the left keyhole" : "the right keyhole";

    /// <inheritdoc />
    public override T Accept<T>(IMountVisitor<T> visitor) => visitor.Keyhole(this);
}

/// <summary>A keyhole.</summary>
/// <param name="Entry">Middle of the entry.</param>
/// <param name="Seat">Where the screw's shank rests: the upper end of the slot.</param>
public sealed record KeyholePlan(Point2 Entry, Point2 Seat);

/// <content>What is done for this form.</content>
public partial interface IMountVisitor<out T>
{
    /// <summary>For keyholes.</summary>
    T Keyhole(KeyholeMountPlan mount);
}
