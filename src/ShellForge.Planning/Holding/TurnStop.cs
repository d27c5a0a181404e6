using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Holding;

/// <summary>
/// What stops a board without screws from turning about its middle, found by turning it: its edge against the wall, connectors in their
/// openings, parts on its back against posts, and what stands on it against the baffle and the cover's posts.
/// </summary>
internal static class TurnStop
{
    // Turned so far to either side; what turns farther counts as not stopped, degrees.
    private static readonly ImmutableArray<double> Degrees = [1, 2, 3, 4, 5, 6, 8, 10, 12, 15];

    // What overlaps by less has only touched, mm2.
    private const double Touched = 0.01;

    // A strip through a wall starts so far behind the mouth, mm.
    private const double BehindMouth = 20;

    private sealed record Pair(string By, Region Turns, Region Stays);

    /// <summary>How far the board turns before something stops it, and what; null where nothing does.</summary>
    public static (Angle Turn, string By)? Of(HousingDraft draft, FrontSide front, bool turnsCover, ImmutableArray<BoardStopPlan> stops)
    {
        ImmutableArray<Pair> pairs =
            [.. Pairs(draft, front, turnsCover, stops).Where(pair => !pair.Turns.IsEmpty && !pair.Stays.IsEmpty)];
        return First(pairs, 1) is { } left && First(pairs, -1) is { } right
            ? left.Turn.Degrees >= right.Turn.Degrees ? left : right : null;
    }

    private static (Angle Turn, string By)? First(ImmutableArray<Pair> pairs, int way)
    {
        foreach (double degrees in Degrees)
        {
            var turn = Angle.FromDegrees(way * degrees);
            if (pairs.FirstOrDefault(pair => pair.Turns.Turned(turn).Intersect(pair.Stays).Area > Touched) is { } met)
            {
                return (Angle.FromDegrees(degrees), met.By);
            }
        }

        return null;
    }

    private static IEnumerable<Pair> Pairs(HousingDraft draft, FrontSide front, bool turnsCover, ImmutableArray<BoardStopPlan> stops)
    {
        CircuitBoard board = draft.File.Board;
        if (board.Outline is PolygonOutline)
        {
            yield return new Pair("its outline against the wall", board.Outline.Region, draft.Shell.Walls);
        }

        foreach (PortPlan port in draft.Openings.OfType<PortPlan>())
        {
            Region way = Strips.Along(
                port.Face, port.Faces, port.OpeningWidth, -BehindMouth, Strips.PastRim(draft.Shell.Footprint) + BehindMouth);
            yield return new Pair(
                $"{port.Ref} in its opening", PartEnvelope.OutlineOf(board.Parts.First(part => part.Ref == port.Ref)),
                draft.Shell.Walls.Less(way));
        }

        yield return new Pair("parts on its back against the posts", Region.Union(Hanging(board).Select(part => part.Outline)),
            Region.Union(draft.Bosses.Select(boss => Region.Disc(boss.At, Ring.Peg(boss.Diameter / 2)))));
        Region standing = Region.Union(PartEnvelope.OnTop(board).Where(Rises).Select(part => part.Outline));
        if (!turnsCover && front.Baffle is { } baffle && (baffle.Tooth is not null || front.Diffuser.Field is not null))
        {
            yield return new Pair(
                baffle.Cells ? "its LEDs in their cells" : "its LEDs between the baffle's walls", standing,
                baffle.Walls.And(baffle.Bridges).Less(Region.Union(baffle.Notches.Select(notch => notch.Outline))));
        }

        yield return new Pair(
            "what stands on it between the cover's posts", standing, Region.Union(stops.Select(stop => stop.Outline)));
    }

    private static IEnumerable<PartEnvelope> Hanging(CircuitBoard board) => PartEnvelope.OnBottom(board).Where(Rises);

    // What stands off the board by less than what is left to it to rise could pass under.
    private static bool Rises(PartEnvelope part) => part.To is double to && to > HoldDecision.MostRise;
}
