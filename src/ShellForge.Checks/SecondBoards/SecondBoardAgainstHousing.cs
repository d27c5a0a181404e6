using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Plan;
using ShellForge.Planning.SecondBoards;

namespace ShellForge.Checks.SecondBoards;

/// <summary>A second board on the floor that meets plastic, or what hangs from the LED board.</summary>
public sealed class SecondBoardAgainstHousing() : Rule(
    "second-board-against-housing",
    "What is on a second board must stay clear of floor, walls and posts, and of all that hangs from the LED board.",
    "Joints on the floor lift it off its seats, and a part that presses on another shorts or cracks it.",
    "least distance from the room over and under its laminate to the sections of the tub as made and to the bodies on the LED board's "
        + "back; contact stops, below 0.25 mm warns",
    "practice: the spread of boards, parts and prints")
{
    private const double Wanted = 0.25;

    // Two faces in one plane, mm.
    private const double Touch = 0.01;

    // Round seats are drawn with chords, mm.
    private const double Chords = 0.05;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        if (housing.Plan.SecondBoard is not { } second || housing.Part(PartNames.Tub) is not { } tub)
        {
            yield break;
        }

        BoardBody[] hanging = [.. BoardBody.Of(housing.Plan).Where(body => body.Side == BoardSide.Bottom)];
        foreach (BoardBody body in Bodies(second))
        {
            if (BodyGap.Least(body, housing.SectionsOf(tub), Wanted) is { } gap && Math.Round(gap.Distance, 2) < Wanted)
            {
                yield return Found(
                    gap.Distance < -Touch ? Severity.Stop : Severity.Warn, "second board",
                    Told(body.Ref, gap.Distance, gap.Upright ? "the floor" : "the tub's plastic"), gap.Distance, Wanted, gap.At,
                    "more air under it ('clearance: {below-parts: 0.6}'), or its real heights at 'above' and 'below'");
            }

            foreach (BoardBody other in hanging.Where(other => other.FromZ < body.ToZ + Wanted && other.ToZ > body.FromZ - Wanted))
            {
                double beside = other.Outline.Distance(body.At) > 0 && other.Outline.Intersect(body.Outline).IsEmpty
                    ? other.Outline.Distance(body.Outline) : 0;
                double apart = beside > 0 ? beside : other.FromZ - body.ToZ;
                if (Math.Round(apart, 2) < Wanted)
                {
                    yield return Found(
                        apart < -Touch ? Severity.Stop : Severity.Warn, "second board", Told(body.Ref, apart, other.Ref), apart, Wanted,
                        second.Middle, "another place for it ('at:'), or a greater height of the housing ('size: {height: ...}')");
                }
            }
        }
    }

    private static string Told(string what, double distance, string other) => distance < -Touch
        ? string.Create(CultureInfo.InvariantCulture, $"{what} stands {-distance:0.00} mm deep in {other}")
        : string.Create(CultureInfo.InvariantCulture, $"{what} is {Math.Max(0, distance):0.00} mm from {other}");

    // Over its laminate less what holds its rim; under it less posts and seats.
    private static IEnumerable<BoardBody> Bodies(SecondBoardPlan second)
    {
        double rim = second.Size.IsSeated ? second.Size.SeatReach + Wanted + Chords : 0;
        Region inner = second.Size.Outline.Offset(-rim);
        Region posts = Region.Union([.. second.Board.Holes.Where(_ => !second.Size.IsSeated).Select(hole =>
            Region.Disc(hole, Ring.Hole((second.Size.PostDiameter / 2) + Wanted + Chords)))]);
        (string What, Region Outline, double From, double To)[] rooms =
        [
            ("what stands on it", second.Placed(inner), second.Top, second.Highest),
            ("what is under it", second.Placed(inner.Less(posts)), second.Lowest, second.Seat),
        ];
        return rooms.Where(room => room.To > room.From && !room.Outline.IsEmpty)
            .Select(room => new BoardBody(room.What, BoardSide.Bottom, room.Outline, room.From, room.To, second.At));
    }
}
