using System.CommandLine;
using System.Text;

namespace ShellForge.Cli.Verbs;

/// <summary><c>manual</c>: the page for <c>man</c>, written from the very declarations that <c>--help</c> is.</summary>
internal static class ManualVerb
{
    public static Command Create(Workbench bench)
    {
        var command = new Command("manual", "Print the manual page, for man");
        command.SetAction(parsed =>
        {
            bench.Out.Write(Page((RootCommand)parsed.RootCommandResult.Command));
            return (int)ExitCode.Done;
        });
        return command;
    }

    /// <summary>The page, in the language of <c>man</c>.</summary>
    public static string Page(RootCommand root)
    {
        var page = new StringBuilder();
        page.Append(".TH SHELLFORGE 1\n.SH NAME\nshellforge \\- housings for round LED boards\n");
        page.Append(".SH SYNOPSIS\n.B shellforge\n.I VERB\n[\\fIarguments\\fR] [\\fIoptions\\fR]\n.SH DESCRIPTION\n");
        page.Append(Text(root.Description!.Split('\n')[0])).Append("\n.SH VERBS\n");
        foreach (Command verb in root.Subcommands)
        {
            Append(page, verb);
        }

        page.Append(".SH EXIT STATUS\n");
        foreach ((ExitCode code, string meaning) in ExitCodes.Meanings)
        {
            page.Append($".TP\n.B {(int)code}\n{Text(meaning)}\n");
        }

        page.Append(".SH ENVIRONMENT\n.TP\n.B NO_COLOR\nWhen set, output has no colour.\n");
        page.Append(
            ".SH FILES\n.TP\n.I profiles/*.yaml\nProfiles of your own, beside the board file or in \\fIshellforge/profiles\\fR within "
                + "your configuration folder; they win over the shipped ones, by name.\n");
        return page.ToString();
    }

    private static void Append(StringBuilder page, Command verb)
    {
        page.Append($".SS {Text(verb.Name)}");
        foreach (Argument argument in verb.Arguments)
        {
            page.Append($" {Text(argument.Name)}");
        }

        page.Append($"\n{Text(verb.Description!)}.\n");
        foreach (Argument argument in verb.Arguments)
        {
            page.Append($".TP\n.I {Text(argument.Name)}\n{Text(argument.Description!)}\n");
        }

        foreach (Option option in verb.Options)
        {
            string names = string.Join(", ", option.Aliases.Prepend(option.Name).Select(name => $"\\fB{Text(name)}\\fR"));
            string value = option.HelpName is null ? "" : $" \\fI{Text(option.HelpName)}\\fR";
            page.Append($".TP\n{names}{value}\n{Text(option.Description!)}\n");
        }
    }

    // A hyphen of an option is no dash, and a line must not begin with a mark of the language.
    private static string Text(string text)
    {
        string safe = text.Replace("\\", "\\e", StringComparison.Ordinal).Replace("-", "\\-", StringComparison.Ordinal);
        return safe.StartsWith('.') || safe.StartsWith('\'') ? "\\&" + safe : safe;
    }
}
