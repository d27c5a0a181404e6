using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Holding;

/// <summary>
/// Where a post may hang from the cover down to the board: at the rim, grown out of the cover's wall, or over free laminate where no light
/// passes; clear of everything on the board, also while the cover turns into its place.
/// </summary>
internal sealed class StopPlaces
{
    // A post that stands free is so thick at least, mm, and a share of its height: the least free-standing pin is 3.
    private const double FreeDiameter = 4.0;
    private const double Slenderness = 0.25;

    // Places over free laminate are tried so far apart, as a share of the board's diameter.
    private const double Step = 1.0 / 16;

    // Clear of diffuser and lap in the cover, mm.
    private const double BesideDiffuser = 0.3;

    // Least of the board under a post, mm2.
    private const double LeastOver = 1.0;

    // A turning cover is followed in steps of about this length at its wall, mm.
    private const double TurnStep = 1.0;

    // A side-facing LED's light must not meet a post: none outside of the LEDs, and none so near behind them, mm.
    private const double BehindLeds = 2.0;

    private readonly BoardFile _file;
    private readonly Region _board;
    private readonly Region _hanging;
    private readonly Region _inCover;
    private readonly Region _seat;
    private readonly Region _onBoard;
    private readonly Region _allowed;
    private readonly ImmutableArray<Angle> _turns;
    private readonly double _diameter;

    /// <summary>The places under a cover.</summary>
    /// <param name="draft">Tub and board.</param>
    /// <param name="front">What the cover carries.</param>
    /// <param name="closure">How the cover enters, and its posts.</param>
    /// <param name="height">Height of a post, mm.</param>
    public StopPlaces(HousingDraft draft, FrontSide front, ClosurePlan closure, double height)
    {
        _file = draft.File;
        _board = _file.Board.Outline.Region;
        _diameter = Math.Max(FreeDiameter, Math.Ceiling(Slenderness * height));
        _hanging = draft.Room.Cavity.And(draft.Room.OuterLip).And(draft.Room.BoreLip);
        _seat = front.Cover.Seat;
        Region baffle = front.Baffle is { } walls ? walls.Walls.And(walls.Bridges) : Region.Empty;
        _inCover = Region.Union(
        [
            front.Diffuser.Outline.Offset(BesideDiffuser), front.Diffuser.Lap?.Outline.Offset(BesideDiffuser) ?? Region.Empty,
            front.Cover.Window.Offset(BesideDiffuser), front.Cover.Bars, baffle.Offset(PlanRules.Beside),
            front.Cover.ToothSlot.Offset(PlanRules.Beside), closure.FreePosts.Offset(PlanRules.Beside),
            .. draft.Openings.Select(opening => opening.TakenInFront),
        ]);
        _onBoard = OnBoard(draft);
        _allowed = BehindSideLeds(_file.Board);
        _turns = Turns(closure, _file.Board.Outline.OuterRadius);
    }

    /// <summary>The places.</summary>
    /// <param name="over">How far one at the rim reaches over the board, mm.</param>
    public ImmutableArray<BoardStopPlan> Free(double over) =>
    [
        .. AtRim(over).Concat(Inside()).Where(stop => stop.Outline.Intersect(_board).Area >= LeastOver && IsFree(stop.Outline)),
    ];

    private IEnumerable<BoardStopPlan> AtRim(double over) => RimPlace.Of(_file.Board.Outline, _file.Up).Select(place => new BoardStopPlan(
        OutlineOffsets.WithoutSlivers(Region
            .Disc(
                Lattice.Snap(place.Inside(over - (PlanRules.RestDiameter / 2))), Ring.Peg(PlanRules.RestDiameter / 2))
            .Intersect(_hanging)),
        place.Inside(over / 2)));

    private IEnumerable<BoardStopPlan> Inside()
    {
        Box2 box = _board.Bounds;
        double step = Step * 2 * _file.Board.Outline.OuterRadius;
        for (double y = box.Min.Y + (step / 2); y < box.Max.Y; y += step)
        {
            for (double x = box.Min.X + (step / 2); x < box.Max.X; x += step)
            {
                Point2 at = Lattice.Snap(new Point2(x, y));
                Region post = Region.Disc(at, Ring.Peg(_diameter / 2));
                if (_board.Contains(post) && _hanging.Contains(post))
                {
                    yield return new BoardStopPlan(post, at);
                }
            }
        }
    }

    private bool IsFree(Region post) =>
        !post.IsEmpty && post.Parts.Length == 1 && _allowed.Contains(post) && post.Intersect(_inCover).IsEmpty
            && (_seat.IsEmpty || _seat.Distance(post) is 0 or > PlanRules.Beside)
            && _turns.All(turn => post.Turned(turn).Intersect(_onBoard).IsEmpty);

    // Everything that reaches above the board, with the room round it.
    private static Region OnBoard(HousingDraft draft)
    {
        BoardFile file = draft.File;
        IEnumerable<Region> parts = PartEnvelope.OnTop(file.Board).Select(part => part.Outline)
            .Concat(file.Board.Parts.Where(part => part.Mounted == PartMounting.MidBoard).Select(PartEnvelope.OutlineOf))
            .Select(outline => outline.Offset(PlanRules.Beside));
        IEnumerable<Region> wires = file.Board.Wires.Where(wire => wire.Side == BoardSide.Top)
            .Select(wire => Region.Disc(wire.At, Ring.Hole((wire.Conductors * wire.Diameter) + PlanRules.Beside)));
        IEnumerable<Region> posts = draft.Bosses.Where(boss => boss.Top > draft.Stack.BoardTop)
            .Select(boss => Region.Disc(boss.At, Ring.Hole((boss.Diameter / 2) + PlanRules.Beside))
                .And(Region.Union(boss.Webs).Offset(PlanRules.Beside)));
        IEnumerable<Region> holes = file.Board.Holes
            .Select(hole => Region.Disc(hole.At, Ring.Hole((hole.Diameter / 2) + PlanRules.Beside)));
        IEnumerable<Region> plugs = draft.Openings.Select(opening =>
            opening.ThroughLip(file.Board, draft.Stack.BoardTop).Offset(PlanRules.Beside));
        return Region.Union([.. parts, .. wires, .. posts, .. holes, .. plugs]);
    }

    private Region BehindSideLeds(CircuitBoard board)
    {
        Region outward = Ends(board, PixelFacing.Out);
        Region inward = Ends(board, PixelFacing.In);
        Region allowed = outward.IsEmpty ? _hanging : _hanging.Intersect(outward.Offset(-BehindLeds));
        return inward.IsEmpty ? allowed : allowed.Less(inward.Offset(BehindLeds));
    }

    private static Region Ends(CircuitBoard board, PixelFacing facing) => Region.Union(board.PixelCircles
        .Where(circle => circle.Facing == facing)
        .SelectMany(circle => circle.Pixels.Select(pixel => PartEnvelope.OutlineOf(pixel, circle)))).Hull();

    // Where the cover stands on its way in, seen from where it is closed.
    private static ImmutableArray<Angle> Turns(ClosurePlan closure, double radius)
    {
        Angle turn = closure.Entry?.Turn ?? Angle.Zero;
        int steps = (int)Math.Ceiling(turn.Radians * radius / TurnStep);
        return [.. Enumerable.Range(0, steps + 1).Select(i => steps == 0 ? Angle.Zero : ((double)i / steps) * turn)];
    }
}
