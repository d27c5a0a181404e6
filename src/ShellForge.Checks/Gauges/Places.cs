using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Physics.Heat;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Gauges;

/// <summary>Places of what has none of its own: where a current comes in, where a wall is warmest, where LEDs shine out.</summary>
internal static class Places
{
    /// <summary>
    /// Where the board's current comes in: the connector's mouth, the lead that leaves the housing, otherwise the first LED.
    /// </summary>
    public static Point3? OfFeed(HousingUnderCheck housing)
    {
        CircuitBoard board = housing.Board.Board;
        double z = housing.Plan.Stack.BoardBottom;
        if (housing.Board.Housing.Cables.FirstOrDefault() is ConnectorCable cable
            && board.Parts.FirstOrDefault(part => part.Ref == cable.PartRef) is { Mouth: { } mouth })
        {
            return new Point3(mouth.Face.X, mouth.Face.Y, z);
        }

        ImmutableArray<WireLead> leads = [.. board.Wires.Where(wire => wire.Conductors >= 2)];
        return (leads.FirstOrDefault(wire => leads.All(other => other.Name != wire.To)) ?? leads.FirstOrDefault()) is { } lead
            ? new Point3(lead.At.X, lead.At.Y, z)
            : OfLeds(housing);
    }

    /// <summary>Over the first LED, at the height of the LEDs' windows; null without LEDs.</summary>
    public static Point3? OfLeds(HousingUnderCheck housing) =>
        First(housing) is { } led ? new Point3(led.At.X, led.At.Y, housing.Plan.Stack.LedWindow) : null;

    /// <summary>The LED of the longest circle that lies farthest from every feed.</summary>
    public static Point3? OfFarthestLed(HousingUnderCheck housing)
    {
        PixelCircle? longest = housing.Board.Board.PixelCircles.MaxBy(circle => circle.Pixels.Length);
        if (longest is not { Pixels.IsEmpty: false })
        {
            return null;
        }

        ImmutableArray<Point2> feeds = housing.Power.Feeds;
        if (feeds.IsEmpty)
        {
            feeds = [OfFeed(housing)?.XY ?? longest.Pixels[0].At];
        }

        Pixel led = longest.Pixels.MaxBy(pixel => feeds.Min(feed => Point2.Distance(feed, pixel.At)))!;
        return new Point3(led.At.X, led.At.Y, housing.Plan.Stack.LedWindow);
    }

    /// <summary>Where the diffuser is lit most: before an LED that shines at it.</summary>
    public static Point3? OfDiffuser(HousingUnderCheck housing)
    {
        DiffuserPlan diffuser = housing.Plan.Diffuser;
        if (diffuser.Band is not { } band)
        {
            return First(housing) is { } up ? new Point3(up.At.X, up.At.Y, housing.Plan.Stack.DiffuserInner) : null;
        }

        if (housing.Plan.Shell.Round is not { } round || First(housing, aside: true) is not { } led)
        {
            return null;
        }

        Point2 at = Point2.Polar(band.ThroughBore ? round.BoreInner : round.Outer, Angle.Of(led.At));
        return new Point3(at.X, at.Y, (band.Bottom + band.Top) / 2);
    }

    /// <summary>The middle of a body whose temperature is told; for the board it is by its first LED, where it is warmest.</summary>
    public static Point3? OfBody(HousingUnderCheck housing, HeatBody body)
    {
        StackPlan stack = housing.Plan.Stack;
        Point2 led = (First(housing) ?? First(housing, aside: true))?.At ?? Point2.Origin;
        double middle = (stack.FloorTop + stack.DiffuserInner) / 2;
        return body switch
        {
            HeatBody.Board => new Point3(led.X, led.Y, stack.BoardTop),
            HeatBody.Leds => new Point3(led.X, led.Y, stack.LedWindow),
            HeatBody.FloorInside or HeatBody.FloorOutside => new Point3(led.X, led.Y, stack.FloorTop),
            HeatBody.FrontInside or HeatBody.FrontOutside => new Point3(led.X, led.Y, stack.DiffuserInner),
            HeatBody.SideInside or HeatBody.SideOutside => OnWall(OnInnerWall(housing, housing.Board.Up)),
            HeatBody.BoreInside or HeatBody.BoreOutside => OnWall(Point2.Polar(housing.Plan.Shell.Round?.BoreInner ?? 0, housing.Board.Up)),
            _ => null,
        };

        Point3 OnWall(Point2 at) => new(at.X, at.Y, middle);
    }

    /// <summary>
    /// On the inner face of the outer wall, straight out from the axis: walls that are not round stand at another distance in each
    /// direction.
    /// </summary>
    public static Point2 OnInnerWall(HousingUnderCheck housing, Angle direction) =>
        Point2.Polar(housing.Plan.Shell.Round?.Inner ?? housing.Plan.Shell.Cavity.FarthestAlong(direction), direction);

    private static Pixel? First(HousingUnderCheck housing, bool aside = false) => housing.Board.Board.PixelCircles
        .Where(circle => aside == (circle.Facing != PixelFacing.Up)).SelectMany(circle => circle.Pixels).FirstOrDefault();
}
