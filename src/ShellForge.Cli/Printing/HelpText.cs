using System.CommandLine;
using System.CommandLine.Completions;
using System.CommandLine.Invocation;
using ShellForge.Output.Words;

namespace ShellForge.Cli.Printing;

/// <summary>
/// Help in our own words: what the command does, how it is written, what stands in it. At a terminal it has the terminal's width,
/// elsewhere always the same.
/// </summary>
internal sealed class HelpText(Workbench bench) : SynchronousCommandLineAction
{
    // The left column is no wider than this; what is longer stands on a line of its own.
    private const int LeftColumn = 26;

    /// <inheritdoc />
    public override int Invoke(ParseResult parseResult)
    {
        Write(bench, parseResult.CommandResult.Command, bench.Out);
        return (int)ExitCode.Done;
    }

    /// <summary>Writes the help of a command.</summary>
    public static void Write(Workbench bench, Command command, TextWriter writer)
    {
        int width = bench.TextWidth;
        bool root = command is RootCommand;
        string name = root ? "shellforge" : $"shellforge {command.Name}";
        IEnumerable<string> words =
        [
            name, .. command.Arguments.Select(Spelled), .. root ? ["VERB ..."] : Array.Empty<string>(), "[options]",
        ];
        writer.Write(string.Join(' ', words) + "\n\n");
        foreach (string paragraph in (command.Description ?? "").Split('\n'))
        {
            WrappedText.Write(writer, paragraph + (root || paragraph.Length == 0 || paragraph.EndsWith('.') ? "" : "."), width);
        }

        Rows(writer, width, [.. command.Arguments.Select(argument => (Spelled(argument), argument.Description ?? ""))]);
        WriteVerbs(command, writer, width);
        Rows(writer, width, [.. command.Options.Where(option => !option.Hidden).Select(option => (Spelled(option), Meaning(option)))]);
        if (root)
        {
            writer.Write("\n'shellforge VERB --help' tells more about a verb.\n");
        }
    }

    /// <summary>Writes a line a verb.</summary>
    public static void WriteVerbs(Command command, TextWriter writer, int width) =>
        Rows(writer, width, [.. command.Subcommands.Select(verb => (verb.Name, verb.Description ?? ""))]);

    private static void Rows(TextWriter writer, int width, (string Left, string Right)[] rows)
    {
        if (rows.Length == 0)
        {
            return;
        }

        int column = Math.Min(LeftColumn, 4 + rows.Max(row => row.Left.Length));
        writer.Write('\n');
        foreach ((string left, string right) in rows)
        {
            string first = "  " + left;
            if (first.Length > column - 2)
            {
                writer.Write(first + "\n");
                first = "";
            }

            WrappedText.Write(writer, right, width, first.PadRight(column), column);
        }
    }

    private static string Spelled(Argument argument)
    {
        string name = argument.Arity.MaximumNumberOfValues > 1 ? $"{argument.Name}..." : argument.Name;
        return argument.Arity.MinimumNumberOfValues == 0 ? $"[{name}]" : name;
    }

    private static string Spelled(Option option)
    {
        string names = string.Join(", ",
            option.Aliases.Append(option.Name).OrderBy(name => name.Length).ThenBy(name => name, StringComparer.Ordinal));
        string value = option.ValueType == typeof(bool) || option.Arity.MaximumNumberOfValues == 0
            ? ""
            : $" {(option.HelpName ?? Choices(option) ?? option.Name.TrimStart('-')).ToUpperInvariant()}";
        return names + value;
    }

    private static string? Choices(Option option)
    {
        string[] words = [.. option.GetCompletions(CompletionContext.Empty).Select(completion => completion.Label)];
        return words.Length is > 0 and < 6 ? string.Join('|', words) : null;
    }

    private static string Meaning(Option option) => option switch
    {
        System.CommandLine.Help.HelpOption => "Shows this text",
        VersionOption => "Shows which version this is",
        _ => option.Description ?? "",
    };
}
