using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;

namespace ShellForge.Checks;

/// <summary>Runs rules over a housing.</summary>
public static class CheckRun
{
    /// <summary>Everything the rules find, worst first, then in the order of the rules.</summary>
    /// <param name="housing">The housing.</param>
    /// <param name="rules">The rules, as a rule <see cref="RuleList.All"/>.</param>
    /// <param name="cancel">Stops between two rules.</param>
    public static ImmutableArray<Finding> Run(
        HousingUnderCheck housing, ImmutableArray<IRule> rules, CancellationToken cancel = default)
    {
        // Rules take unlike times and keep no state, so they run side by side; the order of the result is that of the list.
        Finding[][] found = OrderedParallel.Map<IRule, Finding[]>(
            rules, rule => [.. rule.Check(housing).Select(finding => Accepted(finding, rule, housing.Board))], cancel);
        Finding[] all = [.. FindingMerge.Merge(found.SelectMany(each => each))];
        return [.. all.Concat(UselessAcceptances(housing.Board, rules, all)).OrderByDescending(finding => finding.Severity)];
    }

    private static Finding Accepted(Finding finding, IRule rule, BoardFile board)
    {
        AcceptedRule? accepted = board.Accept.FirstOrDefault(entry => entry.Rule == finding.Rule);
        return accepted is null || !rule.CanBeAccepted
            ? finding
            : finding with { Severity = Severity.Note, Accepted = accepted.Why };
    }

    // An acceptance that meets nothing is a typing error, or is left from an older board and would hide the next fault.
    private static IEnumerable<Finding> UselessAcceptances(BoardFile board, ImmutableArray<IRule> rules, Finding[] all)
    {
        foreach (AcceptedRule entry in board.Accept)
        {
            IRule? rule = rules.FirstOrDefault(candidate => candidate.Name == entry.Rule);
            if (rule is { CanBeAccepted: false })
            {
                yield return Useless(entry, "can't be accepted");
            }
            else if (!all.Any(finding => finding.Rule == entry.Rule))
            {
                yield return Useless(entry, rule is null ? "is the name of no rule that found anything" : "found nothing");
            }
        }
    }

    private static Finding Useless(AcceptedRule entry, string what) => new()
    {
        Rule = "acceptance-without-finding",
        Severity = Severity.Warn,
        Subject = "accept",
        Message = $"the accepted rule '{entry.Rule}' {what}",
        Remedy = "remove the entry from 'accept', or correct its name",
    };
}
