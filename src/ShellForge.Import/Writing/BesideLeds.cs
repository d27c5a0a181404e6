using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Import.Files;
using ShellForge.Import.Merging;
using ShellForge.Import.Patterns;

namespace ShellForge.Import.Writing;

/// <summary>Parts of which one stands beside each LED of a pattern, always at the same place as seen from the LED.</summary>
/// <param name="Entry">As the board file says it.</param>
/// <param name="Members">The parts, in the order of the LEDs.</param>
/// <param name="Counted">Whether their designators count on.</param>
internal sealed record BesideLeds(string Entry, ImmutableArray<int> Members, bool Counted)
{
    // What the board file takes.
    private const int MostKinds = 8;

    // Beside an LED are the parts that are nearest to it: this many are tried.
    private const int MostTried = 8;

    // It may stand between two LEDs, a little nearer to the next: not by another pattern.
    private const double Between = 1.5;

    private const int MostLeds = 1000;
    private const int MostParts = 4000;

    /// <summary>All kinds of them.</summary>
    /// <param name="board">The board.</param>
    /// <param name="pattern">The LEDs.</param>
    /// <param name="free">Parts that no other line tells, and that need nothing said of them alone.</param>
    public static List<BesideLeds> Of(ImportedBoard board, PlacePattern pattern, IEnumerable<int> free)
    {
        var found = new List<BesideLeds>();
        if (pattern.Members.Length > MostLeds)
        {
            return found;
        }

        var groups = free.Take(MostParts).GroupBy(i => (PartBodyText.Of(board.Parts[i]), board.Parts[i].Bottom))
            .Where(g => g.Count() >= pattern.Members.Length);
        foreach (var group in groups)
        {
            List<int> left = [.. group.OrderBy(i => ReferenceOrder.Key(board.Parts[i].Reference))];
            while (found.Count < MostKinds && left.Count >= pattern.Members.Length && Nearest(board, pattern, left) is { } beside)
            {
                found.Add(beside);
                left.RemoveAll(i => beside.Members.Contains(i));
            }
        }

        return [.. found.OrderBy(each => ReferenceOrder.Key(board.Parts[each.Members[0]].Reference))];
    }

    // Those of them that count on come first, then what is nearest.
    private static BesideLeds? Nearest(ImportedBoard board, PlacePattern pattern, List<int> parts)
    {
        Point2 first = board.Parts[pattern.Members[0]].BodyCentre;
        double reach = pattern.Members.Skip(1).Min(m => Point2.Distance(first, board.Parts[m].BodyCentre));
        BesideLeds? uncounted = null;
        foreach (int candidate in parts.Where(i => Point2.Distance(board.Parts[i].BodyCentre, first) < reach)
            .OrderBy(i => Point2.Distance(board.Parts[i].BodyCentre, first)).Take(MostTried))
        {
            BesideLeds? beside = Like(board, pattern, parts, candidate);
            if (beside is { Counted: true })
            {
                return beside;
            }

            uncounted ??= beside;
        }

        return uncounted;
    }

    private static BesideLeds? Like(ImportedBoard board, PlacePattern pattern, List<int> parts, int candidate)
    {
        ImmutableArray<int> taken = pattern.Taken;
        double[] frames = [.. taken.Select(place => pattern.Turn.Follows ? pattern.DirectionDegrees(place) : 0)];
        Point2 Seen(int led, int part) =>
            (board.Parts[part].BodyCentre - pattern.At(taken[led])).Turned(Angle.FromDegrees(-frames[led]));
        Point2 wanted = Seen(0, candidate);
        var members = new int[taken.Length];
        for (int led = 0; led < members.Length; led++)
        {
            int nearest = parts.MinBy(part => Point2.Distance(Seen(led, part), wanted));
            if (Point2.Distance(Seen(led, nearest), wanted) > 2 * EcadTolerances.PatternPlace)
            {
                return null;
            }

            members[led] = nearest;
        }

        Point2[] seen = [.. members.Select((part, led) => Seen(led, part))];
        return members.Distinct().Count() == members.Length && Common(seen) is { } at
            && members.Zip(seen).All(m => IsBeside(board, board.Parts[m.First].BodyCentre, m.Second.Length))
            && PatternTurn.Of([.. members.Select(part => (double?)board.Parts[part].Rotation)], frames) is { Follows: true } turn
            ? Written(board, members, at, turn.Degrees) : null;
    }

    private static bool IsBeside(ImportedBoard board, Point2 at, double far) =>
        !board.Parts.Any(p => p is { Placed: true, Skip: null, Match.IsLed: true } && Between * Point2.Distance(p.BodyCentre, at) < far);

    // The roundest offset that explains all.
    private static Point2? Common(Point2[] seen)
    {
        var middle = new Point2((seen.Min(p => p.X) + seen.Max(p => p.X)) / 2, (seen.Min(p => p.Y) + seen.Max(p => p.Y)) / 2);
        double Farthest(Point2 at) => seen.Max(p => Point2.Distance(p, at));
        double room = EcadTolerances.RoomToRound(Farthest(middle), 1);
        return RoundNumber.Of(middle.X, x => Farthest(middle with { X = x }) <= room) is { } across
            && RoundNumber.Of(middle.Y, y => Farthest(new Point2(across, y)) <= room) is { } up ? new Point2(across, up) : null;
    }

    private static BesideLeds Written(ImportedBoard board, int[] members, Point2 at, double turn)
    {
        ImportedPart first = board.Parts[members[0]];
        bool counted = ReferenceOrder.CountedRuns([.. members.Select(i => board.Parts[i].Reference)]).Count == 1;
        string name = counted ? $"ref: {YamlText.Scalar(first.Reference)}, " : "";
        string side = first.Bottom ? ", side: bottom" : "";
        return new BesideLeds(
            $"{{{name}{PartBodyText.Of(first)}, at: [{Numeral.Text(at.X, 4)}, {Numeral.Text(at.Y, 4)}]{PatternText.Rotation(turn)}{side}}}",
            [.. members], counted);
    }
}
