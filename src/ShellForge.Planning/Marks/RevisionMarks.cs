using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Floors;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Marks;

/// <summary>
/// Decides the mark of the revision inside each printed part that has room for it: raised on the tub's floor, cut into the cover behind its
/// bezel, into a cheek of the stand. A clamp ring is narrower than letters, a baffle's walls are thinner, and in a diffuser they would show
/// in its light.
/// </summary>
internal static class RevisionMarks
{
    // Source: trade practice for raised and engraved text: stroke 0.8 (0.6 at least), height 5 (2 at least), depth 0.4 to 0.8.
    private const double Height = 4.0;
    private const double Depth = 0.4;

    // Letters in an upright wall are cut no less deep, and their roofs lean less than the printer manages, mm and degrees.
    private const double LeastDepth = 0.3;
    private const double BelowOverhangDegrees = 3;

    // Lines of a wall that stay behind letters cut into its side.
    private const int LinesBehind = 2;

    // From letters to an edge of the face that carries them, mm.
    private const double Margin = 0.8;

    // Places on a face are tried in steps of this length, mm.
    private const double Step = 1.0;

    /// <summary>The marks.</summary>
    /// <param name="draft">The draft.</param>
    /// <param name="front">Cover, diffuser and baffle.</param>
    /// <param name="holder">What holds the board's rim; null for nothing.</param>
    /// <param name="mount">The mount; null for none.</param>
    /// <param name="takenOnFloor">What the floor is taken by.</param>
    public static Decided<ImmutableArray<LetteringPlan>> Decide(
        HousingDraft draft, FrontSide front, HolderPlan? holder, MountPlan? mount, Region takenOnFloor)
    {
        var reasons = new Reasons();
        string mark = draft.File.Revision;
        if (string.IsNullOrWhiteSpace(mark))
        {
            return reasons.Of<ImmutableArray<LetteringPlan>>([]);
        }

        double height = Math.Max(Height, PrintedLettering.LeastHeight(draft.Basis));
        var wanted = new List<(string Part, LetteringPlan[] Mark)>
        {
            (PartNames.Tub, OnFloor(draft, mark, height, takenOnFloor)),
            (PartNames.Cover, BehindBezel(draft, front.Cover, mark, height)),
        };
        if (mount is StandMountPlan stand)
        {
            wanted.Add((PartNames.Stand, InCheek(draft, stand, mark, height)));
        }

        if (wanted.All(each => each.Mark.Length == 0))
        {
            reasons.Replace(
                "mark-without-place", "revision",
                $"the mark \"{mark}\" has no place inside {Listed(wanted.Select(each => each.Part), "or")}: it is left out",
                0, height, "mm", new Point3(0, 0, draft.Stack.FloorTop), "shorten `revision:`");
        }

        string[] marked = [.. wanted.Where(each => each.Mark.Length > 0).Select(each => each.Part)];
        string[] without = [.. wanted.Where(each => each.Mark.Length == 0).Select(each => each.Part)];
        string[] never =
        [
            .. holder is ClampPlan ? ["a clamp ring is too narrow for it"] : Array.Empty<string>(),
            .. front.Baffle is null ? Array.Empty<string>() : ["a baffle's walls are too thin for it"],
            .. front.Diffuser.Fit == DiffuserFit.DropIn ? ["in a diffuser it would show"] : Array.Empty<string>(),
        ];
        reasons.Choice("mark", mark, Reasons.Rule, string.Join("; ",
        [
            .. marked.Length > 0 ? [$"inside {Listed(marked, "and")}"] : Array.Empty<string>(),
            .. without.Length == 0 ? Array.Empty<string>()
                : [$"{Listed(without, "and")} {(without.Length == 1 ? "has" : "have")} no room for it"],
            .. never,
        ]));
        return reasons.Of<ImmutableArray<LetteringPlan>>([.. wanted.SelectMany(each => each.Mark)]);
    }

    private static LetteringPlan[] OnFloor(HousingDraft draft, string mark, double height, Region taken)
    {
        double floor = draft.Stack.FloorTop;
        Region strokes = LetteringDecision.Placed(draft, FloorRoom.Inside(draft, floor).Less(taken), mark, height, mirrored: false, out _);
        return strokes.IsEmpty ? []
            : [new LetteringPlan(strokes, PartNames.Tub, floor, floor + draft.Basis.UpDistance(Depth), Raised: true) { IsMark = true }];
    }

