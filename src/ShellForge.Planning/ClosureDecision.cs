using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Planning.Closures;
using ShellForge.Planning.Draft;
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
/// <param name="Refused">Why the wish can't be met; null where it is.</param>
/// <param name="Sites">Where closure screws stand; empty for forms without.</param>
/// <param name="InPlan">Walls, openings and lip.</param>
internal sealed record ClosureDecision(ClosureForm Closure, ClosureObstacle? Refused, ImmutableArray<ClosureSite> Sites, InPlan InPlan)
{
    /// <summary>The form wished for, or the first that can be built.</summary>
    public static Decided<ClosureDecision> Of(BoardFile file, PrintBasis basis, ImmutableArray<Joint> joints, LipRing lip)
    {
        var reasons = new Reasons();
        ShellPlan bare = reasons.Take(ShellDecision.Bare(file, basis, joints, lip));
        ClosureForm wished = ClosureForm.Of(file.Housing.Closure);
        ClosureObstacle? refused = null;
        foreach (ClosureForm form in ClosureForm.All.Where(form => form != wished).Prepend(wished))
        {
            // What a form that is not built would have wanted is not told.
            var tried = new Reasons();
            ImmutableArray<ClosureSite> sites = tried.Take(form.Sites(file, basis, bare, joints, lip));
            ShellPlan shell = tried.Take(ShellDecision.WithSites(file, bare, sites));
            ImmutableArray<OpeningInPlan> openings = tried.Take(
                OpeningForm.InPlan(new OpeningGiven(file, basis, shell, BossDecision.InPlan(joints, sites, basis))));
            if (form.Obstacle(file, basis, shell, openings) is { } obstacle)
            {
                refused ??= obstacle;
                continue;
            }

            reasons.Choice("closure", form.Word, Reasons.Origin(file, "housing.closure"),
                refused is null ? "as asked" : $"the nearest that can be built: {refused.Why}");
            reasons.Take(tried.Of(form));
            LipSection section = reasons.Take(LipDecision.Long(file, basis, lip, form));
            return reasons.Of(new ClosureDecision(form, refused, sites, new InPlan(form, shell, openings, section)));
        }

        throw new InvalidOperationException("every form of closure has an obstacle: one that any board can have must be among them");
    }
}
