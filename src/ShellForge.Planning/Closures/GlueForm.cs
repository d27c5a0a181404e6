using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;
using ShellForge.Planning.Posts;

namespace ShellForge.Planning.Closures;

/// <summary>
/// The lip is glued into the tub. What glue the tub's rim scrapes off the lip gathers in a chamfer under the seam and does not come out of
/// it:
/// <code>
///   cover wall │███████│
///  parting line ──┬◣ ┌─┴─ ─ ─   groove
///                 │██◣│█│ lip
///                 │███│█│
///                 │███│ └ bond, as wide as the lip's gap
/// </code>
/// Any board can have it.
/// </summary>
internal sealed class GlueForm : ClosureForm
{
    // Height of the bond below the groove, mm. Typical: as high as the tub's wall is thick holds as well as the wall itself.
    private const double Bond = 2.5;

    // Leg of the groove, mm, and what it leaves of the wall, in lines.
    private const double Groove = 0.6;
    private const int LinesBeside = 2;

    /// <inheritdoc />
    public override ClosureKind Kind => ClosureKind.Glue;

    /// <inheritdoc />
    public override string Word => "glue";

    /// <inheritdoc />
    public override bool Reopens => false;

    /// <inheritdoc />
    public override bool TurnsCover => false;

    /// <inheritdoc />
    public override string? NoPryNotches => "a glued cover does not come off";

    /// <inheritdoc />
    public override bool PostsInBore(CircuitBoard board) => false;

    /// <inheritdoc />
    public override Decided<ImmutableArray<ClosureSite>> Sites(
        Given given, ShellPlan bare, ImmutableArray<Joint> joints, LipRing lip) =>
            new Reasons().Of(ImmutableArray<ClosureSite>.Empty);

    /// <inheritdoc />
    public override ClosureObstacle? Obstacle(
        Given given, ShellPlan shell, LipRing lip, ImmutableArray<OpeningInPlan> openings) => null;

    /// <inheritdoc />
    public override (double Length, string Why) LipOverlap(BoardFile file, LipRing lip) =>
        (Bond + Groove, "the glue's bond, and the groove over it");

    /// <inheritdoc />
    public override double CoverWallLeast(BoardFile file, double toHold) => toHold;

    /// <inheritdoc />
    public override Angle? KeyAt(HousingDraft draft) => null;

    /// <inheritdoc />
    public override Decided<ClosurePlan> Plan(HousingDraft draft, RimSectors rim, KeyPlan key, double lipBottom)
    {
        var reasons = new Reasons();
        double groove = Math.Clamp(Math.Round(draft.Shell.Wall - draft.Basis.Wall(LinesBeside), 2), 0, Groove);
        reasons.Length("closure.bond", Math.Round(draft.Stack.PartingLine - lipBottom - groove, 3), Reasons.Rule,
            "height of the glued face all round");
        return reasons.Of<ClosurePlan>(new GlueClosurePlan
        {
            Gap = reasons.Length("closure.glue-gap", draft.Lip.Gap, draft.File.Print.Printer.Name,
                "the lip's gap, which the glue has to fill"),
            Groove = reasons.Length(
                "closure.groove", groove, Reasons.Rule,
                $"chamfer inside the tub's rim for the glue that is squeezed out; it leaves {LinesBeside} lines of the wall"),
        });
    }
}
