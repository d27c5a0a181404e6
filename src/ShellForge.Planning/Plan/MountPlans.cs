using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;

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
    /// <inheritdoc />
    public override ImmutableArray<ShoppingItem> Shopping => [new ShoppingItem("wall screw 3.5 to 4.0, head up to 8", Keyholes.Length)];

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

    /// <summary>z of the upper face of the block round it.</summary>
    public required double BlockTop { get; init; }

    /// <summary>Wall of that block, mm.</summary>
    public required double BlockWall { get; init; }
}

/// <summary>A keyhole.</summary>
/// <param name="Entry">Middle of the entry.</param>
/// <param name="Seat">Where the screw's shank rests: the upper end of the slot.</param>
public sealed record KeyholePlan(Point2 Entry, Point2 Seat);

/// <summary>Pockets for magnets, open to the inside: the magnet is glued in from above and a thin skin of floor stays in front of it.</summary>
public sealed record MagnetMountPlan : MountPlan
{
    /// <inheritdoc />
    public override ImmutableArray<ShoppingItem> Shopping =>
        [new ShoppingItem($"disc magnet {Reasons.Mm(MagnetDiameter)} x {Reasons.Mm(MagnetHeight)}", At.Length)];

    /// <summary>Middles of the pockets.</summary>
    public required ImmutableArray<Point2> At { get; init; }

    /// <summary>The magnet's nominal diameter, mm.</summary>
    public required double MagnetDiameter { get; init; }

    /// <summary>The magnet's nominal height, mm.</summary>
    public required double MagnetHeight { get; init; }

    /// <summary>Pocket diameter as drawn, mm.</summary>
    public required double PocketDiameter { get; init; }

    /// <summary>z of the pocket's bottom: the skin.</summary>
    public required double Skin { get; init; }

    /// <summary>z of the pocket's rim.</summary>
    public required double Rim { get; init; }

    /// <summary>Outer diameter of the collar round it, mm.</summary>
    public required double CollarDiameter { get; init; }

    /// <summary>Diameter of the pit in each collar's neighbourhood that marks the polarity, mm.</summary>
    public required double MarkDiameter { get; init; }
}

/// <summary>A heat-set insert with a photographic tripod thread, set from below.</summary>
/// <param name="At">Its axis.</param>
/// <param name="HoleDiameter">Hole as drawn, mm.</param>
/// <param name="HoleDepth">From the outer floor, mm.</param>
/// <param name="LeadIn">Leg of the 45 degree lead-in, mm.</param>
/// <param name="BossDiameter">Diameter of the boss round it, mm.</param>
/// <param name="BossTop">z of the boss's top.</param>
/// <param name="LandDiameter">Flat of the outer floor round it, mm.</param>
public sealed record TripodMountPlan(
    Point2 At, double HoleDiameter, double HoleDepth, double LeadIn, double BossDiameter, double BossTop, double LandDiameter) : MountPlan
{
    /// <inheritdoc />
    public override ImmutableArray<ShoppingItem> Shopping => [new ShoppingItem("heat-set insert 1/4-20 x 12.7, body 8.4 to 8.7", 1)];
}

/// <summary>A stand of its own: a block with a pocket, leaning back, that the housing's rim is set into.</summary>
public sealed record StandMountPlan : MountPlan
{
    /// <summary>From the stand's own frame (foot on z = 0, viewer towards -y) to the assembled housing's frame.</summary>
    public required Transform3 ToHousing { get; init; }

    /// <summary>Width of the block, mm.</summary>
    public required double Width { get; init; }

    /// <summary>Depth of the block towards the viewer and away, mm.</summary>
    public required double Depth { get; init; }

    /// <summary>Height of the block, mm.</summary>
    public required double Height { get; init; }

    /// <summary>Corner radius of the block in plan, mm.</summary>
    public required double CornerRadius { get; init; }

    /// <summary>Pocket in the housing's plan: its footprint with a gap round it.</summary>
    public required Region Pocket { get; init; }

    /// <summary>z of the pocket's back and front in the housing's frame, gaps included.</summary>
    public required double PocketBack { get; init; }

    /// <summary>See <see cref="PocketBack"/>.</summary>
    public required double PocketFront { get; init; }

    /// <summary>Everything above the front lip, in the housing's plan: the stand stays open there from the housing's front forward.</summary>
    public required Region LipOver { get; init; }

    /// <summary>Room for plug or cable in the housing's plan; empty when it leaves elsewhere.</summary>
    public required Region CableWay { get; init; }

    /// <summary>Tilt of the housing's face from the horizontal.</summary>
    public required Angle Tilt { get; init; }

    /// <summary>Chamfer on the foot against elephant's foot, mm.</summary>
    public required double BedChamfer { get; init; }
}
