using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Front;

/// <summary>A ring or disc about the axis.</summary>
/// <param name="File">The board file.</param>
/// <param name="Band">Its radii.</param>
/// <param name="Baffle">The baffle's walls.</param>
/// <param name="Room">What walls and lip leave of the cover.</param>
internal sealed class RoundWindow(BoardFile File, LitBand Band, BaffleSection Baffle, CoverRoom Room) : LitWindow
{
    // Bars across an annular window: how many, how wide in lines, how far they reach into the bezel, mm.
    private const int BarCount = 4;
    private const int BarLines = 3;
    private const double BarRoot = 0.5;

    // A circle goes all round where no way between neighbours is wider than two places of it, or than this, degrees.
    private const double WideGap = 60;
    private const double Places = 2;

    // An LED on the axis lies no farther from it than this share of its body.
    private const double OnAxisShare = 0.5;

    /// <inheritdoc />
    public override bool HasRoom => Band.HasRoom;

    /// <inheritdoc />
    public override LedFieldPlan? Field => null;

    /// <summary>The window for a board.</summary>
    public static RoundWindow For(BoardFile file, CoverRoom room, BaffleSection baffle, DiffuserFit fit, bool posts)
    {
        double margin = baffle.SeatGap + baffle.Wall;
        double least = room.InnerRadius > 0 ? room.InnerRadius + margin : 0;
        bool islandHeld = file.Housing.Light.Shape != WindowShape.Disc
            && (posts || file.Housing.Light.Shape == WindowShape.Ring || file.Housing.Light.WindowWidth is not null
                || fit is DiffuserFit.OneWithCover or DiffuserFit.PrintedIn);
        bool within = room.Cavity.Filled() is { IsEmpty: false } inside && inside.Contains(Point2.Origin);
        LitBand band = LitBand.Of(file.Board, file.Housing.Light.WindowWidth, least, within ? room.OuterRadius - margin : 0, islandHeld);
        return new RoundWindow(file, band, baffle, room);
    }

    /// <summary>The window in plan, whatever stands beside it; empty without room.</summary>
    public Region Plain => HasRoom ? Region(Band, Ring.CountFor(Band.Outer)) : Geometry.Planar.Region.Empty;

    /// <summary>Whether the LEDs lie on circles or arcs about the axis: only these are divided by rings and spokes.</summary>
    public static bool HasCircles(CircuitBoard board) => LitBand.Circles(board).All(circle =>
        circle.Facing != PixelFacing.Up || IsOnAxis(circle) || (circle.Centre == Point2.Origin && circle.Count > 1));

    /// <summary>Whether the LEDs lie on circles all round the axis, and the window has all of them behind it.</summary>
    public bool TakesInAll(CircuitBoard board) => LitBand.Circles(board).All(circle =>
        circle.Facing != PixelFacing.Up || (GoesAllRound(circle) && circle.Pixels.All(pixel => TakesIn(board, circle, pixel))));

    /// <inheritdoc />
    public override Region Outline(ShellPlan shell, CoverRoom room) => Region(Band, Count(shell)).Intersect(room.Cavity);

    /// <inheritdoc />
    public override Region Sheet(ShellPlan shell, CoverRoom room, double ledge) =>
        Region(Ledged(ledge), Count(shell)).Intersect(room.Cavity.Offset(-Baffle.SeatGap));

    /// <inheritdoc />
    /// <remarks>Between LEDs, so that they shade little; behind a diffuser only where a wall between cells shades it anyway.</remarks>
    public override Region Bars(PrintBasis basis, DiffuserFit fit)
    {
        bool joined = fit == DiffuserFit.OneWithCover || Band.Inner == 0;
        bool hidden = fit == DiffuserFit.PrintedIn;
        if (joined || (hidden && (File.Housing.Light.Look != LightLook.Pixels || LitBand.Circles(File.Board).Count() != 1)))
        {
            return Geometry.Planar.Region.Empty;
        }

        double width = basis.Wall(hidden ? 2 : BarLines);
        return Geometry.Planar.Region.Union(LitBand.BetweenLeds(File, BarCount).Select(at =>
            Strips.Radial(at, width, Band.Inner - BarRoot, Band.Outer + BarRoot)));
    }

    /// <inheritdoc />
    public override BaffleWalls Walls(HousingDraft draft, BaffleSection section, bool cells) => RoundWalls.Of(draft, Band, section, cells);

    /// <inheritdoc />
    public override PlannedLight Light(double thickness, bool bars, double bridge) =>
        new PlannedBand(new PlannedBand.Given(LitSurroundings.Of(File, Baffle, thickness), Band, bars, bridge));

    /// <inheritdoc />
    public override bool Clears(Point2 at, double radius) =>
        at.Length - radius >= Band.Outer + PlanRules.Beside || at.Length + radius <= Band.Inner - PlanRules.Beside;

