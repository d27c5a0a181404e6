using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Closures;

/// <summary>
/// Decides the key: a rib on the cover's lip goes into a slot in the tub's wall, and a tooth on the baffle into a slot in the cover.
/// Nothing of it reaches over the board, which has to be lowered in past it.
/// </summary>
internal static class KeyDecision
{
    // Wide enough to be strong and seen, not so wide that a bead misses it, mm.
    private const double Width = 4.0;

    // Clear of ports and screws by this, mm.
    private const double Margin = 3.0;

    // Plastic that a blind slot leaves outside it, in lines; with less wall the slot goes through.
    private const int SkinLines = 2;

    // A slot shallower than this keys nothing, mm.
    private const double DepthMinimum = 0.6;

    /// <summary>The key of a housing.</summary>
    public static Decided<KeyPlan> Decide(HousingDraft draft, RimSectors rim, double lipBottom)
    {
        var reasons = new Reasons();
        BoardFile file = draft.File;
        string boardKey = BoardKey(draft);
        reasons.Choice("key.board", boardKey, Reasons.Rule, "board, baffle and cover go together one way only");
        double gap = file.Print.Printer.NormalFit;
        Angle preferred = FirstPixel(file) ?? file.Up;
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

        return reasons.Of(new KeyPlan(at, Width, depth, gap, lipBottom, draft.Stack.PartingLine, boardKey));
    }

    /// <summary>Direction of the first LED that is not on the axis; null when there is none.</summary>
    private static Angle? FirstPixel(BoardFile file)
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

    private static string BoardKey(HousingDraft draft)
    {
        Point2[] holes = [.. draft.File.Board.Holes.Where(hole => hole.For == HolePurpose.Mount).Select(hole => hole.At)];
        return !draft.Ports.IsEmpty ? "by its connector in the port"
            : draft.File.Board.Outline is PolygonOutline ? "by its outline"
            : holes.Length > 0 && !AnyTurnMatches(holes) ? "by its holes, which fit one way only"
            : "by the mark on the rim: the key slot lies at the first LED";
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
