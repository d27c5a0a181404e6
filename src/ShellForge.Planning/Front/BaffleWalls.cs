using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Front;

/// <summary>Where the baffle's walls stand, and what they carry.</summary>
/// <param name="Region">All walls in plan.</param>
/// <param name="Wall">Wall thickness, mm.</param>
internal abstract record BaffleWalls(Region Region, double Wall)
{
    /// <summary>So much of a tooth's root must stand, as a share.</summary>
    protected const double Stands = 0.8;

    /// <summary>
    /// Low walls that hold rims together over the lit window, where the way is farthest from LEDs and parts, so that they shade least;
    /// empty where there is nothing to join.
    /// </summary>
    public abstract Region Bridges(CircuitBoard board, bool cells);

    /// <summary>
    /// The tooth that keys the baffle to the cover; null where there is no room for one, or where the rim's own shape does it.
    /// </summary>
    public abstract ToothPlan? Tooth(ToothWish wish, Region standing);

    /// <summary>Ribs on top of the rim that the cover presses down.</summary>
    public abstract ImmutableArray<Region> CrushRibs(Region standing, double lineWidth);

    /// <summary>Upright ribs on the rim by which the baffle stays in a cover that turns.</summary>
    public abstract ImmutableArray<Region> GripRibs(Region standing, double seatGap, double lineWidth);
}

/// <summary>What a tooth has to be.</summary>
/// <param name="Key">Direction of the cover's own key, which it stays away from.</param>
/// <param name="Taken">What takes room along the wall.</param>
/// <param name="Width">Along the rim, mm.</param>
/// <param name="SeatGap">From the rim's face to the seat that its slot is cut into, mm.</param>
/// <param name="Reach">How far it goes into that slot, mm.</param>
/// <param name="Bottom">z of its lower end at the rim.</param>
internal sealed record ToothWish(Angle Key, RimSectors Taken, double Width, double SeatGap, double Reach, double Bottom);
