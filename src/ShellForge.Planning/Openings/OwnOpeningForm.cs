using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;

namespace ShellForge.Planning.Openings;

/// <summary>
/// An opening of the maker's own, before anything of it is decided. It goes where the board file says or is left out: nothing is moved in
/// silence, and what stands in its way is told by its name.
/// </summary>
internal abstract class OwnOpeningForm : OpeningForm
{
    /// <summary>What has to be left of a wall or floor between two openings, mm: three lines.</summary>
    protected const double Between = 1.2;

    private static readonly ImmutableArray<Func<OwnOpening, OwnOpeningForm>> All =
        [wish => new OwnWallForm(wish), wish => new OwnFloorForm(wish), wish => new OwnFrontForm(wish)];

    private protected OwnOpeningForm(OwnOpening wish) => Wish = wish;

    /// <summary>The side of the housing that it goes through.</summary>
    public abstract OpenedSide Side { get; }

    /// <summary>What the board file says.</summary>
    protected OwnOpening Wish { get; }

    /// <summary>The form for a wish.</summary>
    public static OwnOpeningForm For(OwnOpening wish) => All.Select(make => make(wish)).Single(form => form.Side == wish.In);

    /// <summary>Its outline as drawn, about the origin: what prints take from holes is added.</summary>
    /// <param name="wish">What the board file says.</param>
    /// <param name="printer">The printer.</param>
    protected static Region OutlineOf(OwnOpening wish, PrinterProfile printer)
    {
        OpeningShape drawn = wish.Shape.Grown(printer.HoleAllowance);
        return drawn.IsRound ? Region.Disc(Point2.Origin, Ring.Hole(drawn.Corner))
            : Region.RoundedRectangle(Point2.Origin, drawn.Along, drawn.Across, drawn.Corner, RingSide.Outside).Turned(wish.Turn);
    }

    /// <summary>Tells its size with where it comes from.</summary>
    protected static void TellSize(OwnOpening wish, PrinterProfile printer, Reasons reasons)
    {
        OpeningShape drawn = wish.Shape.Grown(printer.HoleAllowance);
        reasons.Choice($"openings.{wish.Name}.size",
            drawn.IsRound ? Reasons.Mm(drawn.Along) : $"{Reasons.Mm(drawn.Along)} x {Reasons.Mm(drawn.Across)}", printer.Name,
            $"as asked, and {Reasons.Mm(printer.HoleAllowance)} because holes print narrower");
    }

    /// <summary>
    /// Leg of the chamfer along its edge in a face that lies on the bed, mm: what the first layers spread stays out of the opening, and
    /// what goes in finds its way. Walls stand on no bed, and a chamfer in a round one would be wide in the middle and end at the sides:
    /// openings there have none.
    /// </summary>
    /// <param name="given">The board file, lines and layers.</param>
    /// <param name="thickness">Thickness of what it goes through, mm: half of it stays straight.</param>
    protected static double Chamfer(Given given, double thickness) => Math.Round(
        Math.Min(Math.Max(PlanRules.BedChamfer, given.File.Print.Printer.ElephantFoot), thickness / 2), 2);

    /// <summary>Tells the chamfer.</summary>
    protected static void TellChamfer(OwnOpening wish, double chamfer, Reasons reasons) => reasons.Length(
        $"openings.{wish.Name}.chamfer", chamfer, Reasons.Rule,
        "at its edge on the bed, so that what the first layers spread stays out of it");

    /// <summary>Refuses it.</summary>
    /// <param name="wish">What the board file says.</param>
    /// <param name="obstacle">What stands in its way.</param>
    /// <param name="at">Where.</param>
    /// <param name="reasons">Takes the refusal.</param>
    protected static void Refuse(OwnOpening wish, OpeningObstacle obstacle, Point3 at, Reasons reasons) => reasons.Refuse(
        "opening-without-place", wish.Name, $"it is left out: {obstacle.What}", obstacle.Measured,
        obstacle.Limit, "mm", at, obstacle.Remedy);
}

/// <summary>What keeps an opening from being made.</summary>
/// <param name="What">What stands in its way, and by how much.</param>
/// <param name="Measured">The length that results, mm.</param>
/// <param name="Limit">The length it would need, mm.</param>
/// <param name="Remedy">What to change.</param>
internal sealed record OpeningObstacle(string What, double Measured, double Limit, string Remedy);
