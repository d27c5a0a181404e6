using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Exits;
using ShellForge.Planning.Outlines;

namespace ShellForge.Planning;

/// <summary>The floor under the board that a battery or a second board may lie on, before the heights are decided.</summary>
internal static class RoomUnderBoard
{
    // Fingers, and a rest under the rim, find room between what lies there and the wall, mm.
    private const double BesidePosts = 0.8;
    private const double FromWall = 0.5;

    // How far in from the wall a cable wants its post or knot, mm.
    private const double CableRoom = 16;

    // Over LEDs or parts: their air, the diffuser and the bezel; and the distance that a diffuser of its own choice has at most, mm.
    private const double FrontRoom = 20;
    private const double OwnDistance = 30;

    /// <summary>
    /// How high the housing would be, about, with so much room under the board, mm; null where that is within what can be made.
    /// </summary>
    /// <param name="file">The board file.</param>
    /// <param name="below">From floor to board, mm.</param>
    public static double? TooHigh(BoardFile file, double below)
    {
        double parts = file.Board.Parts.Where(part => part.Side == BoardSide.Top)
            .Select(part => part.Height ?? PlanRules.UnknownHeight).DefaultIfEmpty(0).Max();
        double height = (file.Housing.Floor ?? PlanRules.Floor) + below + file.Board.Thickness
            + Math.Max(parts, file.Housing.Diffuser.Distance ?? OwnDistance) + FrontRoom;
        return height > Lattice.LimitMillimetres ? height : null;
    }

    /// <summary>What walls, posts, holes of the maker's own and parts with openings leave, whatever hangs over it.</summary>
    public static Region Free(Given given, InPlan choice, ImmutableArray<PostInPlan> posts, Region taken)
    {
        BoardFile file = given.File;

        // A lit wall has its seam under the board: the lip comes down beside what lies there.
        double fromWall = file.Housing.Light.Through == LightThrough.Wall ? choice.Lip.Reach + FromWall : FromWall;
        HashSet<string> opened = [.. choice.Openings.Select(opening => opening.Ref)];
        IEnumerable<Region> parts = file.Board.Parts.Where(part => part.Side == BoardSide.Bottom && opened.Contains(part.Ref))
            .Select(part => PartEnvelope.OutlineOf(part).Offset(PlanRules.Beside));
        IEnumerable<Region> holes = file.Housing.Openings.Where(own => own is { In: OpenedSide.Floor, At: not null })
            .Select(own => Region.Disc(own.At!.Value, Ring.Hole((Math.Max(own.Shape.Along, own.Shape.Across) / 2) + BesidePosts)));
        Region free = choice.Shell.Cavity.Offset(-fromWall).Less(Region.Union(
            [.. posts.Select(post => Region.Disc(post.At, Ring.Hole((post.Diameter / 2) + BesidePosts))), .. parts, .. holes]));
        return taken.IsEmpty ? free : free.Less(taken.Offset(PlanRules.Beside));
    }

    /// <summary>Of that, where rests under the rim and the cables' posts find their places as well.</summary>
    public static Region Roomy(Given given, InPlan choice, Region free)
    {
        BoardFile file = given.File;
        Region inner = choice.Shell.Cavity.Offset(
            -(choice.Shell.BoardEdgeGap + PlanRules.RestOverlap + PlanRules.Beside));
        Region cables = Region.Union(ExitForm.Of(file).Select(exit => exit.Way(choice.Shell)))
            .Less(choice.Shell.Cavity.Offset(-CableRoom));
        return free.Intersect(inner).Less(cables);
    }
}
