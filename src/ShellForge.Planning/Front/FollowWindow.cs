using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Front;

/// <summary>
/// What the LEDs light, wherever they lie: half a pitch round each one and round the way to its neighbours, made printable and kept inside
/// the cover's walls. It may be an arc, a rounded polygon, a spiral, or several windows; or the outline, disc or ring that is asked for.
/// </summary>
internal sealed class FollowWindow : LitWindow
{
    // Bezel between two windows narrower than this is left out, mm; so is a window narrower than that.
    private const double LeastWeb = 3;
    private const double LeastWidth = 1.5;

    // An island of bezel through which no disc of this radius fits is left out, mm: it could not be printed cleanly.
    private const double SmallestIslandRadius = 3;

    // Bars that hold an island: how many at the most, how wide in lines.
    private const int BarCount = 4;
    private const int BarLines = 3;

    // No wall lies farther from the origin than this, mm: light beyond is cut off in any case.
    private const double FarthestOut = 240;

    // Sectors of a ring overlap by this much of their own sweep, so that no hair stays between two.
    private const double SectorOverlap = 0.01;

    // A window that loses more than this share to the walls has been narrowed.
    private const double Narrowed = 0.01;

    private readonly BoardFile _file;
    private readonly BaffleSection _section;
    private readonly Region _outline;
    private readonly bool _narrowed;

    private FollowWindow(BoardFile file, BaffleSection section, LedFieldPlan field, Region outline, bool narrowed)
    {
        (_file, _section, _outline, _narrowed) = (file, section, outline, narrowed);
        Field = field;
    }

    /// <inheritdoc />
    public override bool HasRoom => !_outline.IsEmpty;

    /// <inheritdoc />
    public override LedFieldPlan Field { get; }

    /// <summary>The window for a board.</summary>
    /// <param name="file">The board file.</param>
    /// <param name="room">What walls and lip leave of the cover.</param>
    /// <param name="baffle">The baffle's walls.</param>
    /// <param name="round">The disc or ring that is asked for; null: the file's outline, or what the LEDs light.</param>
    public static FollowWindow For(BoardFile file, CoverRoom room, BaffleSection baffle, Region? round)
    {
        LedFieldPlan field = LedField.Of(file.Board);
        Region within = room.Cavity.Offset(-baffle.SeatGap - baffle.Wall);
        Region? given = file.Housing.Light.Shape == WindowShape.Outline ? file.Housing.Light.WindowOutline : round;
        bool asked = given is not null;
        Region closed = given ?? Lit(file, field).Offset(LeastWeb / 2).Offset(-LeastWeb / 2);
        Region inside = closed.Intersect(within);
        Region open = inside.Offset(-LeastWidth / 2).Offset(LeastWidth / 2).Intersect(within);
        Region[] parts = [.. open.Parts.Where(part => asked || field.Leds.Any(led => part.Contains(led.At)))];
        Region whole = OutlineOffsets.WithoutSlivers(Region.Union(parts.Select(part => WithIslands(part, within))));
        return new FollowWindow(file, baffle, field, whole, closed.Less(within).Area > Narrowed * closed.Area);
    }

    /// <inheritdoc />
    public override Region Outline(ShellPlan shell, CoverRoom room) => _outline;

    /// <inheritdoc />
    /// <remarks>One piece behind all windows: two would be put in wrongly, or rattle.</remarks>
    public override Region Sheet(ShellPlan shell, CoverRoom room, double ledge)
    {
        Region behind = _outline.Offset(ledge);
        return (behind.Parts.Length > 1 ? behind.Hull() : behind).Intersect(room.Cavity.Offset(-_section.SeatGap))
            .Parts.MaxBy(part => part.Area) ?? _outline;
    }

    /// <inheritdoc />
    /// <remarks>Islands before a diffuser of its own hang on bars that keep away from the LEDs; a fused one holds them by itself.</remarks>
    public override Region Bars(PrintBasis basis, DiffuserFit fit)
    {
        if (fit is DiffuserFit.OneWithCover or DiffuserFit.PrintedIn)
        {
            return Region.Empty;
        }

        Region leds = Region.Union(Field.Leds.Select(led => Region.Disc(led.At, Ring.Peg(LitBand.LeastWidth(_file.Board) / 2))));
        Region around = _outline.Bounds.IsEmpty ? Region.Empty
            : Region.Rectangle(_outline.Bounds.Min - new Point2(1, 1), _outline.Bounds.Max + new Point2(1, 1)).Less(_outline.Filled());
        double width = basis.Wall(BarLines);
        return Region.Union(_outline.Filled().Less(_outline).Parts.Select(island =>
            Joins.Spread(island, around, width, leds, 0, BarCount) is { IsEmpty: false } bars ? bars
                : Joins.Shortest(island, around, width)));
    }

