using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Closures;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Holding;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Holders;

/// <summary>
/// Upright posts of the tub's wall with hooks over the board's rim. They bend across their layers, which bear a fraction of what a part
/// bears along them: the board stands as high over the floor as that asks.
/// </summary>
internal sealed class ClipsForm : HoldTraits
{
    // How far a hook reaches over the rim, mm: the gap to the wall and what still holds where the board lies against the wall across.
    private const double HeldAcross = 0.3;

    // Along the rim, mm; the hook is a little narrower than its post.
    private const double Width = 6.0;
    private const double HookNarrower = 0.4;

    // Slots beside a post, and behind one bent as far as it has to be, mm: wide enough not to be welded shut.
    private const double Beside = 0.8;
    private const double Behind = 0.4;

    // Lines of a post: three are strong; two where three would lift the board too high. Lines of wall round its slots.
    private const int Lines = 3;
    private const int ThinLines = 2;
    private const int RoundLines = 4;

    // Three lines are taken up to this room under the board, mm, and clips at all up to this.
    private const double LiftForThick = 9;
    private const double MostLift = 14;

    // The hook's tip is flat over this height, mm: two layers.
    private const double Tip = 0.4;

    // A board a tenth thicker than listed still goes under, with so much more, mm.
    private const double ThicknessSpread = 0.1;
    private const double Over = 0.05;

    // Both flanks: what is laid without support also holds.
    private static readonly Angle Flank = Angle.FromDegrees(45);

    // The hook reaches into its post by this, mm.
    private const double IntoPost = 0.4;

    /// <inheritdoc />
    public override HoldKind Kind => HoldKind.Clips;

    /// <inheritdoc />
    public override double LipReach(Given given)
    {
        double gap = PlanRules.EdgeGapOf(given.File);
        return gap + Reach(gap) + PlanRules.EdgeGapClean;
    }

    /// <inheritdoc />
    public override (string What, double Height)? BelowBoard(Given given, double gap) =>
        ("the clips, which must be long to bend across their layers", Math.Min(MostLift, Lift(given, gap, LinesOf(given, gap))));

    /// <inheritdoc />
    public override IEnumerable<(string What, double Height)> OverBoard(Given given, double gap, LipSection lip)
    {
        yield return ("the clips' hooks under the cover's lip", HookTop(given, gap) + lip.AboveBoard + lip.Overlap);
    }

    /// <inheritdoc />
    public override HoldInPlan InPlan(Given given, ShellPlan shell, Reasons reasons)
    {
        BoardFile file = given.File;
        double gap = shell.BoardEdgeGap;
        if (file.Housing.Light.Through == LightThrough.Wall)
        {
            reasons.Refuse("hold-without-place", "clips",
                "Where the wall is lit nothing may stand at the board's rim: no clips are planned.",
                0, Reach(gap), "mm", default, "'hold: auto', or light through the front");
            return HoldForm.Nothing;
        }

        FilamentProfile filament = file.Print.Shell;
        double lift = Lift(given, gap, ThinLines);
        if (lift > MostLift)
        {
            double length = Length(given, gap, MostLift);
            double strain = Strain(given.Basis.Wall(ThinLines), Bend(given, gap), length);
            double bears = filament.StrainAcrossLayers;
            bool widened = gap > PlanRules.EdgeGapOf(given.File) + Layers.Slack;
            reasons.Refuse("clips-overstrained", "clips", string.Create(CultureInfo.InvariantCulture,
                    $"Upright clips {length:0.#} mm long{(widened ? $" over a gap of {Reasons.Mm(gap)} mm" : "")} would be strained by "
                        + $"{100 * strain:0.00} %; {filament.Name} bears {100 * bears:0.0} % across its layers. None are planned."),
                100 * strain, 100 * bears, "%", default, widened
                    ? "'hold: auto', or take away what widens the gap round the board: the report names it at 'shell.gap'"
                    : "'hold: clamp', or a tougher filament for the shell ('print: {shell: petg-black}')");
            return HoldForm.Nothing;
        }

        double thickness = given.Basis.Wall(LinesOf(given, gap));
        double far = thickness + Bend(given, gap) + Behind;
        double half = (Width / 2) + Beside;
        var size = new HoldSize(
            Math.Round(Math.Sqrt((far * far / 4) + (half * half)) + given.Basis.Wall(RoundLines), 1), Math.Round(far / 2, 2),
            Reach(gap), Width);
        var sites = new HoldSites(given, shell, size);
        ImmutableArray<RimPlace> places = sites.Chosen();
        if (places.IsEmpty)
        {
            reasons.Refuse("hold-without-place", "clips", $"Clips find no three places round the board: {sites.Barred}.",
                0, 3, "places", default,
                $"leave {Reasons.Mm(Math.Round(Reach(gap) + PlanRules.Beside, 1))} mm of the rim free in places, or 'hold: auto'");
            return HoldForm.Nothing;
        }

        reasons.Choice("hold.clips", places.Length.ToString(CultureInfo.InvariantCulture), Reasons.Origin(file, "housing.hold"),
            "round the board's centre of mass, clear of what stands at its rim");
        Region room = shell.Cavity.Filled();
        return new HoldInPlan(this, [.. places.Select(place => new HoldSite(
            place.Edge, place.Outward, sites.Lobe(place, "clip of the board"),
            room.Offset(far).Intersect(Strip(place, Width + (2 * Beside), far, gap)).Less(Post(room, place, thickness, gap))))]);
    }