    /// <inheritdoc />
    public override void Note(DiffuserFit fit, Reasons reasons)
    {
        string width = string.Create(
            CultureInfo.InvariantCulture, $"radius {Reasons.Mm(Band.Inner)} to {Reasons.Mm(Band.Outer)}");
        string why = Band.Clipped is not null ? $"narrowed by {Band.Clipped}"
            : File.Housing.Light.WindowWidth is double asked ? AsAsked(asked, reasons)
            : File.Housing.Light.Shape == WindowShape.Disc ? "a disc, as asked"
            : Band.Inner == 0 && fit is DiffuserFit.DropIn or DiffuserFit.CutSheet
                ? "open to the middle: nothing would hold an island of bezel"
            : "one pitch wide: beyond that light falls to half";
        reasons.Choice("cover.window", width, Reasons.Origin(File, "housing.light.window"), why);
    }

    /// <summary>Corners of every circle about the axis, so that walls and window keep their distance all round.</summary>
    private int Count(ShellPlan shell) => shell.Round?.Count ?? Ring.CountFor(Band.Outer);

    // A band as a region: its outer edge lets the whole circle through, an island stays inside its circle.
    private static Region Region(LitBand band, int count)
    {
        var outer = new Ring(band.Outer, RingSide.Outside, count, Angle.Zero);
        return band.Inner > 0
            ? Geometry.Planar.Region.Annulus(outer, outer.Coaxial(band.Inner, RingSide.Inside))
            : Geometry.Planar.Region.Disc(Point2.Origin, outer);
    }

    private LitBand Ledged(double ledge)
    {
        double outer = Math.Min(Band.Outer + ledge, Room.OuterRadius - Baffle.SeatGap);
        double inner = Band.Inner == 0 ? 0
            : Room.InnerRadius > 0 ? Math.Max(Band.Inner - ledge, Room.InnerRadius + Baffle.SeatGap)
            : Math.Max(0, Band.Inner - ledge);
        return new LitBand(inner, outer, null);
    }

    private static bool IsOnAxis(PixelCircle circle) =>
        circle.Pixels.All(pixel => pixel.At.Length < OnAxisShare * circle.Led.Length);

    private static bool GoesAllRound(PixelCircle circle)
    {
        if (IsOnAxis(circle))
        {
            return true;
        }

        if (circle.Centre != Point2.Origin || circle.Pixels.Length < 3)
        {
            return false;
        }

        double[] at = [.. circle.Pixels.Select(pixel => Angle.Of(pixel.At).Normalized.Degrees).Order()];
        double widest = Enumerable.Range(0, at.Length).Max(i => (i + 1 < at.Length ? at[i + 1] : at[0] + 360) - at[i]);
        return widest < 180 && widest <= Math.Max(WideGap, Places * 360 / circle.Count) + Layers.Slack;
    }

    // On round boards walls come as near to one LED of a circle as to the next, and what they cover of it no other window would free.
    private bool TakesIn(CircuitBoard board, PixelCircle circle, Pixel pixel)
    {
        double half = board.Outline is PolygonOutline ? circle.Led.WindowWidth / 2 : 0;
        return pixel.At.Length + half <= Band.Outer && (Band.Inner == 0 || pixel.At.Length - half >= Band.Inner);
    }

    // A window narrower than an LED's own cuts it off; an island of bezel that nothing holds falls out.
    private string AsAsked(double asked, Reasons reasons)
    {
        double least = LitBand.LeastWidth(File.Board);
        bool widened = asked < least;
        bool opened = Band.Inner == 0 && LitBand.Circles(File.Board).Min(circle => circle.Diameter) / 2 - (asked / 2) > 0;
        if (widened)
        {
            NoteWidened(asked, least, reasons);
        }

        if (opened)
        {
            reasons.Replace(
                "window-open-to-middle", "light.window",
                $"A ring of window {Reasons.Mm(asked)} mm wide leaves less than {Reasons.Mm(2 * LitBand.SmallestIslandRadius)} mm of "
                    + $"bezel in the middle, too little to print: the window is a disc.",
                2 * Band.Outer, asked, "mm", Point3.Zero,
                "a narrower 'light.window', or leave it to 'auto'");
        }

        return opened ? "open to the middle: what bezel is left there would not print"
            : widened ? $"raised from {Reasons.Mm(asked)}: it must clear the LEDs' own windows" : "as asked";
    }

    /// <summary>Notes a window narrower than an LED's own, which would cut it off.</summary>
    public static void NoteWidened(double asked, double least, Reasons reasons) => reasons.Replace(
        "window-widened", "light.window",
        $"A window of {Reasons.Mm(asked)} mm would cut off the LEDs' own light; it is {Reasons.Mm(least)} mm wide.",
        least, asked, "mm", Point3.Zero, $"ask for {Reasons.Mm(least)} or more, or leave 'light.window' to 'auto'");
}
