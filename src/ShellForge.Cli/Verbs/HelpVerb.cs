using System.CommandLine;
using ShellForge.Board.Yaml.Tree;
using ShellForge.Cli.Printing;

namespace ShellForge.Cli.Verbs;

/// <summary><c>help</c>: the pages of the manual that the program carries, and the help of its verbs.</summary>
internal static class HelpVerb
{
    private const string Resource = "docs/";

    /// <summary>The pages in the order in which a newcomer wants them.</summary>
    public static IReadOnlyList<string> Topics { get; } =
        ["first-lamp", "board-file", "cookbook", "troubleshooting", "calibrating", "promises"];

    public static Command Create(Workbench bench)
    {
        var topic = new Argument<string?>("TOPIC")
        {
            Description = "A page of the manual, or a verb; leave it out for a list of the pages",
            Arity = ArgumentArity.ZeroOrOne,
        };
        topic.CompletionSources.Add(_ => Topics.Select(name => new System.CommandLine.Completions.CompletionItem(name)));
        var command = new Command("help", "Show a page of the manual, or what a verb takes") { topic };
        command.SetAction(parsed => Run(bench, parsed.GetValue(topic), (RootCommand)parsed.RootCommandResult.Command));
        return command;
    }

    /// <summary>The text of a page, in Markdown.</summary>
    public static string Page(string topic) => NoticesVerb.Text(Resource + topic);

    private static int Run(Workbench bench, string? topic, RootCommand root)
    {
        if (topic is null)
        {
            foreach (string each in Topics)
            {
                bench.Out.Write($"{each,-17}{Page(each).Split('\n')[0].TrimStart('#').Trim()}\n");
            }

            bench.Out.Write("\nshellforge help PAGE shows one, shellforge help VERB what a verb takes.\n");
            return (int)ExitCode.Done;
        }

        if (Topics.Contains(topic))
        {
            DocsText.Write(bench.Out, Page(topic), bench.TextWidth);
            return (int)ExitCode.Done;
        }

        string[] verbs = [.. root.Subcommands.Select(verb => verb.Name)];
        if (verbs.Contains(topic))
        {
            return ShellForgeCommand.Run([topic, "--help"], bench);
        }

        string nearest = NearestName.In(topic, [.. Topics, .. verbs]) is { } near
            ? $"did you mean {near}?" : "'shellforge help' lists the pages";
        bench.Complain($"shellforge: there is no page or verb '{topic}'; {nearest}");
        return (int)ExitCode.BadInput;
    }
}
