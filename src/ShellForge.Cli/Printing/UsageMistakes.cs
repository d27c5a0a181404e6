using System.CommandLine;
using System.CommandLine.Parsing;
using ShellForge.Board.Yaml.Tree;

namespace ShellForge.Cli.Printing;

/// <summary>What is wrong with a command line, in our own words, with the nearest name that there is.</summary>
internal static class UsageMistakes
{
    /// <summary>A sentence a mistake.</summary>
    public static IEnumerable<string> Of(ParseResult parsed)
    {
        Command command = parsed.CommandResult.Command;
        string[] unknown = [.. parsed.UnmatchedTokens];
        if (command is RootCommand && unknown.Length == 0 && parsed.Errors.Count == 1)
        {
            yield return "which verb? One of these:";
            yield break;
        }

        foreach (string word in unknown)
        {
            yield return Unknown(command, word);
        }

        foreach (ParseError error in parsed.Errors)
        {
            switch (error.SymbolResult)
            {
                case ArgumentResult { Tokens.Count: 0 } empty when empty.Parent is CommandResult:
                    yield return $"{command.Name} needs {Needed(empty.Argument)}";
                    break;
                case OptionResult { Tokens.Count: 0 } option:
                    yield return $"{option.Option.Name} needs a value: {option.Option.Description}";
                    break;
                case CommandResult or null:
                    // Unknown words are told above; a missing verb is told by them.
                    if (unknown.Length == 0)
                    {
                        yield return error.Message;
                    }

                    break;
                default:
                    yield return error.Message;
                    break;
            }
        }
    }

    private static string Unknown(Command command, string word)
    {
        bool root = command is RootCommand;
        IEnumerable<string> names = word.StartsWith('-') || !root
            ? command.Options.Where(option => !option.Hidden).SelectMany(option => option.Aliases.Append(option.Name))
            : command.Subcommands.Select(verb => verb.Name);
        string nearest = NearestName.In(word, names) is { } near ? $"; did you mean {near}?" : "";
        return word.StartsWith('-') ? $"there is no option {word} here{nearest}"
            : root ? $"there is no verb '{word}'{nearest}"
            : $"'{word}' is one word too many for {command.Name}{nearest}";
    }

    private static string Needed(Argument argument) => argument.Name switch
    {
        "BOARD" => "a board file, such as: lamp.yaml",
        _ => $"{argument.Name}, {char.ToLowerInvariant(argument.Description![0])}{argument.Description[1..]}",
    };
}
