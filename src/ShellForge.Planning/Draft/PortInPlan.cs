using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Draft;

/// <summary>A port as far as it is decided before the heights are: everything in plan.</summary>
/// <param name="Part">The connector's part.</param>
/// <param name="WallInner">u of the nearest inner wall face across the plug's width, mm.</param>
/// <param name="WallFace">u of the farthest outer wall face across the plug's width, mm.</param>
/// <param name="MouthU">u of the mouth's face, mm.</param>
/// <param name="Kind">Rung of the ladder.</param>
/// <param name="RecessFace">u of the recess's floor; null without a recess.</param>
/// <param name="Through">Whether the wall opens as wide as the overmould.</param>
internal sealed record PortInPlan(
    BoardPart Part, double WallInner, double WallFace, double MouthU, PortKind Kind, double? RecessFace, bool Through)
{
    /// <summary>Sizes of mouth and plug.</summary>
    public MouthProfile Mouth => Part.Mouth!.Profile;

    /// <summary>Height of whatever is cut widest along z, mm.</summary>
    public double TallestCut => RecessFace is not null || Through ? Mouth.RecessHeight : Mouth.OpeningHeight;

    /// <summary>Height of the mouth's axis off the board face that the part sits on, mm.</summary>
    public double AxisOffBoard => Mouth.AxisHeight + Part.Lift;
}
