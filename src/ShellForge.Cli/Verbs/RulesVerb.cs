using System.CommandLine;
using ShellForge.Board.Yaml.Tree;
using ShellForge.Checks;
using ShellForge.Checks.Findings;
using ShellForge.Output.Words;

namespace ShellForge.Cli.Verbs;

/// <summary><c>rules</c>: what is looked for; of one rule why, how it is measured, where the limit comes from, how to accept it.</summary>
internal static class RulesVerb
{
    public static Command Create(Workbench bench)
    {
        var name = new Argument<string?>("RULE")
        {
            Description = "The rule to explain, by the name in brackets after its finding; nothing lists all",
            Arity = ArgumentArity.ZeroOrOne,
        };
        var command = new Command("rules", "List what is looked for, or explain one rule") { name };
        command.SetAction(parsed => (int)Run(bench, parsed.GetValue(name)));
        return command;
    }

    private static ExitCode Run(Workbench bench, string? name)
    {
        if (name is null)
        {
            List(bench);
            return ExitCode.Done;
        }

        if (RuleList.All.FirstOrDefault(rule => rule.Name == name) is { } rule)
        {
            Paragraph(bench, $"{rule.What} {rule.Why}");
            Paragraph(bench, $"Measured: {rule.Formula}.");
            Paragraph(bench, $"Source: {rule.Source}.");
            Accepting(bench, rule);
            return ExitCode.Done;
        }

        if (PlanRule.All.FirstOrDefault(planned => planned.Name == name) is { } refused)
        {
            Paragraph(bench, $"{refused.What} {refused.Why}");
            Accepting(bench, RuleList.All.Single(each => each is PlanRefused), refused.Name);
            return ExitCode.Done;
        }

        string nearest =
            NearestName.In(name, RuleList.All.Select(each => each.Name).Concat(PlanRule.All.Select(each => each.Name))) is { } near
            ? $"; did you mean {near}?"
            : "; 'shellforge rules' lists all";
        bench.Complain($"shellforge: there is no rule '{name}'{nearest}");
        return ExitCode.BadInput;
    }

    private static void List(Workbench bench)
    {
        foreach (IRule rule in RuleList.All)
        {
            Row(bench, rule.Name, rule.What);
        }

        bench.Out.Write("\nWishes that the plan refuses or replaces:\n");
        foreach (PlanRule rule in PlanRule.All)
        {
            Row(bench, rule.Name, $"{rule.What} {rule.Why}");
        }
    }

    private static void Row(Workbench bench, string name, string what)
    {
        const int column = 28;
        WrappedText.Write(bench.Out, what, bench.TextWidth, name.PadRight(column), column);
    }

    private static void Accepting(Workbench bench, IRule rule, string? name = null)
    {
        if (rule.CanBeAccepted)
        {
            Paragraph(bench, "If you know better, say why in the board file; its findings then are notes:");
            bench.Out.Write($"    accept:\n      - {{rule: {name ?? rule.Name}, why: \"...\"}}\n");
        }
        else
        {
            Paragraph(bench, "It can't be accepted.");
        }
    }

    private static void Paragraph(Workbench bench, string text) => WrappedText.Write(bench.Out, text, bench.TextWidth);
}
