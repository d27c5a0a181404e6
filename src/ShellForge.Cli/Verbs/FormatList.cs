using System.Collections.Immutable;
using System.CommandLine;
using System.CommandLine.Parsing;
using ShellForge.Output.Files;

namespace ShellForge.Cli.Verbs;

/// <summary>Reads a list of output formats, as <c>stl,3mf</c>.</summary>
internal static class FormatList
{
    /// <summary>The option.</summary>
    public static Option<ImmutableArray<OutputFormat>> Option() =>
        new("--formats") { Description = Description, HelpName = "LIST", CustomParser = Parse };

    /// <summary>What is written: what was asked for, or the usual.</summary>
    public static ImmutableArray<OutputFormat> Wanted(ImmutableArray<OutputFormat> asked) =>
        asked.IsDefaultOrEmpty ? OutputFormat.Usual : asked;

    private static string Description =>
        $"What to write, separated by commas: {string.Join(", ", OutputFormat.All.Select(format => $"{format.Word} ({format.About})"))}; "
            + $"by default {string.Join(",", OutputFormat.Usual.Select(format => format.Word))}";

    private static ImmutableArray<OutputFormat> Parse(ArgumentResult given)
    {
        var formats = new HashSet<OutputFormat>();
        foreach (string word in given.Tokens.SelectMany(token => token.Value.Split(',', StringSplitOptions.TrimEntries)))
        {
            if (OutputFormat.All.FirstOrDefault(format => format.Word == word) is not { } found)
            {
                given.AddError(
                    $"'{word}' is no format; expected {string.Join(", ", OutputFormat.All.Select(format => format.Word))}, separated by "
                        + $"commas");
                return [];
            }

            formats.Add(found);
        }

        return [.. OutputFormat.All.Where(formats.Contains)];
    }
}
