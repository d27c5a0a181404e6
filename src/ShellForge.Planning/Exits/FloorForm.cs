using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Floors;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Exits;

/// <summary>
/// The exit of a soldered round cable through the floor, at the free place nearest to the direction asked for. The leads must find room to
/// bend over knot or tie, and a plug asked for gets a window to pass.
/// </summary>
internal sealed class FloorForm(RoundCable cable) : ExitForm(cable)
{
    // The head of a tie 2.5 wide: how far it stands off the cable, and how high a tie stands on the floor, mm. Typical.
    private const double TieHead = 5.0;
    private const double TieHeight = 5.0;

    // Leads bend in so many of their diameters, as the rule on bends wants it.
    private const double BendOfLead = 4;

    // Wanted chamfer along the hole's edges, and what stays of the floor between the two, mm.
    private const double EdgeChamfer = 1.0;
    private const double BetweenChamfers = 0.4;

    private const double WindowCorner = 1.0;

    // Farther from the direction asked for, the maker is told, degrees.
    private const double ToldFrom = 10;

    /// <inheritdoc />
    public override ExitKind Kind => ExitKind.Floor;

    /// <inheritdoc />
    public override bool HasTongue => false;

    /// <inheritdoc />
    public override (Angle At, double HalfWidth)? AtRim => null;

    private bool Tied => Cable.Relief == ReliefKind.Tie;

    private double StopHeight => Tied ? TieHeight : PlanRules.KnotHeight * Cable.Diameter;

    private double StopDiameter => Tied ? Cable.Diameter + (2 * TieHead) : PlanRules.KnotInPlan * Cable.Diameter;

    /// <inheritdoc />
    public override (string What, double Height) BelowBoard(BoardFile file)
    {
        double lead =
            file.Board.Wires.Where(wire => wire.To == Cable.Name).Select(wire => Math.Min(wire.Diameter, Cable.Diameter))
                .DefaultIfEmpty(0).Max();
        return Tied ? ("the tie on the cable and the bend of its leads over it", StopHeight + (BendOfLead * lead))
            : ("the knot in the cable", StopHeight);
    }

    /// <inheritdoc />
    public override Region Way(ShellPlan shell) => Region.Empty;

    /// <inheritdoc />
    public override CableExitPlan? Decide(HousingDraft draft, Reasons reasons)
    {
        double top = draft.Stack.FloorTop + StopHeight;
        Region room = FloorRoom.Inside(draft, top).Intersect(FloorRoom.Outside(draft, draft.Shell.Wall));
        Point2? found =
            FloorPlaces.About(room, Cable.At, StopDiameter / 2, place => Shape(draft, At(place, draft))).Select(place => (Point2?)place)
                .FirstOrDefault();
        if (found is not { } free)
        {
            reasons.Refuse(
                "cable-exit-without-place", Subject,
                $"Parts and posts leave no place on the floor for the cable's hole with its {(Tied ? "tie" : "knot")}, "
                    + $"{Reasons.Mm(StopDiameter)} wide and {Reasons.Mm(StopHeight)} high. It is planned without an exit.",
                0, StopDiameter, "mm", new Point3(0, 0, draft.Stack.FloorTop), "through: wall, a thinner cable, or a smaller plug");
            return null;
        }

        FloorExitPlan exit = At(free, draft);
        double away = Angle.Between(exit.At, Cable.At).Degrees;
        if (away > ToldFrom)
        {
            reasons.Replace(
                "cable-exit-moved", Subject,
                $"at {HandAngle(Cable.At)} no place on the floor is free for it; it is planned at {HandAngle(exit.At)}",
                away, ToldFrom, "degrees", new Point3(free.X, free.Y, draft.Stack.FloorTop),
                "'angle:' where the floor is free, or through: wall");
        }

        reasons.Choice($"{DecisionPath}.exit",
            exit.Window is null ? "hole through the floor" : "hole through the floor, with a window for the plug",
            Reasons.Origin(draft.File, $"{Cable.Path}.through"),
            $"as asked; the {(Tied ? "tie" : "knot")} inside can't follow a pull through it");
        reasons.Length($"{DecisionPath}.hole", exit.HoleDiameter, Reasons.Origin(draft.File, $"{Cable.Path}.round"),
            $"the cable and {Reasons.Mm(PlanRules.NotchOver)}");
        reasons.Length($"{DecisionPath}.hole-off-axis", Math.Round(free.Length, 2), Reasons.Rule,
            "the free place farthest out, nearest to the direction asked for");
        if (exit.Window is { } window)
        {
            reasons.Choice($"{DecisionPath}.plug-window", $"{Reasons.Mm(window.Across)} x {Reasons.Mm(window.Along)}",
                Reasons.Origin(draft.File, $"{Cable.Path}.plug"),
                $"the plug and {Reasons.Mm(draft.File.Print.Printer.LooseFit)} on each side; a slot leads the cable from it to the hole");
        }

        return exit;
    }

    private static string HandAngle(Angle at) => $"{Reasons.Mm(Math.Round(at.Normalized.Degrees, 1))} degrees";

    // What has to be free, in plan: the opening with knot or tie over it.
    private static Region Shape(HousingDraft draft, FloorExitPlan exit) => exit.TakenInside(draft.Shell, 0);

    private FloorExitPlan At(Point2 place, HousingDraft draft)
    {
        Angle at = place == Point2.Origin ? Cable.At : Angle.Of(place);
        double hole = Cable.Diameter + PlanRules.NotchOver;
        double chamfer = Math.Clamp(Math.Floor(10 * (draft.Stack.FloorTop - BetweenChamfers) / 2) / 10, 0, EdgeChamfer);
        return new FloorExitPlan
        {
            At = at.Normalized,
            Cable = Cable,
            Name = Name,
            Place = Lattice.Snap(place),
            HoleDiameter = hole,
            FloorTop = draft.Stack.FloorTop,
            EdgeChamfer = chamfer,
            Tied = Tied,
            StopDiameter = StopDiameter,
            StopTop = draft.Stack.FloorTop + StopHeight,
            Window = Window(place, at, hole, draft.File.Print.Printer.LooseFit),
        };
    }

    // Towards the axis, clear of knot or tie; none where what has to pass passes the hole.
    private PlugWindow? Window(Point2 place, Angle at, double hole, double loose)
    {
        double across = Cable.PlugWidth + (2 * loose);
        double along = Cable.PlugHeight + (2 * loose);
        return Cable.PlugWidth == 0 || (across * across) + (along * along) <= hole * hole
            ? null
            : new PlugWindow(
                Lattice.Snap(place - Point2.Polar((StopDiameter + along) / 2, at)), across, along,
                Math.Min(WindowCorner, Math.Min(across, along) / 4));
    }
}