    /// <inheritdoc />
    public override HolderPlan? Plan(HousingDraft draft, FrontSide front, ClosurePlan closure, Reasons reasons)
    {
        Given given = draft.Given;
        FilamentProfile filament = draft.File.Print.Shell;
        double gap = draft.Shell.BoardEdgeGap;
        int lines = LinesOf(given, gap);
        double thickness = given.Basis.Wall(lines);
        double reach = Reach(gap);
        double bend = Bend(given, gap);
        double play = Play(draft.File.Board);
        double length = Math.Round(draft.Stack.BoardTop + play + reach - draft.Stack.FloorTop, 3);
        double strain = Strain(thickness, bend, length);
        int count = draft.Hold.Sites.Length;
        double side = filament.ModulusMegapascals * Width * thickness * thickness * thickness * bend / (4 * length * length * length);
        double force = count * side * SnapForce.AlongAxis(Flank);
        Region room = draft.Shell.Cavity.Filled();
        RimPlace[] places = [.. draft.Hold.Sites.Select(site => new RimPlace(site.Edge, site.Outward))];
        reasons.Length("hold.clips.thickness", thickness, Reasons.Rule,
            $"{lines.ToString(CultureInfo.InvariantCulture)} lines, {Reasons.Mm(length)} long from the floor to the hook");
        reasons.Length("hold.clips.reach", Math.Round(reach, 3), Reasons.Rule,
            $"over the board's rim; {Reasons.Mm(HeldAcross)} where the board lies against the wall across");
        reasons.Choice("hold.clips.strain", string.Create(CultureInfo.InvariantCulture, $"{100 * strain:0.00} %"), filament.Name,
            string.Create(CultureInfo.InvariantCulture,
                $"bent by {bend:0.##} mm, spread of the print included; it repeats {100 * (double)filament.StrainAcrossLayers:0.0} % "
                    + $"across its layers"));
        reasons.Choice("hold.clips.force", string.Create(CultureInfo.InvariantCulture, $"{force:0} N"), Reasons.Rule,
            $"to press the board past all of them; the same holds it; a hand gives {Reasons.Mm(SnapForce.Hand)}");
        double top = draft.Basis.Up(draft.Stack.BoardTop + HookTop(given, gap));
        double tip = draft.Stack.BoardTop + play + reach;
        double root = gap + IntoPost;
        return new ClipsPlan
        {
            Posts = Region.Union(places.Select(place => Post(room, place, thickness, gap).Less(room))),
            Slots = Region.Union(draft.Shell.Pockets),
            Bottom = draft.Stack.FloorTop,
            Top = top,
            Hooks = [.. places.Select(place => (place.Edge, Angle.Of(place.Outward)))],
            HookSide =
            [
                new Point2(root, tip - reach - gap), new Point2(root, top), new Point2(gap, top), new Point2(-reach, tip + Tip),
                new Point2(-reach, tip), new Point2(gap, tip - reach - gap),
            ],
            HookWidth = Width - HookNarrower,
            Thickness = thickness,
            Reach = reach,
            Bend = bend,
            Strain = strain,
            Force = force,
            Play = play,
        };
    }

    private static double Reach(double gap) => Math.Round(gap + HeldAcross, 6);

    private static double Bend(Given given, double gap) => Math.Round(Reach(gap) + given.File.Print.Printer.Accuracy, 6);

    private static double Play(CircuitBoard board) => Math.Round((ThicknessSpread * board.Thickness) + Over, 2);

    // From the board's face to the hook's upper end.
    private static double HookTop(Given given, double gap) =>
        given.Basis.UpDistance(Play(given.File.Board) + Reach(gap) + Tip + Reach(gap) + gap);

    // A post of the wall, with what lies before it inside.
    private static Region Post(Region room, RimPlace place, double thickness, double gap) =>
        room.Offset(thickness).Intersect(Strip(place, Width, thickness, gap));

    // From the board's edge over the gap, which may have been widened, and so far beyond, also where the wall runs at a slant.
    private static Region Strip(RimPlace place, double width, double far, double gap) => Strips.Along(
        Lattice.Snap(place.Edge), Angle.Of(place.Outward), width, 0, far + Math.Max(gap, PlanRules.EdgeGapRough) + Width);

    // A beam held at one end, its root strained by bending its other end. Source: beam theory, snap-fit design guides.
    private static double Strain(double thickness, double bend, double length) => 1.5 * thickness * bend / (length * length);

    private static double Length(Given given, double gap, double lift) =>
        lift + given.File.Board.Thickness + Play(given.File.Board) + Reach(gap);

    // The length that a post needs to bear its bend, less what of it stands over the board's underside.
    private static double Lift(Given given, double gap, int lines)
    {
        double length = Math.Sqrt(1.5 * given.Basis.Wall(lines) * Bend(given, gap) / given.File.Print.Shell.StrainAcrossLayers);
        return length - Length(given, gap, 0);
    }

    private static int LinesOf(Given given, double gap) => Lift(given, gap, Lines) <= LiftForThick ? Lines : ThinLines;
}
