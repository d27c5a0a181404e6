using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Exits;
using ShellForge.Planning.Plan;
using ShellForge.Planning.Posts;

namespace ShellForge.Planning.Closures;

/// <summary>
/// A bead on the lip snaps into a groove in the tub's wall. A board can have it whose rim gives along most of its way, without a long
/// stretch where nothing holds.
/// </summary>
internal sealed class SnapForm : ClosureForm
{
    // A cover that is held along less of its rim lifts, and one that is not held along more of it in one stretch lifts there.
    private const double LeastHeld = 0.5;
    private const double LongestLoose = 1.0 / 3;

    /// <inheritdoc />
    public override ClosureKind Kind => ClosureKind.Snap;

    /// <inheritdoc />
    public override string Word => "snap";

    /// <inheritdoc />
    public override bool Reopens => true;

    /// <inheritdoc />
    public override bool TurnsCover => false;

    /// <inheritdoc />
    public override string? NoPryNotches => null;

    /// <inheritdoc />
    public override bool PostsInBore(CircuitBoard board) => false;

    /// <inheritdoc />
    public override Decided<ImmutableArray<ClosureSite>> Sites(
        Given given, ShellPlan bare, ImmutableArray<Joint> joints, LipRing lip) =>
            new Reasons().Of(ImmutableArray<ClosureSite>.Empty);

    /// <inheritdoc />
    public override ClosureObstacle? Obstacle(
        Given given, ShellPlan shell, LipRing lip, ImmutableArray<OpeningInPlan> openings)
    {
        BoardFile file = given.File;
        double around = shell.Cavity.Filled().Perimeter;
        double[] open =
        [
            .. openings.Where(opening => opening.InWall is { HasTongue: true }).Select(opening => opening.InWall!.Width / around),
            .. ExitForm.Of(file).Where(exit => exit.HasTongue).Select(exit => 2 * (exit.AtRim?.HalfWidth ?? 0) / around),
        ];
        BeadRun? run = RunOf(file, shell);
        double held = Math.Max(0, (run?.Held ?? 1) - open.Sum());
        double loose = Math.Max(run?.LongestWithout ?? 0, open.Append(0).Max());
        if (held >= LeastHeld && loose <= LongestLoose && !IsAsked(file) && SnapFit.Of(file, shell, lip) is var fit
            && !fit.Holds(file.Print.Shell))
        {
            return new ClosureObstacle(
                "snap-without-hold", $"a bead would strain the ring by {100 * fit.Strain:0.0} % and catch by {Reasons.Mm(fit.Caught)} mm",
                "A snap bead would break or let go.", null);
        }

        return held >= LeastHeld && loose <= LongestLoose ? null : new ClosureObstacle(
            "snap-without-hold",
            held < LeastHeld ? $"a bead would hold {100 * held:0} % of the rim"
                : $"a bead would leave {100 * loose:0} % of the rim loose in one stretch",
            held < LeastHeld
                ? $"The cover can't be snapped on: a bead holds only {100 * held:0} % of the rim; "
                    + "corners, short sides and openings take the rest."
                : $"The cover can't be snapped on: one stretch of {100 * loose:0} % of the rim takes no bead.",
            null);
    }

    // Who asks for a snap gets one and is told what is wrong with it; nobody else gets one that breaks or lets go.
    private static bool IsAsked(BoardFile file) =>
        file.Housing.Closure == ClosureKind.Snap && Reasons.Origin(file, "housing.closure") != Reasons.Rule;

    /// <summary>Where the bead runs on an outline that is not round; null on round ones, whose whole ring gives.</summary>
    public static BeadRun? RunOf(BoardFile file, ShellPlan shell) => shell.Round is not null ? null
        : BeadRun.Of(
            shell.Cavity.Filled(), shell.Wall, SnapSection.CatchMinimum + file.Print.Printer.Accuracy, file.Print.Shell.StrainAlongLayers);

    /// <inheritdoc />
    public override (double Length, string Why) LipOverlap(BoardFile file, LipRing lip) => (
        SnapSection.Of(SnapSection.RingOf(file.Board.Outline), lip.Gap - file.Print.Printer.LipCloses, file.Print.Shell, file.Print.Printer)
            .Width + (2 * SnapSection.Land),
        "room for the snap bead with a land above and below");

    /// <inheritdoc />
    public override double CoverWallLeast(BoardFile file, double toHold) => toHold;

    /// <inheritdoc />
    public override Angle? KeyAt(HousingDraft draft) => null;

    /// <inheritdoc />
    public override Decided<ClosurePlan> Plan(HousingDraft draft, RimSectors rim, KeyPlan key, double lipBottom)
    {
        var reasons = new Reasons();
        return reasons.Of<ClosurePlan>(reasons.Take(SnapDecision.Decide(draft, rim, key, lipBottom)));
    }
}
