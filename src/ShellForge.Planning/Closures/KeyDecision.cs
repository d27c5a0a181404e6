using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Closures;

/// <summary>
/// Decides the key: a rib on the cover's lip goes into a slot in the tub's wall, unless the closure keys the cover itself. Nothing of it
/// reaches over the board, which has to be lowered in past it.
/// </summary>
internal static class KeyDecision
{
    // Wide enough to be strong and seen, not so wide that a bead misses it, mm.
    private const double Width = 4.0;

    // Clear of ports and screws by this, mm.
    private const double Margin = 3.0;

    // Plastic that a blind slot leaves outside it, in lines; with less wall the slot goes through.
    private const int SkinLines = 2;

    // A mark that lies so near to a direction lies at it, degrees.
    private const double AtLed = 1;

    private const string OneWayOnly = "board, baffle and cover go together one way only";

    // A slot shallower than this keys nothing, mm.
    private const double DepthMinimum = 0.6;

    /// <summary>The key of a housing.</summary>
    public static Decided<KeyPlan> Decide(HousingDraft draft, ClosureForm closure, RimSectors rim, double lipBottom)
    {
        var reasons = new Reasons();
        BoardFile file = draft.File;
        Angle preferred = FirstPixel(file) ?? file.Up;
        if (closure.KeyAt(draft) is Angle own)
        {
            BoardKey byLug = KeyOfBoard(draft, "the slot for the odd lug", own, preferred);
            reasons.Choice("key.at", $"{Reasons.Mm(Math.Round(own.Normalized.Degrees, 1))} degrees", Reasons.Rule,
                "where the closure's own key goes in");
            reasons.Choice("key.board", byLug.Words, Reasons.Rule, OneWayOnly);
            return reasons.Of(new KeyPlan(own, draft.Stack.PartingLine, null, byLug));
        }

        double gap = file.Print.Printer.SlotFit;
        Angle? free = rim.NearestFree(preferred, Width + (2 * gap), Margin) ?? rim.NearestFree(preferred, Width + (2 * gap), 0);
        double blind = draft.Shell.Wall - draft.Basis.Wall(SkinLines);
        bool isBlind = blind >= DepthMinimum - Layers.Slack;
        double depth = isBlind ? blind : draft.Shell.Wall;
        reasons.Length(
            "key.depth", depth, Reasons.Rule,
            isBlind ? "slot in the wall's inner face; two lines stay outside it" : "slot through the wall: too thin for a blind one");
        Angle at = free ?? preferred;
        reasons.Choice(
            "key.at", $"{Reasons.Mm(Math.Round(at.Normalized.Degrees, 1))} degrees", Reasons.Rule,
            "at the first LED, or as near as ports and screws allow: it also marks how the board lies");
        if (free is null)
        {
            Point2 place = Point2.Polar(rim.Radius, at);
            reasons.Refuse(
                "key-without-place", "key", "Ports and screws take the whole rim: the key overlaps one of them.",
                0, Width, "mm", new Point3(place.X, place.Y, draft.Stack.PartingLine), "move a connector, or use fewer closure screws");
        }

        BoardKey board = KeyOfBoard(draft, "the key slot", at, preferred);
        reasons.Choice("key.board", board.Words, Reasons.Rule, OneWayOnly);
        return reasons.Of(new KeyPlan(at, draft.Stack.PartingLine, new KeyRibPlan(Width, depth, gap, lipBottom), board));
    }

    /// <summary>Direction of the first LED that is not on the axis; null when there is none.</summary>
    public static Angle? FirstPixel(BoardFile file)
    {
        foreach (Point2 at in file.Board.PixelCircles.SelectMany(circle => circle.Pixels).Select(pixel => pixel.At))
        {
            if (at.Length > file.Board.Thickness)
            {
                return Angle.Of(at);
            }
        }

        return null;
    }

    private static BoardKey KeyOfBoard(HousingDraft draft, string mark, Angle at, Angle preferred)
    {
        Point2[] holes = [.. draft.File.Board.Holes.Where(hole => hole.For == HolePurpose.Mount).Select(hole => hole.At)];
        return draft.Openings.Any(opening => opening.Seat(draft.File.Up) is not null) ? BoardKey.Connector
            : draft.File.Board.Outline is PolygonOutline ? BoardKey.Outline
            : holes.Length > 0 && !AnyTurnMatches(holes) ? BoardKey.Holes
            : BoardKey.Mark(mark, Angle.Between(at, preferred).Degrees < AtLed);
    }

    // Whether some turn other than a full one brings every hole onto a hole, to a screw's play.
    private static bool AnyTurnMatches(Point2[] holes)
    {
        const double play = 0.5;
        Point2 first = holes.MaxBy(hole => hole.Length);
        foreach (Point2 other in holes.Where(hole => hole != first && Math.Abs(hole.Length - first.Length) < play))
        {
            Angle turn = Angle.Of(other) - Angle.Of(first);
            if (holes.All(hole => holes.Any(target => Point2.Distance(hole.Turned(turn), target) < play)))
            {
                return true;
            }
        }

        return holes.Length == 1;
    }
}
