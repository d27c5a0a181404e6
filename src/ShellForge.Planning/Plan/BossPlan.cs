using System.Collections.Immutable;
using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Planning.Plan;

/// <summary>What a boss serves.</summary>
public enum BossUse
{
    /// <summary>Carries the board and takes its screw.</summary>
    Board,

    /// <summary>Takes a closure screw.</summary>
    Closure,

    /// <summary>One long screw holds cover and board.</summary>
    Both,

    /// <summary>Carries the board where no hole is, without a screw.</summary>
    Rest,

    /// <summary>Takes a screw of the clamp ring, beside the board.</summary>
    Clamp,

    /// <summary>Carries a second board on the floor and takes its screw.</summary>
    SecondBoard,
}

/// <summary>A post on the floor with, in most cases, a blind hole for an insert from above.</summary>
public sealed record BossPlan
{
    /// <summary>Name for messages: "boss 3".</summary>
    public required string Name { get; init; }

    /// <summary>What it serves.</summary>
    public required BossUse Use { get; init; }

    /// <summary>Its axis.</summary>
    public required Point2 At { get; init; }

    /// <summary>Outer diameter, mm.</summary>
    public required double Diameter { get; init; }

    /// <summary>z of its top.</summary>
    public required double Top { get; init; }

    /// <summary>The hole; null for a rest.</summary>
    public InsertHolePlan? Hole { get; init; }

    /// <summary>Webs that tie it to a near wall or stiffen it, in plan; from the floor up to <see cref="WebTop"/>.</summary>
    public ImmutableArray<Region> Webs { get; init; } = [];

    /// <summary>z of the webs' top.</summary>
    public double WebTop { get; init; }

    /// <summary>Triangular webs from the boss's side down to the floor.</summary>
    public ImmutableArray<GussetPlan> Gussets { get; init; } = [];
}

/// <summary>A triangular web against a boss.</summary>
/// <param name="Direction">Where it points, seen from the boss's axis.</param>
/// <param name="Foot">Length on the floor from the boss's side, mm.</param>
/// <param name="Height">Height at the boss's side, mm.</param>
/// <param name="Thickness">Thickness, mm.</param>
public sealed record GussetPlan(Angle Direction, double Foot, double Height, double Thickness);

/// <summary>A blind hole that takes an insert from above.</summary>
public sealed record InsertHolePlan
{
    /// <summary>The insert.</summary>
    public required InsertProfile Insert { get; init; }

    /// <summary>Diameter as drawn at the bottom of the insert, mm.</summary>
    public required double Diameter { get; init; }

    /// <summary>Diameter as drawn at the mouth, lead-in left out, mm: larger for tapered inserts only.</summary>
    public required double MouthDiameter { get; init; }

    /// <summary>Depth from the boss's top, mm.</summary>
    public required double Depth { get; init; }

    /// <summary>Lead-in: leg of a 45 degree chamfer at the mouth, mm; 0 for none.</summary>
    public required double LeadIn { get; init; }

    /// <summary>How far the insert's top is set below the boss's top, mm.</summary>
    public required double SetBelow { get; init; }

    /// <summary>Plastic left under the hole, mm.</summary>
    public required double PlasticBelow { get; init; }
}

/// <summary>
/// Where posts may stand in plan: the room, and half of the wall round it, so that a post that meets the wall fuses with it and never
/// shows outside.
/// </summary>
public static class PostRoom
{
    /// <summary>The room and half of its walls.</summary>
    public static Region Of(ShellPlan shell) => shell.Round is not { } round ? shell.Cavity.Offset(shell.Wall / 2)
        : round.HasBore
            ? Region.Annulus(
                RoundRegions.Ring(round, round.Inner + (shell.Wall / 2), RingSide.Inside),
                RoundRegions.Ring(round, round.BoreOuter - (shell.Wall / 2), RingSide.Outside))
            : RoundRegions.Disc(round, round.Inner + (shell.Wall / 2), RingSide.Inside);
}

/// <summary>A post round a heat-set insert, as far as its print has to know it: it must be solid.</summary>
/// <param name="Name">For people.</param>
/// <param name="At">Its axis.</param>
/// <param name="Diameter">Outer diameter, mm.</param>
/// <param name="HoleDiameter">Diameter of the insert's hole, mm.</param>
/// <param name="Bottom">z of its lower end.</param>
/// <param name="Top">z of its upper end.</param>
/// <param name="PlainHeight">Height of the stretch without the hole, mm.</param>
public sealed record InsertPost(
    string Name, Point2 At, double Diameter, double HoleDiameter, double Bottom, double Top, double PlainHeight);