    /// <inheritdoc />
    public override BaffleWalls Walls(HousingDraft draft, BaffleSection section, bool cells) =>
        FieldWalls.Of(draft, Field, _outline, section, cells);

    /// <inheritdoc />
    public override PlannedLight Light(double thickness, bool bars, double bridge) =>
        new PlannedField(new PlannedField.Given(LitSurroundings.Of(_file, _section, thickness), Field, _outline));

    /// <inheritdoc />
    public override bool Clears(Point2 at, double radius) => _outline.IsEmpty || _outline.Distance(at) >= radius + PlanRules.Beside;

    /// <inheritdoc />
    public override void Note(DiffuserFit fit, Reasons reasons)
    {
        LightSpec light = _file.Housing.Light;
        int count = _outline.Parts.Length;
        string of = light.Shape switch
        {
            WindowShape.Outline => "of the outline",
            WindowShape.Disc => "of a disc",
            WindowShape.Ring => "of a ring",
            _ => "round the LEDs",
        };
        string what = string.Create(
            CultureInfo.InvariantCulture, $"{(count == 1 ? "" : $"{count} windows, ")}{_outline.Area:0} mm\u00b2 {of}");
        double least = LitBand.LeastWidth(_file.Board);
        if (light.WindowWidth is double asked && asked < least)
        {
            RoundWindow.NoteWidened(asked, least, reasons);
        }

        string why = _narrowed ? "narrowed by the cover's walls and the baffle's rim"
            : light.Shape is WindowShape.Outline or WindowShape.Disc or WindowShape.Ring ? "as asked"
            : light.WindowWidth is double width ? $"{Reasons.Mm(Math.Max(width, least))} wide along the LEDs, as asked"
            : "half a pitch round each LED: beyond that light falls to half";
        reasons.Choice("cover.window", what, Reasons.Origin(_file, "housing.light.window"), why);
    }

    // What each LED lights, and the way to each neighbour.
    private static Region Lit(BoardFile file, LedFieldPlan field)
    {
        double least = LitBand.LeastWidth(file.Board);
        double Radius(int led) => Math.Min(
            Math.Max(file.Housing.Light.WindowWidth ?? field.Leds[led].Pitch, least) / 2,
            Math.Max(least / 2, FarthestOut - field.Leds[led].At.Length));
        return Region.Union(
        [
            .. field.Leds.Select((led, i) => Region.Disc(led.At, Ring.Peg(Radius(i)))),
            .. field.Links.Select(link => Between(field, link, Radius(link.From), Radius(link.To))),
        ]);
    }

    private static Region Between(LedFieldPlan field, LedLink link, double from, double to)
    {
        (Point2 a, Point2 b) = (field.Leds[link.From].At, field.Leds[link.To].At);
        if (link.Centre is not Point2 centre)
        {
            return Region.HullOf([.. Ring.Peg(from).Points.Select(p => a + p), .. Ring.Peg(to).Points.Select(p => b + p)]);
        }

        double radius = Point2.Distance(a, centre);
        double half = Math.Min(from, to);
        Angle first = Angle.Of(a - centre);
        double sweep = (Angle.Of(b - centre) - first).Normalized.Degrees;
        (Angle start, double turn) = sweep <= 180 ? (first, sweep) : (Angle.Of(b - centre), 360 - sweep);
        double over = SectorOverlap * turn;
        return Region.Sector(Math.Max(0, radius - half), radius + half, start - Angle.FromDegrees(over),
            Angle.FromDegrees(turn + (2 * over))).Moved(centre);
    }

    // Islands of bezel that are large enough to print stay; the cover's own inner walls always do.
    private static Region WithIslands(Region part, Region within)
    {
        Region kept = Region.Union(part.Filled().Less(part).Parts
            .Where(island => !island.Offset(-SmallestIslandRadius).IsEmpty));
        return part.Filled().Less(kept).Intersect(within);
    }
}
