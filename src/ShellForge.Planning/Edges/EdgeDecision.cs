using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Hands;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Edges;

/// <summary>The rounded edges of a housing; null where one has the bed's chamfer alone.</summary>
/// <param name="Front">The outer edge of the front.</param>
/// <param name="FrontInBore">That of the front in an open bore.</param>
/// <param name="Floor">The outer edge of the floor.</param>
/// <param name="FloorInBore">That of the floor in an open bore.</param>
internal sealed record HousingEdges(EdgePlan? Front, EdgePlan? FrontInBore, EdgePlan? Floor, EdgePlan? FloorInBore)
{
    /// <summary>All in the bed's chamfer.</summary>
    public static HousingEdges Chamfered { get; } = new(null, null, null, null);
}

/// <summary>
/// Decides how round the visible outer edges are: as wished, as far as what lies near each of them allows. Front and floor lie on the bed
/// when they are printed, each has its own neighbours, and so each its own radius.
/// </summary>
internal static class EdgeDecision
{
    // Radius of 'round', mm: seen from across a room, and no more than common walls allow. Typical.
    private const double Moderate = 2.0;

    // Radius of 'soft' at most, mm: beyond it the face on the bed loses more than the edge gains.
    private const double Softest = 6.0;

    // Below this radius, mm, an arc is no more than the chamfer that is there without it.
    private const double Least = 0.8;

    // Radii come in tenths.
    private const double Step = 0.1;

    /// <summary>
    /// By how much a bulge of the wall round a closure screw is wider on either side, mm, so that its edge can be rounded as 'round' is and
    /// as much plastic stays round the sunk head.
    /// </summary>
    /// <param name="given">Board file, lines and layers.</param>
    /// <param name="aroundHead">Plastic round the head without a round edge, mm.</param>
    public static double AtScrews(Given given, double aroundHead)
    {
        (BoardFile file, PrintBasis basis) = given;
        if (Wanted(file) is not double wanted)
        {
            return 0;
        }

        double inset = EdgePlan.Of(Math.Min(wanted, Moderate), file.Print.Printer.OverhangDegrees).Inset;
        return PlanRules.UpToTenth(Math.Max(0, basis.Wall(EdgeLimits.KeptLines) + inset - aroundHead));
    }

    /// <summary>
    /// The floor's edges as far as walls, posts and openings decide them: what looks for a place on the outer floor keeps off them where it
    /// can.
    /// </summary>
    public static HousingEdges BeforeFloor(HousingDraft draft)
    {
        if (Wanted(draft.File) is not double wanted)
        {
            return HousingEdges.Chamfered;
        }

        EdgePlan? Fits(bool bore) => Fitting(draft, wanted, new EdgeLimits(draft, bore).OfTub()).Edge;
        return HousingEdges.Chamfered with { Floor = Fits(bore: false), FloorInBore = HasBore(draft) ? Fits(bore: true) : null };
    }

    /// <summary>All edges, when everything near them has its place.</summary>
    public static Decided<HousingEdges> Decide(HousingDraft draft, CoverSide cover)
    {
        var reasons = new Reasons();
        if (Wanted(draft.File) is not double wanted)
        {
            return reasons.Of(HousingEdges.Chamfered);
        }

        var rim = new EdgeLimits(draft, bore: false);
        List<(string Path, Found Found)> all =
        [
            ("front", Fitting(draft, wanted, rim.OfFront(cover))),
            ("floor", Fitting(draft, wanted, rim.OfTub().Concat(rim.OfFloor(cover)))),
        ];
        if (HasBore(draft))
        {
            var bore = new EdgeLimits(draft, bore: true);
            all.Add(("front-in-bore", Fitting(draft, wanted, bore.OfFront(cover))));
            all.Add(("floor-in-bore", Fitting(draft, wanted, bore.OfTub().Concat(bore.OfFloor(cover)))));
        }

        bool none = all.All(each => each.Found.Edge is null);
        double smallest = all.Min(each => each.Found.Edge?.Radius ?? 0);
        foreach ((string path, Found found) in all)
        {
            Note(draft, path, found, smallest, none, reasons);
        }

        if (!none && draft.File.Housing.Edge.Radius is null)
        {
            NoteKept(draft, [.. all.Where(each => each.Found.Edge is null)], reasons);
        }

        EdgePlan? Of(string path) => all.FirstOrDefault(each => each.Path == path).Found?.Edge;
        return reasons.Of(new HousingEdges(Of("front"), Of("front-in-bore"), Of("floor"), Of("floor-in-bore")));
    }

    private static bool HasBore(HousingDraft draft) => draft.Shell.Round is { HasBore: true };

    // An edge, null for none, and what keeps it from being larger.
    private sealed record Found(EdgePlan? Edge, EdgeLimit Limit);

