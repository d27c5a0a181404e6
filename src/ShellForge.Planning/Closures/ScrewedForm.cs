using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;
using ShellForge.Planning.Posts;

namespace ShellForge.Planning.Closures;

/// <summary>
/// Screws through the cover into inserts. Any board can have them whose file names an insert: where neither bore nor holes take them, they
/// stand in ears.
/// </summary>
internal sealed class ScrewedForm : ClosureForm
{
    // Share of the printer's overhang that is used under a head: holes are drawn round, and shrinkage scales them.
    private const double HeldShare = 0.95;

    // Plastic round a counterbore, in lines.
    private const int PostLines = 3;

    /// <inheritdoc />
    public override ClosureKind Kind => ClosureKind.Screws;

    /// <inheritdoc />
    public override string Word => "screws";

    /// <inheritdoc />
    public override bool Reopens => true;

    /// <inheritdoc />
    public override bool TurnsCover => false;

    /// <inheritdoc />
    public override string? NoPryNotches => null;

    /// <inheritdoc />
    public override bool PostsInBore(CircuitBoard board) => board.Outline.BoreRadius > 0;

    /// <inheritdoc />
    public override Decided<ImmutableArray<ClosureSite>> Sites(
        Given given, ShellPlan bare, ImmutableArray<Joint> joints, LipRing lip) =>
        given.File.Housing.Insert is null || given.File.Housing.Screw is null ? new Reasons().Of(ImmutableArray<ClosureSite>.Empty)
            : ClosureSiteDecision.Decide(given, bare, joints, lip);

    /// <inheritdoc />
    public override ClosureObstacle? Obstacle(
        Given given, ShellPlan shell, LipRing lip, ImmutableArray<OpeningInPlan> openings) =>
        given.File.Housing.Insert is null || given.File.Housing.Screw is null
            ? new ClosureObstacle(
                "screws-without-insert", "no insert is given", "The cover can't be screwed on: no insert is given.",
                "name an insert with 'insert:'")
            : null;

    /// <inheritdoc />
    public override (double Length, string Why) LipOverlap(BoardFile file, LipRing lip) => (0, "screws ask nothing of the lip");

    /// <inheritdoc />
    public override double CoverWallLeast(BoardFile file, double toHold) =>
        Math.Max(toHold, PlanRules.UnderHead + file.Housing.Screw!.HeadHeight + PlanRules.CounterboreDeeper);

    /// <inheritdoc />
    public override Angle? KeyAt(HousingDraft draft) => null;

    /// <inheritdoc />
    public override Decided<ClosurePlan> Plan(HousingDraft draft, RimSectors rim, KeyPlan key, double lipBottom)
    {
        var reasons = new Reasons();
        ImmutableArray<ScrewJointPlan> screws = [.. draft.Screws.Where(screw => screw.Use == ScrewUse.Closure)];
        double post = reasons.Length(
            "closure.post-diameter", screws.Max(screw => PostDiameter(draft, screw)), Reasons.Rule,
            "as the boss below, with three lines round the head's room");
        return reasons.Of<ClosurePlan>(new ScrewClosurePlan
        {
            PostDiameter = post,
            PostBottom = screws.Min(screw => Meets(draft, screw)),
            Posts = Region.Union(screws
                .Where(screw => draft.Shell.Lobes.All(lobe => lobe.At != screw.At))
                .Select(screw => Region.Disc(screw.At, Ring.Peg(post / 2)))),
            BridgeHeight = reasons.Length(
                "closure.counterbore-bridge", draft.Basis.Layer, draft.File.Print.Printer.Name,
                "one layer: under the head each step that closes the counterbore is bridged by one"),
            BridgeStepOut = reasons.Length(
                "closure.counterbore-step", Math.Round(StepOut(draft), 3), draft.File.Print.Printer.Name,
                "by how much a layer under the head may hang over the one before, round holes and shrinkage allowed for"),
        });
    }

    private static double StepOut(HousingDraft draft)
    {
        var overhang = Angle.FromDegrees(draft.File.Print.Printer.OverhangDegrees);
        return HeldShare * draft.Basis.Layer * overhang.Sin / overhang.Cos;
    }

    // A post ends on the boss, or on the board where the boss carries it.
    private static double Meets(HousingDraft draft, ScrewJointPlan screw) =>
        screw.Boss.Use == BossUse.Both ? draft.Stack.BoardTop : screw.Boss.Top;

    private static double PostDiameter(HousingDraft draft, ScrewJointPlan screw) => Math.Max(
        screw.Boss.Diameter,
        Math.Max(screw.CounterboreDiameter, screw.PassDiameter) + (2 * draft.Basis.Wall(PostLines)));
}
