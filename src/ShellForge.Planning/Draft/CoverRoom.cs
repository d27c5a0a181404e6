using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Draft;

/// <summary>
/// What walls and lip leave of the cover in plan. The cover's wall is as thick as tub wall, gap and lip together: the lip then stands
/// on plastic when the cover is printed face down.
/// </summary>
/// <param name="Cavity">Room inside the cover's walls.</param>
/// <param name="OuterLip">The lip along the outer wall.</param>
/// <param name="BoreLip">The tongue along an open bore; empty without one.</param>
/// <param name="WallSide">Between the tub wall's inner face and the lip's outer face: the gap, where tongues bridge it.</param>
internal sealed record CoverRoom(Region Cavity, Region OuterLip, Region BoreLip, Region WallSide)
{
    /// <summary>Works the regions out from the tub's walls.</summary>
    public static CoverRoom Of(ShellPlan shell, LipRing lip)
    {
        Region tubRoom = shell.Cavity.Filled();
        Region lipOutside = tubRoom.Offset(-lip.Gap);
        Region room = lipOutside.Offset(-lip.Thickness);
        Region bore = tubRoom.Less(shell.Cavity);
        Region tongueInside = bore.Offset(lip.TongueGap);
        Region tongueOutside = tongueInside.Offset(lip.Thickness);
        return new CoverRoom(
            room.Less(tongueOutside), lipOutside.Less(room), tongueOutside.Less(tongueInside), tubRoom.Less(lipOutside));
    }

    /// <summary>Radius of the largest circle about the axis inside the outer wall of the cover, mm.</summary>
    public double OuterRadius => Cavity.IsEmpty ? 0 : Cavity.Filled().DistanceToOutline(Point2.Origin);

    /// <summary>Radius of the smallest circle about the axis round the cover's bore wall, mm; 0 without a bore.</summary>
    public double InnerRadius
    {
        get
        {
            Region bore = Cavity.Filled().Less(Cavity);
            return bore.IsEmpty ? 0 : bore.Loops.SelectMany(loop => loop).Max(point => point.Length);
        }
    }
}
