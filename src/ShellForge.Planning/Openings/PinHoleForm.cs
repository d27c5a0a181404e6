using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Floors;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Openings;

/// <summary>A hole in the floor through which a blunt pin presses a button on the board's back.</summary>
internal sealed class PinHoleForm : PartOpeningForm
{
    private readonly double _pusher;

    private PinHoleForm(BoardPart part, double pusher)
        : base(part) => _pusher = pusher;

    /// <inheritdoc />
    public override (Angle At, double HalfWidth)? AtRim => null;

    /// <summary>The form for a button; null for what has no pusher.</summary>
    public static PinHoleForm? Suiting(BoardPart part) =>
        part.Package?.Pusher is Sourced pusher ? new PinHoleForm(part, pusher) : null;

    /// <inheritdoc />
    public override OpeningInPlan? InPlan(OpeningGiven given, Reasons reasons)
    {
        var hole = new PinHoleInPlan(Part, _pusher, given.Posts);
        Region outline = hole.HoleOutline(given.File.Print.Printer);
        string? obstacle = Part.Side == BoardSide.Top ? $"{Part.Ref} looks to the front, where the diffuser lies over it."
            : !given.Shell.Cavity.Contains(outline) ? $"{Part.Ref} does not lie over the floor."
            : given.Posts.FirstOrDefault(post => outline.Distance(post.At) <= (post.Diameter / 2) + PlanRules.Beside) is { } post
                ? $"The floor can't be opened for {Part.Ref}: {post.Name} stands there."
            : null;
        if (obstacle is null)
        {
            return hole;
        }

        reasons.Refuse(
            "no-way-to-button", Part.Ref, $"{obstacle} It is planned without a hole.", 0, 1, "", new Point3(Part.At.X, Part.At.Y, 0),
            Part.Side == BoardSide.Top ? "put the button on the board's back, or say 'port: closed' and press it before closing"
                : "move the button on the board, or say 'port: closed' and press it before closing");
        return null;
    }

    /// <inheritdoc />
    protected override bool IsOpenUnsaid(BoardFile file) => false;

    private sealed record PinHoleInPlan(BoardPart Part, double Pusher, ImmutableArray<PostInPlan> Posts) : OpeningInPlan(Part.Ref)
    {
        // A hex key of this size is blunt, at hand, and over its corners as wide as the second length, mm.
        private const double Pin = 2.0;
        private const double PinCorners = 2.31;

        // Lines of the tube's wall, and the least height that leads a pin better than the floor alone, mm.
        private const int TubeLines = 3;
        private const double LeastTube = 1.0;

        /// <inheritdoc />
        public override (string What, double Height)? BelowBoard => null;

        /// <inheritdoc />
        public override WallStretch? InWall => null;

        public Region HoleOutline(PrinterProfile printer) => Region.Disc(Part.At, Ring.Hole(Hole(printer) / 2));

        /// <inheritdoc />
        public override OpeningPlan AtHeight(HeightGiven given, Reasons reasons)
        {
            (BoardFile file, PrintBasis basis, _, BoardLevels levels, _) = given;
            ShellPlan shell = given.Shell;
            double reach = levels.BoardBottom - (Part.Height ?? PlanRules.UnknownHeight);
            double hole = Hole(file.Print.Printer);
            var plan = new PinHolePlan
            {
                Ref = Part.Ref,
                At = Part.At,
                Diameter = hole,
                Pin = Pin,
                Pusher = Pusher,
                Reach = reach,
                FloorTop = levels.FloorTop,
                Tube = Tube(new Given(file, basis), shell, levels, reach),
            };
            string path = $"openings.{Part.Ref}";
            reasons.Length($"{path}.hole", hole, file.Print.Printer.Name, string.Create(CultureInfo.InvariantCulture,
                $"in the floor: a {Pin:0.#} mm hex key, {PinCorners:0.##} over its corners, and a loose fit on each side"));
            reasons.Length($"{path}.reach", Math.Round(reach, 3), Part.Package!.Name, "from the outer floor to the end of the pusher");
            if (plan.Tube is { } tube)
            {
                reasons.Length($"{path}.tube-top", tube.Top, Reasons.Rule,
                    $"a tube leads the pin to {Reasons.Mm(Math.Round(reach - tube.Top, 3))} before the pusher");
            }

            return plan;
        }

        private static double Hole(PrinterProfile printer) => PlanRules.UpToTenth(PinCorners + (2 * printer.LooseFit));

        // Up to the pusher, which must not be pressed when the board bows, or as high as what hangs beside the button lets it rise.
        private PinTubePlan? Tube(Given given, ShellPlan shell, BoardLevels levels, double reach)
        {
            (BoardFile file, PrintBasis basis) = given;
            double wanted = basis.Down(reach - PlanRules.BelowPartsOf(file));
            double outer = PlanRules.UpToTenth(Hole(file.Print.Printer) + (2 * basis.Wall(TubeLines)));
            Region outline = Region.Disc(Part.At, Ring.Peg(outer / 2));
            var room = new BelowBoardRoom(new TubDraft(given, shell, levels, []), Part.Ref);
            double top = Math.Min(wanted, basis.Down(room.Ceiling(outline)));
            bool isFree = shell.Cavity.Contains(outline.Offset(PlanRules.Beside))
                && Posts.All(post => outline.Distance(post.At) > (post.Diameter / 2) + PlanRules.Beside);
            return isFree && top >= levels.FloorTop + LeastTube ? new PinTubePlan(outer, top) : null;
        }
    }
}
