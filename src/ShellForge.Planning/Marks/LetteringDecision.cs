using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Mounts;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Marks;

/// <summary>
/// Decides lettering on the floor and the revision mark inside the parts. On the outer floor text runs mirrored in plan, so that whoever
/// turns the housing over about its upright axis reads it right; it never goes on the diffuser.
/// </summary>
internal static class LetteringDecision
{
    // Source: trade practice for raised and engraved text: stroke 0.8 (0.6 at least), height 5 (2 at least), depth 0.4 to 0.8.
    private const double Height = 5.0;
    private const double HeightLeast = 2.5;
    private const double MarkHeight = 4.0;
    private const double StrokeShare = 0.16;
    private const double StrokeLeast = 0.6;
    private const double StrokeMost = 1.2;
    private const double Depth = 0.6;
    private const double MarkDepth = 0.4;
    private const double Shrink = 0.85;
    private const double Margin = 1.0;

    /// <summary>The label wanted; none is a valid answer.</summary>
    public static Decided<ImmutableArray<LetteringPlan>> Label(HousingDraft draft, Region taken)
    {
        var reasons = new Reasons();
        if (draft.File.Housing.Label is not LabelSpec label || string.IsNullOrWhiteSpace(label.Text))
        {
            return reasons.Of<ImmutableArray<LetteringPlan>>([]);
        }

        bool outside = label.Where == LabelPlace.FloorOutside;
        double depth = draft.Basis.UpDistance(Depth);
        Region room = (outside
            ? FloorRoom.Outside(draft, Margin + draft.Shell.BedChamfer)
            : FloorRoom.Inside(draft, draft.Stack.FloorTop + depth)).Less(taken);
        double wanted = label.Height ?? Height;
        Region strokes = Placed(draft, room, label.Text, wanted, outside, out double height);
        string from = Reasons.Origin(draft.File, "housing.label");
        if (strokes.IsEmpty)
        {
            reasons.Replace(
                "label-without-place", "label", $"\"{label.Text}\" has no place on the floor, not even {Reasons.Mm(HeightLeast)} high.",
                0, HeightLeast, "mm", new Point3(0, 0, 0), "a shorter text, or the other side of the floor");
            return reasons.Of<ImmutableArray<LetteringPlan>>([]);
        }

        reasons.Length("label.height", Math.Round(height, 2), from,
            height < wanted - Layers.Slack ? $"the floor has no room for {Reasons.Mm(wanted)}"
            : outside ? "mirrored in plan: right for the reader from below" : "read from above");
        return reasons.Of(ImmutableArray.Create(outside
            ? new LetteringPlan(strokes, PartNames.Tub, 0, depth, Raised: false)
            : new LetteringPlan(strokes, PartNames.Tub, draft.Stack.FloorTop, draft.Stack.FloorTop + depth, Raised: true)));
    }

    /// <summary>The revision mark inside tub and cover.</summary>
    public static Decided<ImmutableArray<LetteringPlan>> Marks(HousingDraft draft, CoverPlan cover, Region takenOnFloor)
    {
        var reasons = new Reasons();
        string mark = draft.File.Revision;
        if (string.IsNullOrWhiteSpace(mark))
        {
            return reasons.Of<ImmutableArray<LetteringPlan>>([]);
        }

        var marks = ImmutableArray.CreateBuilder<LetteringPlan>();
        double floor = draft.Stack.FloorTop;
        Region onFloor = Placed(draft, FloorRoom.Inside(draft, floor).Less(takenOnFloor), mark, MarkHeight, mirrored: false, out _);
        if (!onFloor.IsEmpty)
        {
            marks.Add(new LetteringPlan(onFloor, PartNames.Tub, floor, floor + MarkDepth, Raised: true));
        }

        double bezel = draft.Stack.Front - cover.BezelThickness;
        Region free = cover.Cavity.Less(cover.Window).Less(cover.Seat).Less(cover.ToothSlot)
            .Less(draft.Front.Diffuser.Outline).Less(draft.Front.Diffuser.Lap?.Outline ?? Region.Empty);
        Region inCover = Placed(draft, free.Offset(-StrokeLeast), mark, MarkHeight, mirrored: true, out _);
        if (!inCover.IsEmpty)
        {
            marks.Add(new LetteringPlan(inCover, PartNames.Cover, bezel, bezel + MarkDepth, Raised: false));
        }

        reasons.Choice("mark", mark, Reasons.Rule,
            onFloor.IsEmpty ? "no room on the tub's floor"
            : inCover.IsEmpty ? "inside the tub; the cover's bezel has no room for it"
            : "inside tub and cover; baffle and diffuser are too thin for letters");
        return reasons.Of(marks.ToImmutable());
    }

    // The text at the largest height that fits, lowest in use first; empty when none does.
    private static Region Placed(HousingDraft draft, Region room, string text, double wanted, bool mirrored, out double height)
    {
        Angle down = draft.File.Up + Angle.FromDegrees(180);
        Angle along = draft.File.Up - Angle.FromDegrees(90);
        for (height = wanted; height >= Math.Min(wanted, HeightLeast) - Layers.Slack; height *= Shrink)
        {
            double stroke = Math.Clamp(StrokeShare * height, StrokeLeast, StrokeMost);
            double unit = (height - stroke) / StrokeFont.CapHeight;
            ImmutableArray<ImmutableArray<Point2>> strokes = StrokeFont.Strokes(text, out double units);
            double width = (units * unit) + stroke;
            double tall = height + (StrokeFont.Descent * unit);
            foreach (Point2 place in FloorPlaces.About(room, down, tall / 2, at => PartEnvelope.Rectangle(at, width + 1, tall + 1, along)))
            {
                Point2 start = new(-units * unit / 2, -((StrokeFont.CapHeight - StrokeFont.Descent) * unit / 2));
                Region drawn = OutlineOffsets.WithoutSlivers(Region.Union(strokes.SelectMany(corners => Drawn(corners, unit, start, stroke))));
                return (mirrored ? drawn.MirroredX() : drawn).Turned(along).Moved(place);
            }
        }

        return Region.Empty;
    }

    private static IEnumerable<Region> Drawn(ImmutableArray<Point2> corners, double unit, Point2 start, double stroke)
    {
        for (int i = 0; i < Math.Max(1, corners.Length - 1); i++)
        {
            Point2 from = start + (unit * corners[i]);
            Point2 to = start + (unit * corners[Math.Min(i + 1, corners.Length - 1)]);
            yield return Region.Slot(Lattice.Snap(from), Lattice.Snap(to), stroke);
        }
    }
}
