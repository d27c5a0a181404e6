using ShellForge.Geometry.Numerics;

namespace ShellForge.Planning.Plan;

/// <summary>A number or a choice that the plan has taken, with what drove it. Listed under <c>resolved</c> in the report.</summary>
/// <param name="Path">Dotted path, such as <c>stack.below-board</c>.</param>
/// <param name="Value">The value as text, lengths in mm with at most three decimals.</param>
/// <param name="From">Where it comes from: a place in the board file, a profile, or the rule of the plan.</param>
/// <param name="Why">One sentence for the maker ("C9 costs 4.1 mm").</param>
public sealed record Decision(string Path, string Value, string From, string Why);

/// <summary>
/// A wish that the plan cannot meet. The plan still is whole (the nearest thing that can be built), so that the maker sees it; the
/// checks turn each refusal into a finding with the alternatives that would work.
/// </summary>
/// <param name="Rule">Name of the rule that reports it, such as <c>no-way-for-plug</c>.</param>
/// <param name="Subject">What it is about: a part, a designator, a hole.</param>
/// <param name="Message">What cannot be met and why.</param>
/// <param name="Measured">The value that results.</param>
/// <param name="Limit">The value it would need.</param>
/// <param name="Unit">Unit of both.</param>
/// <param name="At">Place in the assembled frame, mm.</param>
/// <param name="Remedy">What would work.</param>
/// <param name="IsReplaced">
/// Whether something else was planned that does the same work, such as a knot for a tie: a <c>warn</c>. Otherwise the housing lacks it: a
/// <c>stop</c>.
/// </param>
/// <param name="IsNoted">Whether what was asked for is there for the most part, and the rest only has to be known: a <c>note</c>.</param>
public sealed record PlanRefusal(
    string Rule, string Subject, string Message, double Measured, double Limit, string Unit, Point3 At, string Remedy,
    bool IsReplaced = false, bool IsNoted = false);
