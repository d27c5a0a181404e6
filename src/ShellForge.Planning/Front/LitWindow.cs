using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Front;

/// <summary>
/// The region of the front that is lit. Everything round it asks it: the bezel for its outline, the baffle for its walls, posts for a place
/// out of the light, the diffuser for its distance.
/// </summary>
internal abstract class LitWindow
{
    /// <summary>Whether there is room for a window at all.</summary>
    public abstract bool HasRoom { get; }

    /// <summary>The LEDs as a field of neighbours; null where they lie on circles about the axis.</summary>
    public abstract LedFieldPlan? Field { get; }

    /// <summary>The window for a board: a form of it that has room, where there is one.</summary>
    /// <param name="file">The board file.</param>
    /// <param name="room">What walls and lip leave of the cover.</param>
    /// <param name="baffle">The baffle's walls.</param>
    /// <param name="fit">How the diffuser is held.</param>
    /// <param name="posts">Whether posts of the cover stand in the bore and need bezel round them, which bars then hold.</param>
    public static LitWindow Of(BoardFile file, CoverRoom room, BaffleSection baffle, DiffuserFit fit, bool posts)
    {
        WindowShape shape = file.Housing.Light.Shape;
        var round = RoundWindow.For(file, room, baffle, fit, posts);
        bool asRound = shape is WindowShape.Disc or WindowShape.Ring;
        if (asRound ? RoundWindow.HasCircles(file.Board) : shape == WindowShape.Auto && round.TakesInAll(file.Board))
        {
            return round;
        }

        var follow = FollowWindow.For(file, room, baffle, asRound ? round.Plain : null);
        return follow.HasRoom ? follow : round;
    }

    /// <summary>The window in plan.</summary>
    /// <param name="shell">The walls.</param>
    /// <param name="room">What walls and lip leave of the cover.</param>
    public abstract Region Outline(ShellPlan shell, CoverRoom room);

    /// <summary>A diffuser that lies behind the bezel, in plan: its rim ends where the baffle's seat in the cover begins.</summary>
    /// <param name="shell">The walls.</param>
    /// <param name="room">What walls and lip leave of the cover.</param>
    /// <param name="ledge">How far it reaches behind the bezel where there is room, mm.</param>
    public abstract Region Sheet(ShellPlan shell, CoverRoom room, double ledge);

    /// <summary>Bars that join bezel which nothing else would hold; empty where all of it holds together.</summary>
    public abstract Region Bars(PrintBasis basis, DiffuserFit fit);

    /// <summary>The baffle's walls.</summary>
    public abstract BaffleWalls Walls(HousingDraft draft, BaffleSection section, bool cells);

    /// <summary>How even a diffuser will be lit.</summary>
    /// <param name="thickness">Of the diffuser, mm.</param>
    /// <param name="bars">Whether bars behind the diffuser stand on some of the walls between LEDs.</param>
    /// <param name="bridge">Top of the bridges between rims where there are no cells, mm above the LEDs' windows.</param>
    public abstract PlannedLight Light(double thickness, bool bars, double bridge);

    /// <summary>Whether a round post keeps out of the light.</summary>
    /// <param name="at">Its axis.</param>
    /// <param name="radius">Its radius, mm.</param>
    public abstract bool Clears(Point2 at, double radius);

    /// <summary>Notes the window with its reason, and wishes for it that could not be met.</summary>
    public abstract void Note(DiffuserFit fit, Reasons reasons);
}