    private static double? Wanted(BoardFile file) => file.Housing.Edge switch
    {
        { Form: EdgeForm.Chamfer } => null,
        { Radius: double asked } => asked,
        { Form: EdgeForm.Soft } => Softest,
        _ => Moderate,
    };

    private static Found Fitting(HousingDraft draft, double wanted, IEnumerable<EdgeLimit> limits)
    {
        EdgeLimit tightest = limits.MinBy(limit => limit.Radius)!;
        double fits = Math.Floor((tightest.Radius + Layers.Slack) / Step) * Step;
        double radius = Math.Round(Math.Min(wanted, fits), 3);
        return new Found(radius < Least ? null : EdgePlan.Of(radius, draft.File.Print.Printer.OverhangDegrees), tightest);
    }

    // A word asks for what there is room for: only where that is nothing at all has it not been met.
    private static void Note(HousingDraft draft, string path, Found found, double smallest, bool none, Reasons reasons)
    {
        (EdgePlan? edge, EdgeLimit limit) = found;
        BoardFile file = draft.File;
        EdgeWish wish = file.Housing.Edge;
        string from = Reasons.Origin(file, "housing.edge");
        bool front = IsFront(path);
        string part = front ? PartNames.Cover : PartNames.Tub;
        string where = Where(path);
        Point3 at = new(0, 0, front ? draft.Stack.Front : 0);
        if (edge is null)
        {
            reasons.Choice(
                $"edge.{path}", "chamfer", from, $"no arc of {Reasons.Mm(Least)} and more has room: {limit.What} lies too near");
            if (none || wish.Radius is not null)
            {
                reasons.Replace(
                    "edge-without-room", part,
                    $"The edge of the {where} keeps its chamfer: {limit.What} leaves no room for a radius of {Reasons.Mm(Least)} mm.",
                    Math.Max(0, Math.Round(limit.Radius, 2)), Least, "mm", at,
                    Remedy(limit, none ? "say 'edge: chamfer'" : "say 'edge: soft'"));
            }

            return;
        }

        bool cut = edge.Radius < Wanted(file) - Layers.Slack;
        string slant = $"its first {Reasons.Mm(Math.Round(edge.Points[1].Height, 2))} mm on the bed lean by "
            + $"{Reasons.Mm(Math.Round(edge.Lean.Degrees, 1))} degrees, as the printer manages, the arc follows in "
            + $"{edge.Points.Length - 2} facets";
        reasons.Length($"edge.{path}", edge.Radius, from,
            $"{(cut ? $"as large as {limit.What} allows" : wish.Radius is null ? "where there is room" : "as asked")}; {slant}");
        if (cut && wish.Radius is double asked)
        {
            reasons.Replace(
                "edge-cut", part,
                $"The edge of the {where} is rounded to {Reasons.Mm(edge.Radius)} mm instead of {Reasons.Mm(asked)}: {limit.What} lies too "
                    + $"near.",
                edge.Radius, asked, "mm", at,
                Remedy(limit, smallest >= Least ? $"say 'edge: {Reasons.Mm(smallest)}'" : "say 'edge: soft'"));
        }
    }

    // Beside rounded edges one that is not looks like a mistake of the printer's: it is told, once for all of them.
    private static void NoteKept(HousingDraft draft, (string Path, Found Found)[] kept, Reasons reasons)
    {
        if (kept.Length == 0)
        {
            return;
        }

        EdgeLimit limit = kept.MinBy(each => each.Found.Limit.Radius).Found.Limit;
        string where = HandWords.Listed([.. kept.Select(each => $"the {Where(each.Path)}")]);
        bool several = kept.Length > 1;
        bool front = IsFront(kept[0].Path);
        reasons.Note(new PlanRefusal(
            "edge-without-room", front ? PartNames.Cover : PartNames.Tub,
            $"The {(several ? "edges" : "edge")} of {where} {(several ? "keep their chamfers" : "keeps its chamfer")}, the others are "
                + $"rounded: {limit.What} leaves too little room.",
            Math.Max(0, Math.Round(limit.Radius, 2)), Least, "mm", new Point3(0, 0, front ? draft.Stack.Front : 0),
            Remedy(limit, "say 'edge: chamfer' to have all alike")));
    }

    private static bool IsFront(string path) => path.StartsWith("front", StringComparison.Ordinal);

    private static string Where(string path) =>
        (IsFront(path) ? "front" : "floor") + (path.EndsWith("bore", StringComparison.Ordinal) ? " in the bore" : "");

    private static string Remedy(EdgeLimit limit, string say) => limit.Remedy.Length == 0 ? say : $"{say}, or take {limit.Remedy}";
}