    private static LetteringPlan[] BehindBezel(HousingDraft draft, CoverPlan cover, string mark, double height)
    {
        double depth = draft.Basis.UpDistance(Depth);
        if (!LeavesLayers(draft, cover.BezelThickness - depth))
        {
            return [];
        }

        double bezel = draft.Stack.Front - cover.BezelThickness;
        Region free = cover.Cavity.Less(cover.Window).Less(cover.Seat).Less(cover.ToothSlot)
            .Less(draft.Front.Diffuser.Outline).Less(draft.Front.Diffuser.Lap?.Outline ?? Region.Empty);
        Region strokes =
            LetteringDecision.Placed(draft, free.Offset(-PrintedLettering.StrokeLeast), mark, height, mirrored: true, out _);
        return strokes.IsEmpty ? []
            : [new LetteringPlan(strokes, PartNames.Cover, bezel, bezel + depth, Raised: false) { IsMark = true }];
    }

    // On the inner side of the right cheek, which nobody sees; level, or upright where the cheek is narrow. Cut in steps, each a layer
    // farther in from the edges of the strokes, so that their roofs lean no flatter than the printer manages.
    private static LetteringPlan[] InCheek(HousingDraft draft, StandMountPlan stand, string mark, double height)
    {
        Angle lean = Angle.FromDegrees(draft.File.Print.Printer.OverhangDegrees - BelowOverhangDegrees);
        double step = Math.Min(Depth, draft.Basis.Layer * lean.Sin / lean.Cos);
        int steps = Math.Min(
            (int)Math.Round(Depth / step), (int)Math.Floor((stand.Wall - draft.Basis.Wall(LinesBehind) + Layers.Slack) / step));
        if (steps * step < LeastDepth)
        {
            return [];
        }

        // Above the band, whose inner side is no face of the cheek alone.
        Box2 bounds = stand.RightSide.Bounds;
        Region room = stand.RightSide.Less(Region.Rectangle(
            new Point2(bounds.Min.X - 1, bounds.Min.Y - 1), new Point2(bounds.Max.X + 1, Math.Max(stand.BandHeight, bounds.Min.Y))))
            .Offset(-Margin);
        Region strokes = InRoom(draft, room, mark, height);
        double inner = stand.HalfWidth - stand.Wall;
        return
        [
            .. Enumerable.Range(0, steps).Select(i => strokes.Offset(-i * draft.Basis.Layer)).TakeWhile(each => !each.IsEmpty)
                .Select((each, i) => new LetteringPlan(
                    each, PartNames.Stand, Lattice.Snap(inner + (i * step)), Lattice.Snap(inner + ((i + 1) * step)), Raised: false)
                {
                    IsMark = true,
                    FromSide = stand.ToHousing,
                }),
        ];
    }

    // Seen from between the cheeks, y runs to the left.
    private static Region InRoom(HousingDraft draft, Region room, string mark, double height)
    {
        Box2 bounds = room.IsEmpty ? new Box2(Point2.Origin, Point2.Origin) : room.Bounds;
        foreach (double tried in Heights(draft, height))
        {
            (double width, double tall) = PrintedLettering.Size(mark, tried, draft.Basis);
            foreach (Angle along in new[] { Angle.Zero, Angle.FromDegrees(90) })
            {
                for (double z = bounds.Min.Y; z <= bounds.Max.Y; z += Step)
                {
                    for (double y = bounds.Min.X; y <= bounds.Max.X; y += Step)
                    {
                        Point2 place = Lattice.Snap(new Point2(y, z));
                        if (FloorPlaces.Fits(room, place, middle => PartEnvelope.Rectangle(middle, width, tall, along)))
                        {
                            return PrintedLettering.Of(mark, tried, draft.Basis).Turned(along).MirroredX().Moved(place);
                        }
                    }
                }
            }
        }

        return Region.Empty;
    }

    private static bool LeavesLayers(HousingDraft draft, double thickness) =>
        thickness >= (LetteringDecision.LayersOver * draft.Basis.Layer) - Layers.Slack;

    // From the height wanted down to the least that prints.
    private static IEnumerable<double> Heights(HousingDraft draft, double wanted)
    {
        const double shrink = 0.9;
        double least = PrintedLettering.LeastHeight(draft.Basis);
        for (double height = wanted; height > least + Layers.Slack; height *= shrink)
        {
            yield return height;
        }

        yield return least;
    }

    private static string Listed(IEnumerable<string> words, string last)
    {
        string[] all = [.. words.Select(word => $"the {word}")];
        return all.Length == 1 ? all[0] : $"{string.Join(", ", all[..^1])} {last} {all[^1]}";
    }
}
