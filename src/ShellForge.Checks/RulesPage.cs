using System.Collections.Immutable;
using System.Text;
using ShellForge.Checks.Findings;

namespace ShellForge.Checks;

/// <summary>The page that documents every rule, written from what the rules say of themselves.</summary>
public static class RulesPage
{
    /// <summary>The page as Markdown.</summary>
    /// <param name="rules">The rules, as a rule <see cref="RuleList.All"/>.</param>
    public static string Text(ImmutableArray<IRule> rules)
    {
        var page = new StringBuilder();
        page.Append("# Rules\n");
        page.Append(
            "What `check` and `make` look for, in the order in which findings are told. This page is written from the rules "
                + "themselves.\n\n");
        page.Append(
            "A finding is a `stop` (do not print), a `warn` or a `note`. A maker who knows better accepts a rule in the board file, with "
                + "the reason;\n");
        page.Append("its findings then become notes that carry the reason, and an acceptance that meets nothing is told as well:\n\n");
        page.Append("    accept:\n      - {rule: no-finger-room, why: \"the cable stays plugged in\"}\n");
        foreach (IRule rule in rules)
        {
            page.Append('\n').Append("## ").Append(rule.Name).Append('\n');
            page.Append(rule.What).Append(' ').Append(rule.Why).Append("\n\n");
            page.Append("- Measured: ").Append(rule.Formula).Append(".\n");
            page.Append("- Source: ").Append(rule.Source).Append(".\n");
            if (!rule.CanBeAccepted)
            {
                page.Append("- Can't be accepted.\n");
            }
        }

        page.Append("\n# What the plan refuses or replaces\n");
        page.Append(
            "Some wishes can't be met together. The plan then builds the nearest thing that can be built, and says so under one of these "
                + "names: a\n");
        page.Append("`warn` where something else does the same work, else a `stop`.\n");
        foreach (PlanRule rule in PlanRule.All)
        {
            page.Append("\n## ").Append(rule.Name).Append('\n').Append(rule.What).Append(' ').Append(rule.Why).Append('\n');
        }

        return page.ToString();
    }
}
