using System.CommandLine;
using System.CommandLine.Completions;
using System.CommandLine.Parsing;
using ShellForge.Board.Yaml.Tree;

namespace ShellForge.Cli.Verbs;

/// <summary>Arguments and options that take one of a few words: they complete them, and tell the nearest for another.</summary>
internal static class OneOf
{
    public static void Accept(Argument argument, params string[] words)
    {
        argument.CompletionSources.Add(_ => words.Select(word => new CompletionItem(word)));
        argument.Validators.Add(result => Check(result, words));
    }

    public static void Accept(Option option, params string[] words)
    {
        option.CompletionSources.Add(_ => words.Select(word => new CompletionItem(word)));
        option.Validators.Add(result => Check(result, words));
    }

    private static void Check(SymbolResult result, string[] words)
    {
        foreach (string typed in result.Tokens.Select(token => token.Value).Where(typed => !words.Contains(typed)))
        {
            string nearest = NearestName.In(typed, words) is { } near ? $"; did you mean {near}?" : "";
            result.AddError($"'{typed}' is none of {string.Join(", ", words)}{nearest}");
        }
    }
}
