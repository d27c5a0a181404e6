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
        Region? wall = plain.Less(shell.Cavity).Turned(back).Intersect(way).Parts.MinBy(p => p.Bounds.Min.X);
        if (wall is null)
        {
            return null;
        }

        double outer = wall.Bounds.Max.X;
        Region? hollow = shell.Cavity.Turned(back).Intersect(way).Parts
            .Where(p => p.Bounds.Min.X < outer).MinBy(p => p.Bounds.Min.X);
        double inner = wall.Bounds.Min.X;
        return new WallSpan(inner, hollow is null ? inner : Math.Clamp(hollow.Bounds.Max.X, inner, outer), outer);
    }
}
