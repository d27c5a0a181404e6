using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Floors;
using ShellForge.Planning.SecondBoards;

namespace ShellForge.Planning;

/// <summary>
/// A second board on the tub's floor: its place under the LED board before the heights are decided, and its own height after.
/// How it is held stands in <see cref="SecondBoardSizes"/>. All that stands on the floor is decided later and keeps off it.
/// </summary>
internal static class SecondBoardDecision
{
    /// <summary>The place of a second board; null without one on the floor, and, with a refusal, without a place.</summary>
    /// <param name="given">The board file, lines and layers.</param>
    /// <param name="choice">Walls and openings in plan.</param>
    /// <param name="posts">Posts whose place is settled.</param>
    /// <param name="taken">What a battery has taken already.</param>
    public static Decided<SecondBoardPlace?> Place(
        Given given, InPlan choice, ImmutableArray<PostInPlan> posts, Region taken)
    {
        var reasons = new Reasons();
        BoardFile file = given.File;
        if (file.Housing.SecondBoard is not { Spacers: null } board)
        {
            return reasons.Of<SecondBoardPlace?>(null);
        }

        Region free = RoomUnderBoard.Free(given, choice, posts, taken);
        var anywhere = new PlacesUnderBoard(file.Board, free);
        var roomy = new PlacesUnderBoard(file.Board, RoomUnderBoard.Roomy(given, choice, free));
        SecondBoardSize size = reasons.Take(SecondBoardSizes.Of(given, board));
        FloorBody body = SecondBoardPlace.Body(size, file.Up);
        FloorPlace? found = roomy.Best(body) ?? anywhere.Best(body);
        if (found is null)
        {
            Refuse(file, size, anywhere, reasons);
            return reasons.Of<SecondBoardPlace?>(null);
        }

        var place = new SecondBoardPlace(size, found.At, found.Way, found.Hanging, found.Under);
        if (RoomUnderBoard.TooHigh(file, place.BelowBoard) is double height)
        {
            reasons.Refuse(
                "second-board-without-place", "second board",
                $"Under {place.Under ?? "the LED board"} it makes the housing {Reasons.Mm(Math.Ceiling(height))} mm high, "
                    + $"{Reasons.Mm(Lattice.LimitMillimetres)} can be made. It is planned without it.",
                height, Lattice.LimitMillimetres, "mm", new Point3(place.At.X, place.At.Y, 0),
                "a place beside what hangs there ('at'), or lower parts ('above', 'below')");
            return reasons.Of<SecondBoardPlace?>(null);
        }

        place = board.Turn is null && size.WireWidth > 0 && IsBehind(file, place) && anywhere.Fits(body, place.At, Turned(place))
            ? place with { Turn = Turned(place) } : place;
        string where = $"x {Reasons.Mm(Math.Round(place.At.X, 1) + 0)}, y {Reasons.Mm(Math.Round(place.At.Y, 1) + 0)} mm from the middle, "
            + $"turned by {Reasons.Mm(Math.Round(place.Turn.Normalized.Degrees, 1))} degrees";
        reasons.Choice("second-board.place", where, Reasons.Origin(file, "housing.second-board.at"),
            board.At is not null ? "as asked" : place.Under is null ? "under nothing that hangs from the LED board, nearest to the middle"
                : $"the place that costs least depth: under {place.Under}, which hangs {Reasons.Mm(Math.Round(place.Hanging, 2))} mm down");
        return reasons.Of<SecondBoardPlace?>(place);
    }

    /// <summary>The second board at its height; null without one on the floor.</summary>
    public static Decided<SecondBoardPlan?> AtHeight(Given given, SecondBoardPlace? place, BoardLevels levels)
    {
        var reasons = new Reasons();
        if (place is null)
        {
            return reasons.Of<SecondBoardPlan?>(null);
        }

        SecondBoardSize size = place.Size;
        double seat = given.Basis.Up(levels.FloorTop + size.Lift);
        var plan = new SecondBoardPlan
        {
            Size = size,
            At = place.At,
            Turn = place.Turn,
            FloorTop = levels.FloorTop,
            Seat = seat,
            Rim = given.Basis.Up(seat + size.Board.Thickness),
            ClipTop = size.Clips is { } clips ? given.Basis.Up(seat + size.Board.Thickness + clips.Rise) : 0,
        };
        reasons.Length("second-board.seat", plan.Seat, Reasons.Rule, $"driven by {size.LiftFor}");
        return reasons.Of<SecondBoardPlan?>(plan);
    }

    private static Angle Turned(SecondBoardPlace place) => (place.Turn + Angle.FromDegrees(180)).Normalized;

    // Whether the end at which its wires leave looks away from where they go.
    private static bool IsBehind(BoardFile file, SecondBoardPlace place)
    {
        Point2[] ends = [.. SecondBoardSizes.Wires(file).Select(wire => wire.At)];
        return ends.Length > 0 && ends.Average(end => Point2.Dot(end - place.At, Point2.Polar(1, place.Turn))) < 0;
    }

    private static void Refuse(BoardFile file, SecondBoardSize size, PlacesUnderBoard places, Reasons reasons)
    {
        SecondBoardSpec board = size.Board;
        string bore = file.Board.Outline is RingOutline && file.Housing.BoreOpen != false ? "'bore: closed', " : "";
        if (board.At is { } at)
        {
            double standsOut = Math.Round(places.StandsOut(SecondBoardPlace.Body(size, file.Up), at), 1);
            reasons.Refuse(
                "second-board-without-place", "second board",
                $"At its place the second board of {board.Size} mm meets walls, posts, openings or the battery. It is planned without it.",
                standsOut, 0, "mm2", new Point3(at.X, at.Y, 0),
                $"{bore}leave 'at' and 'turn' out, or spacers behind the LED board ('spacers')");
            return;
        }

        Box2 takes = size.Taken.Bounds;
        reasons.Refuse(
            "second-board-without-place", "second board",
            string.Create(CultureInfo.InvariantCulture,
                $"The second board of {board.Size} mm finds no place: with seats and wires it takes {takes.Size.X:0.#} x "
                    + $"{takes.Size.Y:0.#} mm between walls and posts."),
            0, size.Taken.Area, "mm2", default, $"{bore}spacers behind the LED board ('spacers'), or a smaller board");
    }
}
