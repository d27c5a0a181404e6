using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Planning.Floors;

/// <summary>Looks for places on the floor where a shape fits.</summary>
internal static class FloorPlaces
{
    // Places are tried in steps of this length, mm.
    private const double Step = 2.0;

    /// <summary>
    /// The places, on circles about the axis, where a shape fits into a room, nearest to a wanted direction first.
    /// </summary>
    /// <param name="room">Where it may go.</param>
    /// <param name="towards">The direction to look in first.</param>
    /// <param name="inside">Radius of a circle about its place that lies inside the shape, mm: what is nearer to an outline needs no second
    /// look.</param>
    /// <param name="shape">The shape at a place.</param>
    public static IEnumerable<Point2> About(Region room, Angle towards, double inside, Func<Point2, Region> shape)
    {
        if (room.IsEmpty)
        {
            yield break;
        }

        const int directions = 72;
        double reach = Math.Max(room.Bounds.Max.X, room.Bounds.Max.Y) - inside;
        for (int turn = 0; turn <= directions; turn++)
        {
            Angle at = towards + Angle.FromDegrees((turn % 2 == 0 ? 1 : -1) * ((turn + 1) / 2) * (360.0 / directions));
            for (double radius = reach; radius >= 0; radius -= Step)
            {
                Point2 place = Point2.Polar(radius, at);
                if (!room.IsNearOutline(place, inside) && Fits(room, place, shape))
                {
                    yield return place;
                }
            }
        }
    }

    /// <summary>
    /// Mirror images about the line that points up, both in the room: the pair nearest to a direction and its image, as far out as it fits;
    /// null where none does.
    /// </summary>
    /// <param name="room">Where they may go.</param>
    /// <param name="up">The direction that points up.</param>
    /// <param name="look">Angle from it to look at first, 0 to 180 degrees, and how far from that angle they may stray.</param>
    /// <param name="apart">Least distance between the two, mm.</param>
    /// <param name="inside">Radius of a circle about its place that lies inside the shape, mm.</param>
    /// <param name="shape">The shape at a place.</param>
    public static (Point2 Left, Point2 Right)? Pair(
        Region room, Angle up, (Angle Aside, Angle Spread) look, double apart, double inside, Func<Point2, Region> shape)
    {
        if (room.IsEmpty)
        {
            return null;
        }

        const double turnStep = 5;
        double reach = room.Loops.SelectMany(loop => loop).Max(point => point.Length) - inside;
        for (double turn = 0; turn <= look.Spread.Degrees; turn += turnStep)
        {
            foreach (double side in new[] { turn, -turn })
            {
                Angle aside = look.Aside + Angle.FromDegrees(side);
                for (double radius = reach; 2 * radius * aside.Sin >= apart; radius -= Step)
                {
                    Point2 left = Point2.Polar(radius, up + aside);
                    Point2 right = Point2.Polar(radius, up - aside);
                    if (!room.IsNearOutline(left, inside) && !room.IsNearOutline(right, inside)
                        && Fits(room, left, shape) && Fits(room, right, shape))
                    {
                        return (left, right);
                    }
                }
            }
        }

        return null;
    }

    /// <summary>The place in a direction where a shape fits, as far out as it does; null where none does.</summary>
    /// <param name="room">Where it may go.</param>
    /// <param name="towards">The direction.</param>
    /// <param name="inside">Radius of a circle about its place that lies inside the shape, mm.</param>
    /// <param name="shape">The shape at a place.</param>
    public static Point2? Along(Region room, Angle towards, double inside, Func<Point2, Region> shape)
    {
        double reach = room.IsEmpty ? -1 : room.Loops.SelectMany(loop => loop).Max(point => point.Length) - inside;
        for (double radius = reach; radius >= 0; radius -= Step)
        {
            Point2 place = Point2.Polar(radius, towards);
            if (!room.IsNearOutline(place, inside) && Fits(room, place, shape))
            {
                return place;
            }
        }

        return null;
    }

    /// <summary>Whether a shape lies in a room; corners are asked first, which settles most places without an overlay.</summary>
    public static bool Fits(Region room, Point2 place, Func<Point2, Region> shape)
    {
        if (!room.Contains(place))
        {
            return false;
        }

        Region outline = shape(place);
        return outline.Loops[0].All(room.Contains) && room.Contains(outline);
    }
}
