using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Planning.Batteries;

/// <summary>
/// Section of a battery's bay, whatever its place: a block on the floor with a trough for each cylinder, or with walls round each pouch,
/// and a gap in its middle through which a strap goes under the battery and over it:
/// <code>
///          ___                        strap
///         /   \   cell        ┌───────────────┐  pouch, with room to swell
///     █| (     ) |█          █│               │█ walls
///     █|__\___/__|█          █└───────────────┘█
///     ███ strap ███          ███   strap     ███
///     ────────────── floor ──────────────────────
/// </code>
/// </summary>
public sealed record BatteryBaySize
{
    /// <summary>What lies in it.</summary>
    public required BatterySpec Battery { get; init; }

    /// <summary>Width of one trough or pocket, mm.</summary>
    public required double PocketWidth { get; init; }

    /// <summary>Length of it, with room for tabs and wires at the ends, mm.</summary>
    public required double PocketLength { get; init; }

    /// <summary>Plastic between two troughs or pockets, mm.</summary>
    public required double Ridge { get; init; }

    /// <summary>Walls round all, mm.</summary>
    public required double Wall { get; init; }

    /// <summary>Room under the battery for the strap, over the floor, mm: whole layers.</summary>
    public required double Lift { get; init; }

    /// <summary>From its middle to its farthest corner, mm.</summary>
    public double Reach => new Point2(OuterLength, OuterWidth + (2 * StrapBeside)).Length / 2;

    /// <summary>From the battery's underside to the walls' rim, mm.</summary>
    public required double RimOverSeat { get; init; }

    /// <summary>Height of the battery at its largest, swollen where it may swell, mm.</summary>
    public required double Swollen { get; init; }

    /// <summary>From the floor's inner face to the closed strap's top and the air over it, mm.</summary>
    public required double Depth { get; init; }

    /// <summary>Chamfer on the rim inside, so that no edge bites into a pouch, mm; 0 for cylinders.</summary>
    public required double RimChamfer { get; init; }

    /// <summary>Length of the gap for the strap, mm.</summary>
    public required double StrapGap { get; init; }

    /// <summary>Width of the level roof over the strap's slots in the long walls, mm: it is bridged.</summary>
    public required double SlotRoof { get; init; }

    /// <summary>From the battery's underside up to that roof, mm; slants lead to it.</summary>
    public required double SlotRise { get; init; }

    /// <summary>Free beside the long walls where the strap runs, mm.</summary>
    public required double StrapBeside { get; init; }

    /// <summary>Width of the notch that the wires leave by, mm.</summary>
    public required double WireNotch { get; init; }

    /// <summary>Whether it holds cylinders.</summary>
    public bool IsRound => Battery.Form == BatteryForm.Round;

    /// <summary>Width inside the walls, mm.</summary>
    public double InnerWidth => (Battery.Count * PocketWidth) + ((Battery.Count - 1) * Ridge);

    /// <summary>Width over the walls, mm.</summary>
    public double OuterWidth => InnerWidth + (2 * Wall);

    /// <summary>Length over the walls, mm.</summary>
    public double OuterLength => PocketLength + (2 * Wall);

    /// <summary>What block and strap take of the floor, mm2.</summary>
    public double TakenArea => (OuterLength * OuterWidth) + (2 * StrapBeside * StrapGap);

    /// <summary>Mass of all, g.</summary>
    public double Grams => Battery.Count * Battery.Grams;
}
