using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Draft;

/// <summary>The wall across a straight way out: distances along that way from the housing's axis, mm.</summary>
/// <param name="InnerLeast">Nearest point of the inner face.</param>
/// <param name="InnerMost">Farthest point of the inner face.</param>
/// <param name="OuterMost">Farthest point of the outer face.</param>
internal sealed record WallSpan(double InnerLeast, double InnerMost, double OuterMost)
{
    /// <summary>
    /// The wall that something of a width meets first on its way out, lobes left out; null when there is none. The shell is turned so
    /// that the way runs along +x.
    /// </summary>
    /// <param name="shell">The walls.</param>
    /// <param name="direction">The way out.</param>
    /// <param name="across">v of its middle: the distance to the left of the ray from the axis, mm.</param>
    /// <param name="width">Its width, mm.</param>
    /// <param name="from">u to start from, inside, mm.</param>
    public static WallSpan? Ahead(ShellPlan shell, Angle direction, double across, double width, double from)
    {
        Angle back = Angle.Zero - direction;
        double end = from + shell.Footprint.Bounds.Max.X - shell.Footprint.Bounds.Min.X
            + shell.Footprint.Bounds.Max.Y - shell.Footprint.Bounds.Min.Y;
        Region way = Region.Rectangle(
            new Point2(from, across - (width / 2)),
            new Point2(Math.Min(end, Lattice.LimitMillimetres), across + (width / 2)));
        Region plain = shell.Lobes.IsEmpty
            ? shell.Footprint : shell.Footprint.Less(Region.Union(shell.Lobes.Select(RoundRegions.Lobe)).Less(shell.Cavity));
        Region walls = plain.Less(shell.Cavity).Turned(back);
        Region? wall = walls.Intersect(way).Parts.MinBy(p => p.Bounds.Min.X);
        if (wall is null)
        {
            return null;
        }

        if (wall.Bounds.Min.X - from < Lattice.Step)
        {
            // The way starts within the wall: its inner face lies behind.
            double before = Math.Max((2 * from) - end, -Lattice.LimitMillimetres);
            Region strip = Region.Rectangle(new Point2(before, way.Bounds.Min.Y), way.Bounds.Max);
            wall = walls.Intersect(strip).Parts.First(p => !p.Intersect(wall).IsEmpty);
        }

        double outer = wall.Bounds.Max.X;
        Region? hollow = shell.Cavity.Turned(back).Intersect(way).Parts
            .Where(p => p.Bounds.Min.X < outer).MinBy(p => p.Bounds.Min.X);
        double inner = wall.Bounds.Min.X;
        return new WallSpan(inner, hollow is null ? inner : Math.Clamp(hollow.Bounds.Max.X, inner, outer), outer);
    }

    /// <summary>
    /// The outer wall across a way out from the axis, whether or not the bore has a wall of its own; null when there is none.
    /// </summary>
    /// <param name="shell">The walls.</param>
    /// <param name="direction">The way out.</param>
    /// <param name="width">Its width, mm.</param>
    public static WallSpan? Outermost(ShellPlan shell, Angle direction, double width) =>
        Ahead(shell, direction, 0, width, BetweenWalls(shell, direction));

    // A start between the walls: from the axis a ring would meet its bore wall first.
    private static double BetweenWalls(ShellPlan shell, Angle direction)
    {
        Region along = shell.Cavity.Turned(Angle.Zero - direction)
            .Intersect(Region.Rectangle(new Point2(0, -0.5), new Point2(Lattice.LimitMillimetres, 0.5)));
        Box2? last = along.Parts.Select(p => (Box2?)p.Bounds).MaxBy(b => b!.Value.Max.X);
        return last is { } room ? (room.Min.X + room.Max.X) / 2 : 0;
    }
}
