using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Floors;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Marks;

/// <summary>
/// Decides lettering on the floor. On the outer floor text runs mirrored in plan, so that whoever
/// turns the housing over about its upright axis reads it right; it never goes on the diffuser.
/// </summary>
internal static class LetteringDecision
{
    // Source: trade practice for raised and engraved text: stroke 0.8 (0.6 at least), height 5 (2 at least), depth 0.4 to 0.8.
    private const double Height = 5.0;
    private const double Depth = 0.6;
    private const double Shrink = 0.95;

    /// <summary>Floor left over letters cut from below, in layers.</summary>
    public const int LayersOver = 4;

    private const double Margin = 1.0;

    // Heights come in tenths.
    private const double Step = 0.1;

    /// <summary>The label wanted; none is a valid answer.</summary>
    public static Decided<ImmutableArray<LetteringPlan>> Label(HousingDraft draft, Region taken)
    {
        // Letters that have no room beside a round edge are worth more than the edge.
        Decided<ImmutableArray<LetteringPlan>> label = LabelBeside(draft, taken);
        return label.Value.IsEmpty && draft.Shell.HasFloorEdge ? LabelBeside(draft.WithoutFloorEdge(), taken) : label;
    }

    private static Decided<ImmutableArray<LetteringPlan>> LabelBeside(HousingDraft draft, Region taken)
    {
        var reasons = new Reasons();
        if (draft.File.Housing.Label is not LabelSpec label || string.IsNullOrWhiteSpace(label.Text))
        {
            return reasons.Of<ImmutableArray<LetteringPlan>>([]);
        }

        bool outside = label.Where == LabelPlace.FloorOutside;
        double depth = draft.Basis.UpDistance(Depth);
        if (outside && draft.Stack.FloorTop - depth < (LayersOver * draft.Basis.Layer) - Layers.Slack)
        {
            double floorLeast = draft.Basis.Up(depth + (LayersOver * draft.Basis.Layer));
            reasons.Replace(
                "label-without-place", "label", $"letters {Reasons.Mm(depth)} deep would cut through the floor: the label is left out",
                draft.Stack.FloorTop, floorLeast, "mm", new Point3(0, 0, 0),
                $"say `floor: {Reasons.Mm(floorLeast)}`, or `where: floor-inside`");
            return reasons.Of<ImmutableArray<LetteringPlan>>([]);
        }

        Region room = (outside
            ? FloorRoom.Outside(draft, Margin + draft.Shell.BedChamfer)
            : FloorRoom.Inside(draft, draft.Stack.FloorTop + depth)).Less(taken);
        double least = PrintedLettering.LeastHeight(draft.Basis);
        double wanted = label.Height ?? Math.Max(Height, least);
        Region strokes = Placed(draft, room, label.Text, Math.Max(wanted, least), outside, out double height);
        if (strokes.IsEmpty)
        {
            reasons.Replace(
                "label-without-place", "label",
                $"\"{label.Text}\" has no place on the floor, not even {Reasons.Mm(least)} high: it is left out",
                0, least, "mm", new Point3(0, 0, 0), "shorten the label, or put it on the other side of the floor (`where:`)");
            return reasons.Of<ImmutableArray<LetteringPlan>>([]);
        }

        TellHeight(reasons, label, wanted, height,
            new Point3(strokes.Bounds.Centre.X, strokes.Bounds.Centre.Y, outside ? 0 : draft.Stack.FloorTop));
        reasons.Length("label.height", height, Reasons.Origin(draft.File, "housing.label"),
            height < wanted - Layers.Slack ? $"the floor has no room for {Reasons.Mm(wanted)}"
            : height > wanted + Layers.Slack ? "lower letters close up while printing"
            : outside ? "mirrored in plan: right for the reader from below" : "read from above");
        return reasons.Of(ImmutableArray.Create(outside
            ? new LetteringPlan(strokes, PartNames.Tub, 0, depth, Raised: false)
            : new LetteringPlan(strokes, PartNames.Tub, draft.Stack.FloorTop, draft.Stack.FloorTop + depth, Raised: true)));
    }

    // A label of another height than was asked for is never passed over.
    private static void TellHeight(Reasons reasons, LabelSpec label, double wanted, double height, Point3 at)
    {
        if (height < wanted - Layers.Slack)
        {
            reasons.Replace(
                "label-shrinks", "label", $"\"{label.Text}\" has room at {Reasons.Mm(height)} high only, not {Reasons.Mm(wanted)}",
                height, wanted, "mm", at, $"shorten the label, or say `height: {Reasons.Mm(height)}`");
        }
        else if (height > wanted + Layers.Slack)
        {
            reasons.Replace(
                "label-too-small", "label",
                $"letters {Reasons.Mm(wanted)} high close up while printing; \"{label.Text}\" is made {Reasons.Mm(height)} high",
                wanted, height, "mm", at, $"say `height: {Reasons.Mm(height)}`, or print with a finer nozzle");
        }
    }

    // Longer than this, mm, no text fits on any floor, and its ends would leave the space that parts are made in.
    private const double LongestText = 200;

    /// <summary>The text in plan at the largest height that fits, in tenths, lowest in use first; empty when none does.</summary>
    public static Region Placed(HousingDraft draft, Region room, string text, double wanted, bool mirrored, out double height)
    {
        Angle down = draft.File.Up + Angle.FromDegrees(180);
        Angle along = draft.File.Up - Angle.FromDegrees(90);
        double least = Math.Min(wanted, PrintedLettering.LeastHeight(draft.Basis));
        double roomAcross = room.IsEmpty ? 0 : Point2.Distance(room.Bounds.Min, room.Bounds.Max);
        for (height = wanted; height >= least
            - Layers.Slack; height = Math.Min(Math.Round(Shrink * height, 1), Math.Round(height - Step, 1)))
        {
            (double width, double tall) = PrintedLettering.Size(text, height, draft.Basis);
            if (width + 1 > roomAcross || width + tall > LongestText)
            {
                continue;
            }

            foreach (Point2 place in FloorPlaces.About(room, down, tall / 2, at => PartEnvelope.Rectangle(at, width + 1, tall + 1, along)))
            {
                Region drawn = PrintedLettering.Of(text, height, draft.Basis);
                return (mirrored ? drawn.MirroredX() : drawn).Turned(along).Moved(place);
            }
        }

        return Region.Empty;
    }
}
