using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Batteries;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Outlines;

namespace ShellForge.Planning.Floors;

/// <summary>A place on the floor for a battery's bay, before the heights are decided.</summary>
/// <param name="Size">Its section.</param>
/// <param name="At">Its middle.</param>
/// <param name="Along">Direction of the battery's length.</param>
/// <param name="Hanging">How far what hangs from the board over it reaches down, mm; 0 for nothing.</param>
/// <param name="Under">What that is; null for nothing.</param>
internal sealed record BatteryPlace(BatteryBaySize Size, Point2 At, Angle Along, double Hanging, string? Under)
{
    /// <summary>Least room between floor and board over it, mm.</summary>
    public double BelowBoard => Size.Depth + Hanging;

    /// <summary>What it takes of the floor.</summary>
    public Region Taken => BatteryBayPlan.TakenAt(Size, At, Along);
}

/// <summary>Looks for the place of a battery's bay that costs least depth, and among those for the nearest to the board's middle.</summary>
internal sealed class BatteryPlaces
{
    // Places are tried so far apart, mm, on larger boards wider, and in so many directions over half a turn.
    private const double LeastStep = 2.0;
    private const int StepsAcross = 32;
    private const int StepsToEdge = StepsAcross / 2;
    private const int Directions = 12;

    private readonly Region _room;
    private readonly Angle _up;
    private readonly ImmutableArray<(string Ref, Region Outline, double Height)> _hanging;

    /// <summary>Looks in a room under a board.</summary>
    /// <param name="board">The board.</param>
    /// <param name="room">Where a bay may stand.</param>
    /// <param name="up">Direction that points up: a battery lies level first.</param>
    public BatteryPlaces(CircuitBoard board, Region room, Angle up)
    {
        _room = room;
        _up = up;
        _hanging =
        [
            .. PartEnvelope.OnBottom(board).Select(
                part => (part.Ref, part.Outline.Offset(PlanRules.Beside), part.To ?? PlanRules.UnknownHeight)),
            .. board.Wires.Where(wire => wire.Side == BoardSide.Bottom).Select(wire => (
                $"the wires at {wire.Name}",
                Region.Disc(wire.At, Ring.Hole((wire.Conductors * wire.Diameter) + PlanRules.Beside)), PlanRules.WireBlob)),
        ];
    }

    /// <summary>The best place; null where none is free.</summary>
    /// <param name="size">Section of the bay.</param>
    public BatteryPlace? Best(BatteryBaySize size)
    {
        if (_room.IsEmpty || !IsInSpace(size, Point2.Origin))
        {
            return null;
        }

        (Angle Way, Region Taken)[] shapes = [.. Ways(size).Select(way => (way, BatteryBayPlan.TakenAt(size, Point2.Origin, way)))];
        BatteryPlace? best = null;
        foreach (Point2 at in size.Battery.At is { } wanted ? [wanted] : Grid())
        {
            foreach ((Angle way, Region taken) in shapes.Where(
                shape => IsInSpace(size, at) && FloorPlaces.Fits(_room, at, shape.Taken.Moved)))
            {
                BatteryPlace place = Under(new BatteryPlace(size, at, way, 0, null), taken.Moved(at));
                best = best is null || place.Hanging < best.Hanging ? place : best;
                if (best.Hanging == 0)
                {
                    return best;
                }
            }
        }

        return best;
    }

    /// <summary>How much of a bay at a place stands out of the room, turned the best way, mm2; 0 where it fits.</summary>
    public double StandsOut(BatteryBaySize size, Point2 at) => IsInSpace(size, at)
        ? Ways(size).Min(way => BatteryBayPlan.TakenAt(size, at, way).Less(_room).Area)
        : size.TakenArea;

    private Angle[] Ways(BatteryBaySize size) => size.Battery.Along is { } along ? [along]
        : [.. Enumerable.Range(0, Directions).Select(i => _up + Angle.FromDegrees(90 + (i * 180.0 / Directions)))];

    // A bay that leaves the space that parts are made in leaves every room.
    private static bool IsInSpace(BatteryBaySize size, Point2 at) =>
        Math.Max(Math.Abs(at.X), Math.Abs(at.Y)) + size.Reach <= Lattice.LimitMillimetres;

    // Nearest to the middle first.
    private IEnumerable<Point2> Grid()
    {
        Box2 bounds = _room.Bounds;
        double step = Math.Max(LeastStep, Math.Max(bounds.Size.X, bounds.Size.Y) / StepsAcross);
        Point2 middle = bounds.Centre;
        var places = new List<Point2>();
        for (int i = -StepsToEdge; i <= StepsToEdge; i++)
        {
            for (int j = -StepsToEdge; j <= StepsToEdge; j++)
            {
                Point2 at = middle + new Point2(i * step, j * step);
                if (bounds.Contains(new Box2(at, at)) && Lattice.Snap(at) is var place && _room.Contains(place))
                {
                    places.Add(place);
                }
            }
        }

        return places.OrderBy(at => Math.Round(Point2.Distance(at, middle), 3));
    }

    private BatteryPlace Under(BatteryPlace place, Region taken)
    {
        foreach ((string who, Region part, double reach) in _hanging)
        {
            if (reach > place.Hanging && part.Bounds.Touches(taken.Bounds) && !part.Intersect(taken).IsEmpty)
            {
                place = place with { Hanging = reach, Under = who };
            }
        }

        return place;
    }
}
