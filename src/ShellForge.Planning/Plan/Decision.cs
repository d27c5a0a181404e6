namespace ShellForge.Planning.Plan;

/// <summary>A number or a choice that the plan has taken, with what drove it. Listed under <c>resolved</c> in the report.</summary>
/// <param name="Path">Dotted path, such as <c>stack.below-board</c>.</param>
/// <param name="Value">The value as text, lengths in mm with at most three decimals.</param>
/// <param name="From">Where it comes from: a place in the board file, a profile, or the rule of the plan.</param>
/// <param name="Why">One sentence for the maker ("C9 costs 4.1 mm").</param>
public sealed record Decision(string Path, string Value, string From, string Why);
