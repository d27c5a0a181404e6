using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Planning.Closures;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Holders;
using ShellForge.Planning.Openings;
using ShellForge.Planning.Plan;
using ShellForge.Planning.Posts;
using ShellForge.Planning.Walls;

namespace ShellForge.Planning;

/// <summary>
/// The closure that was decided, and what depends on it in plan. Nothing later asks for the wish in the board file: a wish that can't be
/// met is refused, and all the rest is planned for what is built in its place.
/// </summary>
/// <param name="Closure">How cover and tub hold together.</param>
/// <param name="Refused">Why the wish can't be met, and what to do; null where it is, or where there was no wish.</param>
/// <param name="Sites">Where closure screws stand; empty for forms without.</param>
/// <param name="InPlan">Walls, openings and lip.</param>
internal sealed record ClosureDecision(
    ClosureForm Closure, (ClosureObstacle Obstacle, string Remedy)? Refused, ImmutableArray<ClosureSite> Sites, InPlan InPlan)
{
    /// <summary>The form wished for, or the first that can be built.</summary>
    public static Decided<ClosureDecision> Of(Given given, ImmutableArray<Joint> joints, LipRing lip)
    {
        BoardFile file = given.File;
        var reasons = new Reasons();
        ShellPlan bare = reasons.Take(ShellDecision.Bare(given, joints, lip));
        ClosureForm wished = ClosureForm.Of(file.Housing.Closure);
        ClosureObstacle? obstacle = null;
        ClosureForm[] order = [wished, .. ClosureForm.All.Where(form => form != wished)];
        foreach (ClosureForm form in order)
        {
            Tried tried = Try(form, given, bare, joints, lip);
            if (tried.Obstacle is not null)
            {
                obstacle ??= tried.Obstacle;
                continue;
            }

            string origin = Reasons.Origin(file, "housing.closure");
            reasons.Choice("closure", form.Word, origin,
                obstacle is null ? origin == Reasons.Rule ? "the first that can be built" : "as asked"
                    : $"the nearest that can be built: {obstacle.Why}");

            // What a form that is not built would have wanted is not told.
            reasons.Take(tried.Reasons.Of(form));
            LipSection section = reasons.Take(LipDecision.Long(given, lip, form));

            // Those before it in the order can't be built.
            string Instead() => string.Join(" or ", order.SkipWhile(other => other != form)
                .Where(other => other == form || Try(other, given, bare, joints, lip).Obstacle is null)
                .Select(other => $"'closure: {other.Word}'"));
            return reasons.Of(new ClosureDecision(
                form,
                obstacle is null || origin == Reasons.Rule ? null
                    : (obstacle, $"take {Instead()}{(obstacle.Or is null ? "" : $", or {obstacle.Or}")}"),
                tried.Sites, new InPlan(form, tried.Shell, tried.Openings, section, tried.Hold)));
        }

        throw new InvalidOperationException("every form of closure has an obstacle: one that any board can have must be among them");
    }

    private static Tried Try(
        ClosureForm form, Given given, ShellPlan bare, ImmutableArray<Joint> joints, LipRing lip)
    {
        (BoardFile file, PrintBasis basis) = given;
        var reasons = new Reasons();
        ImmutableArray<ClosureSite> sites = reasons.Take(form.Sites(given, bare, joints, lip));
        ShellPlan eared = ShellDecision.WithSites(bare, sites);
        HoldInPlan hold = HoldForm.Of(given).InPlan(given, eared, reasons);
        ShellPlan shell = reasons.Take(ShellDecision.Finished(file, bare, eared, hold.Sites));
        ImmutableArray<OpeningInPlan> openings = reasons.Take(
            OpeningForm.InPlan(new OpeningGiven(given, shell, BossDecision.InPlan(joints, sites, hold.Sites, basis))));
        return new Tried(reasons, sites, shell, openings, form.Obstacle(given, shell, lip, openings)) { Hold = hold };
    }

    private sealed record Tried(
        Reasons Reasons, ImmutableArray<ClosureSite> Sites, ShellPlan Shell, ImmutableArray<OpeningInPlan> Openings,
        ClosureObstacle? Obstacle)
    {
        public required HoldInPlan Hold { get; init; }
    }
}
