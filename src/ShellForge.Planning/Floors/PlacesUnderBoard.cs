using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Outlines;

namespace ShellForge.Planning.Floors;

/// <summary>Something that lies on the floor under the board and wants a place.</summary>
/// <param name="Taken">What it takes about its middle, turned a way.</param>
/// <param name="Ways">Directions that it may lie in, the best first.</param>
/// <param name="At">Where it has to lie; null for anywhere.</param>
/// <param name="Reach">From its middle to the farthest corner, mm.</param>
/// <param name="Area">What it takes, mm2.</param>
internal sealed record FloorBody(
    Func<Angle, Region> Taken, ImmutableArray<Angle> Ways, Point2? At, double Reach, double Area);

/// <summary>A place for it.</summary>
/// <param name="At">Its middle.</param>
/// <param name="Way">Its direction.</param>
/// <param name="Hanging">How far what hangs from the board over it reaches down, mm; 0 for nothing.</param>
/// <param name="Under">What that is; null for nothing.</param>
internal sealed record FloorPlace(Point2 At, Angle Way, double Hanging, string? Under);

/// <summary>Looks for the place under a board that costs least depth, and among those for the nearest to the board's middle.</summary>
internal sealed class PlacesUnderBoard
{
    // Places are tried so far apart, mm, on larger boards wider.
    private const double LeastStep = 2.0;
    private const int StepsAcross = 32;
    private const int StepsToEdge = StepsAcross / 2;

    private readonly Region _room;
    private readonly ImmutableArray<(string Ref, Region Outline, double Height)> _hanging;

    /// <summary>Looks in a room under a board.</summary>
    /// <param name="board">The board.</param>
    /// <param name="room">Where it may stand.</param>
    public PlacesUnderBoard(CircuitBoard board, Region room)
    {
        _room = room;
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
    /// <param name="body">What wants a place.</param>
    public FloorPlace? Best(FloorBody body)
    {
        if (_room.IsEmpty || !IsInSpace(body, Point2.Origin))
        {
            return null;
        }

        (Angle Way, Region Taken)[] shapes = [.. body.Ways.Select(way => (way, body.Taken(way)))];
        FloorPlace? best = null;
        foreach (Point2 at in body.At is { } wanted ? [wanted] : Grid())
        {
            foreach ((Angle way, Region taken) in shapes.Where(
                shape => IsInSpace(body, at) && FloorPlaces.Fits(_room, at, shape.Taken.Moved)))
            {
                FloorPlace place = Under(new FloorPlace(at, way, 0, null), taken.Moved(at));
                best = best is null || place.Hanging < best.Hanging ? place : best;
                if (best.Hanging == 0)
                {
                    return best;
                }
            }
        }

        return best;
    }

    /// <summary>Whether it fits at a place, turned a way.</summary>
    public bool Fits(FloorBody body, Point2 at, Angle way) =>
        !_room.IsEmpty && IsInSpace(body, at) && FloorPlaces.Fits(_room, at, body.Taken(way).Moved);

    /// <summary>How much of it at a place stands out of the room, turned the best way, mm2; 0 where it fits.</summary>
    public double StandsOut(FloorBody body, Point2 at) => IsInSpace(body, at)
        ? body.Ways.Min(way => body.Taken(way).Moved(at).Less(_room).Area)
        : body.Area;

    // What leaves the space that parts are made in leaves every room.
    private static bool IsInSpace(FloorBody body, Point2 at) =>
        Math.Max(Math.Abs(at.X), Math.Abs(at.Y)) + body.Reach <= Lattice.LimitMillimetres;

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

    private FloorPlace Under(FloorPlace place, Region taken)
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
