using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;
using ShellForge.Planning.Posts;

namespace ShellForge.Planning.Closures;

/// <summary>A bead on the lip snaps into a groove in the tub's wall. Any board can have it.</summary>
internal sealed class SnapForm : ClosureForm
{
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
        BoardFile file, PrintBasis basis, ShellPlan bare, ImmutableArray<Joint> joints, LipRing lip) =>
            new Reasons().Of(ImmutableArray<ClosureSite>.Empty);

    /// <inheritdoc />
    public override ClosureObstacle? Obstacle(
        BoardFile file, PrintBasis basis, ShellPlan shell, ImmutableArray<OpeningInPlan> openings) => null;

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
